import { afterAll, beforeAll, expect, test } from "vitest";
import { OPERATIONS } from "#lib/web/openapi.ts";
import { apiWorld, type ApiWorld } from "#tests/support/api-world.ts";
import { sendMutatedBodies } from "#tests/support/mutated-bodies.ts";

/** Bodies for each operation that takes one. */
const EACH = 2_000;
const taking = OPERATIONS.filter(({ body, form }) => body || form).length;

let world: ApiWorld;
beforeAll(async () => {
  world = await apiWorld();
});
afterAll(() => world.stop());

test(`${EACH} mutated bodies at every POST, PUT and PATCH meet no fault of the program`, async () => {
  expect(await sendMutatedBodies(world, EACH * taking, 11)).toEqual([]);
  expect((await world.call("GET", "/readyz")).status).toBe(200);
});
