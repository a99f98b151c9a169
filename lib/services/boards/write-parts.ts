import { normalForm } from "#lib/core/marking/index.ts";
import type { Tx } from "#lib/infra/db/index.ts";
import type { Ctx } from "../context.ts";
import { ServiceError, type FieldProblem } from "../errors.ts";
import type { UpdateBoard } from "./schema.ts";

/** Replaces the lists of a board that are given; lists that are left out stay. Refuses contradictions, each named. */
export async function writeParts(tx: Tx, ctx: Ctx, boardId: string, lists: UpdateBoard): Promise<void> {
  refuseContradictions(lists);
  if (lists.revisions) await writeRevisions(tx, ctx, boardId, lists.revisions);
  if (lists.rails) {
    await tx.rail.deleteMany({ where: { boardId } });
    await tx.rail.createMany({
      data: lists.rails.map((rail, position) => ({ id: ctx.newId(), boardId, position, ...rail })),
    });
  }
  if (lists.connectors) await writeConnectors(tx, ctx, boardId, lists.connectors);
  if (lists.placements) await writePlacements(tx, ctx, boardId, lists.placements);
  if (lists.nets) await writeNets(tx, ctx, boardId, lists.nets);
  if (lists.selfTests) {
    await tx.selfTestCode.deleteMany({ where: { boardId } });
    await tx.selfTestCode.createMany({
      data: lists.selfTests.map((code, position) => ({ id: ctx.newId(), boardId, position, ...code })),
    });
  }
  if (lists.cautions) {
    await tx.boardCaution.deleteMany({ where: { boardId } });
    await tx.boardCaution.createMany({
      data: lists.cautions.map((caution, position) => ({ id: ctx.newId(), boardId, position, ...caution })),
    });
  }
}

/** Revisions that go on keep their ids: cases and copies point to them. */
async function writeRevisions(
  tx: Tx,
  ctx: Ctx,
  boardId: string,
  revisions: NonNullable<UpdateBoard["revisions"]>,
): Promise<void> {
  await tx.boardRevision.deleteMany({ where: { boardId, name: { notIn: revisions.map((one) => one.name) } } });
  for (const [position, revision] of revisions.entries()) {
    await tx.boardRevision.upsert({
      where: { boardId_name: { boardId, name: revision.name } },
      create: { id: ctx.newId(), boardId, position, ...revision },
      update: { position, notes: revision.notes },
      select: { id: true },
    });
  }
}

async function writeConnectors(
  tx: Tx,
  ctx: Ctx,
  boardId: string,
  connectors: NonNullable<UpdateBoard["connectors"]>,
): Promise<void> {
  await tx.connector.deleteMany({ where: { boardId } });
  const rows = connectors.map(({ pins, ...connector }, position) => ({
    id: ctx.newId(),
    boardId,
    position,
    ...connector,
    pins,
  }));
  await tx.connector.createMany({ data: rows.map(({ pins: _pins, ...row }) => row) });
  await tx.connectorPin.createMany({
    data: rows.flatMap(({ id, pins }) =>
      pins.map((pin, position) => ({ id: ctx.newId(), connectorId: id, position, ...pin })),
    ),
  });
}

async function writePlacements(
  tx: Tx,
  ctx: Ctx,
  boardId: string,
  placements: NonNullable<UpdateBoard["placements"]>,
): Promise<void> {
  const slugs = [...new Set(placements.flatMap((one) => one.chip ?? []))];
  const chips = new Map(
    (await tx.chip.findMany({ where: { slug: { in: slugs } }, select: { id: true, slug: true } })).map((chip) => [
      chip.slug,
      chip.id,
    ]),
  );
  const unknown = placements.flatMap((one, index) =>
    one.chip && !chips.has(one.chip)
      ? [
          {
            path: `placements.${index}.chip`,
            message: `There is no chip record "${one.chip}". Add it, or write it as the value.`,
          },
        ]
      : [],
  );
  if (unknown.length > 0)
    throw new ServiceError("invalid", "Some placements name chips that have no record.", { problems: unknown });
  const codes = await codesByForm(
    tx,
    placements.flatMap((one) => one.code ?? []),
  );
  const codeBefore = await codesOfBoard(tx, boardId);
  await tx.placement.deleteMany({ where: { boardId } });
  await tx.placement.createMany({
    data: placements.map(({ chip, code, ...placement }, position) => ({
      id: ctx.newId(),
      boardId,
      position,
      ...placement,
      designator: placement.designator.toUpperCase(),
      chipId: chip ? (chips.get(chip) ?? null) : null,
      codeId: code
        ? (codeBefore.get(codePlace(placement.designator, code)) ?? codes.get(normalForm(code)) ?? null)
        : null,
      value: placement.value || (code ?? ""),
    })),
  });
}

function codePlace(designator: string, code: string): string {
  return `${designator.toUpperCase()} ${normalForm(code)}`;
}

/** The codes that are fitted now: one that another house prints as well keeps the record that was chosen. */
async function codesOfBoard(tx: Tx, boardId: string): Promise<Map<string, string>> {
  const rows = await tx.placement.findMany({
    where: { boardId, codeId: { not: null } },
    select: { designator: true, code: { select: { id: true, code: true } } },
  });
  return new Map(
    rows.flatMap(({ designator, code }) => (code ? [[codePlace(designator, code.code), code.id] as const] : [])),
  );
}

/** Records by normal form, where exactly one prints it. */
async function codesByForm(tx: Tx, codes: readonly string[]): Promise<Map<string, string>> {
  const rows = await tx.partCode.findMany({
    where: { normal: { in: codes.map(normalForm) } },
    select: { id: true, normal: true },
  });
  const found = new Map<string, string>();
  const several = new Set<string>();
  for (const row of rows) {
    if (found.has(row.normal)) several.add(row.normal);
    found.set(row.normal, row.id);
  }
  for (const form of several) found.delete(form);
  return found;
}

async function writeNets(tx: Tx, ctx: Ctx, boardId: string, nets: NonNullable<UpdateBoard["nets"]>): Promise<void> {
  await tx.net.deleteMany({ where: { boardId } });
  const rows = nets.map((net, position) => ({ ...net, id: ctx.newId(), position }));
  await tx.net.createMany({ data: rows.map(({ pins: _pins, ...row }) => ({ boardId, ...row })) });
  await tx.netPin.createMany({
    data: rows.flatMap(({ id, pins }) =>
      pins.map((spelled) => {
        const at = spelled.lastIndexOf(".");
        return {
          id: ctx.newId(),
          netId: id,
          boardId,
          designator: spelled.slice(0, at).toUpperCase(),
          pin: spelled.slice(at + 1).toUpperCase(),
        };
      }),
    ),
  });
}

function refuseContradictions(lists: UpdateBoard): void {
  const problems = [
    ...twice(
      lists.revisions?.map((one) => one.name),
      "revisions",
      "This revision stands here twice.",
    ),
    ...twice(
      lists.rails?.map((one) => one.name),
      "rails",
      "This rail stands here twice.",
    ),
    ...twice(
      lists.connectors?.map((one) => one.designator),
      "connectors",
      "This connector stands here twice.",
    ),
    ...twice(
      lists.placements?.map((one) => one.designator),
      "placements",
      "This designator stands here twice.",
    ),
    ...twice(
      lists.nets?.map((one) => one.name),
      "nets",
      "This net stands here twice.",
    ),
    ...(lists.connectors ?? []).flatMap((one, index) =>
      twice(
        one.pins.map((pin) => pin.number),
        `connectors.${index}.pins`,
        "This pin stands here twice.",
      ),
    ),
    ...twice(
      lists.nets?.flatMap((net) => net.pins),
      "nets",
      "This pin is on two nets, or on one twice.",
    ),
  ];
  if (problems.length > 0) throw new ServiceError("invalid", "The board contradicts itself.", { problems });
}

function twice(names: readonly string[] | undefined, path: string, message: string): FieldProblem[] {
  const seen = new Set<string>();
  return (names ?? []).flatMap((name, index) => {
    const key = name.toUpperCase();
    if (!seen.has(key)) {
      seen.add(key);
      return [];
    }
    return [{ path: `${path}.${index}`, message: `${name}: ${message}` }];
  });
}
