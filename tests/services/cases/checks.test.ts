import { afterAll, beforeAll, expect, test } from "vitest";
import { newId } from "#lib/infra/id.ts";
import { deleteCheck, readCase, recordChecks, updateCheck } from "#lib/services/cases/index.ts";
import { deeds, failedCase, openedCase, refusal, smallClub, type SmallClub } from "./a-club.ts";

let at: SmallClub;
beforeAll(async () => {
  at = await smallClub();
});
afterAll(() => at.club.close());

test("a check is judged against the board's record, by another member too", async () => {
  const { number } = await openedCase(at.ada);
  const { checks, made } = await recordChecks(at.bob, number, [
    { kind: "dc-voltage", at: "u7.20", measured: "4.98V" },
    { kind: "dc-voltage", at: "U7.20", measured: "0.8 V" },
  ]);
  expect(made).toBe(true);
  expect(checks).toMatchObject([
    { at: "U7.20", placeKnown: true, value: 4.98, unit: "V", verdict: "in-spec", by: { handle: "bob" }, version: 1 },
    { at: "U7.20", value: 0.8, verdict: "out-of-spec", direction: "low" },
  ]);
  expect(await deeds(at.club, checks[0]?.id ?? "")).toEqual(["check.record"]);
});

test("a reading that cannot be read is kept as typed, with the reason; a place off the record is marked", async () => {
  const { number } = await openedCase(at.ada);
  const { checks } = await recordChecks(at.ada, number, [
    { kind: "dc-voltage", at: "U99.1", measured: "about five-ish" },
  ]);
  expect(checks).toMatchObject([{ at: "U99.1", placeKnown: false, measured: "about five-ish", verdict: "noted" }]);
  expect(checks[0]?.unreadable).not.toBe("");
});

test.each([
  ["no check at all", [], [""]],
  ["no place", [{ kind: "level", at: " " }], ["0.at"]],
  ["an unknown kind", [{ kind: "guess", at: "U7" }], ["0.kind"]],
  ["a trial that tries nothing", [{ kind: "trial", at: "U7" }], ["0.what"]],
  ["a verdict without a reason", [{ kind: "level", at: "U7.1", verdict: "in-spec" }], ["0.reason"]],
])("%s is refused at its field", async (_what, input, paths) => {
  const { number } = await openedCase(at.ada);
  expect(await refusal(recordChecks(at.ada, number, input))).toEqual({ code: "invalid", paths });
});

test("to a visitor the answer is to sign in; another's draft is not there", async () => {
  const { number } = await openedCase(at.ada, { publish: false });
  const input = [{ kind: "level", at: "U7.1", measured: "high" }];
  expect(await refusal(recordChecks(at.visitor, number, input))).toMatchObject({ code: "not-signed-in" });
  expect(await refusal(recordChecks(at.bob, number, input))).toMatchObject({ code: "not-found" });
});

test("sent twice with the same ids they are recorded once; the same id for another reading is refused", async () => {
  const { number } = await openedCase(at.ada);
  const input = [{ id: newId(), kind: "level", at: "U7.1", measured: "high" }];
  await recordChecks(at.ada, number, input);
  const again = await recordChecks(at.ada, number, input);
  expect({ made: again.made, count: (await readCase(at.ada, number)).checks.length }).toEqual({
    made: false,
    count: 1,
  });
  const other = [{ ...input[0], measured: "low" }];
  expect(await refusal(recordChecks(at.ada, number, other))).toMatchObject({ code: "conflict" });
});

test("two members enter readings at once: all are kept, in one order without a gap", async () => {
  const { number } = await openedCase(at.ada);
  await Promise.all(
    Array.from({ length: 12 }, (_, nth) =>
      recordChecks(nth % 2 ? at.ada : at.bob, number, [{ kind: "level", at: `U7.${nth + 1}`, measured: "high" }]),
    ),
  );
  const { checks } = await readCase(at.ada, number);
  expect(checks.map((check) => check.position)).toEqual(Array.from({ length: 12 }, (_, nth) => nth));
  expect(new Set(checks.map((check) => check.at)).size).toBe(12);
});

test("a corrected reading is judged anew; the second to correct it is told", async () => {
  const { view, failed } = await failedCase(at.ada);
  const corrected = await updateCheck(at.bob, view.number, failed, 1, { measured: "5.01 V" });
  expect(corrected).toMatchObject({ measured: "5.01 V", verdict: "in-spec", version: 2 });
  await expect(updateCheck(at.ada, view.number, failed, 1, { measured: "4 V" })).rejects.toMatchObject({
    code: "stale",
    extra: { present: { measured: "5.01 V", version: 2 } },
  });
  expect(await deeds(at.club, failed)).toEqual(["check.record", "check.update"]);
});

test("a check that is taken out stays in the history as it was last", async () => {
  const { view, failed } = await failedCase(at.ada);
  expect(await refusal(deleteCheck(at.ada, view.number, failed, 7))).toMatchObject({ code: "stale" });
  await deleteCheck(at.ada, view.number, failed, 1);
  expect((await readCase(at.ada, view.number)).checks).toEqual([]);
  expect(await deeds(at.club, failed)).toEqual(["check.record", "check.delete"]);
});

test("a check of another case is not one of this case", async () => {
  const { failed } = await failedCase(at.ada);
  const other = await openedCase(at.ada);
  expect(await refusal(updateCheck(at.ada, other.number, failed, 1, { note: "x" }))).toMatchObject({
    code: "not-found",
  });
  const input = [{ kind: "level", at: "U7.1", measured: "high", repeats: failed }];
  expect(await refusal(recordChecks(at.ada, other.number, input))).toEqual({ code: "invalid", paths: ["0.repeats"] });
});
