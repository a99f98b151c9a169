import { expect, test } from "vitest";
import { killWhileWriting } from "#tests/support/kill-writing.ts";

test("killed twice while 20 clients write, the club loses nothing that it acknowledged", async () => {
  const { acknowledged, ...losses } = await killWhileWriting(2, 1);
  expect(losses).toEqual({ lostChecks: [], lostCases: [], disagreeing: [] });
  expect(acknowledged).toBeGreaterThan(20);
});
