import { afterAll, beforeAll, expect, test } from "vitest";
import { createChip, listChips } from "#lib/services/chips/index.ts";
import { testClub, type TestClub } from "#tests/support/test-club.ts";

let club: TestClub;
beforeAll(async () => {
  club = await testClub();
  const ctx = club.ctx(await club.member("ada"));
  await createChip(ctx, { name: "74LS244", function: "octal buffer", technology: "LS" });
  await createChip(ctx, { name: "74HC244", function: "octal buffer", technology: "HC" });
  await createChip(ctx, { name: "27C256", function: "32 K x 8 memory", technology: "CMOS", contents: "eprom" });
  const hidden = await createChip(ctx, { name: "HIDDEN" });
  await club.database.db.chip.update({
    where: { id: hidden.id },
    data: { hiddenAt: new Date() },
    select: { id: true },
  });
});
afterAll(() => club.close());

test.each([
  ["nothing said", {}, ["27C256", "74HC244", "74LS244"]],
  ["a number as it is printed", { q: "SN74LS244N" }, ["74LS244"]],
  ["a number in another spelling", { q: "74 ls 244" }, ["74LS244"]],
  ["part of a name", { q: "244" }, ["74HC244", "74LS244"]],
  ["what it does", { q: "octal" }, ["74HC244", "74LS244"]],
  ["a technology", { technology: "LS" }, ["74LS244"]],
  ["what it holds", { contents: "eprom" }, ["27C256"]],
  ["something that is not there", { q: "6502" }, []],
])("chips by %s", async (_, query, names) => {
  const { chips, total } = await listChips(club.ctx({ kind: "visitor" }), query);
  expect({ names: chips.map((one) => one.name), total }).toEqual({ names, total: names.length });
});

test("pages join without a gap", async () => {
  const first = await listChips(club.ctx(), { limit: 2 });
  const second = await listChips(club.ctx(), { limit: 2, cursor: first.next ?? undefined });
  expect([...first.chips, ...second.chips].map((one) => one.name)).toEqual(["27C256", "74HC244", "74LS244"]);
  expect(second.next).toBe(null);
});
