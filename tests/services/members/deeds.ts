import { expect } from "vitest";
import type { MemberActor, Ctx } from "#lib/services/context.ts";
import { ServiceError, type FieldProblem, type ServiceErrorCode } from "#lib/services/errors.ts";
import type { TestClub } from "#tests/support/test-club.ts";

export interface Refusal {
  code: ServiceErrorCode;
  message: string;
  problems: FieldProblem[];
}

/** What a refused verb said; fails where it was not refused, or broke. */
export async function refusalOf(work: Promise<unknown>): Promise<Refusal> {
  const error: unknown = await work.then(
    () => new Error("this was not refused"),
    (reason: unknown) => reason,
  );
  if (!(error instanceof ServiceError)) throw error;
  return { code: error.code, message: error.message, problems: error.extra.problems ?? [] };
}

export const PASSWORD = "a long enough password";

/** A member with the password `PASSWORD`, who may sign in. */
export async function memberWithPassword(club: TestClub, handle: string, role: MemberActor["role"] = "member") {
  const actor = await club.member(handle, role);
  const passwordHash = await club.ctx().secrets.hashPassword(PASSWORD);
  await club.database.db.member.update({ where: { id: actor.id }, data: { passwordHash }, select: { id: true } });
  return actor;
}

let lastAddress = 0;
/** A visitor from an address of their own, so that one test's tries do not count in another. */
export function visitorOf(club: TestClub): Ctx {
  lastAddress++;
  return { ...club.ctx({ kind: "visitor" }), address: `198.51.100.${lastAddress}` };
}

/** The audit trail of a member, oldest first. */
export async function auditOf(club: TestClub, memberId: string | null) {
  return club.database.db.auditEntry.findMany({
    where: { memberId },
    select: { action: true, recordKind: true, recordId: true, address: true, detail: true },
    orderBy: [{ at: "asc" }, { id: "asc" }],
  });
}

/** Nothing that opens a door stands in the audit trail or in the history. */
export async function expectNoSecrets(club: TestClub, secrets: readonly string[]): Promise<void> {
  const { db } = club.database;
  const [details, snapshots, hashes] = await Promise.all([
    db.auditEntry.findMany({ select: { detail: true } }),
    db.recordRevision.findMany({ select: { snapshot: true } }),
    storedHashes(club),
  ]);
  expect(details.length).toBeGreaterThan(0);
  expect(hashes.length).toBeGreaterThan(0);
  const kept = JSON.stringify([details, snapshots]);
  const found = [...secrets, ...hashes].filter((secret) => kept.includes(secret));
  expect(found).toEqual([]);
}

async function storedHashes(club: TestClub): Promise<string[]> {
  const { db } = club.database;
  const [members, tokens, invitations, links] = await Promise.all([
    db.member.findMany({ select: { passwordHash: true } }),
    db.apiToken.findMany({ select: { tokenHash: true } }),
    db.invitation.findMany({ select: { tokenHash: true } }),
    db.signInLink.findMany({ select: { tokenHash: true } }),
  ]);
  return [
    ...members.flatMap(({ passwordHash }) => passwordHash ?? []),
    ...[...tokens, ...invitations, ...links].map(({ tokenHash }) => tokenHash),
  ];
}
