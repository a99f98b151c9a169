import type { Tx } from "#lib/infra/db/index.ts";
import type { Touched } from "../change.ts";

const CASE = {
  number: true,
  title: true,
  state: true,
  outcome: true,
  lesson: true,
  symptomText: true,
  reproduced: true,
  story: true,
  asksHelp: true,
  version: true,
  board: { select: { slug: true } },
  revision: { select: { name: true } },
  copy: { select: { tag: true } },
  symptoms: { select: { symptom: { select: { label: true } } }, orderBy: { position: "asc" } },
} as const;

/** A case's own fields as they are now, for its history. Checks and causes have a history of their own. */
export async function touchedCase(tx: Tx, id: string): Promise<Touched> {
  const { version, board, revision, copy, symptoms, ...fields } = await tx.faultCase.findUniqueOrThrow({
    where: { id },
    select: CASE,
  });
  return {
    kind: "case",
    id,
    version,
    snapshot: {
      ...fields,
      board: board?.slug ?? null,
      revision: revision?.name ?? null,
      copy: copy?.tag ?? null,
      symptoms: symptoms.map((row) => row.symptom.label),
    },
  };
}
