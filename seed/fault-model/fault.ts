import type { CureAction, Failure } from "#lib/core/shared/index.ts";
import type { Bench, Probe } from "./checks.ts";
import type { BoardView } from "./board-view.ts";

/** What the owner of the machine notices; `coil` is whatever a driver drives: a coil, a lamp, a relay, a bell. */
export type Effect = "dead" | "garbage" | "partial" | "intermittent" | "hot" | "sound" | "settings" | "coil" | "hum";

/** One fault in one place, told by the readings that it makes. */
export interface Told {
  effect: Effect;
  /** In the order in which they were made. Those with a `cured` reading failed. */
  probes: Probe[];
  at: string;
  chip?: string;
  failure: Failure;
  cure: { action: CureAction; how: string; fits?: string };
  /** Sentence about how the part failed. */
  cause: string;
  titles: readonly string[];
  lessons: readonly string[];
  /** Sentences that tell how it was found, any of which may be left out. */
  tale: readonly string[];
  /** Word of the fault, for the case's key. */
  word: string;
}

export type Tell = (bench: Bench) => Told;

/** A class of faults: every place on a board where it can happen. */
export interface FaultClass {
  weight: number;
  places: (view: BoardView) => Tell[];
}
