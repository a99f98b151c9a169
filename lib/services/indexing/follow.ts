import type { CaseIndex } from "#lib/core/advice/index.ts";
import type { Db } from "#lib/infra/db/index.ts";
import type { SearchDocument, SearchEngine } from "#lib/infra/search/types.ts";
import type { FactsCache } from "../boards/index.ts";
import { putCases, refreshCases } from "./case-index.ts";
import { dependentIds } from "./dependents.ts";
import { SOURCES } from "./documents.ts";

/** Rows read from the change log in one go. */
const LOG_SLICE = 500;
/** Records loaded in one query: small, so that other requests get the connection in between. */
const BUILD_SLICE = 50;
/** A record that another process changed is found at the latest after this time. */
const LOOK_EVERY_MS = 1_000;

interface Followed {
  db: Db;
  search: SearchEngine;
  cases: CaseIndex;
  boards: FactsCache;
}

export interface FollowProblem {
  what: string;
  message: string;
}

export interface Follower {
  /** There is something new in the change log. */
  wake: () => void;
  /** Resolves when everything that was committed before the call is in the indexes. */
  settled(): Promise<void>;
  /** Whether the first build is done. */
  isReady(): boolean;
  stop(): Promise<void>;
}

/**
 * Builds search and advice from the database, then follows the change log. Nothing waits for it: until the first build
 * is done, searches find what is indexed so far.
 */
export function followChanges(followed: Followed, on: { onProblem(problem: FollowProblem): void }): Follower {
  let position = 0n;
  let ready = false;
  let stopped = false;
  let asked = false;
  let running: Promise<void> | null = null;

  const run = async () => {
    while (asked && !stopped) {
      asked = false;
      try {
        if (!ready) {
          position = await lastPosition(followed.db);
          await buildAll(followed);
          ready = true;
        }
        position = await followFrom(followed, position, () => stopped);
      } catch (error) {
        if (stopped) return;
        on.onProblem({
          what: ready ? "following" : "building",
          message: error instanceof Error ? error.message : String(error),
        });
        await pause(LOOK_EVERY_MS);
        asked = true;
      }
    }
  };
  const wake = () => {
    asked = true;
    if (stopped) return;
    running ??= run().finally(() => {
      running = null;
      if (asked && !stopped) wake();
    });
  };
  const timer = setInterval(wake, LOOK_EVERY_MS);
  timer.unref();
  wake();
  return {
    wake,
    isReady: () => ready,
    async settled() {
      const wanted = await lastPosition(followed.db);
      while (!stopped && (!ready || position < wanted)) {
        wake();
        await pause(2);
      }
    },
    async stop() {
      stopped = true;
      clearInterval(timer);
      await running;
    },
  };
}

async function lastPosition(db: Db): Promise<bigint> {
  const last = await db.changeLog.aggregate({ _max: { seq: true } });
  return last._max.seq ?? 0n;
}

async function buildAll(followed: Followed): Promise<void> {
  await refreshCases(followed.db, followed.cases);
  await followed.search.rebuild(allDocuments(followed.db));
}

async function* allDocuments(db: Db): AsyncGenerator<SearchDocument> {
  for (const source of SOURCES) {
    let after: string | null = null;
    for (;;) {
      const ids: string[] = await source.ids(db, after, BUILD_SLICE);
      if (ids.length === 0) break;
      yield* await source.documents(db, ids);
      after = ids.at(-1) ?? null;
    }
  }
}

async function followFrom(followed: Followed, from: bigint, isStopped: () => boolean): Promise<bigint> {
  let position = from;
  for (;;) {
    if (isStopped()) return position;
    const rows = await followed.db.changeLog.findMany({
      where: { seq: { gt: position } },
      select: { seq: true, recordKind: true, recordId: true },
      orderBy: { seq: "asc" },
      take: LOG_SLICE,
    });
    if (rows.length === 0) return position;
    await apply(followed, rows);
    position = rows.at(-1)?.seq ?? position;
  }
}

/**
 * Brings the indexes to the records' present state, and with them what repeats something of theirs. Applying a row
 * twice, or late, changes nothing.
 */
async function apply(followed: Followed, rows: readonly { recordKind: string; recordId: string }[]): Promise<void> {
  const changed = byKind(rows);
  if (changed.has("board") || changed.has("chip")) followed.boards.clear();
  for (const source of SOURCES) {
    const own = changed.get(source.kind) ?? [];
    const ids = [...new Set([...own, ...(await dependentIds(followed.db, source.kind, changed))])];
    for (let from = 0; from < ids.length; from += BUILD_SLICE) {
      await renew(followed, source, ids.slice(from, from + BUILD_SLICE));
    }
    if (source.kind === "case" && own.length > 0) await putCases(followed.db, followed.cases, own);
  }
}

/** The documents of these records as they are now; what is gone, or not for search any more, leaves the index. */
async function renew({ db, search }: Followed, source: (typeof SOURCES)[number], ids: string[]): Promise<void> {
  const documents = await source.documents(db, ids);
  const there = new Set(documents.map((document) => document.id));
  await search.upsert(documents);
  await search.remove(ids.filter((id) => !there.has(id)));
}

function byKind(rows: readonly { recordKind: string; recordId: string }[]): Map<string, string[]> {
  const changed = new Map<string, string[]>();
  for (const kind of new Set(rows.map((row) => row.recordKind))) {
    const ids = rows.filter((row) => row.recordKind === kind).map((row) => row.recordId);
    changed.set(kind, [...new Set(ids)]);
  }
  return changed;
}

function pause(ms: number): Promise<void> {
  return new Promise((resume) => setTimeout(resume, ms));
}
