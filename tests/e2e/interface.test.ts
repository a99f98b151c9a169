import http from "node:http";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { v7 } from "uuid";
import { apiWorld, asked, type Answer, type ApiWorld, type Ask } from "#tests/support/api-world.ts";

let world: ApiWorld;
beforeAll(async () => {
  world = await apiWorld();
});
afterAll(() => world.stop());

/** Asks as the author, with a token that may write. */
const call = (method: string, path: string, ask: Ask = {}) => world.call(method, path, { as: "token:write", ...ask });
const read = (path: string) => world.call("GET", path, { as: "token:read" });
const tag = (answer: Answer) => answer.headers.get("etag") ?? "none";
const record = (answer: Answer) => answer.json as Record<string, unknown>;
const words = (answer: Answer) => {
  const { type, title, status, errors } = record(answer);
  return { type, title, status, ...(errors !== undefined && { errors }) };
};

describe("a check", () => {
  const reading = { kind: "dc-voltage", at: "U7.4", measured: "4.97" } as const;
  const checks = () => `/cases/${world.records.published}/checks`;

  test("is recorded with its verdict, its place and its version", async () => {
    const made = await call("POST", checks(), { body: reading });
    expect(made.status).toBe(201);
    expect(made.headers.get("location")).toBe(`/api/v1${checks()}/${String(record(made).id)}`);
    expect(tag(made)).toBe('"1"');
    expect(record(made)).toMatchObject({ at: "U7.4", measured: "4.97", verdict: "in-spec" });
  });

  test("sent again with the same id is the same check; another reading under that id is refused", async () => {
    const body = { ...reading, id: v7() };
    const first = await call("POST", checks(), { body });
    const again = await call("POST", checks(), { body });
    const other = await call("POST", checks(), { body: { ...body, measured: "0.4" } });
    expect([first.status, again.status, other.status]).toEqual([201, 200, 409]);
    expect(record(again).id).toBe(body.id);
    expect(words(other)).toEqual({ type: "/problems/conflict", title: "Conflict", status: 409 });
  });

  test("changes only for who read it as it is", async () => {
    const made = await call("POST", checks(), { body: reading });
    const path = `${checks()}/${String(record(made).id)}`;
    const blind = await call("PATCH", path, { body: { measured: "4.9" } });
    const first = await call("PATCH", path, { body: { measured: "4.9" }, headers: { "if-match": tag(made) } });
    const late = await call("PATCH", path, { body: { measured: "4.8" }, headers: { "if-match": tag(made) } });
    expect([blind.status, first.status, late.status]).toEqual([428, 200, 412]);
    expect(tag(first)).toBe('"2"');
    expect(record(late).present).toMatchObject({ measured: "4.9" });
    const gone = await call("DELETE", path, { headers: { "if-match": tag(first) } });
    const twice = await call("DELETE", path, { headers: { "if-match": tag(first) } });
    expect([gone.status, twice.status]).toEqual([204, 404]);
  });

  test("does not touch the version of its case, so two people enter checks at once", async () => {
    const before = await read(`/cases/${world.records.published}`);
    await call("POST", checks(), { body: reading });
    const after = await read(`/cases/${world.records.published}`);
    expect(tag(after)).toBe(tag(before));
  });

  test("that cannot be read is kept as typed, with the reason", async () => {
    const made = await call("POST", checks(), { body: { ...reading, measured: "about five-ish" } });
    expect(made.status).toBe(201);
    expect(record(made)).toMatchObject({ measured: "about five-ish", unit: null });
    expect(record(made).unreadable).not.toBe("");
  });

  test("at a designator that the board's record lacks is kept and marked", async () => {
    const made = await call("POST", checks(), { body: { ...reading, at: "U99.3" } });
    expect(made.status).toBe(201);
    expect(record(made)).toMatchObject({ at: "U99.3", placeKnown: false });
  });

  test("comes as a run of pins too: all of it or none", async () => {
    const run = ["11", "12", "13"].map((pin) => ({ kind: "diode", at: `U7.${pin}`, measured: "0.61" }));
    const made = await call("POST", checks(), { body: run });
    expect(made.status).toBe(201);
    expect((record(made).checks as { at: string }[]).map((one) => one.at)).toEqual(["U7.11", "U7.12", "U7.13"]);
    const broken = await call("POST", checks(), { body: [...run, { kind: "diode", at: "" }] });
    expect(broken.status).toBe(422);
    expect(record(broken).errors).toEqual([{ path: "3.at", message: expect.stringMatching(/^Say where/) }]);
  });
});

describe("a case", () => {
  test("is opened once, however often it is sent", async () => {
    const body = { id: v7(), symptomText: "No sound from voice 3." };
    const first = await call("POST", "/cases", { body });
    const again = await call("POST", "/cases", { body });
    const other = await call("POST", "/cases", { body: { ...body, symptomText: "No picture." } });
    expect([first.status, again.status, other.status]).toEqual([201, 200, 409]);
    expect(record(again).number).toBe(record(first).number);
    expect(first.headers.get("location")).toBe(`/api/v1/cases/${String(record(first).number)}`);
  });

  test("shows the second of two writers what the first one wrote", async () => {
    const made = await call("POST", "/cases", { body: { symptomText: "Hum." } });
    const path = `/cases/${String(record(made).number)}`;
    const version = { "if-match": tag(made) };
    const first = await call("PATCH", path, { body: { title: "Hum on the second rail" }, headers: version });
    const second = await call("PATCH", path, { body: { title: "Hum everywhere" }, headers: version });
    expect([first.status, second.status]).toEqual([200, 412]);
    expect(words(second)).toEqual({ type: "/problems/stale", title: "Changed by someone else", status: 412 });
    expect(record(second).present).toMatchObject({ title: "Hum on the second rail" });
    const merged = await call("PATCH", path, { body: { lesson: "Two rails." }, headers: { "if-match": tag(first) } });
    expect(record(merged)).toMatchObject({ title: "Hum on the second rail", lesson: "Two rails." });
  });

  test("does not count as cured without a proof", async () => {
    const made = await call("POST", "/cases", { body: { symptomText: "Dead." } });
    const path = `/cases/${String(record(made).number)}`;
    const cured = await call("PATCH", path, { body: { outcome: "cured" }, headers: { "if-match": tag(made) } });
    expect([cured.status, words(cured).type]).toEqual([422, "/problems/invalid"]);
    const cause = await call("POST", `${path}/causes`, {
      body: { at: "U7", failure: "dead", cure: { action: "replaced" } },
    });
    expect(cause.status).toBe(201);
    const proof = { cause: record(cause).id, kind: "soak", minutes: 120 };
    expect((await call("POST", `${path}/proofs`, { body: proof })).status).toBe(201);
    expect(record(await read(path))).toMatchObject({ outcome: "cured" });
  });
});

describe("what a request may hold", () => {
  const rows: [what: string, ask: Ask, status: number, problem: string][] = [
    ["an unknown field", { body: { symptomText: "Dead.", colour: "blue" } }, 422, "invalid"],
    ["a list where an object belongs", { body: [] }, 422, "invalid"],
    ["no JSON", { raw: "{ symptomText", headers: { "content-type": "application/json" } }, 422, "invalid"],
    ["a form", { raw: "a=b", headers: { "content-type": "application/x-www-form-urlencoded" } }, 415, "unsupported"],
    ["more than a megabyte", { body: { symptomText: "x".repeat(1_000_001) } }, 413, "too-large"],
    ["an id of another sort", { body: { id: "12", symptomText: "Dead." } }, 422, "invalid"],
    ["a character that no text can hold", { body: { symptomText: "Dead\u0000" } }, 422, "invalid"],
    [
      "half of a character",
      { raw: '{"symptomText":"Dead \\ud800"}', headers: { "content-type": "application/json" } },
      422,
      "invalid",
    ],
    ["a number of a case that no case can have", { body: { symptomText: "Dead.", openedFrom: 9e15 } }, 422, "invalid"],
  ];
  test.each(rows)("%s is refused", async (_what, ask, status, problem) => {
    const answer = await call("POST", "/cases", ask);
    expect([answer.status, answer.headers.get("content-type")]).toEqual([status, "application/problem+json"]);
    expect(record(answer)).toMatchObject({ type: `/problems/${problem}`, status });
  });

  test("a body that grows past a megabyte without saying so is cut off", async () => {
    const piece = `"${"x".repeat(64_000)}",`;
    const { status, body } = await sentInPieces(Array<string>(40).fill(piece));
    expect([status, (JSON.parse(body) as { type: string }).type]).toEqual([413, "/problems/too-large"]);
  });

  /** On a connection of its own, since the server ends one whose request it did not read to the end. */
  function sentInPieces(pieces: string[]): Promise<{ status: number; body: string }> {
    return new Promise((resolve, reject) => {
      const headers = { ...world.identity("token:write"), "content-type": "application/json" };
      const request = http.request(`${world.server.url}/api/v1/cases`, { method: "POST", agent: false, headers });
      request.on("response", (response) => {
        let body = "";
        response.on("data", (chunk: Buffer) => (body += chunk.toString()));
        response.on("end", () => resolve({ status: response.statusCode ?? 0, body }));
      });
      request.on("error", reject);
      for (const piece of pieces) request.write(piece);
      request.end();
    });
  }

  const addresses: [string, number][] = [
    ["/cases/0", 404],
    ["/cases/99999999999999999999", 404],
    ["/cases/12x", 404],
    ["/boards/nothing-here", 404],
    ["/chips/%00", 404],
    ["/codes/%F0%9F%92%A9", 404],
    ["/imports/12", 404],
    ["/attachments/..%2f..%2fetc", 404],
    ["/cases?limit=0", 422],
    ["/cases?limit=many", 422],
    ["/cases?colour=blue", 422],
    ["/cases?cursor=99999999999999", 422],
    ["/search?kind=poem", 422],
    ["/search?cursor=nonsense", 422],
    [`/search?q=${"x".repeat(401)}`, 422],
    ["/search?q=%00", 422],
    ["/nothing", 404],
  ];
  test.each(addresses)("GET %s is refused with %i", async (path, status) => {
    const answer = await read(path);
    expect(answer.status).toBe(status);
    expect(answer.headers.get("content-type")).toBe("application/problem+json");
  });

  test("If-Match that is no ETag of ours is refused", async () => {
    const answer = await call("PATCH", `/cases/${world.records.published}`, {
      body: {},
      headers: { "if-match": "yesterday" },
    });
    expect(record(answer).errors).toEqual([{ path: "If-Match", message: "not an ETag of ours" }]);
  });
});

describe("a cookie rides along from any page", () => {
  const body = { symptomText: "Dead." };

  test("so what another site sends with it is refused", async () => {
    for (const origin of ["https://elsewhere.example", "null"]) {
      const answer = await world.call("POST", "/cases", { as: "author", body, headers: { origin } });
      expect([origin, answer.status]).toEqual([origin, 403]);
    }
  });

  test("and so is what comes without an origin", async () => {
    const { cookie = "" } = world.identity("author");
    const answer = await asked(`${world.server.url}/api/v1/cases`, "POST", { body, headers: { cookie } });
    expect(answer.status).toBe(403);
  });

  test("but our own pages may write", async () => {
    expect((await world.call("POST", "/cases", { as: "author", body })).status).toBe(201);
  });
});

describe("the answers", () => {
  test("are never kept by a cache, never sniffed, and run nothing", async () => {
    for (const path of ["/cases", "/healthz", "/nothing"]) {
      const { headers } = await read(path);
      expect(
        Object.fromEntries(
          ["cache-control", "x-content-type-options", "content-security-policy"].map((name) => [
            name,
            headers.get(name),
          ]),
        ),
      ).toEqual({
        "cache-control": "no-store",
        "x-content-type-options": "nosniff",
        "content-security-policy": "default-src 'none'; frame-ancestors 'none'",
      });
    }
  });

  test("describe themselves", async () => {
    const answer = await read("/openapi.json");
    expect(record(answer)).toMatchObject({ openapi: "3.1.0", servers: [{ url: "/api/v1" }] });
  });

  test("name database, search and storage when asked for readiness", async () => {
    const answer = await world.call("GET", "/readyz");
    expect(record(answer)).toEqual({
      status: "ok",
      parts: {
        database: { usable: true, says: "embedded" },
        search: { usable: true, says: expect.any(String) },
        storage: { usable: true, says: "folder" },
      },
    });
  });

  test("find a case by the code of its chip, however it is written", async () => {
    for (const q of ["74LS244", "74ls244", "SN74LS244N", "74 LS 244"]) {
      const answer = await read(`/search?kind=chip&q=${encodeURIComponent(q)}`);
      const { hits } = answer.json as { hits: { title: string }[] };
      expect([q, hits.map((hit) => hit.title)]).toEqual([
        q,
        expect.arrayContaining([expect.stringContaining("74LS244")]),
      ]);
    }
  });

  test("judge one reading without keeping it", async () => {
    const answer = await world.call("POST", "/judge", {
      body: { kind: "dc-voltage", expected: "5 V ±5 %", measured: "0.8 V" },
    });
    expect(record(answer)).toMatchObject({ verdict: "out-of-spec" });
  });
});

describe("an id that is taken", () => {
  test("within one run of checks is a conflict, and nothing of the run is written", async () => {
    const id = v7();
    const path = `/cases/${world.records.published}/checks`;
    const twice = ["U7.4", "U7.3"].map((at) => ({ id, kind: "visual", at, measured: "fine" }));
    const answer = await call("POST", path, { body: twice });
    expect([answer.status, words(answer).type]).toEqual([409, "/problems/conflict"]);
    expect((await read(`/cases/${world.records.published}`)).text).not.toContain(id);
  });

  test("by a check of another case is a conflict too", async () => {
    const checks = [{ id: world.records.check, kind: "visual", at: "U7", measured: "fine" }];
    const answer = await call("POST", "/cases", { body: { symptomText: "Dead.", checks } });
    expect([answer.status, words(answer).type]).toEqual([409, "/problems/conflict"]);
  });
});
