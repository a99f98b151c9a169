import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { BenchCheck } from "#lib/ui/bench-checks.ts";
import type { CheckToSend } from "#lib/ui/bench-entry.ts";
import {
  browserStore,
  createOutbox,
  readOutbox,
  RETRY_MS,
  sendItem,
  type Delivery,
  type OutboxItem,
  type OutboxStore,
} from "#lib/ui/bench-outbox.ts";

function memoryStore(entries = new Map<string, string>()): OutboxStore & { entries: Map<string, string> } {
  return {
    entries,
    keys: () => [...entries.keys()],
    get: (key) => entries.get(key) ?? null,
    set: (key, value) => {
      entries.set(key, value);
      return true;
    },
    remove: (key) => void entries.delete(key),
  };
}

function check(id: string, at = "U7.14"): CheckToSend {
  return { id, kind: "dc-voltage", at, measured: "4.87", takenAt: "2026-01-01T00:00:00.000Z" };
}

function item(id: string, overrides: Partial<OutboxItem> = {}): OutboxItem {
  return { id, case: 12, line: "U7.14 4.87", checks: [check(`check-${id}`)], refused: null, ...overrides };
}

const stored: Delivery = { done: "stored", checks: [] };
const cutOff: Delivery = { done: "later", blocked: true, waitMs: null };

/** An outbox whose clock is turned by hand and whose server answers as told. */
function bench(answers: (sent: OutboxItem) => Delivery, store = memoryStore(), member = "ines") {
  const sent: string[] = [];
  const arrived: string[] = [];
  const waits: number[] = [];
  let due: (() => void) | null = null;
  const outbox = createOutbox({
    store,
    member,
    send: async (one) => {
      sent.push(one.id);
      return answers(one);
    },
    after: (ms, run) => {
      waits.push(ms);
      due = run;
      return () => (due = null);
    },
  });
  outbox.onStored((one) => arrived.push(one.id));
  const settle = () => new Promise((resolve) => setTimeout(resolve, 0));
  const wake = async () => {
    due?.();
    await settle();
  };
  return { outbox, store, sent, arrived, waits, settle, wake };
}

describe("readings that wait", () => {
  test("are sent at once and forgotten when the server has them", async () => {
    const { outbox, store, arrived, settle } = bench(() => stored);
    outbox.add(item("a"));
    await settle();
    expect({ arrived, kept: store.keys(), items: outbox.state().items }).toEqual({
      arrived: ["a"],
      kept: [],
      items: [],
    });
  });

  test("stay through a gap, wait longer after each try, and go out in order", async () => {
    let isOpen = false;
    const { outbox, arrived, sent, waits, settle, wake } = bench(() => (isOpen ? stored : cutOff));
    outbox.add(item("a"));
    outbox.add(item("b"));
    await settle();
    await wake();
    await wake();
    expect({ arrived, sent, waits, cutOff: outbox.state().isCutOff }).toEqual({
      arrived: [],
      sent: ["a", "a", "a"],
      waits: [RETRY_MS.first, RETRY_MS.first * 2, RETRY_MS.first * 4],
      cutOff: true,
    });
    isOpen = true;
    await wake();
    expect({ arrived, cutOff: outbox.state().isCutOff }).toEqual({ arrived: ["a", "b"], cutOff: false });
  });

  test("survive the page: a new one finds them in the store with the same ids", async () => {
    const { outbox, store, settle } = bench(() => cutOff);
    outbox.add(item("a"));
    await settle();
    outbox.stop();
    const later = bench(() => stored, store);
    expect(later.outbox.state().items).toEqual([item("a")]);
    later.outbox.retry();
    await later.settle();
    expect(later.arrived).toEqual(["a"]);
  });

  test("of another member are neither shown nor sent", () => {
    const { outbox, store } = bench(() => cutOff);
    outbox.add(item("a"));
    expect(bench(() => stored, store, "otto").outbox.state().items).toEqual([]);
  });

  test("that the server refuses stay with the reason and hold up nothing", async () => {
    const { outbox, arrived, store, settle } = bench((one) =>
      one.id === "a" ? { done: "refused", reason: "Say where." } : stored,
    );
    outbox.add(item("a"));
    outbox.add(item("b"));
    await settle();
    expect(arrived).toEqual(["b"]);
    expect(readOutbox(store, "ines")).toEqual([item("a", { refused: "Say where." })]);
    outbox.drop("a");
    expect(store.keys()).toEqual([]);
  });

  test("that meet a fault of the program let the others pass and are tried again", async () => {
    const { outbox, sent, arrived, waits, settle } = bench((one) =>
      one.id === "a" ? { done: "later", blocked: false, waitMs: null } : stored,
    );
    outbox.add(item("a"));
    outbox.add(item("b"));
    await settle();
    expect({ sent, arrived, waits }).toEqual({ sent: ["a", "b"], arrived: ["b"], waits: [RETRY_MS.first] });
  });

  test("wait as long as the server asks", async () => {
    const { outbox, waits, settle } = bench(() => ({ done: "later", blocked: true, waitMs: 7_000 }));
    outbox.add(item("a"));
    await settle();
    expect(waits).toEqual([7_000]);
  });

  test("wait for a sign-in and say so", async () => {
    const { outbox, settle } = bench(() => ({ done: "signed-out" }));
    outbox.add(item("a"));
    await settle();
    expect(outbox.state()).toMatchObject({ isSignedOut: true, items: [item("a")] });
  });

  test("that another page of the browser has sent are not sent again", async () => {
    let isOpen = false;
    const { outbox, store, sent, settle } = bench(() => (isOpen ? stored : cutOff));
    outbox.add(item("a"));
    await settle();
    store.entries.clear();
    isOpen = true;
    outbox.retry();
    await settle();
    expect({ sent, items: outbox.state().items }).toEqual({ sent: ["a"], items: [] });
  });

  test("in a browser that keeps nothing live with the page, and it is said", async () => {
    const store = { ...memoryStore(), set: () => false };
    let isOpen = false;
    const { outbox, arrived, settle } = bench(() => (isOpen ? stored : cutOff), store);
    outbox.add(item("a"));
    await settle();
    expect(outbox.state()).toMatchObject({ isKept: false, items: [item("a")] });
    isOpen = true;
    outbox.retry();
    await settle();
    expect({ arrived, isKept: outbox.state().isKept }).toEqual({ arrived: ["a"], isKept: true });
  });

  test("that cannot be read are left in the store and stop nothing", () => {
    const store = memoryStore(
      new Map([
        ["benchlore.outbox.ines.1", "{"],
        ["benchlore.outbox.ines.2", JSON.stringify({ id: "2" })],
        ["benchlore.outbox.ines.3", JSON.stringify(item("3"))],
        ["theme", "dark"],
      ]),
    );
    expect(readOutbox(store, "ines")).toEqual([item("3")]);
    expect(store.keys().length).toBe(4);
  });

  // However the connection comes and goes, the server ends with each reading once.
  test("all arrive, each under its one id", async () => {
    const weather = fc.array(fc.constantFrom("open", "shut", "lost answer"), { maxLength: 30 });
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: 1, max: 8 }), weather, async (count, days) => {
        const server = new Set<string>();
        const writes: string[] = [];
        const answers = (one: OutboxItem): Delivery => {
          const day = days.shift() ?? "open";
          if (day === "shut") return cutOff;
          for (const { id } of one.checks) {
            if (!server.has(id)) writes.push(id);
            server.add(id);
          }
          return day === "open" ? stored : cutOff;
        };
        const { outbox, settle } = bench(answers);
        const ids = Array.from({ length: count }, (_, at) => String.fromCharCode(97 + at));
        for (const id of ids) outbox.add(item(id));
        for (let round = 0; round < 40 && outbox.state().items.length > 0; round++) {
          outbox.retry();
          await settle();
        }
        expect(writes).toEqual(ids.map((id) => `check-${id}`));
        expect(outbox.state().items).toEqual([]);
      }),
      { numRuns: 50 },
    );
  });
});

describe("what the interface answers", () => {
  const view = { id: "c", at: "U7.14", kind: "dc-voltage", verdict: "noted", version: 1 } as BenchCheck;
  const problem = (status: number, body: object, headers?: Record<string, string>) =>
    new Response(JSON.stringify(body), { status, ...(headers && { headers }) });
  const answers: [what: string, response: () => Response, delivery: Delivery][] = [
    ["201 with the check", () => problem(201, view), { done: "stored", checks: [view] }],
    ["200: it was there already", () => problem(200, { checks: [view] }), { done: "stored", checks: [view] }],
    ["409: it is there and was changed since", () => problem(409, {}), stored],
    ["401", () => problem(401, {}), { done: "signed-out" }],
    [
      "422",
      () => problem(422, { detail: "Some fields.", errors: [{ path: "at", message: "Say where." }] }),
      { done: "refused", reason: "Say where." },
    ],
    [
      "404",
      () => problem(404, { detail: "There is no case 12." }),
      { done: "refused", reason: "There is no case 12." },
    ],
    ["503", () => problem(503, {}), cutOff],
    ["429", () => problem(429, {}, { "retry-after": "3" }), { done: "later", blocked: true, waitMs: 3_000 }],
    ["500", () => problem(500, {}), { done: "later", blocked: false, waitMs: null }],
    ["a page that is no answer of ours", () => new Response("<html>", { status: 200 }), cutOff],
  ];
  test.each(answers)("%s", async (_what, response, delivery) => {
    expect(await sendItem(item("a"), async () => response())).toEqual(delivery);
  });

  test("no answer", async () => {
    expect(await sendItem(item("a"), () => Promise.reject(new TypeError("network")))).toEqual(cutOff);
  });

  test("one check goes as an object, a run as a list", async () => {
    const bodies: unknown[] = [];
    const ask: typeof fetch = async (_address, init) => {
      bodies.push(typeof init?.body === "string" ? JSON.parse(init.body) : null);
      return problem(201, view);
    };
    await sendItem(item("a"), ask);
    await sendItem(item("b", { checks: [check("1"), check("2")] }), ask);
    expect(bodies).toEqual([check("check-a"), [check("1"), check("2")]]);
  });
});

test("a browser that refuses its storage keeps nothing and breaks nothing", () => {
  const refusing = {
    length: 1,
    key: () => {
      throw new Error("denied");
    },
    getItem: () => {
      throw new Error("denied");
    },
    setItem: () => {
      throw new Error("full");
    },
    removeItem: () => {
      throw new Error("denied");
    },
  };
  for (const store of [browserStore(refusing), browserStore(null)]) {
    store.remove("a");
    expect([store.keys(), store.get("a"), store.set("a", "b")]).toEqual([[], null, false]);
  }
});
