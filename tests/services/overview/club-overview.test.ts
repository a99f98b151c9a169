import { afterAll, beforeAll, expect, test } from "vitest";
import { createBoard } from "#lib/services/boards/index.ts";
import { createCase } from "#lib/services/cases/index.ts";
import { createChip } from "#lib/services/chips/index.ts";
import { createCode } from "#lib/services/codes/index.ts";
import type { Ctx } from "#lib/services/context.ts";
import { clubOverview } from "#lib/services/overview/index.ts";
import { testClub, type TestClub } from "#tests/support/test-club.ts";

let club: TestClub;
let ada: Ctx;
let bo: Ctx;
let visitor: Ctx;
beforeAll(async () => {
  club = await testClub();
  ada = club.ctx(await club.member("ada"));
  bo = club.ctx(await club.member("bo"));
  visitor = club.ctx({ kind: "visitor" });
});
afterAll(() => club.close());

test("an empty club is known to be empty", async () => {
  expect(await clubOverview(visitor)).toEqual({
    cases: 0,
    isEmpty: true,
    asking: [],
    askingInAll: 0,
    unknownCodes: [],
    unknownCodesInAll: 0,
    cured: [],
    symptoms: [],
    boards: [],
    mine: [],
  });
});

test("shows what waits for somebody, what was cured, and to a member their own bench", async () => {
  await createBoard(ada, { slug: "finch", name: "Finch CPU", kind: "home-computer" });
  await createChip(ada, { name: "7805" });
  await createCode(ada, { code: "L7805CV", chip: "7805" });
  const unknown = await createCode(ada, { code: "VQ4-0061-03", sighting: { board: "finch", at: "U7" } });
  const open = { board: "finch", symptoms: ["no picture"], publish: true };
  const asking = await createCase(ada, { ...open, title: "Asks", asksHelp: "Has anybody U7.14 of a good one?" });
  // Not these: it asks no more, it asks in a draft, it asks nothing.
  await createCase(ada, {
    ...open,
    title: "Cured",
    asksHelp: "Help!",
    outcome: "cured",
    lesson: "Measure the supply at the pin.",
    causes: [{ at: "U7", failure: "outputs-dead", cure: { action: "replaced" }, proof: { kind: "soak", minutes: 60 } }],
  });
  const draft = await createCase(ada, { symptoms: ["no picture"], title: "Draft", asksHelp: "Not yet" });
  const plain = await createCase(bo, { board: "finch", symptomText: "hum", title: "Plain", publish: true });

  const board = { slug: "finch", name: "Finch CPU" };
  const seen = await clubOverview(ada);
  expect(seen).toMatchObject({
    cases: 3,
    isEmpty: false,
    asking: [{ number: asking.number, asks: "Has anybody U7.14 of a good one?", board, by: "ada" }],
    askingInAll: 1,
    unknownCodes: [{ id: unknown.id, code: "VQ4-0061-03", board, at: "U7" }],
    unknownCodesInAll: 1,
    cured: [
      {
        title: "Cured",
        lesson: "Measure the supply at the pin.",
        cause: { at: "U7", failure: "outputs-dead", chip: "" },
        board,
      },
    ],
    symptoms: [{ slug: "no-picture", label: "no picture", cases: 2 }],
    boards: [{ kind: "home-computer", count: 1, most: [{ ...board, cases: 3 }] }],
  });
  expect(new Map(seen.mine.map(({ number, isDraft }) => [number, isDraft]))).toEqual(
    new Map([
      [draft.number, true],
      [asking.number, false],
    ]),
  );
  expect((await clubOverview(bo)).mine.map(({ number }) => number)).toEqual([plain.number]);
  const { mine, ...rest } = await clubOverview(visitor);
  expect(mine).toEqual([]);
  expect(rest).toEqual({ ...seen, mine: undefined });
});
