import { v7 } from "uuid";
import { OPERATIONS, type Operation } from "#lib/web/openapi.ts";
import type { ApiWorld, Records } from "./api-world.ts";

/** A generator of numbers in [0, 1) that gives the same ones for the same seed (mulberry32, public domain). */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** What was sent and how it was refused, where the refusal is wrong. */
export interface Wrong {
  sent: string;
  status: number;
  said: string;
}

/** Requests under way at the same time, so that they also meet each other. */
const AT_ONCE = 8;

const writing = OPERATIONS.filter(
  ({ method, body, form }) => ["post", "put", "patch"].includes(method) && (body || form),
);

/**
 * Sends `count` bodies, each a valid one with something broken in it, to every writing operation in turn. Answers those
 * that were met with a 5xx, or refused without a problem document.
 */
export async function sendMutatedBodies(world: ApiWorld, count: number, seed: number): Promise<Wrong[]> {
  const random = seeded(seed);
  const wrong: Wrong[] = [];
  let sent = 0;
  const sender = async () => {
    while (sent < count) {
      const operation = writing[sent++ % writing.length];
      if (!operation) throw new Error("there is nothing to write to");
      const trouble = await sendOne(world, operation, random);
      if (trouble) wrong.push(trouble);
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, sender));
  return wrong;
}

async function sendOne(world: ApiWorld, operation: Operation, random: () => number): Promise<Wrong | null> {
  const path = addressFor(operation, world.records, random);
  const { raw, type } = operation.form ? brokenForm(random) : brokenJson(operation, world.records, random);
  const answer = await world.call(operation.method.toUpperCase(), path, {
    as: operation.scope === "import" ? "token:import" : operation.scope === "read" ? "token:read" : "token:write",
    raw,
    headers: {
      ...(type !== null && { "content-type": type }),
      ...(operation.versioned && { "if-match": `"${1 + Math.floor(random() * 3)}"` }),
    },
  });
  const isProblem = answer.headers.get("content-type") === "application/problem+json";
  if (answer.status < 400 || (answer.status < 500 && isProblem)) return null;
  const sent = `${operation.method.toUpperCase()} ${path} ${type}\n${raw.toString("utf8").slice(0, 2000)}`;
  return { sent, status: answer.status, said: answer.text.slice(0, 300) };
}

/** Mostly a record that is there, now and then one that is not. */
function addressFor({ path }: Operation, records: Records, random: () => number): string {
  const lost = random() < 0.05;
  const ids: Record<string, string> = {
    checks: records.check,
    causes: records.cause,
    copies: records.copy,
    claims: records.claim,
    evidence: records.evidence,
    spares: records.spare,
    comments: records.comment,
    imports: records.import,
    chips: records.chip,
    houses: records.house,
    boards: records.board,
  };
  return path.replaceAll(/\/(\w+)\/\{(\w+)\}/g, (_, folder: string, field: string) => {
    if (lost) return `/${folder}/${encodeURIComponent(pick(random, ["0", "x", "ÿ", v7(), "a b", "'"]))}`;
    if (field === "number") return `/${folder}/${records.published}`;
    return `/${folder}/${field === "code" ? records.code : (ids[folder] ?? v7())}`;
  });
}

/** A body that its operation takes, before something is broken in it. */
function validBody({ path, method }: Operation, records: Records): unknown {
  const check = { kind: "dc-voltage", at: "U7.4", measured: "4.9 V", expected: "5 V ±5 %", when: "warm", note: "a" };
  const evidence = { kind: "fitted-worked", case: records.published, note: "works" };
  const code = { code: "WX1 0077", house: records.house, chip: records.chip, notes: "on the left" };
  const cause = {
    at: "U7",
    failure: "dead",
    explains: [records.check],
    cure: { action: "replaced", fittedCode: "WX1 0044", from: "a donor" },
    proof: { kind: "soak", minutes: 60 },
  };
  const board = {
    name: "Board",
    kind: "arcade",
    year: 1984,
    hazards: ["mains"],
    rails: [{ name: "+5V", nominal: 5, tolerancePercent: 5 }],
    connectors: [{ designator: "J1", pins: [{ number: "1", name: "GND" }] }],
    placements: [{ designator: "U1", kind: "chip", chip: records.chip, x: 10, y: 20 }],
    nets: [{ name: "GND", role: "ground", pins: ["U1.2", "J1.1"] }],
    selfTests: [{ form: "beeps", signal: "2 short", meaning: "memory", suspects: ["U1"] }],
    cautions: [{ text: "Mains." }],
    revisions: [{ name: "A" }],
  };
  const chip = {
    name: "74LS00",
    technology: "LS",
    packages: [
      { name: "DIP-14", style: "DIP", pins: [{ number: "1", name: "A", type: "input", supply: null, unit: 1 }] },
    ],
  };
  const named: Record<string, unknown> = {
    "/cases": {
      id: v7(),
      board: records.board,
      symptoms: ["no sound"],
      symptomText: "Silent.",
      story: "At **12:30** :code[WX1 0044] failed, see :case[1].",
      openedFrom: records.published,
      openedAt: "2026-01-02T03:04:05+01:00",
      checks: [{ ...check, id: v7() }],
      causes: [{ ...cause, id: v7() }],
    },
    "/cases/{number}": { title: "Title", symptoms: ["no sound"], outcome: "waiting", board: null },
    "/cases/{number}/checks": [
      { ...check, id: v7() },
      { kind: "trial", at: "U7", what: "cool", outcome: "changed" },
    ],
    "/cases/{number}/checks/{id}": { measured: "4.8", verdict: "noted", reason: "seen" },
    "/cases/{number}/causes": cause,
    "/cases/{number}/causes/{id}": cause,
    "/cases/{number}/proofs": { cause: records.cause, kind: "soak", minutes: 5 },
    "/cases/{number}/confirmations": { helped: true, cause: records.cause, linkedCase: records.draft },
    "/advice": { board: records.board, symptoms: ["no sound"], checks: [{ ...check, note: undefined }], except: 1 },
    "/judge": {
      kind: "dc-voltage",
      expected: "5 V",
      measured: "4.9",
      instrument: { percent: 1, digits: 2, resolution: 0.01 },
    },
    "/boards": board,
    "/boards/{slug}": board,
    "/boards/{slug}/copies": { tag: "bag 3", owner: "author", works: false, serial: "12" },
    "/copies/{id}": { board: records.board, tag: "bag 3", works: null },
    "/chips": chip,
    "/chips/{slug}": chip,
    "/codes": { ...code, sighting: { board: records.board, at: "U7", dateCode: "8712" } },
    "/codes/{code}": code,
    "/codes/{code}/sightings": { board: records.board, at: "U7", seenAt: "2026-01-02T03:04:05Z" },
    "/codes/claims": { from: "WX1 0045", to: records.code, grade: "conditional", conditions: ["slow bus"], evidence },
    "/codes/claims/{id}": { grade: "adapter", bothWays: true, conditions: [], note: "" },
    "/codes/claims/{id}/evidence": evidence,
    "/codes/evidence/{id}": { retracted: false },
    "/codes/houses": { name: "House", notes: "" },
    "/codes/houses/{slug}": { name: "Widgeon Works" },
    "/spares": { direction: "want", code: "WX1 0044", quantity: 2 },
    "/spares/{id}": { direction: "offer", chip: records.chip, visibility: "public" },
    "/comments": { kind: "case", record: records.publishedId, check: records.check, body: "Hello." },
    "/comments/{id}": { body: "Hello again." },
    "/prose": { text: "A :chip[74LS244] at 12:30." },
  };
  const body = named[path];
  if (body === undefined) throw new Error(`write down a body for ${method.toUpperCase()} ${path}`);
  return body;
}

interface Sent {
  raw: Buffer<ArrayBuffer>;
  type: string | null;
}

function brokenJson(operation: Operation, records: Records, random: () => number): Sent {
  const body = JSON.parse(JSON.stringify(validBody(operation, records))) as unknown;
  const breaks = 1 + Math.floor(random() * 3);
  let broken = body;
  for (let done = 0; done < breaks; done++) broken = mutated(broken, random);
  let text = JSON.stringify(broken) ?? "";
  if (random() < 0.1) text = brokenText(text, random);
  const types = ["application/json", "application/json; charset=utf-8", "text/plain", "application/problem+json"];
  return { raw: Buffer.from(text), type: random() < 0.95 ? "application/json" : pick(random, types) };
}

/** Values that programs trip over. */
const STRANGE: readonly unknown[] = [
  null,
  true,
  0,
  -1,
  1.5,
  1e21,
  -1e308,
  2 ** 31,
  2 ** 53,
  "",
  " ",
  "\u0000",
  "\ud800",
  '\'; drop table "Case"; --',
  "%s%n",
  "../../etc",
  "<script>",
  "ﷺ".repeat(50),
  "👩‍🔧",
  "a\u0301".repeat(100),
  "U7.1-99999999",
  "U7.11-18 diode 1 2 3",
  "1e999 V",
  "5 V ±",
  "∞",
  "NaN",
  "0x10",
  "x".repeat(5_000),
  ":case[".repeat(500),
  "[".repeat(2_000),
  "*".repeat(3_000),
  "|a|\n|-|\n".repeat(200),
  "9999-99-99T99:99:99Z",
  "00000000-0000-0000-0000-000000000000",
  [],
  {},
  [[[[[[]]]]]],
  { __proto__: 1, constructor: 2 },
];

/** The value with one thing in it changed: replaced, removed, doubled, renamed, or grown. */
function mutated(value: unknown, random: () => number): unknown {
  if (typeof value !== "object" || value === null || random() < 0.08) return pick(random, STRANGE);
  if (Array.isArray(value)) {
    const list = [...(value as unknown[])];
    const at = Math.floor(random() * Math.max(1, list.length));
    const how = random();
    if (list.length === 0 || how < 0.15) list.push(pick(random, STRANGE));
    else if (how < 0.3) list.splice(at, 1);
    else if (how < 0.45) list.push(list[at]);
    else if (how < 0.5) return Array<unknown>(600).fill(list[at]);
    else list[at] = mutated(list[at], random);
    return list;
  }
  const entries = Object.entries(value);
  const at = Math.floor(random() * Math.max(1, entries.length));
  const [name = "x", inner] = entries[at] ?? [];
  const how = random();
  if (how < 0.1)
    return {
      ...value,
      [pick(random, ["colour", "id", "version", "authorId", "constructor", ""])]: pick(random, STRANGE),
    };
  if (how < 0.2) return Object.fromEntries(entries.filter(([one]) => one !== name));
  return { ...value, [name]: mutated(inner, random) };
}

/** The text of a body with a piece cut out, doubled or replaced. */
function brokenText(text: string, random: () => number): string {
  const at = Math.floor(random() * text.length);
  const piece = text.slice(at, at + 1 + Math.floor(random() * 20));
  return (
    text.slice(0, at) + pick(random, ["", piece + piece, "\\u0000", '"', "}", "\ufeff"]) + text.slice(at + piece.length)
  );
}

function brokenForm(random: () => number): Sent {
  const boundary = "x7x";
  const part = (head: string, content: string) =>
    `--${boundary}\r\ncontent-disposition: form-data; ${head}\r\n\r\n${content}\r\n`;
  const strange = () => String(pick(random, STRANGE)).slice(0, 300);
  const fields = [
    part('name="kind"', pick(random, ["case", "board", strange()])),
    part('name="record"', strange()),
    part('name="format"', pick(random, ["symbols", strange()])),
    part('name="title"', strange()),
    part('name="sheets"', pick(random, ["[]", "[{", strange()])),
    part(
      `name="file"; filename="${pick(random, ["a.txt", "b.jpg", "c.kicad_sym", "d.pdf", '"', "\u0000"])}"`,
      pick(random, ["(kicad_symbol_lib", "(kicad_symbol_lib (version 1))", "\xff\xd8\xff\xe0", "%PDF-1.4", strange()]),
    ),
  ].filter(() => random() < 0.8);
  let text = `${fields.join("")}--${boundary}--\r\n`;
  if (random() < 0.4) text = brokenText(text, random);
  const type = `multipart/form-data; boundary=${boundary}`;
  return {
    raw: Buffer.from(text, "latin1"),
    type: random() < 0.9 ? type : pick(random, ["multipart/form-data", "text/plain"]),
  };
}

function pick<T>(random: () => number, list: readonly T[]): T {
  const one = list[Math.floor(random() * list.length)];
  if (one === undefined) throw new Error("there is nothing to pick from");
  return one;
}
