import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { newId } from "#lib/infra/id.ts";
import {
  confirmCase,
  createCase,
  deleteCause,
  readCase,
  recordCause,
  recordProof,
  repeatChecks,
  updateCase,
  updateCause,
} from "#lib/services/cases/index.ts";
import { BOARD, deeds, failedCase, openedCase, refusal, smallClub, type SmallClub } from "./a-club.ts";

let at: SmallClub;
beforeAll(async () => {
  at = await smallClub();
});
afterAll(() => at.club.close());

const cause = { at: "u7", failure: "outputs-dead", description: "Enable arrives, nothing comes out." };
const cure = { action: "replaced", description: "Socket fitted.", fittedCode: "74LS244", from: "donor board" };

describe("a cause", () => {
  test("names place, chip, what it explains and what cured it", async () => {
    const { view, failed } = await failedCase(at.ada);
    const made = await recordCause(at.bob, view.number, { ...cause, explains: [failed], cure });
    expect((await readCase(at.ada, view.number)).causes).toMatchObject([
      {
        id: made.id,
        at: "U7",
        failure: "outputs-dead",
        chip: { slug: "74ls244", name: "74LS244" },
        explains: [failed],
        cure: { action: "replaced", description: "Socket fitted.", fitted: "74LS244", from: "donor board" },
        proofs: [],
        version: 1,
      },
    ]);
    expect(await deeds(at.club, made.id)).toEqual(["cause.record"]);
  });

  test("a case may have several", async () => {
    const { number } = await openedCase(at.ada);
    await recordCause(at.ada, number, cause);
    await recordCause(at.ada, number, { failure: "earlier-repair", description: "Trace cut and never joined." });
    expect((await readCase(at.ada, number)).causes.map((one) => one.failure)).toEqual([
      "outputs-dead",
      "earlier-repair",
    ]);
  });

  test("is rewritten by the one who read it last; its proofs stay", async () => {
    const { number } = await openedCase(at.ada);
    const { id } = await recordCause(at.ada, number, { ...cause, proof: { kind: "soak", minutes: 60 } });
    await updateCause(at.bob, number, id, 1, { ...cause, failure: "dead" });
    const late = updateCause(at.ada, number, id, 1, { ...cause, failure: "leaky" });
    await expect(late).rejects.toMatchObject({ code: "stale", extra: { present: { failure: "dead", version: 2 } } });
    const [now] = (await readCase(at.ada, number)).causes;
    expect(now).toMatchObject({ failure: "dead", version: 2, cure: null, proofs: [{ kind: "soak", minutes: 60 }] });
    expect(await deeds(at.club, id)).toEqual(["cause.record", "cause.update"]);
  });

  test.each([
    ["an unknown failure", { failure: "broken" }, ["failure"]],
    ["an unknown chip", { ...cause, chip: "nothing" }, ["chip"]],
    ["a check that is not there", { ...cause, explains: [newId()] }, ["explains"]],
    ["a soak of no length", { ...cause, proof: { kind: "soak" } }, ["proof.minutes"]],
  ])("%s is refused at its field", async (_what, input, paths) => {
    const { number } = await openedCase(at.ada);
    expect(await refusal(recordCause(at.ada, number, input))).toEqual({ code: "invalid", paths });
  });

  test("visitors name none, and nobody in another's draft", async () => {
    const { number } = await openedCase(at.ada, { publish: false });
    expect(await refusal(recordCause(at.visitor, number, cause))).toMatchObject({ code: "not-signed-in" });
    expect(await refusal(recordCause(at.bob, number, cause))).toMatchObject({ code: "not-found" });
  });
});

describe("cured only with a proof", () => {
  test("the service refuses the word without one, when opening and later", async () => {
    const { number, version } = await openedCase(at.ada);
    const refused = { code: "invalid", paths: ["outcome"] };
    expect(await refusal(updateCase(at.ada, number, version, { outcome: "cured" }))).toEqual(refused);
    expect(await refusal(createCase(at.ada, { symptoms: ["x"], outcome: "cured" }))).toEqual(refused);
    await updateCase(at.ada, number, version, { outcome: "works-not-proved" });
    expect(await readCase(at.ada, number)).toMatchObject({ outcome: "works-not-proved" });
  });

  test("the database refuses it too, whoever writes", async () => {
    const { id } = await openedCase(at.ada);
    const write = at.club.database.db.faultCase.update({
      where: { id },
      data: { outcome: "cured" },
      select: { id: true },
    });
    await expect(write).rejects.toThrow(/proof/i);
  });

  test("a soak makes it cured; its last proof cannot be taken from a cured case", async () => {
    const { number } = await openedCase(at.ada);
    const { id } = await recordCause(at.ada, number, { ...cause, cure });
    await recordProof(at.ada, number, { cause: id, kind: "soak", minutes: 600, note: "Self-test in a loop." });
    const view = await readCase(at.visitor, number);
    expect(view).toMatchObject({
      outcome: "cured",
      causes: [{ proofs: [{ kind: "soak", minutes: 600, note: "Self-test in a loop.", by: { handle: "ada" } }] }],
    });
    expect(view.closedAt).not.toBe(null);
    expect(await refusal(deleteCause(at.ada, number, id, 1))).toEqual({ code: "invalid", paths: ["outcome"] });
    expect((await readCase(at.ada, number)).causes).toHaveLength(1);
    await updateCase(at.ada, number, view.version, { outcome: "open" });
    await deleteCause(at.ada, number, id, 1);
    expect((await readCase(at.ada, number)).causes).toEqual([]);
  });

  test("the proof of another case's cause is not there", async () => {
    const other = await openedCase(at.ada);
    const { id } = await recordCause(at.ada, other.number, cause);
    const { number } = await openedCase(at.ada);
    const proof = { cause: id, kind: "soak", minutes: 5 };
    expect(await refusal(recordProof(at.ada, number, proof))).toMatchObject({ code: "not-found" });
  });
});

describe("measuring again what failed", () => {
  test("in spec: readings and proof are recorded and the case is cured", async () => {
    const { view, failed } = await failedCase(at.ada);
    const { id } = await recordCause(at.ada, view.number, { ...cause, explains: [failed], cure });
    const readings = [{ id: newId(), check: failed, measured: "5.02 V" }];
    expect(await repeatChecks(at.ada, view.number, { cause: id, readings })).toEqual({ proved: true, left: [] });
    const after = await readCase(at.ada, view.number);
    expect(after).toMatchObject({
      outcome: "cured",
      checks: [
        { id: failed, verdict: "out-of-spec", repeats: null },
        { at: "U7.20", measured: "5.02 V", verdict: "in-spec", repeats: failed },
      ],
      causes: [{ proofs: [{ kind: "checks-repeated" }] }],
    });
  });

  test("still out of spec: the reading is kept, and the case is not cured", async () => {
    const { view, failed } = await failedCase(at.ada);
    const { id } = await recordCause(at.ada, view.number, { ...cause, cure });
    const readings = [{ check: failed, measured: "3.1 V" }];
    const answer = await repeatChecks(at.ada, view.number, { cause: id, readings });
    expect(answer).toMatchObject({ proved: false, left: [{ check: failed, at: "U7.20" }] });
    const after = await readCase(at.ada, view.number);
    expect({ outcome: after.outcome, checks: after.checks.length, proofs: after.causes[0]?.proofs }).toEqual({
      outcome: "open",
      checks: 2,
      proofs: [],
    });
  });

  test("only what the cause explains has to be measured again", async () => {
    const { view, failed } = await failedCase(at.ada, {
      checks: [{ kind: "level", at: "U7.1", expected: "low", measured: "high" }],
    });
    const { id } = await recordCause(at.ada, view.number, { ...cause, explains: [failed], cure });
    const readings = [{ check: failed, measured: "5 V" }];
    expect(await repeatChecks(at.ada, view.number, { cause: id, readings })).toMatchObject({ proved: true });
  });

  test("with no failed check there is nothing to repeat, and with another's check neither", async () => {
    const { number } = await openedCase(at.ada);
    const { id } = await recordCause(at.ada, number, cause);
    expect(await refusal(repeatChecks(at.ada, number, { cause: id, readings: [] }))).toEqual({
      code: "invalid",
      paths: ["readings"],
    });
    const strange = [{ check: newId(), measured: "5 V" }];
    expect(await refusal(repeatChecks(at.ada, number, { cause: id, readings: strange }))).toEqual({
      code: "invalid",
      paths: ["readings.0.check"],
    });
  });
});

describe("this cured mine, did not help mine", () => {
  test("each member has one word, the later one counts, and it may point at a case of one's own", async () => {
    const { number } = await openedCase(at.ada);
    await confirmCase(at.bob, number, { helped: true });
    await confirmCase(at.rita, number, { helped: true, note: "Same joint." });
    const linked = await openedCase(at.bob, { openedFrom: number });
    await confirmCase(at.bob, number, { helped: false, note: "It was the crystal.", linkedCase: linked.number });
    const view = await readCase(at.visitor, number);
    expect({ helped: view.helped, didNotHelp: view.didNotHelp }).toEqual({ helped: 1, didNotHelp: 1 });
    expect(view.confirmations.find((one) => !one.helped)).toMatchObject({
      note: "It was the crystal.",
      by: { handle: "bob" },
      linked: { number: linked.number },
    });
    expect(view.followers.map((one) => one.number)).toEqual([linked.number]);
  });

  test("a draft that a word points at stays its author's", async () => {
    const { number } = await openedCase(at.ada);
    const draft = await openedCase(at.bob, { publish: false, board: BOARD });
    await confirmCase(at.bob, number, { helped: false, linkedCase: draft.number });
    expect((await readCase(at.ada, number)).confirmations).toMatchObject([{ helped: false, linked: null }]);
  });

  test("not about one's own case, not by a visitor, not about a draft of another", async () => {
    const { number } = await openedCase(at.ada);
    expect(await refusal(confirmCase(at.ada, number, { helped: true }))).toEqual({
      code: "invalid",
      paths: ["helped"],
    });
    expect(await refusal(confirmCase(at.visitor, number, { helped: true }))).toMatchObject({ code: "not-signed-in" });
    const draft = await openedCase(at.ada, { publish: false });
    expect(await refusal(confirmCase(at.bob, draft.number, { helped: true }))).toMatchObject({ code: "not-found" });
  });

  test("a cause of another case is refused", async () => {
    const { number } = await openedCase(at.ada);
    expect(await refusal(confirmCase(at.bob, number, { helped: true, cause: newId() }))).toEqual({
      code: "invalid",
      paths: ["cause"],
    });
  });
});
