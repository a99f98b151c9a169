import fc from "fast-check";
import { expect, test } from "vitest";
import { codeParts } from "#lib/core/marking/index.ts";
import { createEmbeddedSearch, LONGEST_BODY } from "#lib/infra/search/index.ts";
import { describeSearchEngine, document } from "./contract.ts";

describeSearchEngine("embedded", () =>
  Promise.resolve({ engine: createEmbeddedSearch(), dispose: () => Promise.resolve() }),
);

test("a timer keeps running while many documents are written", async () => {
  const engine = createEmbeddedSearch();
  const body = Array.from({ length: 150 }, (_, at) => `word${"abcdefghij".charAt(at % 10)} U${at}.3 reads 4.87 V`).join(
    " ",
  );
  let turns = 0;
  const timer = setInterval(() => turns++, 1);
  await engine.upsert(Array.from({ length: 120 }, (_, at) => document({ id: `d${at}`, body })));
  clearInterval(timer);
  // More than one turn shows that the work was cut into slices; how many depends on the machine.
  expect(turns).toBeGreaterThan(1);
});

test("only the beginning of a very long body is searched", async () => {
  const engine = createEmbeddedSearch();
  await engine.upsert([document({ id: "long", body: `early ${"filler ".repeat(LONGEST_BODY / 7)} belated` })]);
  const total = async (q: string): Promise<number> =>
    (await engine.search({ q, limit: 1, visibility: "public" })).total;
  expect([await total("early"), await total("belated")]).toEqual([1, 0]);
});

test("after any writes and removals the index answers like a fresh one", async () => {
  const words = ["beep", "beeps", "picture", "74LS244", "74LS245", "VQ4-0061-03", "U7.14", "-12V", "/CS", "flicker"];
  const write = fc.record({
    id: fc.constantFrom("a", "b", "c", "d"),
    title: fc.array(fc.constantFrom(...words), { maxLength: 4 }).map((title) => title.join(" ")),
    remove: fc.boolean(),
  });
  await fc.assert(
    fc.asyncProperty(
      fc.array(write, { maxLength: 12 }),
      fc.constantFrom(...words, "pictrue", ""),
      async (writes, q) => {
        const used = createEmbeddedSearch();
        const held = new Map<string, string>();
        for (const { id, title, remove } of writes) {
          await (remove ? used.remove([id]) : used.upsert([document({ id, title })]));
          if (remove) held.delete(id);
          else held.set(id, title);
        }
        const fresh = createEmbeddedSearch();
        await fresh.upsert([...held].map(([id, title]) => document({ id, title })));
        const ask = { q, limit: 20, visibility: "public" } as const;
        const { tookMs: _, ...expected } = await fresh.search(ask);
        expect(await used.search(ask)).toMatchObject(expected);
      },
    ),
  );
});

test("no query for one 54/74 number ever brings another", async () => {
  const number = fc
    .tuple(fc.constantFrom("LS", "HC", ""), fc.integer({ min: 100, max: 399 }))
    .map(([family, digits]) => `74${family}${digits}`);
  await fc.assert(
    fc.asyncProperty(fc.uniqueArray(number, { minLength: 2, maxLength: 30 }), async (numbers) => {
      const engine = createEmbeddedSearch();
      await engine.upsert(
        numbers.map((code, at) =>
          document({ id: `d${at}`, title: `Buffer SN${code}N dead`, body: code, codes: [code] }),
        ),
      );
      for (const code of numbers.slice(0, 5)) {
        const { hits } = await engine.search({ q: `${code} dead`, limit: 50, visibility: "public" });
        expect(hits.map(({ highlights }) => highlights.codes.length)).toEqual([1]);
        expect(codeParts(numbers[Number(hits[0]?.id.slice(1))] ?? "").core).toBe(code.toLowerCase());
      }
    }),
    { numRuns: 40 },
  );
});

test("any text can be a document and a query", async () => {
  const text = fc.string({ unit: "grapheme", maxLength: 60 });
  await fc.assert(
    fc.asyncProperty(text, text, text, async (title, body, q) => {
      const engine = createEmbeddedSearch();
      await engine.upsert([
        document({ id: "one", title, body, codes: [title], signals: [body], refs: [q], symptoms: [q] }),
      ]);
      const answer = await engine.search({ q, limit: 5, visibility: "public" });
      for (const { highlights, title: shown } of answer.hits) {
        expect(highlights.title.replace(/[\uE000\uE001]/g, "")).toBe(shown);
      }
      await engine.remove(["one"]);
      expect((await engine.search({ q, limit: 5, visibility: "public" })).total).toBe(0);
    }),
  );
});
