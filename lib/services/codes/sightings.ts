import { printPlace, readPlace } from "#lib/core/netlist/index.ts";
import type { Tx } from "#lib/infra/db/index.ts";
import { change } from "../change.ts";
import { demand, type Ctx } from "../context.ts";
import { invalid, ServiceError } from "../errors.ts";
import { theCode } from "./find.ts";
import { writtenBy, type Provenance } from "./provenance.ts";
import { SightingInput } from "./schema.ts";
import { touchedCode } from "./snapshot.ts";

export interface SavedSighting {
  id: string;
  /** Of the code. */
  codeId: string;
  /** False where the same sighting was there already: the request came twice. */
  made: boolean;
}

/** Records where a code was seen. `text` is the code's id or its print. */
export async function addSighting(
  ctx: Ctx,
  text: string,
  raw: unknown,
  provenance?: Provenance,
): Promise<SavedSighting> {
  const input = SightingInput.parse(raw);
  demand(ctx.actor, "member", "write");
  const by = writtenBy(ctx, provenance);
  return change<SavedSighting>(ctx, "member", async (tx) => {
    const code = await theCode(tx, text);
    const again = input.id
      ? await tx.codeSighting.findUnique({ where: { id: input.id }, select: { id: true, codeId: true } })
      : null;
    if (again) {
      if (again.codeId !== code.id) throw new ServiceError("conflict", "Another sighting has this id.");
      return { value: { id: again.id, codeId: code.id, made: false }, did: "code.sighting", touched: [] };
    }
    const id = await writeSighting(tx, ctx, code.id, input, by, "");
    return {
      value: { id, codeId: code.id, made: true },
      did: "code.sighting",
      touched: [await touchedCode(tx, code.id)],
    };
  });
}

export async function writeSighting(
  tx: Tx,
  ctx: Ctx,
  codeId: string,
  input: SightingInput,
  by: { memberId: string | null; at: Date },
  path: string,
): Promise<string> {
  const { id, board, at, seenAt, ...plain } = input;
  const made = await tx.codeSighting.create({
    data: {
      id: id ?? ctx.newId(),
      codeId,
      ...plain,
      at: placeAsPrinted(at),
      boardId: board === null ? null : await boardIdOf(tx, board, `${path}board`),
      memberId: by.memberId,
      seenAt: seenAt ? new Date(seenAt) : by.at,
    },
    select: { id: true },
  });
  return made.id;
}

/** A place in its one spelling; what is no place ("in the spares box") stays as typed. */
function placeAsPrinted(typed: string): string {
  const place = readPlace(typed);
  return place.ok && place.value.kind !== "net" ? printPlace(place.value) : typed;
}

async function boardIdOf(tx: Tx, slug: string, path: string): Promise<string> {
  const board = await tx.board.findFirst({ where: { slug, hiddenAt: null }, select: { id: true } });
  if (!board) throw invalid(path, `There is no board "${slug}".`);
  return board.id;
}
