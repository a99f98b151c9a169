import type { Technology } from "../shared/index.ts";

/** Limits of a logic family in volts, with the load they hold at and where they are from. */
export type LevelTable = {
  /** VIL max, VIH min: what an input takes as low and as high. */
  inputLow: number;
  inputHigh: number;
  /** VOL max, VOH min: what an output gives at `load`. */
  outputLow: number;
  outputHigh: number;
  /** Supply that the figures are stated for, and whether the input limits move with it. */
  supply: number;
  followsSupply: boolean;
  load: string;
  source: string;
};

const TTL: LevelTable = {
  inputLow: 0.8,
  inputHigh: 2.0,
  outputLow: 0.4,
  outputHigh: 2.4,
  supply: 5,
  followsSupply: false,
  load: "16 mA low, 0.4 mA high (from memory)",
  source: "TI, standard TTL data sheets",
};
/** The low-power and fast bipolar families share these figures. */
const LS: LevelTable = {
  ...TTL,
  outputLow: 0.5,
  outputHigh: 2.7,
  load: "8 mA low, 0.4 mA high",
  source: "from memory",
};
const HC: LevelTable = {
  inputLow: 1.35,
  inputHigh: 3.15,
  outputLow: 0.1,
  outputHigh: 4.4,
  supply: 4.5,
  followsSupply: true,
  load: "20 µA",
  source: "from memory",
};
const HCT: LevelTable = {
  ...TTL,
  outputLow: 0.33,
  outputHigh: 3.84,
  supply: 4.5,
  load: "4 mA, at 85 °C",
  source: "TI CD74HCT147",
};
const CMOS_4000: LevelTable = {
  inputLow: 1.5,
  inputHigh: 3.5,
  outputLow: 0.05,
  outputHigh: 4.95,
  supply: 5,
  followsSupply: true,
  load: "1 µA",
  source: "JEDEC B-series figures, from memory",
};
/** Processors and memories said to be CMOS take TTL or CMOS levels; only what is sure under both counts as a level. */
const CMOS: LevelTable = {
  ...TTL,
  inputHigh: 3.5,
  load: "differs with the part",
  source: "common practice, no source",
};

/** Level limits per technology. Null: the family has no levels of this sort, or none that hold for every part. */
export const LEVELS: Record<Technology, LevelTable | null> = {
  TTL,
  LS,
  ALS: { ...LS, source: "from memory; VOH is stated as supply - 2 V, taken as LS" },
  S: { ...LS, load: "20 mA low, 1 mA high" },
  F: { ...LS, load: "20 mA low, 1 mA high" },
  HC,
  HCT,
  "CMOS-4000": CMOS_4000,
  CMOS,
  NMOS: { ...TTL, load: "one or two TTL inputs", source: "common practice: NMOS parts state TTL levels" },
  PMOS: null,
  ECL: null,
  bipolar: null,
  analog: null,
  unknown: null,
};

/** RS-232, whose levels stand on both sides of ground (V). Source: TI SLLA607. */
export const RS232_LEVELS = { driverSmallest: 5, driverLargest: 15, receiver: 3 } as const;

/** How far outside of the supply a line may read and still be a logic line (V). Common practice: one diode drop. */
export const OUTSIDE_SUPPLY = 0.7;

export type Level = "high" | "low" | "between";

/** The input limits that hold at `supply` volts; families that follow their supply are scaled, the others are not. */
export function inputLimits(table: LevelTable, supply = table.supply): { low: number; high: number } {
  const scale = table.followsSupply ? supply / table.supply : 1;
  return { low: table.inputLow * scale, high: table.inputHigh * scale };
}

/**
 * What an input of this technology takes a steady voltage for. `between` is no statement about the line: a d.c. meter
 * shows the average of a moving one. Null where the technology has no table.
 */
export function readLevel(volts: number, technology: Technology, supply?: number): Level | null {
  const table = LEVELS[technology];
  if (!table) return null;
  const { low, high } = inputLimits(table, supply);
  if (volts <= low) return "low";
  return volts >= high ? "high" : "between";
}

/** What an RS-232 receiver takes a voltage for; on data lines high is a space (0), low a mark (1). */
export function readRs232Level(volts: number): Level {
  if (volts >= RS232_LEVELS.receiver) return "high";
  return volts <= -RS232_LEVELS.receiver ? "low" : "between";
}

/** Noise margins (V) of a driver into a receiver at their stated supplies: low = VIL − VOL, high = VOH − VIH. */
export function noiseMargins(driver: Technology, receiver: Technology): { low: number; high: number } | null {
  const [from, into] = [LEVELS[driver], LEVELS[receiver]];
  if (!from || !into) return null;
  const round = (volts: number) => Number(volts.toFixed(6));
  return { low: round(into.inputLow - from.outputLow), high: round(from.outputHigh - into.inputHigh) };
}
