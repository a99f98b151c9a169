import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { SearchEngine } from "#lib/infra/search/types.ts";
import { SearchError } from "#lib/infra/search/types.ts";
import { createBoard } from "#lib/services/boards/index.ts";
import { createCase } from "#lib/services/cases/index.ts";
import { createChip } from "#lib/services/chips/index.ts";
import { createCode } from "#lib/services/codes/index.ts";
import type { Ctx } from "#lib/services/context.ts";
import { askedCode, indexState, search, searchPage } from "#lib/services/search/index.ts";
import { testClub, type TestClub } from "#tests/support/test-club.ts";

let club: TestClub;
let ada: Ctx;
let visitor: Ctx;

beforeAll(async () => {
  club = await testClub();
  ada = club.ctx(await club.member("ada"));
  visitor = club.ctx({ kind: "visitor" });
  await createChip(ada, { name: "74LS244" });
  await createChip(ada, { name: "74LS245" });
  await createChip(ada, { name: "VQ4-0061" });
  await createCode(ada, { code: "SN74LS244N", chip: "74ls244" });
  await createCode(ada, { code: "VQ4-0061-03", chip: "vq4-0061" });
  for (const [slug, name] of [
    ["finch", "Finch CPU"],
    ["ouzel", "Ouzel logic"],
  ])
    await createBoard(ada, { slug, name, kind: "other" });
  for (let at = 0; at < 25; at++) {
    await createCase(ada, {
      board: at % 2 ? "finch" : "ouzel",
      symptoms: ["no picture"],
      title: `Case ${at}`,
      symptomText: at === 3 ? "The print says 74LS244, U7.14 is dead" : "",
      outcome: at < 5 ? "given-up" : "open",
      publish: true,
    });
  }
  await club.settled();
});
afterAll(() => club.close());

const titles = async (q: string) => (await search(visitor, { q })).hits.map((hit) => hit.title);

describe("what a person means is found", () => {
  test.each([
    ["SN74LS244N", "SN74LS244N"],
    ["74ls244", "74LS244"],
    ["74 LS 244", "74LS244"],
    ["VQ4-0061-03", "VQ4-0061-03"],
    ["vq4006103", "VQ4-0061-03"],
    ["VQ4 0061", "VQ4-0061"],
    ["Fimch", "Finch CPU"],
    ["U7.14", "4 · Case 3"],
  ])("%s finds %s first", async (q, title) => {
    expect((await titles(q))[0]).toBe(title);
  });

  test("no way of writing 74LS244 brings 74LS245", async () => {
    for (const q of ["74ls244", "SN74LS244N", "74LS244 ", "74 LS 244"])
      expect(await titles(q)).not.toContain("74LS245");
  });

  test("a misspelt symptom", async () => {
    expect((await search(visitor, { q: "no pictrue" })).total).toBe(25);
  });
});

describe("a page of results", () => {
  test("groups by kind, the kind of the best hit first, with counts that no limit cuts", async () => {
    const { groups, total } = await searchPage(visitor, { q: "no picture", limit: 5 });
    expect(groups.map(({ kind, total: all, hits }) => [kind, all, hits.length])).toEqual([["case", 25, 5]]);
    expect(total).toBe(25);
  });

  test("no kind goes unseen because another one fills the page", async () => {
    const { groups } = await searchPage(visitor, { q: "", limit: 3 });
    expect(groups.map(({ kind, total }) => [kind, total])).toEqual([
      ["case", 25],
      ["board", 2],
      ["chip", 3],
      ["code", 2],
    ]);
    expect(groups.flatMap((group) => group.hits)).toHaveLength(3 + 2 + 3 + 2);
  });

  test("filters are offered with what each would leave", async () => {
    const { boards, outcomes } = await searchPage(visitor, { q: "no picture", board: "finch" });
    expect(boards).toEqual([
      { value: "ouzel", name: "Ouzel logic", count: 13 },
      { value: "finch", name: "Finch CPU", count: 12 },
    ]);
    expect(outcomes).toEqual([
      { value: "open", name: "open", count: 10 },
      { value: "given-up", name: "given-up", count: 2 },
    ]);
  });

  test("following the cursor gives every hit once", async () => {
    const seen: string[] = [];
    let cursor: string | undefined;
    do {
      const page = await searchPage(visitor, { q: "no picture", kind: "case", limit: 10, cursor });
      seen.push(...page.groups.flatMap((group) => group.hits.map((hit) => hit.id)));
      cursor = page.next ?? undefined;
    } while (cursor);
    expect(new Set(seen).size).toBe(25);
    expect(seen).toHaveLength(25);
  });

  test("a cursor of no search is refused by name", async () => {
    await expect(searchPage(visitor, { q: "x", cursor: "nonsense" })).rejects.toMatchObject({
      code: "invalid",
      extra: { problems: [{ path: "cursor" }] },
    });
  });

  test("says what matched where the title and the text do not show it", async () => {
    const { hits } = await search(visitor, { q: "no picture " });
    expect(hits[0]?.highlights.symptoms).toEqual(["\uE000no\uE001 \uE000picture\uE001"]);
  });

  test.each([
    ["a code that nobody recorded is offered for recording", "VQ4-9999-01", "VQ4-9999-01"],
    ["a recorded one is not, however it is written", "vq4 0061 03", null],
    ["words are not", "no picture", null],
  ])("%s", async (_, q, unrecorded) => {
    expect((await searchPage(visitor, { q })).unrecorded).toBe(unrecorded);
  });

  test("a print with an O for a 0 leads to the code that there is", async () => {
    expect(await searchPage(visitor, { q: "VQ4-0O61-03" })).toMatchObject({ total: 0, didYouMean: ["VQ4-0061-03"] });
  });
});

describe("reading a query as a code", () => {
  test.each([
    ["74LS244", "74LS244"],
    ["74 LS 244", "74 LS 244"],
    [" VQ4  0061 ", "VQ4 0061"],
    ["KL/0512/3", "KL/0512/3"],
    ["no picture", null],
    ["3 beeps", null],
    ["three short beeps", null],
    ["U7.14", null],
    ["4.87 V", null],
    ["", null],
  ])("%s", (q, code) => {
    expect(askedCode(q)).toBe(code);
  });
});

describe("when the index cannot be relied on", () => {
  const broken = (): Ctx => {
    const down = () => Promise.reject(new SearchError("unavailable", "down"));
    const engine: SearchEngine = {
      ...visitor.search,
      name: "broken",
      search: down,
      health: down,
      stats: down,
    } as SearchEngine;
    return { ...visitor, search: engine };
  };

  test("the page says so and has no hits; the interface answers that it is not available", async () => {
    expect(await searchPage(broken(), { q: "picture" })).toMatchObject({ state: "unavailable", groups: [], total: 0 });
    await expect(search(broken(), { q: "picture" })).rejects.toMatchObject({ code: "unavailable" });
    expect(await indexState(broken())).toBe("unavailable");
  });

  test("while it is built, the page says that some may be missing", async () => {
    let finish = () => undefined as void;
    const held = new Promise<void>((resolve) => {
      finish = resolve;
    });
    const { createEmbeddedSearch } = await import("#lib/infra/search/embedded.ts");
    const engine = createEmbeddedSearch();
    const rebuilding = engine.rebuild(
      (async function* () {
        await held;
        yield* [];
      })(),
    );
    await Promise.resolve();
    expect(await indexState({ ...visitor, search: engine })).toBe("building");
    finish();
    await rebuilding;
    expect(await indexState(visitor)).toBe("ready");
  });
});
