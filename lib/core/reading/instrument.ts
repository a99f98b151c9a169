import type { CheckKind } from "../shared/index.ts";
import type { Quantity, Unit } from "../quantity/index.ts";

/** One line of a maker's accuracy table: ±(percent of reading + digits × resolution) up to `upTo`. */
export type InstrumentRange = {
  unit: Unit;
  /** Kinds of check that the line is for, where one unit has several lines (d.c. and a.c.); none: all. */
  kinds?: readonly CheckKind[];
  /** Full scale in the base unit; none: no limit stated. */
  upTo?: number;
  percent: number;
  digits: number;
  /** One step of the last digit on this range, in the base unit. */
  resolution: number;
};

/** A meter, counter or oscilloscope as its maker describes it. */
export type Instrument = { ranges: readonly InstrumentRange[] };

/** The smallest range that holds the value, as an auto-ranging meter chooses it; null where none does. */
export function rangeFor(instrument: Instrument, quantity: Quantity, kind: CheckKind): InstrumentRange | null {
  const size = Math.abs(quantity.value);
  return instrument.ranges
    .filter((range) => range.unit === quantity.unit && (range.kinds?.includes(kind) ?? true))
    .filter((range) => size <= (range.upTo ?? Infinity))
    .reduce<InstrumentRange | null>(
      (best, range) => (best === null || (range.upTo ?? Infinity) < (best.upTo ?? Infinity) ? range : best),
      null,
    );
}

/** The largest error that the maker allows at this value (≥ 0, base unit). */
export function largestError(range: InstrumentRange, value: number): number {
  return Math.abs(value) * (range.percent / 100) + range.digits * range.resolution;
}

/** Standard uncertainty of an error that lies anywhere within ±`largest` alike: a/√3 (JCGM 100:2008, 4.3.7). */
export function standardUncertainty(largest: number): number {
  return largest / Math.sqrt(3);
}
