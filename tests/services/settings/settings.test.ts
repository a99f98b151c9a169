import { afterAll, beforeAll, expect, test } from "vitest";
import { clubSettings, saveClubSettings } from "#lib/services/settings/index.ts";
import { DEFAULT_SETTINGS } from "#lib/services/settings/schema.ts";
import { testClub, type TestClub } from "#tests/support/test-club.ts";

let club: TestClub;
beforeAll(async () => {
  club = await testClub();
});
afterAll(() => club.close());

const SETTINGS = { name: "Bench Circle", membersOnly: true, meeting: "Thursdays" };

test("a new club has the defaults; a steward's settings replace them and stand in the audit trail", async () => {
  expect(await clubSettings(club.ctx())).toEqual(DEFAULT_SETTINGS);
  const steward = await club.member("stella", "steward");
  await saveClubSettings(club.ctx(steward), SETTINGS);
  expect(await clubSettings(club.ctx({ kind: "visitor" }))).toEqual(SETTINGS);
  expect(
    await club.database.db.auditEntry.findMany({
      where: { action: "club.settings" },
      select: { memberId: true, detail: true },
    }),
  ).toEqual([{ memberId: steward.id, detail: { membersOnly: true } }]);
});

test("members, reviewers and visitors change nothing", async () => {
  for (const role of ["member", "reviewer"] as const) {
    const actor = await club.member(`a-${role}`, role);
    await expect(saveClubSettings(club.ctx(actor), { ...SETTINGS, name: role })).rejects.toMatchObject({
      code: "forbidden",
    });
  }
  await expect(saveClubSettings(club.ctx({ kind: "visitor" }), SETTINGS)).rejects.toMatchObject({
    code: "not-signed-in",
  });
  expect((await clubSettings(club.ctx())).name).toBe("Bench Circle");
});

test.each([
  ["no name", { ...SETTINGS, name: " " }],
  ["a field that is none", { ...SETTINGS, colour: "red" }],
  ["something else than yes or no", { ...SETTINGS, membersOnly: "perhaps" }],
])("%s is refused", async (_, input) => {
  await expect(saveClubSettings(club.ctx(), input)).rejects.toMatchObject({ name: "ZodError" });
});

test("settings that an older version saved are read with the defaults of what they lack", async () => {
  await club.database.db.setting.update({ where: { name: "club" }, data: { value: { name: "Old Circle" } } });
  expect(await clubSettings(club.ctx())).toEqual({ ...DEFAULT_SETTINGS, name: "Old Circle" });
});
