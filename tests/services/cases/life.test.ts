import { afterAll, beforeAll, describe, expect, test } from "vitest";
import {
  createCase,
  listCases,
  publishCase,
  readCase,
  recordQuickCase,
  tickCaution,
  updateCase,
  withdrawCase,
} from "#lib/services/cases/index.ts";
import { newId } from "#lib/infra/id.ts";
import { BOARD, deeds, openedCase, refusal, smallClub, type SmallClub } from "./a-club.ts";

let at: SmallClub;
beforeAll(async () => {
  at = await smallClub();
});
afterAll(() => at.club.close());

describe("opening a case", () => {
  test("needs a symptom only; board, revision and copy are linked; the history says who", async () => {
    const made = await createCase(at.ada, {
      board: BOARD,
      revision: "A",
      copy: "tag 3",
      symptoms: ["No picture", "three short beeps"],
    });
    const view = await readCase(at.ada, made.number);
    expect(view).toMatchObject({
      title: "Finch CPU: No picture",
      state: "draft",
      outcome: "open",
      board: BOARD,
      revision: "A",
      copy: "tag 3",
      symptoms: [
        { slug: "no-picture", label: "No picture" },
        { slug: "three-short-beeps", label: "three short beeps" },
      ],
      author: { handle: "ada", name: "ada" },
      version: 1,
    });
    expect(await deeds(at.club, made.id)).toEqual(["case.create"]);
  });

  test.each([
    ["no symptom", {}, ["symptoms"]],
    ["an unknown board", { board: "nowhere", symptoms: ["x"] }, ["board"]],
    ["an unknown revision", { board: BOARD, revision: "Z", symptoms: ["x"] }, ["revision"]],
    ["an unknown field", { symptoms: ["x"], colour: "red" }, [""]],
    ["a check without a place", { symptoms: ["x"], checks: [{ kind: "level", at: "" }] }, ["checks.0.at"]],
    ["a case to follow that is not there", { symptoms: ["x"], openedFrom: 9_999_999 }, ["openedFrom"]],
  ])("%s is refused at its field", async (_what, input, paths) => {
    expect(await refusal(createCase(at.ada, input))).toEqual({ code: "invalid", paths });
  });

  test("a visitor is asked to sign in", async () => {
    expect(await refusal(createCase(at.visitor, { symptoms: ["x"] }))).toMatchObject({ code: "not-signed-in" });
  });

  test("sent twice with the same id it is one case; the same id for another case is refused", async () => {
    const input = { id: newId(), symptoms: ["hum"], symptomText: "A loud hum." };
    const first = await createCase(at.ada, input);
    expect(await createCase(at.ada, input)).toEqual({ ...first, made: false });
    expect(await refusal(createCase(at.ada, { ...input, symptomText: "No hum." }))).toMatchObject({ code: "conflict" });
    expect(await refusal(createCase(at.bob, input))).toMatchObject({ code: "conflict" });
  });

  test("ten members name the same new symptom at once: the vocabulary grows by one word", async () => {
    await Promise.all(
      Array.from({ length: 10 }, (_, nth) =>
        createCase(nth % 2 ? at.ada : at.bob, { symptoms: [nth % 3 ? "Wavy Picture" : "wavy picture"] }),
      ),
    );
    const words = await at.club.database.db.symptom.findMany({ where: { slug: "wavy-picture" }, select: { id: true } });
    expect(words).toHaveLength(1);
    const { total } = await listCases(at.ada, { symptom: "wavy-picture" });
    expect(total).toBe(5);
  });
});

describe("a draft", () => {
  test("is its author's alone until it is published, and again when it is withdrawn", async () => {
    const { number, id } = await openedCase(at.ada, { publish: false });
    const seen = async () =>
      Promise.all([at.bob, at.visitor, at.stella].map((ctx) => readCase(ctx, number).then(Boolean, () => false)));
    expect(await seen()).toEqual([false, false, false]);
    await publishCase(at.ada, number);
    expect(await seen()).toEqual([true, true, true]);
    await publishCase(at.ada, number);
    await withdrawCase(at.ada, number);
    expect(await seen()).toEqual([false, false, false]);
    expect(await deeds(at.club, id)).toEqual(["case.create", "case.publish", "case.withdraw"]);
  });

  test("is for nobody else to change, publish or list", async () => {
    const { number, version } = await openedCase(at.ada, { publish: false });
    const gone = { code: "not-found", paths: [] };
    expect(await refusal(updateCase(at.bob, number, version, { title: "mine" }))).toEqual(gone);
    expect(await refusal(publishCase(at.bob, number))).toEqual(gone);
    const { cases } = await listCases(at.bob, { limit: 100 });
    expect(cases.map((one) => one.number)).not.toContain(number);
  });

  test("once published, only its author or a reviewer takes it back", async () => {
    const { number } = await openedCase(at.ada);
    expect(await refusal(withdrawCase(at.bob, number))).toMatchObject({ code: "forbidden" });
    await withdrawCase(at.rita, number);
    expect(await readCase(at.ada, number)).toMatchObject({ state: "draft" });
  });
});

describe("changing a case", () => {
  test("fields left out stay; another member may correct a published case", async () => {
    const { number, id } = await openedCase(at.ada, { lesson: "Look first." });
    expect(await updateCase(at.bob, number, 1, { title: "Finch: dark" })).toEqual({ version: 2 });
    expect(await readCase(at.ada, number)).toMatchObject({ title: "Finch: dark", lesson: "Look first.", version: 2 });
    expect(await deeds(at.club, id)).toEqual(["case.create", "case.update"]);
  });

  test("the second writer is shown what the first wrote, and nothing of either is lost", async () => {
    const { number } = await openedCase(at.ada);
    await updateCase(at.ada, number, 1, { story: "First words." });
    const late = updateCase(at.bob, number, 1, { story: "Other words." });
    await expect(late).rejects.toMatchObject({
      code: "stale",
      extra: { present: { story: "First words.", version: 2 } },
    });
    expect(await readCase(at.ada, number)).toMatchObject({ story: "First words.", version: 2 });
  });

  test("two writers at the same moment: one is in, the other is told", async () => {
    const { number } = await openedCase(at.ada);
    const both = await Promise.allSettled([
      updateCase(at.ada, number, 1, { lesson: "from ada" }),
      updateCase(at.bob, number, 1, { lesson: "from bob" }),
    ]);
    expect(both.map((one) => one.status).toSorted()).toEqual(["fulfilled", "rejected"]);
  });

  test.each([
    ["an empty title", { title: " " }, ["title"]],
    ["an unknown outcome", { outcome: "fixed" }, ["outcome"]],
    ["a story beyond the limit", { story: "a".repeat(100_001) }, ["story"]],
  ])("%s is refused at its field", async (_what, input, paths) => {
    const { number } = await openedCase(at.ada);
    expect(await refusal(updateCase(at.ada, number, 1, input))).toEqual({ code: "invalid", paths });
  });

  test("a case that a story names is stored by its id, and shown by its number", async () => {
    const other = await openedCase(at.ada);
    const { number, id } = await openedCase(at.ada, { story: `As in :case[${other.number}].` });
    const row = await at.club.database.db.faultCase.findUniqueOrThrow({ where: { id }, select: { story: true } });
    expect(row.story).toBe(`As in :case[${other.id}].`);
    expect(await readCase(at.ada, number)).toMatchObject({ story: `As in :case[${other.number}].` });
  });
});

describe("a finished repair in four lines", () => {
  const four = {
    board: BOARD,
    symptom: "no picture",
    wrong: "Cracked joint at pin 20.",
    at: "u7",
    failure: "cold-joint",
    cured: "Resoldered it.",
  };

  test("is published at once, cured with its proof", async () => {
    const { number } = await recordQuickCase(at.ada, { ...four, proved: "5.02 V at U7.20, ran all evening." });
    const view = await readCase(at.visitor, number);
    expect(view).toMatchObject({
      state: "published",
      outcome: "cured",
      causes: [
        {
          at: "U7",
          failure: "cold-joint",
          chip: { slug: "74ls244", name: "74LS244" },
          cure: { action: "other", description: "Resoldered it." },
          proofs: [{ kind: "checks-repeated", note: "5.02 V at U7.20, ran all evening." }],
        },
      ],
    });
  });

  test("without a proof it works, not proved", async () => {
    const { number } = await recordQuickCase(at.ada, four);
    expect(await readCase(at.visitor, number)).toMatchObject({ outcome: "works-not-proved" });
  });

  test("whose symptom is a whole sentence keeps it in the member's own words", async () => {
    const symptom =
      "The picture rolls for a minute after power-on, then stands still, but only when the room is below 15 degrees.";
    const { number } = await recordQuickCase(at.ada, { ...four, symptom });
    expect(await readCase(at.visitor, number)).toMatchObject({ symptoms: [], symptomText: symptom });
  });

  test.each(["board", "symptom", "wrong", "cured"] as const)("the line %s is needed", async (name) => {
    expect(await refusal(recordQuickCase(at.ada, { ...four, [name]: " " }))).toEqual({
      code: "invalid",
      paths: [name],
    });
  });
});

describe("the list of cases", () => {
  test("narrows, pages without a gap, and refuses what it does not know", async () => {
    const numbers: number[] = [];
    for (let nth = 0; nth < 5; nth++) {
      const { number } = await openedCase(at.bob, { symptoms: ["rare hum"], asksHelp: nth === 2 ? "A reading?" : "" });
      numbers.unshift(number);
    }
    const query = { symptom: "rare-hum", limit: 3 };
    const first = await listCases(at.visitor, query);
    const second = await listCases(at.visitor, { ...query, cursor: first.next ?? undefined });
    expect([...first.cases, ...second.cases].map((one) => one.number)).toEqual(numbers);
    expect({ total: first.total, next: second.next }).toEqual({ total: 5, next: null });
    const asking = await listCases(at.visitor, { symptom: "rare-hum", asksHelp: "true" });
    expect(asking.cases.map((one) => one.number)).toEqual([numbers[2]]);
    expect(await refusal(listCases(at.visitor, { outcome: "fixed" }))).toEqual({ code: "invalid", paths: ["outcome"] });
  });
});

test("a caution that the board does not have cannot be ticked", async () => {
  const { number } = await openedCase(at.ada);
  expect(await refusal(tickCaution(at.ada, number, "mains"))).toEqual({ code: "invalid", paths: ["caution"] });
});
