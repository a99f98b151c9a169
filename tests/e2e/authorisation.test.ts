import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { OPERATIONS, type Operation } from "#lib/web/openapi.ts";
import { apiWorld, SECRET, type ApiWorld, type Records, type Who } from "#tests/support/api-world.ts";

let world: ApiWorld;
beforeAll(async () => {
  world = await apiWorld();
});
afterAll(() => world.stop());

/** What stands in an operation's address for the records of the world. */
function addressOf({ path }: Pick<Operation, "path">, records: Records): string {
  const ids: Record<string, string> = {
    "/cases/{number}/checks/{id}": records.check,
    "/cases/{number}/causes/{id}": records.cause,
    "/copies/{id}": records.copy,
    "/documents/{id}": records.document,
    "/codes/claims/{id}": records.claim,
    "/codes/claims/{id}/evidence": records.claim,
    "/codes/evidence/{id}": records.evidence,
    "/spares/{id}": records.spare,
    "/comments/{id}": records.comment,
    "/attachments/{id}": records.attachment,
    "/imports/{id}": records.import,
    "/imports/{id}/commit": records.import,
    "/codes/houses/{slug}": records.house,
    "/chips/{slug}": records.chip,
  };
  const id = ids[path] ?? "";
  return path
    .replace("{number}", String(records.published))
    .replace("{slug}", id || records.board)
    .replace("{code}", records.code)
    .replace("{id}", id);
}

/** The door of an operation alone: the body is empty and no version is named, so that whoever may enter changes nothing. */
type Door = "open" | "not signed in" | "not allowed";

function expected({ role, scope, always }: Operation, who: Who): Door {
  if (who === "token:disabled") return "not signed in";
  const visitor = who === "visitor" || who === "disabled";
  if (visitor) return role === "anyone" || always ? "open" : "not signed in";
  if (who.startsWith("token:") && who !== `token:${scope}` && !always) return "not allowed";
  return "open";
}

function doorOf(status: number): Door {
  if (status === 401) return "not signed in";
  return status === 403 ? "not allowed" : "open";
}

const WHO: readonly Who[] = [
  "visitor",
  "author",
  "other",
  "reviewer",
  "steward",
  "disabled",
  "token:read",
  "token:write",
  "token:review",
  "token:import",
  "token:disabled",
];

// These need no body and no version, so that whoever may enter would change the world; `what is whose` tests them.
const changesAtOnce = new Set(["DELETE /documents/{id}", "DELETE /attachments/{id}", "POST /imports/{id}/commit"]);
const name = ({ method, path }: Pick<Operation, "method" | "path">) => `${method.toUpperCase()} ${path}`;

describe("who may enter", () => {
  test.each(OPERATIONS.map((operation) => [name(operation), operation] as const))("%s", async (called, operation) => {
    const doors: [Who, Door][] = [];
    const shapeless: Who[] = [];
    for (const who of WHO) {
      const door = expected(operation, who);
      if (changesAtOnce.has(called) && door === "open") continue;
      const answer = await world.call(operation.method.toUpperCase(), addressOf(operation, world.records), {
        as: who,
        ...(operation.method !== "get" && { body: {} }),
      });
      doors.push([who, doorOf(answer.status)]);
      const isProblem = answer.headers.get("content-type") === "application/problem+json";
      if (answer.status >= 400 && !isProblem) shapeless.push(who);
    }
    expect(shapeless).toEqual([]);
    expect(doors).toEqual(doors.map(([who]) => [who, expected(operation, who)]));
  });

  test("a token that nobody made is refused even where visitors may read", async () => {
    const answer = await world.call("GET", "/cases", { headers: { authorization: "Bearer bl_nobody" } });
    expect(answer.status).toBe(401);
  });
});

describe("what is whose", () => {
  const rows: {
    what: string;
    ask: (r: Records) => [method: string, path: string, body?: unknown];
    may: Who[];
    else: number;
  }[] = [
    {
      what: "read a draft",
      ask: (r) => ["GET", `/cases/${r.draft}`],
      may: ["author"],
      else: 404,
    },
    {
      what: "ask advice for a draft",
      ask: (r) => ["GET", `/cases/${r.draft}/advice`],
      may: ["author"],
      else: 404,
    },
    {
      what: "see a photo of a draft",
      ask: (r) => ["GET", `/attachments/${r.draftAttachment}`],
      may: ["author"],
      else: 404,
    },
    {
      what: "write a check into a draft",
      ask: (r) => ["POST", `/cases/${r.draft}/checks`, { kind: "visual", at: "U7", measured: "looks fine" }],
      may: ["author"],
      else: 404,
    },
    {
      what: "comment on a draft",
      ask: (r) => ["POST", "/comments", { kind: "case", record: r.draftId, body: "hello" }],
      may: ["author"],
      else: 404,
    },
    {
      what: "change a draft's check",
      ask: (r) => ["PATCH", `/cases/${r.draft}/checks/${r.draftCheck}`, {}],
      may: ["author"],
      else: 404,
    },
    {
      what: "change a draft's cause",
      ask: (r) => ["PATCH", `/cases/${r.draft}/causes/${r.draftCause}`, { failure: "dead" }],
      may: ["author"],
      else: 404,
    },
    {
      what: "write a check into another's published case",
      ask: (r) => ["POST", `/cases/${r.published}/checks`, { kind: "visual", at: "U7", measured: "cracked" }],
      may: ["author", "other", "reviewer", "steward"],
      else: 401,
    },
    {
      what: "rewrite a comment",
      ask: (r) => ["PATCH", `/comments/${r.comment}`, { body: "rewritten" }],
      may: ["author", "steward"],
      else: 403,
    },
    {
      what: "rewrite a spare",
      ask: (r) => ["PATCH", `/spares/${r.spare}`, { direction: "offer", note: "two left" }],
      may: ["author", "steward"],
      else: 403,
    },
    {
      what: "take evidence back",
      ask: (r) => ["PUT", `/codes/evidence/${r.evidence}`, { retracted: true }],
      may: ["author", "reviewer", "steward"],
      else: 403,
    },
    {
      what: "take a document off a board",
      ask: (r) => ["DELETE", `/documents/${r.document}`],
      may: ["author", "steward", "reviewer"],
      else: 403,
    },
    {
      what: "take another's photo off a case",
      ask: (r) => ["DELETE", `/attachments/${r.attachmentUse}`],
      may: ["author", "steward", "reviewer"],
      else: 403,
    },
    {
      what: "commit another's import",
      ask: (r) => ["POST", `/imports/${r.import}/commit`, {}],
      may: ["author", "steward"],
      else: 404,
    },
  ];

  test.each(rows)("$what", async ({ ask, may, else: refused }) => {
    const [method, path, body] = ask(world.records);
    const others = WHO.filter((who) => !who.startsWith("token:") && !may.includes(who));
    // What can be done only once is done last, and by one of those who may.
    const able = method === "DELETE" || path.endsWith("/commit") ? may.slice(-1) : may;
    const answers: [Who, number][] = [];
    for (const who of [...others, ...able]) answers.push([who, await attempt(method, path, who, body)]);
    const wanted = answers.map(([who, status]): [Who, number] => {
      if (may.includes(who)) return [who, status < 300 ? status : 200];
      const stranger = who === "visitor" || who === "disabled";
      return [who, stranger && method !== "GET" ? 401 : refused];
    });
    expect(answers).toEqual(wanted);
  });

  /** Asks with each version in turn, since a stale one is refused whoever sends it. */
  async function attempt(method: string, path: string, who: Who, body: unknown): Promise<number> {
    for (let version = 1; version < 20; version++) {
      const headers = { "if-match": `"${version}"` };
      const answer = await world.call(method, path, { as: who, headers, ...(body !== undefined && { body }) });
      if (answer.status !== 412) return answer.status;
    }
    throw new Error(`no version of ${path} was right`);
  }
});

describe("drafts are invisible", () => {
  const addresses = (r: Records) => [
    "/cases",
    "/cases?drafts=true",
    "/cases?author=author",
    `/cases?board=${r.board}`,
    `/cases?code=${r.code}`,
    `/cases/${r.published}`,
    `/cases/${r.published}/advice`,
    "/search?q=flicker",
    "/search?q=U7",
    `/boards/${r.board}`,
    "/boards",
    `/chips/${r.chip}`,
    `/codes/${r.code}`,
    `/codes/claims/${r.claim}`,
    "/codes",
    "/spares",
    "/symptoms",
  ];
  const pages = (r: Records) => [
    "/",
    "/search?q=flicker",
    "/cases",
    `/cases/${r.published}`,
    `/cases/${r.published}/history`,
    `/boards/${r.board}`,
    `/boards/${r.board}/history`,
    `/chips/${r.chip}`,
    `/codes/${r.code}`,
    "/members/author",
    "/members",
    "/spares",
  ];

  test.each(["visitor", "other", "reviewer"] as const)("to %s, in the interface", async (who) => {
    expect(await whereSeen(who)).toEqual([]);
  });

  test("but the author's own program finds it, so the words are there to be found", async () => {
    expect(await whereSeen("token:read")).toContain("/cases?drafts=true");
  });

  async function whereSeen(who: Who): Promise<string[]> {
    const seen: string[] = [];
    for (const address of addresses(world.records)) {
      const answer = await world.call("GET", address, { as: who });
      if (answer.status !== 200) throw new Error(`${address} answers ${answer.status}`);
      if (answer.text.includes(SECRET)) seen.push(address);
    }
    return seen;
  }

  test.each(["visitor", "other", "reviewer"] as const)("to %s, on pages", async (who) => {
    const seen: string[] = [];
    for (const page of pages(world.records)) {
      const { status, text } = await world.page(page, who);
      if (status !== 200 && status !== 307) seen.push(`${page} answers ${status}`);
      if (text.includes(SECRET)) seen.push(page);
    }
    expect(seen).toEqual([]);
  });

  test.each(["visitor", "other", "reviewer"] as const)("to %s, who asks for the draft's own pages", async (who) => {
    const { draft } = world.records;
    const own = ["", "/bench", "/history", "/label", "/write", "/close"].map((part) => `/cases/${draft}${part}`);
    const answers: unknown[] = [];
    for (const page of own) {
      const { status, text } = await world.page(page, who);
      answers.push([page, status === 404 || status === 307 ? "refused" : status, text.includes(SECRET)]);
    }
    expect(answers).toEqual(own.map((page) => [page, "refused", false]));
  });

  test("to advice: a draft neither matches nor counts", async () => {
    const { board, draft } = world.records;
    const answer = await world.call("POST", "/advice", {
      body: { board, symptoms: ["flicker"], checks: [{ kind: "dc-voltage", at: "U7.4", measured: "0.7 V" }] },
    });
    const { similar } = answer.json as { similar: { case: number }[] };
    expect(similar.map((one) => one.case)).not.toContain(draft);
    expect(similar.map((one) => one.case)).toContain(world.records.published);
  });
});
