import { expect, test } from "vitest";
import { killWhileWriting } from "#tests/support/kill-writing.ts";

test("killed 20 times while 20 clients write, the club loses nothing that it acknowledged", async () => {
  const { acknowledged, ...losses } = await killWhileWriting(20, 2);
  expect(losses).toEqual({ lostChecks: [], lostCases: [], disagreeing: [] });
  expect(acknowledged).toBeGreaterThan(200);
});
