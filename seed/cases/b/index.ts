import type { SeedCase } from "#seed/shapes.ts";
import { cases as moth } from "#seed/cases/b/moth.ts";
import { cases as osprey } from "#seed/cases/b/osprey.ts";
import { cases as tern } from "#seed/cases/b/tern.ts";

export const cases: SeedCase[] = [...osprey, ...tern, ...moth];
