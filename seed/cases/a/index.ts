import type { SeedCase } from "#seed/shapes.ts";
import { cases as harrow } from "#seed/cases/a/harrow.ts";
import { cases as merle } from "#seed/cases/a/merle.ts";
import { cases as plover } from "#seed/cases/a/plover.ts";
import { cases as vetch } from "#seed/cases/a/vetch.ts";

export const cases: SeedCase[] = [...harrow, ...merle, ...vetch, ...plover];
