import type { Role } from "#lib/core/shared/index.ts";
import type { Prisma, Tx } from "#lib/infra/db/index.ts";
import { demand, memberId, type Ctx, type Scope } from "./context.ts";
import { ServiceError } from "./errors.ts";

/** Records whose every edit is kept; each is also what search and advice follow. */
export type RecordKind =
  | "case"
  | "check"
  | "cause"
  | "board"
  | "copy"
  | "chip"
  | "code"
  | "claim"
  | "house"
  | "spare"
  | "member"
  | "comment"
  | "symptom"
  | "import"
  | "setting";

export interface Touched {
  kind: RecordKind;
  id: string;
  version?: number;
  /** The record as it is now; kept as a revision. Left out: the change log only. */
  snapshot?: unknown;
}

export interface Changed<T> {
  value: T;
  /** `check.record`, `board.create`: what the audit trail and the history say. */
  did: string;
  touched: Touched[];
  /** For the audit trail; never secrets. */
  detail?: Record<string, string | number | boolean | null>;
}

/** Serialises the last step of every writing transaction, so that the change log's order is commit order. */
const CHANGE_LOG_LOCK = 72_707_370;
/** A transaction that lost against another is tried again. Origin: 50 contenders were all done within 20 tries. */
const TRIES = 20;

interface ChangeOptions {
  /** Token scope that the change needs; `write` when left out. */
  scope?: Scope;
}

/**
 * The one door to writing: checks the role, opens the transaction, runs the work, and writes history, audit trail and
 * change log with it. All or nothing.
 */
export async function change<T>(
  ctx: Ctx,
  role: Role,
  work: (tx: Tx) => Promise<Changed<T>>,
  options: ChangeOptions = {},
): Promise<T> {
  demand(ctx.actor, role, options.scope ?? "write");
  const changed = await retried(() =>
    ctx.db.$transaction(async (tx) => {
      const result = await work(tx);
      await keep(tx, ctx, result);
      return result;
    }),
  );
  ctx.wake();
  return changed.value;
}

async function keep<T>(tx: Tx, ctx: Ctx, changed: Changed<T>): Promise<void> {
  const at = ctx.now();
  const by = ctx.actor.kind === "club" ? (ctx.onBehalfOf ?? null) : memberId(ctx.actor);
  const kept = changed.touched.filter((record) => record.snapshot !== undefined);
  if (kept.length > 0) {
    await tx.recordRevision.createMany({
      data: kept.map((record) => ({
        id: ctx.newId(),
        recordKind: record.kind,
        recordId: record.id,
        version: record.version ?? 1,
        did: changed.did,
        memberId: by,
        at,
        snapshot: record.snapshot as Prisma.InputJsonValue,
      })),
    });
  }
  const [first] = changed.touched;
  await tx.auditEntry.create({
    data: {
      id: ctx.newId(),
      at,
      memberId: by,
      action: changed.did,
      recordKind: first?.kind ?? null,
      recordId: first?.id ?? null,
      address: ctx.address ?? null,
      detail: changed.detail ?? {},
    },
  });
  if (changed.touched.length === 0) return;
  await tx.$executeRaw`select pg_advisory_xact_lock(${CHANGE_LOG_LOCK}::bigint)`;
  await tx.changeLog.createMany({
    data: changed.touched.map((record) => ({ recordKind: record.kind, recordId: record.id, at })),
  });
}

async function retried<T>(attempt: () => Promise<T>): Promise<T> {
  for (let tries = 1; ; tries++) {
    try {
      return await attempt();
    } catch (error) {
      if (tries >= TRIES || !lostAgainstAnother(error)) throw error;
      await new Promise((resume) => setTimeout(resume, 5 * tries));
    }
  }
}

interface DriverError {
  code?: unknown;
  cause?: { kind?: unknown; originalCode?: unknown };
}

function lostAgainstAnother(error: unknown): boolean {
  const { code, cause } = error as DriverError;
  return (
    code === "P2034" ||
    cause?.kind === "TransactionWriteConflict" ||
    ["40001", "40P01"].includes(String(cause?.originalCode))
  );
}

/** Whether a write failed because a record with the same unique value exists. */
export function isDuplicate(error: unknown): boolean {
  const { code, cause } = error as DriverError;
  return code === "P2002" || String(cause?.originalCode) === "23505";
}

type Versioned =
  | "FaultCase"
  | "Check"
  | "Cause"
  | "Board"
  | "BoardCopy"
  | "Chip"
  | "PartCode"
  | "Claim"
  | "House"
  | "Spare"
  | "Member"
  | "Comment";

/**
 * Locks a record's row until the transaction ends and checks that nobody changed it since `expected` was read.
 * `present` builds what the second writer is shown. Throws `stale`, or `not-found`.
 */
export async function lockRecord(
  tx: Tx,
  table: Versioned,
  id: string,
  expected: number | null,
  present: () => Promise<unknown>,
): Promise<number> {
  // The table's name comes from the closed set above, never from a request.
  const rows = await tx.$queryRawUnsafe<{ version: number }[]>(
    `select "version" from "${table}" where "id" = $1::uuid for update`,
    id,
  );
  const [row] = rows;
  if (!row) throw new ServiceError("not-found", "This record is gone.");
  if (expected !== null && row.version !== expected) {
    throw new ServiceError(
      "stale",
      "Someone changed this while you were writing. Nothing of yours is lost: compare and save again.",
      {
        present: await present(),
      },
    );
  }
  return row.version;
}
