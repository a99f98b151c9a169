import type { SeedChip } from "#seed/shapes.ts";
import { busLogic } from "./bus-logic.ts";
import { cmos4000 } from "./cmos-4000.ts";
import { drivers } from "./drivers.ts";
import { flipFlops } from "./flip-flops.ts";
import { gates } from "./gates.ts";
import { linears } from "./linear.ts";
import { memories } from "./memory.ts";
import { processors } from "./processors.ts";

/** Generic industry parts, which several makers sold under the same number. */
export const chips: SeedChip[] = [
  ...gates,
  ...flipFlops,
  ...busLogic,
  ...cmos4000,
  ...memories,
  ...processors,
  ...linears,
  ...drivers,
];
