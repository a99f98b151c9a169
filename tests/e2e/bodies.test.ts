import { afterAll, beforeAll, expect, test } from "vitest";
import { apiWorld, type ApiWorld } from "#tests/support/api-world.ts";
import { sendMutatedBodies } from "#tests/support/mutated-bodies.ts";

let world: ApiWorld;
beforeAll(async () => {
  world = await apiWorld();
});
afterAll(() => world.stop());

test("400 mutated bodies meet no fault of the program, and every refusal says what was wrong", async () => {
  expect(await sendMutatedBodies(world, 400, 7)).toEqual([]);
  // It still works.
  expect((await world.call("GET", "/readyz")).status).toBe(200);
});
