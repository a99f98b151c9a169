import { printQuantity, printValue, type Quantity } from "../quantity/index.ts";
import { inconclusive, isSame, judged, type JudgeInput, type Judgement } from "./judgement.ts";
import { inputLimits, LEVELS, OUTSIDE_SUPPLY, type LevelTable } from "./levels.ts";

/** A supply of less than this is only what the maker's figures were stated for (V); logic boards run on 5 V. */
const USUAL_SUPPLY = 5;

/**
 * A steady voltage as a logic level. Between the bands, and exactly at a limit, a d.c. meter decides nothing: a moving
 * line shows its average.
 */
export function judgeLevel(
  { technology, supply }: Pick<JudgeInput, "technology" | "supply">,
  quantity: Quantity,
  expected: "high" | "low",
): Judgement {
  const isTaken = technology === undefined || technology === "unknown";
  const family = isTaken ? "TTL" : technology;
  const table = LEVELS[family];
  if (!table) return inconclusive(`No logic levels are on record for ${family}.`);
  const unit = quantity.unit ?? "V";
  const shown = printQuantity({ ...quantity, unit });
  if (unit !== "V" || quantity.form || quantity.bound) return inconclusive(`${shown} is no exact d.c. level.`);

  const { low, high } = inputLimits(table, supply);
  const limits = { ...(expected === "high" ? { low: high } : { high: low }), unit };
  const volts = quantity.value;
  if (isOutsideSupply(volts, table, supply)) {
    const direction = volts < 0 ? "low" : "high";
    const text = `${shown} is outside of the supply and no logic level.`;
    return judged("out-of-spec", text, { limits, direction, size: "clear" });
  }
  const bands = `${isTaken ? "TTL levels taken" : `${family} levels`}: low to ${printValue(low, "V")}, high from ${printValue(high, "V")}`;
  const undecided = placeBetween(volts, low, high);
  if (undecided)
    return inconclusive(
      `${shown} is ${undecided} (${bands}): a moving line, an open input and two outputs that fight all read so; look with a scope or a logic probe.`,
      { limits },
    );
  const level = volts < low ? "low" : "high";
  if (level === expected) return judged("in-spec", `${shown} is ${level} (${bands}).`, { limits });
  const text = `${shown} is ${level} where ${expected} is expected (${bands}).`;
  return judged("out-of-spec", text, { limits, direction: level, size: "clear" });
}

function isOutsideSupply(volts: number, table: LevelTable, supply: number | undefined): boolean {
  return volts > (supply ?? Math.max(table.supply, USUAL_SUPPLY)) + OUTSIDE_SUPPLY || volts < -OUTSIDE_SUPPLY;
}

function placeBetween(volts: number, low: number, high: number): string | null {
  if (isSame(volts, low) || isSame(volts, high)) return "exactly at a limit";
  return volts > low && volts < high ? "between the levels" : null;
}
