import type { CaseOutcome } from "#lib/core/shared/index.ts";

/** How often each fault turns up, beside the others. Common practice, no source: contacts and supplies before chips. */
export const FAULT_WEIGHTS = {
  outputsDead: 11,
  outputStuck: 11,
  regulatorDead: 5,
  tantalumShort: 7,
  electrolyticDry: 8,
  socketContact: 9,
  dirtyContact: 7,
  coldJoint: 8,
  brokenTrace: 8,
  contentsLost: 7,
  memoryBad: 9,
  clockDead: 4,
  resetHeld: 5,
  wrongPart: 6,
  driverDead: 9,
  amplifierDead: 7,
  batteryLeak: 4,
} as const;

/** How cases end. Shares of a club that closes what it opens; chosen so that every outcome can be seen. */
export const OUTCOME_WEIGHTS: { outcome: CaseOutcome; weight: number }[] = [
  { outcome: "cured", weight: 80 },
  { outcome: "waiting", weight: 4 },
  { outcome: "open", weight: 4 },
  { outcome: "given-up", weight: 3 },
  { outcome: "no-fault-found", weight: 4 },
  { outcome: "works-not-proved", weight: 3 },
  { outcome: "cured-cause-unknown", weight: 2 },
];

/** Readings of what is well: spread between boards and meters. Common practice, no source. */
export const WELL = {
  /** Share of the nominal voltage by which a regulated rail lies off, one standard deviation. */
  railSpread: 0.006,
  /** An unregulated rail stands above its name, lightly loaded, by up to this share. */
  rawSurplus: 0.1,
  /** Volts that a trace and a socket cost between rail and pin, at most. */
  pinDrop: 0.03,
  /** Volts of a protection diode in a chip, and the spread between its like pins. */
  diodeDrop: 0.62,
  diodeSpread: 0.004,
  /** Peak to peak, in millivolts, on a logic rail. */
  rippleFrom: 6,
  rippleTo: 32,
} as const;

/** Rails above this are Otto's: the generated cases leave them alone (volts). */
export const HIGHEST_RAIL = 60;

/** Years over which the generated cases are spread, and how strongly the later ones prevail. */
export const YEARS = { oldest: 6, newest: 0.05, crowding: 1.25 } as const;

export const SHARES = {
  withStory: 0.55,
  withWrongTurn: 0.6,
  withSecondWrongTurn: 0.2,
  withConfirmation: 0.34,
  notHelped: 0.15,
  withComment: 0.22,
  soakProof: 0.25,
} as const;
