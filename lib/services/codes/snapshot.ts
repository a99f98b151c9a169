import type { Prisma, Tx } from "#lib/infra/db/index.ts";
import type { Touched } from "../change.ts";

const OWN = {
  id: true,
  code: true,
  notes: true,
  version: true,
  house: { select: { slug: true, name: true } },
  chip: { select: { slug: true, name: true } },
} as const satisfies Prisma.PartCodeSelect;

const WHOLE = {
  ...OWN,
  sightings: {
    select: {
      id: true,
      at: true,
      dateCode: true,
      note: true,
      seenAt: true,
      board: { select: { slug: true, name: true } },
    },
    orderBy: { seenAt: "asc" },
  },
} as const satisfies Prisma.PartCodeSelect;

const CLAIM = {
  id: true,
  grade: true,
  bothWays: true,
  conditions: true,
  note: true,
  version: true,
  fromId: true,
  toId: true,
  from: { select: { id: true, code: true } },
  to: { select: { id: true, code: true } },
  evidence: {
    select: {
      id: true,
      kind: true,
      note: true,
      provedElsewhere: true,
      retractedAt: true,
      member: { select: { handle: true } },
    },
    orderBy: { createdAt: "asc" },
  },
} as const satisfies Prisma.ClaimSelect;

/** A code's own fields: what a second writer is shown. */
export async function codeOwnFields(tx: Tx, id: string) {
  return tx.partCode.findUniqueOrThrow({ where: { id }, select: OWN });
}

/** A code with its sightings, for the history. */
export async function touchedCode(tx: Tx, id: string): Promise<Touched> {
  const { sightings, ...own } = await tx.partCode.findUniqueOrThrow({ where: { id }, select: WHOLE });
  const snapshot = { ...own, sightings: sightings.map((one) => ({ ...one, seenAt: one.seenAt.toISOString() })) };
  return { kind: "code", id, version: own.version, snapshot };
}

export async function claimOwnFields(tx: Tx, id: string) {
  const { fromId: _from, toId: _to, evidence: _evidence, ...own } = await claimRow(tx, id);
  return own;
}

/** A claim with its evidence for the history; the two codes it speaks of changed with it. */
export async function touchedClaim(tx: Tx, id: string): Promise<Touched[]> {
  const { fromId, toId, evidence, ...own } = await claimRow(tx, id);
  const snapshot = {
    ...own,
    evidence: evidence.map((one) => ({ ...one, retractedAt: one.retractedAt?.toISOString() ?? null })),
  };
  return [
    { kind: "claim", id, version: own.version, snapshot },
    { kind: "code", id: fromId },
    { kind: "code", id: toId },
  ];
}

async function claimRow(tx: Tx, id: string) {
  return tx.claim.findUniqueOrThrow({ where: { id }, select: CLAIM });
}
