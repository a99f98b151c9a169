import { afterAll, beforeAll, expect, test } from "vitest";
import { createChip, readChip, updateChip } from "#lib/services/chips/index.ts";
import type { MemberActor } from "#lib/services/context.ts";
import { testClub, type TestClub } from "#tests/support/test-club.ts";

let club: TestClub;
let ada: MemberActor;
let bo: MemberActor;
beforeAll(async () => {
  club = await testClub();
  ada = await club.member("ada");
  bo = await club.member("bo");
});
afterAll(() => club.close());

const regulator = (name: string) => ({
  name,
  technology: "analog",
  packages: [
    {
      name: "TO-220",
      style: "TO",
      pins: [
        { number: "1", name: "IN", type: "power-in", role: "supply" },
        { number: "2", name: "GND", type: "power-in", role: "ground" },
        { number: "3", name: "OUT", type: "power-out", role: "supply", supply: 5 },
      ],
    },
  ],
});

test("a chip is read back with its pins in order, and its history names who recorded it", async () => {
  const made = await createChip(club.ctx(ada), regulator("7805"));
  expect(await readChip(club.ctx({ kind: "visitor" }), "7805")).toMatchObject({
    name: "7805",
    packages: [{ name: "TO-220", style: "TO", pinCount: 3, pins: [{ name: "IN" }, { name: "GND" }, { supply: 5 }] }],
    version: 1,
  });
  expect(
    await club.database.db.recordRevision.findMany({
      where: { recordId: made.id },
      select: { did: true, version: true, memberId: true },
    }),
  ).toEqual([{ did: "chip.create", version: 1, memberId: ada.id }]);
});

test("another member may correct it; whoever read the older version is shown the present one", async () => {
  await createChip(club.ctx(ada), regulator("7812"));
  await updateChip(club.ctx(bo), "7812", 1, { function: "12 V regulator" });
  await expect(updateChip(club.ctx(ada), "7812", 1, { function: "regulator" })).rejects.toMatchObject({
    code: "stale",
    extra: { present: { function: "12 V regulator", version: 2 } },
  });
});

test.each([
  ["a visitor", { kind: "visitor" } as const, "not-signed-in"],
  [
    "a token that may only read",
    { kind: "member", id: "x", handle: "x", name: "x", role: "member", scopes: ["read"] } as const,
    "forbidden",
  ],
])("%s records no chip", async (_, actor, code) => {
  await expect(createChip(club.ctx(actor), { name: "7905" })).rejects.toMatchObject({ code });
});

test.each([
  ["a pin twice", { packages: [{ name: "DIP-2", style: "DIP", pins: [{ number: "1" }, { number: "1" }] }] }, "1"],
  ["a package twice", { packages: [...regulator("x").packages, ...regulator("x").packages] }, "TO-220"],
])("%s is refused by name", async (_, input, named) => {
  await expect(createChip(club.ctx(ada), { name: "BAD", ...input })).rejects.toMatchObject({
    code: "invalid",
    extra: { problems: [{ message: expect.stringContaining(named) }] },
  });
});
