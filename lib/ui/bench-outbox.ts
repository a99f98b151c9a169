import { checksOf, type BenchCheck } from "./bench-checks.ts";
import type { CheckToSend } from "./bench-entry.ts";

/** Where readings wait: the browser's storage. Each has a key of its own, so that two open pages never overwrite each other. */
export interface OutboxStore {
  keys(): string[];
  get(key: string): string | null;
  /** False where nothing can be kept (no room, or a browser that keeps nothing). */
  set(key: string, value: string): boolean;
  remove(key: string): void;
}

/** What was typed at once: one check, or a run of them. Sent whole. */
export interface OutboxItem {
  /** A uuid of version 7, so that items sort as they were made. */
  id: string;
  case: number;
  /** As typed, to be corrected when it is refused. */
  line: string;
  checks: CheckToSend[];
  /** Why the server refused it; null: it waits to be sent. */
  refused: string | null;
}

/** What became of a try to send. */
export type Delivery =
  | { done: "stored"; checks: BenchCheck[] }
  /** The server will never take it as it is. */
  | { done: "refused"; reason: string }
  | { done: "signed-out" }
  /** No answer, or none now. `blocked`: nothing else gets through either. */
  | { done: "later"; blocked: boolean; waitMs: number | null };

export interface OutboxState {
  items: readonly OutboxItem[];
  /** False: this browser keeps nothing, so readings live only as long as the page. */
  isKept: boolean;
  isSending: boolean;
  isSignedOut: boolean;
  /** The last try got no answer. */
  isCutOff: boolean;
}

/** Waiting times between tries, in ms: short first, since most gaps in a workshop are short. Chosen, not measured. */
export const RETRY_MS = { first: 1_000, factor: 2, most: 30_000 } as const;

const PREFIX = "benchlore.outbox";

/** Readings are kept for one member: another who signs in on this machine never sends them as their own. */
function keyOf(member: string, id: string): string {
  return `${PREFIX}.${member}.${id}`;
}

/** What waits in the store for this member, oldest first. What cannot be read is left where it is. */
export function readOutbox(store: OutboxStore, member: string): OutboxItem[] {
  const begin = keyOf(member, "");
  return store
    .keys()
    .filter((key) => key.startsWith(begin))
    .toSorted()
    .map((key) => itemOf(store.get(key)))
    .filter((item) => item !== null);
}

function itemOf(text: string | null): OutboxItem | null {
  try {
    const raw: unknown = JSON.parse(text ?? "null");
    if (typeof raw !== "object" || raw === null) return null;
    const item = raw as OutboxItem;
    const whole =
      typeof item.id === "string" &&
      Number.isInteger(item.case) &&
      typeof item.line === "string" &&
      Array.isArray(item.checks) &&
      item.checks.length > 0 &&
      item.checks.every((check) => typeof check?.id === "string" && typeof check.at === "string");
    return whole ? { ...item, refused: typeof item.refused === "string" ? item.refused : null } : null;
  } catch {
    return null;
  }
}

export interface OutboxParts {
  store: OutboxStore;
  /** Handle of the member whose readings these are. */
  member: string;
  send: (item: OutboxItem) => Promise<Delivery>;
  /** Calls back after so many ms; answers how to call it off. */
  after: (ms: number, run: () => void) => () => void;
}

export interface Outbox {
  state(): OutboxState;
  /** Told of every change; answers how to stop. */
  subscribe(told: () => void): () => void;
  /** Told of checks that the server has now; answers how to stop. */
  onStored(told: (item: OutboxItem, checks: BenchCheck[]) => void): () => void;
  /** Keeps it and sends it. */
  add(item: OutboxItem): void;
  drop(id: string): void;
  /** Tries now: the page was opened, the connection is back, somebody looks again. Also starts again after `stop`. */
  retry(): void;
  /** Another page of this browser changed the store. */
  reload(): void;
  stop(): void;
}

/** Keeps readings until the server has them: sends in order, tries again, never forgets and never makes a second id. */
export function createOutbox({ store, member, send, after }: OutboxParts): Outbox {
  let state: OutboxState = {
    items: readOutbox(store, member),
    isKept: true,
    isSending: false,
    isSignedOut: false,
    isCutOff: false,
  };
  let pause: number = RETRY_MS.first;
  let callOff: (() => void) | null = null;
  let isStopped = false;
  /** Ids that the store could not keep. */
  const unkept = new Set<string>();
  const listeners = new Set<() => void>();
  const storedListeners = new Set<(item: OutboxItem, checks: BenchCheck[]) => void>();

  function change(next: Partial<OutboxState>) {
    state = { ...state, ...next };
    for (const told of listeners) told();
  }

  function put(item: OutboxItem) {
    const isKept = store.set(keyOf(member, item.id), JSON.stringify(item));
    if (isKept) unkept.delete(item.id);
    else unkept.add(item.id);
    const others = state.items.filter((one) => one.id !== item.id);
    change({ items: [...others, item].toSorted((a, b) => (a.id < b.id ? -1 : 1)), isKept: unkept.size === 0 });
  }

  function drop(id: string) {
    store.remove(keyOf(member, id));
    unkept.delete(id);
    change({ items: state.items.filter((one) => one.id !== id), isKept: unkept.size === 0 });
  }

  /** Another page may have sent or dropped it in the meantime. */
  const isThere = (item: OutboxItem) => unkept.has(item.id) || store.get(keyOf(member, item.id)) !== null;

  function later(ms: number) {
    callOff?.();
    callOff = after(ms, () => {
      callOff = null;
      void flush();
    });
  }

  /** Sends what waits, oldest first. Answers how long to wait before the next try; null: nothing is left to try. */
  async function round(): Promise<number | null> {
    let wait: number | null = null;
    const tried = new Set<string>();
    for (;;) {
      const item = state.items.find((one) => one.refused === null && !tried.has(one.id));
      if (!item || isStopped) return wait;
      tried.add(item.id);
      if (!isThere(item)) {
        drop(item.id);
        continue;
      }
      const delivery = await send(item);
      switch (delivery.done) {
        case "stored":
          for (const told of storedListeners) told(item, delivery.checks);
          drop(item.id);
          pause = RETRY_MS.first;
          change({ isCutOff: false, isSignedOut: false });
          break;
        case "refused":
          put({ ...item, refused: delivery.reason });
          change({ isCutOff: false, isSignedOut: false });
          break;
        case "signed-out":
          change({ isSignedOut: true, isCutOff: false });
          return RETRY_MS.most;
        case "later":
          wait = Math.max(wait ?? 0, delivery.waitMs ?? pause);
          if (!delivery.blocked) break;
          change({ isCutOff: true });
          return wait;
      }
    }
  }

  async function flush(): Promise<void> {
    if (state.isSending || isStopped) return;
    callOff?.();
    callOff = null;
    if (!state.items.some((item) => item.refused === null)) return;
    change({ isSending: true });
    const wait = await round();
    change({ isSending: false });
    if (isStopped) return;
    if (wait !== null) {
      later(wait);
      pause = Math.min(pause * RETRY_MS.factor, RETRY_MS.most);
    }
  }

  return {
    state: () => state,
    subscribe(told) {
      listeners.add(told);
      return () => listeners.delete(told);
    },
    onStored(told) {
      storedListeners.add(told);
      return () => storedListeners.delete(told);
    },
    add(item) {
      put(item);
      void flush();
    },
    drop,
    retry() {
      isStopped = false;
      pause = RETRY_MS.first;
      void flush();
    },
    reload() {
      const kept = readOutbox(store, member);
      const here = state.items.filter((item) => unkept.has(item.id));
      change({ items: [...kept, ...here].toSorted((a, b) => (a.id < b.id ? -1 : 1)) });
    },
    stop() {
      isStopped = true;
      callOff?.();
    },
  };
}

/** Sends one item to the interface. The same id may be sent again: the server answers as the first time. */
export async function sendItem(item: OutboxItem, ask: typeof fetch): Promise<Delivery> {
  try {
    const [only] = item.checks;
    const response = await ask(`/api/v1/cases/${item.case}/checks`, {
      method: "POST",
      headers: { "content-type": "application/json", accept: "application/json" },
      body: JSON.stringify(item.checks.length === 1 ? only : item.checks),
    });
    return await deliveryOf(response);
  } catch {
    return { done: "later", blocked: true, waitMs: null };
  }
}

/** Answers that say "not now" and say nothing about what was sent. */
const NOT_NOW = new Set([408, 429, 502, 503, 504]);

async function deliveryOf(response: Response): Promise<Delivery> {
  if (response.ok) return { done: "stored", checks: checksOf(await response.json()) };
  if (response.status === 401) return { done: "signed-out" };
  // The id is there and was changed since: the first try arrived, only its answer was lost.
  if (response.status === 409) return { done: "stored", checks: [] };
  if (NOT_NOW.has(response.status)) {
    const seconds = Number(response.headers.get("retry-after"));
    return { done: "later", blocked: true, waitMs: seconds > 0 ? seconds * 1000 : null };
  }
  if (response.status >= 500) return { done: "later", blocked: false, waitMs: null };
  return { done: "refused", reason: await reasonOf(response) };
}

/** Why the interface refused, in its own words. */
export async function reasonOf(response: Response): Promise<string> {
  const problem: unknown = await response.json().catch(() => null);
  const { detail, errors } = (typeof problem === "object" && problem !== null ? problem : {}) as {
    detail?: unknown;
    errors?: unknown;
  };
  const messages = Array.isArray(errors)
    ? errors.map((one: { message?: unknown }) => one.message).filter((text) => typeof text === "string")
    : [];
  if (messages.length > 0) return [...new Set(messages)].join(" ");
  return typeof detail === "string" ? detail : `The server refused it (${response.status}).`;
}

/** The browser's own store; one that keeps nothing where the browser allows none. */
export function browserStore(storage: Pick<Storage, "length" | "key" | "getItem" | "setItem" | "removeItem"> | null) {
  const tried = <T>(work: () => T, otherwise: T): T => {
    try {
      return work();
    } catch {
      return otherwise;
    }
  };
  const store: OutboxStore = {
    keys: () =>
      tried(
        () =>
          Array.from({ length: storage?.length ?? 0 }, (_, at) => storage?.key(at) ?? "").filter((key) => key !== ""),
        [],
      ),
    get: (key) => tried(() => storage?.getItem(key) ?? null, null),
    set: (key, value) =>
      tried(() => {
        storage?.setItem(key, value);
        return storage !== null;
      }, false),
    remove: (key) => tried(() => storage?.removeItem(key), undefined),
  };
  return store;
}
