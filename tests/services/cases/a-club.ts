import { createBoard } from "#lib/services/boards/index.ts";
import { createCase, readCase, recordChecks, type CaseView } from "#lib/services/cases/index.ts";
import { createChip } from "#lib/services/chips/index.ts";
import type { Ctx, MemberActor } from "#lib/services/context.ts";
import { ServiceError, type FieldProblem, type ServiceErrorCode } from "#lib/services/errors.ts";
import { testClub, type TestClub } from "#tests/support/test-club.ts";
import { z } from "zod";

/** A club with one board and three members: ada writes cases, bob is another member, rita reviews. */
export interface SmallClub {
  club: TestClub;
  ada: Ctx;
  bob: Ctx;
  rita: Ctx;
  stella: Ctx;
  visitor: Ctx;
  adaActor: MemberActor;
}

export const BOARD = "finch-cpu";

export async function smallClub(): Promise<SmallClub> {
  const club = await testClub();
  const adaActor = await club.member("ada");
  const [bob, rita, stella] = [
    await club.member("bob"),
    await club.member("rita", "reviewer"),
    await club.member("stella", "steward"),
  ];
  await createChip(club.ctx(), { name: "74LS244", technology: "LS" });
  await createBoard(club.ctx(), {
    slug: BOARD,
    name: "Finch CPU",
    kind: "home-computer",
    revisions: [{ name: "A" }],
    rails: [{ name: "+5V", nominal: 5, tolerancePercent: 5 }],
    placements: [{ designator: "U7", kind: "chip", chip: "74ls244" }],
    nets: [{ name: "+5V", role: "power", pins: ["U7.20"] }],
  });
  return {
    club,
    ada: club.ctx(adaActor),
    bob: club.ctx(bob),
    rita: club.ctx(rita),
    stella: club.ctx(stella),
    visitor: club.ctx({ kind: "visitor" }),
    adaActor,
  };
}

/** Opens a case on the board, published unless said otherwise. */
export async function openedCase(ctx: Ctx, more: object = {}): Promise<CaseView> {
  const made = await createCase(ctx, { board: BOARD, symptoms: ["no picture"], publish: true, ...more });
  return readCase(ctx, made.number);
}

/** A case with one failed check: +5 V at U7 reads 0.8 V. */
export async function failedCase(ctx: Ctx, more: object = {}): Promise<{ view: CaseView; failed: string }> {
  const { number } = await openedCase(ctx, more);
  const { checks } = await recordChecks(ctx, number, [{ kind: "dc-voltage", at: "U7.20", measured: "0.8 V" }]);
  return { view: await readCase(ctx, number), failed: checks[0]?.id ?? "" };
}

export interface Refusal {
  code: ServiceErrorCode | "invalid";
  paths: string[];
}

/** Why a verb refused: its code and the fields it names. Fails where it did not refuse. */
export async function refusal(work: Promise<unknown>): Promise<Refusal> {
  const error = await work.then(
    () => null,
    (reason: unknown) => reason,
  );
  if (error instanceof ServiceError) {
    return { code: error.code, paths: (error.extra.problems ?? []).map((problem: FieldProblem) => problem.path) };
  }
  if (error instanceof z.ZodError) {
    return { code: "invalid", paths: error.issues.map((issue) => issue.path.join(".")) };
  }
  throw new Error(`was not refused: ${String(error)}`);
}

/** What the history says was done to a record, oldest first. */
export async function deeds(club: TestClub, recordId: string): Promise<string[]> {
  const rows = await club.database.db.recordRevision.findMany({
    where: { recordId },
    select: { did: true },
    orderBy: [{ at: "asc" }, { id: "asc" }],
  });
  return rows.map((row) => row.did);
}
