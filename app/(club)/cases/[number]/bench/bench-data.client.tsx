"use client";

import { useCallback, useEffect, useRef, useState, useSyncExternalStore } from "react";
import { movesBetween, isAdvice, type BenchAdvice } from "#lib/ui/bench-advice.ts";
import { checksOf, isCheck, refreshed, withChecks, type BenchCheck } from "#lib/ui/bench-checks.ts";
import {
  browserStore,
  createOutbox,
  reasonOf,
  sendItem,
  type Outbox,
  type OutboxItem,
  type OutboxState,
} from "#lib/ui/bench-outbox.ts";

/** How often another person's checks are asked for, in ms, while the page is seen. */
const POLL_MS = 5_000;
/** How long a deletion can be taken back, in ms. Until then the server knows nothing of it. */
const UNDO_MS = 8_000;

const NOTHING_WAITS: OutboxState = {
  items: [],
  isKept: true,
  isSending: false,
  isSignedOut: false,
  isCutOff: false,
};

function browserStorage(): Storage | null {
  try {
    return window.localStorage;
  } catch {
    // Some browsers refuse even to name it.
    return null;
  }
}

function after(ms: number, run: () => void): () => void {
  const timer = setTimeout(run, ms);
  return () => clearTimeout(timer);
}

/** The readings of this member that wait for the server, sent whenever it can be reached. */
export function useOutbox(
  member: string,
  onStored: (item: OutboxItem, checks: BenchCheck[]) => void,
): { outbox: Outbox | null; state: OutboxState } {
  const [outbox] = useState(() =>
    typeof window === "undefined"
      ? null
      : createOutbox({
          store: browserStore(browserStorage()),
          member,
          send: (item) => sendItem(item, fetch.bind(window)),
          after,
        }),
  );
  useEffect(() => outbox?.onStored(onStored), [outbox, onStored]);
  useEffect(() => {
    if (!outbox) return;
    const retry = () => outbox.retry();
    const seen = () => document.visibilityState === "visible" && outbox.retry();
    const stored = () => outbox.reload();
    outbox.retry();
    window.addEventListener("online", retry);
    window.addEventListener("storage", stored);
    document.addEventListener("visibilitychange", seen);
    return () => {
      outbox.stop();
      window.removeEventListener("online", retry);
      window.removeEventListener("storage", stored);
      document.removeEventListener("visibilitychange", seen);
    };
  }, [outbox]);
  const state = useSyncExternalStore(
    useCallback((tell: () => void) => outbox?.subscribe(tell) ?? (() => undefined), [outbox]),
    () => outbox?.state() ?? NOTHING_WAITS,
    () => NOTHING_WAITS,
  );
  return { outbox, state };
}

export type SaveAnswer =
  { done: "saved" } | { done: "stale"; present: BenchCheck } | { done: "refused"; reason: string };

export interface CaseChecks {
  checks: readonly BenchCheck[];
  /** Deleted, but not yet at the server: can be taken back. */
  going: readonly BenchCheck[];
  /** Puts in what the server just stored; asks for all when the answer named none. */
  stored: (checks: BenchCheck[]) => void;
  save: (id: string, version: number, body: Record<string, string | null>) => Promise<SaveAnswer>;
  remove: (check: BenchCheck) => void;
  undo: (id: string) => void;
}

/** The checks of a case, kept up with what others enter, with correction and deletion. */
export function useCaseChecks(
  caseNumber: number,
  first: readonly BenchCheck[],
  say: (text: string) => void,
): CaseChecks {
  const [checks, setChecks] = useState<readonly BenchCheck[]>(first);
  const [going, setGoing] = useState<readonly BenchCheck[]>([]);
  const timers = useRef(new Map<string, { check: BenchCheck; callOff: () => void }>());
  /** Goes up with each change of ours: an answer that was asked for before it is out of date. */
  const changes = useRef(0);
  const address = `/api/v1/cases/${caseNumber}`;

  const refresh = useCallback(async () => {
    const asked = changes.current;
    const all = await fetch(address, { headers: { accept: "application/json" } })
      .then((response) => (response.ok ? response.json() : null))
      .catch(() => null);
    if (all === null || asked !== changes.current) return;
    setChecks((have) => refreshed(have, checksOf(all)));
  }, [address]);

  useEffect(() => {
    const timer = setInterval(() => document.visibilityState === "visible" && void refresh(), POLL_MS);
    return () => clearInterval(timer);
  }, [refresh]);

  const stored = useCallback(
    (fresh: BenchCheck[]) => {
      changes.current++;
      if (fresh.length === 0) void refresh();
      else setChecks((have) => withChecks(have, fresh));
    },
    [refresh],
  );

  async function save(id: string, version: number, body: Record<string, string | null>): Promise<SaveAnswer> {
    try {
      const response = await fetch(`${address}/checks/${id}`, {
        method: "PATCH",
        headers: { "content-type": "application/json", "if-match": `"${version}"` },
        body: JSON.stringify(body),
      });
      if (response.ok) {
        stored(checksOf(await response.json()));
        return { done: "saved" };
      }
      const copy = response.clone();
      const problem: unknown = await response.json().catch(() => null);
      const present = typeof problem === "object" && problem !== null && "present" in problem ? problem.present : null;
      if (response.status === 412 && isCheck(present)) {
        stored([present]);
        return { done: "stale", present };
      }
      return { done: "refused", reason: await reasonOf(copy) };
    } catch {
      return {
        done: "refused",
        reason:
          "The server does not answer. What you changed is still here; save it again when the connection is back.",
      };
    }
  }

  const settle = useCallback((id: string) => {
    timers.current.get(id)?.callOff();
    timers.current.delete(id);
    setGoing((now) => now.filter((check) => check.id !== id));
  }, []);

  const deleteNow = useCallback(
    async (check: BenchCheck, leaving: boolean) => {
      const response = await fetch(`${address}/checks/${check.id}`, {
        method: "DELETE",
        headers: { "if-match": `"${check.version}"` },
        keepalive: leaving,
      }).catch(() => null);
      const isGone = response?.ok === true || response?.status === 404;
      changes.current++;
      if (isGone) setChecks((have) => have.filter((one) => one.id !== check.id));
      else
        say(
          response?.status === 412
            ? `${check.at} was changed by someone in the meantime, so it was not deleted.`
            : `${check.at} could not be deleted and is back in the list.`,
        );
      settle(check.id);
    },
    [address, say, settle],
  );

  function remove(check: BenchCheck) {
    const callOff = after(UNDO_MS, () => void deleteNow(check, false));
    timers.current.set(check.id, { check, callOff });
    setGoing((now) => [...now, check]);
  }

  useEffect(() => {
    const waiting = timers.current;
    const leave = () => {
      for (const { check, callOff } of waiting.values()) {
        callOff();
        void deleteNow(check, true);
      }
      waiting.clear();
    };
    window.addEventListener("pagehide", leave);
    return () => {
      window.removeEventListener("pagehide", leave);
      leave();
    };
  }, [deleteNow]);

  return { checks, going, stored, save, remove, undo: settle };
}

/** The advice for the case as it is stored, asked again when a check changes. The old answer stays until the new is there. */
export function useAdvice(caseNumber: number, first: BenchAdvice, checks: readonly BenchCheck[]) {
  const [shown, setShown] = useState<{ advice: BenchAdvice; before: BenchAdvice | null }>({
    advice: first,
    before: null,
  });
  const [isOld, setIsOld] = useState(false);
  const signature = checks.map((check) => `${check.id}.${check.version}`).join(" ");
  const answered = useRef(signature);
  useEffect(() => {
    if (answered.current === signature) return;
    const stop = new AbortController();
    const ask = async () => {
      const response = await fetch(`/api/v1/cases/${caseNumber}/advice`, { signal: stop.signal });
      const next: unknown = response.ok ? await response.json() : null;
      if (stop.signal.aborted) return;
      setIsOld(!isAdvice(next));
      if (!isAdvice(next)) return;
      answered.current = signature;
      setShown((now) => ({ advice: next, before: now.advice }));
    };
    ask().catch(() => stop.signal.aborted || setIsOld(true));
    return () => stop.abort();
  }, [caseNumber, signature]);
  return { advice: shown.advice, moves: movesBetween(shown.before, shown.advice), isOld };
}
