/** A repeatable source of chance: the same seed gives the same numbers on every machine. */
export interface Random {
  /** From 0 (included) to 1 (not included). */
  next: () => number;
  between: (low: number, high: number) => number;
  /** A whole number, both ends included. */
  whole: (low: number, high: number) => number;
  /** About 0 with this standard deviation, cut at three of them. */
  noise: (deviation: number) => number;
  chance: (share: number) => boolean;
  /** One of the list; throws where the list is empty. */
  pick: <T>(list: readonly T[]) => T;
  /** Some of the list, in its order. */
  some: <T>(list: readonly T[], count: number) => T[];
  weighted: <T extends { weight: number }>(list: readonly T[]) => T;
}

/** 32-bit generator "mulberry32" (public domain, Tommy Ettinger): small, fast, good enough for invented readings. */
export function randomFrom(seed: number): Random {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
  const between = (low: number, high: number): number => low + next() * (high - low);
  const whole = (low: number, high: number): number => Math.floor(between(low, high + 1));
  const pick = <T>(list: readonly T[]): T => {
    const found = list[Math.floor(next() * list.length)];
    if (found === undefined) throw new Error("Nothing to choose from");
    return found;
  };
  return {
    next,
    between,
    whole,
    pick,
    chance: (share) => next() < share,
    noise: (deviation) => {
      // Twelve even numbers add up to a good bell with variance 1.
      let sum = -6;
      for (let n = 0; n < 12; n += 1) sum += next();
      return deviation * Math.max(-3, Math.min(3, sum));
    },
    some: (list, count) => {
      const left = list.map((_, index) => index);
      while (left.length > count) left.splice(Math.floor(next() * left.length), 1);
      return left.flatMap((index) => list.slice(index, index + 1));
    },
    weighted: (list) => {
      let rest = next() * list.reduce((sum, one) => sum + one.weight, 0);
      const found = list.find((one) => (rest -= one.weight) < 0);
      return found ?? pick(list);
    },
  };
}
