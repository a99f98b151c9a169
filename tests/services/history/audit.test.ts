import { afterAll, beforeAll, expect, test } from "vitest";
import { createChip } from "#lib/services/chips/index.ts";
import type { MemberActor } from "#lib/services/context.ts";
import { auditTrail } from "#lib/services/history/index.ts";
import { createInvitation } from "#lib/services/members/index.ts";
import { testClub, type TestClub } from "#tests/support/test-club.ts";

let club: TestClub;
let ada: MemberActor;
let stella: MemberActor;
let chip: string;
beforeAll(async () => {
  club = await testClub();
  ada = await club.member("ada");
  stella = await club.member("stella", "steward");
  chip = (await createChip(club.ctx(ada), { name: "7805" })).id;
  await createInvitation(club.ctx(stella), { note: "Robin", uses: 2 });
});
afterAll(() => club.close());

test("says who did what to which record, from where, newest first", async () => {
  const { entries, more } = await auditTrail(club.ctx(stella), {});
  expect(more).toBe(false);
  expect(entries).toEqual([
    {
      id: expect.any(String),
      at: expect.any(String),
      by: { handle: "stella", name: "stella" },
      action: "invitation.create",
      record: null,
      address: "192.0.2.1",
      detail: [
        ["role", "member"],
        ["uses", "2"],
      ],
    },
    {
      id: expect.any(String),
      at: expect.any(String),
      by: { handle: "ada", name: "ada" },
      action: "chip.create",
      record: { kind: "chip", id: chip },
      address: "192.0.2.1",
      detail: [],
    },
  ]);
});

test.each([
  ["an action", { action: "chip.create" }, ["chip.create"]],
  ["everything about chips", { action: "chip" }, ["chip.create"]],
  ["a member", { member: "stella" }, ["invitation.create"]],
  ["both", { action: "chip", member: "stella" }, []],
])("narrowed to %s", async (_, query, actions) => {
  const trail = await auditTrail(club.ctx(stella), query);
  expect(trail.entries.map((entry) => entry.action)).toEqual(actions);
  expect(trail.actions).toEqual([
    { action: "chip.create", count: 1 },
    { action: "invitation.create", count: 1 },
  ]);
});

test("nobody but a steward reads it", async () => {
  const reviewer = await club.member("rea", "reviewer");
  for (const actor of [ada, reviewer]) {
    await expect(auditTrail(club.ctx(actor), {})).rejects.toMatchObject({ code: "forbidden" });
  }
  await expect(auditTrail(club.ctx({ kind: "visitor" }), {})).rejects.toMatchObject({ code: "not-signed-in" });
});
