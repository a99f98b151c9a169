import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { MARK, SearchError } from "#lib/infra/search/index.ts";
import type { SearchAnswer, SearchDocument, SearchEngine, SearchQuery } from "#lib/infra/search/index.ts";

/** An engine for one group of tests, empty at first. */
export interface EngineUnderTest {
  engine: SearchEngine;
  dispose(): Promise<void>;
}

/** A document with nothing in it but what is given. */
export function document(given: Partial<SearchDocument> & { id: string }): SearchDocument {
  return {
    kind: "case",
    title: "",
    url: `/${given.id}`,
    body: "",
    codes: [],
    signals: [],
    refs: [],
    symptoms: [],
    visibility: "public",
    boost: 0,
    updatedAt: 1_700_000_000_000,
    ...given,
  };
}

const KESTREL = { slug: "kestrel-terminal", name: "Kestrel 80 terminal board" };
const ORBITA = { slug: "orbita-voice", name: "Orbita voice board" };

/** A small club, invented. */
const CLUB: SearchDocument[] = [
  document({
    id: "case_1",
    title: "No picture, three short beeps",
    body: "The monitor stays dark after power on. U12.26 reads 0.3 V where +5 V is expected. The buffer SN74LS244N at U12 had an open supply pin.",
    codes: ["SN74LS244N"],
    signals: ["/CS", "+5V"],
    refs: ["U12.26", "U12"],
    symptoms: ["no picture", "three beeps"],
    board: KESTREL,
    outcome: "cured",
    boost: 3,
    updatedAt: 1_700_000_300_000,
  }),
  document({
    id: "case_2",
    title: "Flickering picture when warm",
    body: "Columns of the picture flicker after ten minutes. The custom VQ4-0061-03 in socket U7 was reseated; the -12 V rail carried ripple.",
    codes: ["VQ4-0061-03"],
    signals: ["-12V"],
    refs: ["U7"],
    symptoms: ["flickering", "intermittent"],
    board: KESTREL,
    outcome: "cured-cause-unknown",
    updatedAt: 1_700_000_200_000,
  }),
  document({
    id: "case_3",
    title: "Keyboard dead",
    body: "No key answers. 74LS245 at U9 had two outputs stuck low.",
    codes: ["74LS245"],
    signals: ["/RESET"],
    refs: ["U9"],
    symptoms: ["keyboard dead"],
    board: ORBITA,
    outcome: "cured",
  }),
  document({
    id: "case_4",
    title: "Draft: noise on all voices",
    body: "Only seen by its author. TMS4164-15NL in U31 suspected.",
    codes: ["TMS4164-15NL"],
    board: ORBITA,
    outcome: "open",
    visibility: { memberId: "member_a" },
  }),
  document({
    id: "board_1",
    kind: "board",
    title: KESTREL.name,
    body: "Terminal with a picture tube.",
    board: KESTREL,
  }),
  document({ id: "board_2", kind: "board", title: ORBITA.name, body: "Four voices.", board: ORBITA }),
  document({ id: "chip_1", kind: "chip", title: "74LS244 octal buffer", body: "Eight buffers.", codes: ["74LS244"] }),
  document({ id: "chip_2", kind: "chip", title: "74LS245 octal transceiver", body: "Both ways.", codes: ["74LS245"] }),
  document({
    id: "code_1",
    kind: "code",
    title: "VQ4-0061-03",
    body: "Custom of the Kestrel.",
    codes: ["VQ4-0061-03"],
  }),
  document({ id: "spare_1", kind: "spare", title: "Two 74LS244", codes: ["74LS244"], visibility: "members" }),
];

/** What any engine must do. Run for each engine with an empty one for each group. */
export function describeSearchEngine(name: string, makeEngine: () => Promise<EngineUnderTest>): void {
  describe(`${name}: the search engine`, () => {
    let under: EngineUnderTest;
    const ask = (q: string, rest: Partial<SearchQuery> = {}): Promise<SearchAnswer> =>
      under.engine.search({ q, limit: 20, visibility: "public", ...rest });
    const ids = async (q: string, rest: Partial<SearchQuery> = {}): Promise<string[]> =>
      (await ask(q, rest)).hits.map(({ id }) => id);
    const sorted = async (q: string, rest: Partial<SearchQuery> = {}): Promise<string[]> =>
      (await ids(q, rest)).toSorted();

    describe("finding", () => {
      beforeAll(async () => {
        under = await makeEngine();
        await under.engine.upsert(CLUB);
      });
      afterAll(() => under.dispose());

      test.each(["SN74LS244N", "74LS244", "74ls244", "74-LS-244", "74 LS 244", "DM74LS244", "74LS244N "])(
        "%s finds every spelling of that number and no neighbour",
        async (q) => {
          expect(await sorted(q)).toEqual(["case_1", "chip_1"]);
        },
      );

      test("74LS245 never brings 74LS244", async () => {
        expect(await sorted("74LS245")).toEqual(["case_3", "chip_2"]);
        expect(await ids("74LS246")).toEqual([]);
      });

      test("words beside a code do not let a neighbour of the code in", async () => {
        expect(await sorted("74ls244 stuck low")).toEqual(["case_1", "chip_1"]);
      });

      test.each(["VQ4-0061-03", "vq4006103", "VQ4 0061 03", "VQ4 0061", "vq4-0061", "0061", "VQ4‑0061‑03", "VQ4-00"])(
        "%s finds the house code",
        async (q) => {
          expect(await sorted(q)).toEqual(["case_2", "code_1"]);
        },
      );

      test("the page of a code stands above the cases that mention it", async () => {
        expect((await ids("VQ4-0061-03"))[0]).toBe("code_1");
        expect((await ids("74LS244"))[0]).toBe("chip_1");
      });

      test.each([
        ["one letter wrong", "flickrring"],
        ["one letter missing", "flickring"],
        ["two neighbours swapped", "filckering"],
        ["two errors in a long word", "flikcerng"],
        ["the word as it is", "flickering"],
        ["the word while it is typed", "flicke"],
      ])("a symptom with %s is found", async (_, q) => {
        expect(await ids(q)).toEqual(["case_2"]);
      });

      test("a word of three letters forgives nothing", async () => {
        expect(await ids("kwy ")).toEqual([]);
      });

      test("the sign of a rail counts and excludes nothing", async () => {
        expect(await ids("-12V")).toEqual(["case_2"]);
        expect(await ids("+12V")).toEqual([]);
      });

      test.each(["U12.26", "U12 pin 26", "u12-26"])("%s finds the pin", async (q) => {
        expect(await ids(q)).toEqual(["case_1"]);
      });

      test.each(["/RESET", "RESET#", "~reset", "reset"])("%s finds the signal", async (q) => {
        expect(await ids(q)).toEqual(["case_3"]);
      });

      test("what fits all words stands above what fits some", async () => {
        expect((await ids("no picture beeps "))[0]).toBe("case_1");
        expect((await ids("picture flickers warm "))[0]).toBe("case_2");
      });

      test("a word that nothing has does not hide what the others find", async () => {
        expect(await ids("keyboard zzyzzx ")).toEqual(["case_3"]);
      });

      test("a board's name finds its cases and itself", async () => {
        expect(await sorted("orbita")).toEqual(["board_2", "case_3"]);
      });

      test("nothing typed lists everything in sight, the newest first", async () => {
        const found = await ask("");
        expect([found.total, found.hits.slice(0, 2).map(({ id }) => id)]).toEqual([8, ["case_1", "case_2"]]);
      });

      test.each(['"', "-", "''", "()", "~{", "\u0000", "\uE000\uE001", "%", "*"])("%j alone is no error", async (q) => {
        expect((await ask(q)).total).toBe(8);
      });

      test("a very long query is answered", async () => {
        expect((await ask("picture ".repeat(5_000))).total).toBeGreaterThan(0);
      });

      test("scores fall from at most 1", async () => {
        const scores = (await ask("picture beeps")).hits.map(({ score }) => score);
        expect(scores[0]).toBeLessThanOrEqual(1);
        expect(scores.every((score) => score > 0)).toBe(true);
        expect(scores).toEqual(scores.toSorted((a, b) => b - a));
      });

      test("a worn print is asked back, and only what may be seen is offered", async () => {
        expect(await ask("VQ4-OO61")).toMatchObject({ total: 0, didYouMean: ["VQ4-0061-03"] });
        expect((await ask("TMS4l64")).didYouMean).toEqual([]);
        expect((await ask("TMS4l64", { visibility: { memberId: "member_a" } })).didYouMean).toEqual(["TMS4164-15NL"]);
        expect((await ask("VQ4-0061")).didYouMean).toEqual([]);
      });
    });

    describe("filters, counts and sight", () => {
      beforeAll(async () => {
        under = await makeEngine();
        await under.engine.upsert(CLUB);
      });
      afterAll(() => under.dispose());

      test("kinds, board and outcome filter", async () => {
        expect(await sorted("picture", { kinds: ["board"] })).toEqual(["board_1"]);
        expect(await sorted("74LS244", { kinds: ["case", "chip"] })).toEqual(["case_1", "chip_1"]);
        expect(await sorted("", { board: ORBITA.slug })).toEqual(["board_2", "case_3"]);
        expect(await sorted("picture", { outcome: "cured" })).toEqual(["case_1"]);
        expect(await sorted("", { kinds: [] })).toHaveLength(8);
      });

      test("facets count the hits; each leaves its own filter out", async () => {
        expect((await ask("picture")).facets).toEqual({
          kind: { case: 2, board: 1 },
          board: { [KESTREL.slug]: { name: KESTREL.name, count: 3 } },
          outcome: { cured: 1, "cured-cause-unknown": 1 },
        });
        expect((await ask("picture", { kinds: ["case"], outcome: "cured" })).facets).toEqual({
          kind: { case: 1 },
          board: { [KESTREL.slug]: { name: KESTREL.name, count: 1 } },
          outcome: { cured: 1, "cured-cause-unknown": 1 },
        });
      });

      test.each([
        ["a visitor", "public", []],
        ["a member", "members", []],
        ["the author", { memberId: "member_a" }, ["case_4"]],
        ["another member", { memberId: "member_b" }, []],
      ] as const)("a draft as seen by %s", async (_, visibility, seen) => {
        const found = await ask("voices suspected", { visibility });
        expect(found.hits.filter(({ id }) => id === "case_4").map(({ id }) => id)).toEqual(seen);
        expect(found.facets.outcome["open"] ?? 0).toBe(seen.length);
        const byCode = await ask("TMS4164", { visibility });
        expect([byCode.total, byCode.facets.kind.case ?? 0]).toEqual([seen.length, seen.length]);
      });

      test("what is for members only is not in a visitor's hits or counts", async () => {
        expect((await ask("74LS244")).facets.kind).toEqual({ case: 1, chip: 1 });
        expect((await ask("74LS244", { visibility: "members" })).facets.kind).toEqual({ case: 1, chip: 1, spare: 1 });
      });

      test("a limit or a kind that is none is refused", async () => {
        await expect(ask("x", { limit: 0 })).rejects.toThrow(SearchError);
        await expect(ask("x", { limit: 51 })).rejects.toMatchObject({ problem: "bad-query" });
        await expect(ask("x", { cursor: "abc" })).rejects.toMatchObject({ problem: "bad-query" });
      });
    });

    describe("hits", () => {
      beforeAll(async () => {
        under = await makeEngine();
        await under.engine.upsert([
          ...CLUB,
          document({
            id: "forged",
            title: "<b>Bold</b> \uE000sham\uE001 gasket",
            body: `<script>alert(1)</script> ${"filler words ".repeat(60)}the gasket & <i>seal</i> leak ${"more words ".repeat(60)}`,
            year: 1984,
          }),
        ]);
      });
      afterAll(() => under.dispose());

      test("a hit is complete", async () => {
        const [hit] = (await ask("beeps ")).hits;
        expect(hit).toEqual({
          kind: "case",
          id: "case_1",
          title: "No picture, three short beeps",
          url: "/case_1",
          snippet: expect.stringContaining("The monitor stays dark"),
          highlights: {
            title: `No picture, three short ${MARK.before}beeps${MARK.behind}`,
            snippet: expect.stringContaining("The monitor stays dark"),
            codes: [],
            refs: [],
            signals: [],
            symptoms: [`three ${MARK.before}beeps${MARK.behind}`],
          },
          board: KESTREL,
          outcome: "cured",
          score: expect.any(Number),
        });
      });

      test("of a code the part that matches is marked", async () => {
        const hit = (await ask("0061")).hits.find(({ id }) => id === "case_2");
        expect(hit?.highlights.codes).toEqual([`VQ4-${MARK.before}0061${MARK.behind}-03`]);
        expect(hit?.highlights.snippet).toContain(`VQ4-${MARK.before}0061${MARK.behind}-03`);
      });

      test("a misspelt word marks what it stands for", async () => {
        const [hit] = (await ask("flickring ")).hits;
        expect(hit?.highlights.title).toBe(`${MARK.before}Flickering${MARK.behind} picture when warm`);
      });

      test("markup stays text, marks cannot be forged, and the snippet shows the match", async () => {
        const [hit] = (await ask("gasket ")).hits;
        expect(hit?.title).toBe("<b>Bold</b> sham gasket");
        expect(hit?.highlights.title).toBe(`<b>Bold</b> sham ${MARK.before}gasket${MARK.behind}`);
        expect(hit?.highlights.snippet).toContain(`the ${MARK.before}gasket${MARK.behind} & <i>seal</i> leak`);
        expect(hit?.snippet).not.toMatch(/[\uE000\uE001]/);
        expect(hit?.snippet.length).toBeLessThan(300);
        expect(hit?.year).toBe(1984);
      });
    });

    describe("many hits", () => {
      beforeAll(async () => {
        under = await makeEngine();
        await under.engine.upsert(
          Array.from({ length: 230 }, (_, at) =>
            document({ id: `many_${at}`, title: "Sprocket jammed", updatedAt: at }),
          ),
        );
        await under.engine.upsert(
          Array.from({ length: 30 }, (_, at) => document({ id: `few_${at}`, title: "Gudgeon bent", updatedAt: at })),
        );
      });
      afterAll(() => under.dispose());

      test("are counted to 200", async () => {
        expect(await ask("sprocket")).toMatchObject({ total: 200, more: true });
        expect(await ask("gudgeon")).toMatchObject({ total: 30, more: false });
      });

      test("are paged without a gap or a repeat", async () => {
        const seen: string[] = [];
        let cursor: string | undefined;
        do {
          const page: SearchAnswer = await ask("sprocket", { limit: 45, ...(cursor !== undefined && { cursor }) });
          seen.push(...page.hits.map(({ id }) => id));
          cursor = page.cursor;
        } while (cursor !== undefined);
        expect([seen.length, new Set(seen).size]).toEqual([200, 200]);
      });

      test("stand newest first where they are equal", async () => {
        expect((await ids("gudgeon", { limit: 3 })).slice(0, 3)).toEqual(["few_29", "few_28", "few_27"]);
      });
    });

    describe("writing", () => {
      beforeAll(async () => {
        under = await makeEngine();
      });
      afterAll(() => under.dispose());

      test("an empty index answers", async () => {
        expect(await ask("picture")).toMatchObject({ hits: [], total: 0, more: false, engine: under.engine.name });
      });

      test("the same id replaces, a removed one is gone, an unknown one is passed over", async () => {
        await under.engine.upsert([document({ id: "a", title: "Gasket 74LS244", codes: ["74LS244"] })]);
        await under.engine.upsert([document({ id: "a", title: "Trunnion", codes: ["74LS245"] })]);
        expect([await ids("gasket"), await ids("74LS244"), await ids("trunnion"), await ids("74LS245")]).toEqual([
          [],
          [],
          ["a"],
          ["a"],
        ]);
        await under.engine.remove(["a", "never-there"]);
        expect(await ids("trunnion")).toEqual([]);
        expect((await under.engine.stats()).documents).toBe(0);
      });

      test("of two writes the later call wins", async () => {
        const first = under.engine.upsert([
          ...Array.from({ length: 300 }, (_, at) => document({ id: `w${at}`, title: "Washer" })),
          document({ id: "same", title: "Older" }),
        ]);
        const second = under.engine.upsert([document({ id: "same", title: "Newer" })]);
        await Promise.all([first, second]);
        expect([await ids("older"), await ids("newer")]).toEqual([[], ["same"]]);
      });

      test("an id that could not be stored elsewhere is refused, and nothing of its batch is written", async () => {
        const batch = [document({ id: "good", title: "Pawl" }), document({ id: "not good", title: "Pawl" })];
        await expect(under.engine.upsert(batch)).rejects.toThrow(SearchError);
        expect(await ids("pawl")).toEqual([]);
      });

      test("health and statistics tell what is there", async () => {
        const stats = await under.engine.stats();
        expect([stats.documents, stats.byKind.case, stats.rebuilding]).toEqual([301, 301, false]);
        expect(await under.engine.health()).toMatchObject({ ok: true, engine: under.engine.name });
      });
    });

    describe("rebuilding", () => {
      beforeAll(async () => {
        under = await makeEngine();
      });
      afterAll(() => under.dispose());

      test("replaces everything, reports its progress, keeps what is written meanwhile, and searches go on", async () => {
        await under.engine.upsert([
          document({ id: "old", title: "Obsolete" }),
          document({ id: "kept", title: "Spindle" }),
        ]);
        const progress: number[] = [];
        async function* source(): AsyncGenerator<SearchDocument> {
          for (let at = 0; at < 250; at++) yield document({ id: `n${at}`, title: "Bushing" });
          expect(await ids("obsolete")).toEqual(["old"]);
          expect((await under.engine.stats()).rebuilding).toBe(true);
          await under.engine.upsert([
            document({ id: "kept", title: "Spindle newer" }),
            document({ id: "late", title: "Late" }),
          ]);
          await under.engine.remove(["gone"]);
          yield document({ id: "kept", title: "Spindle older" });
          yield document({ id: "gone", title: "Ghost" });
        }
        await under.engine.rebuild(source(), ({ documents }) => progress.push(documents));
        expect([await ids("obsolete"), await ids("ghost"), await ids("late"), await ids("spindle newer ")]).toEqual([
          [],
          [],
          ["late"],
          ["kept"],
        ]);
        expect((await under.engine.stats()).documents).toBe(252);
        expect(progress.at(-1)).toBe(252);
        expect(progress).toEqual(progress.toSorted((a, b) => a - b));
      });

      test("that fails leaves the old index and can be done again", async () => {
        async function* broken(): AsyncGenerator<SearchDocument> {
          yield document({ id: "half", title: "Halfway" });
          await Promise.resolve();
          throw new Error("the database went away");
        }
        await expect(under.engine.rebuild(broken())).rejects.toMatchObject({
          name: "SearchError",
          problem: "unavailable",
        });
        expect([await ids("halfway"), await ids("late")]).toEqual([[], ["late"]]);
        await under.engine.rebuild(
          (async function* () {
            yield* await Promise.resolve([document({ id: "x", title: "Fresh" })]);
          })(),
        );
        expect([await ids("fresh"), (await under.engine.stats()).documents]).toEqual([["x"], 1]);
      });
    });
  });
}
