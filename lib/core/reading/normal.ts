/** Beyond this many standard deviations the tail is below 10^-15, less than a double can show beside 1. */
const FARTHEST = 8.3;

/**
 * Φ, the standard normal distribution function, to within 10^-15 absolute. The series has positive terms only, so nothing
 * cancels: Φ(x) = ½ + φ(x)·(x + x³/3 + x⁵/(3·5) + …). Source: G. Marsaglia, Evaluating the normal distribution,
 * Journal of Statistical Software 11 (2004) 4.
 */
export function normalShareBelow(x: number): number {
  if (Number.isNaN(x)) return NaN;
  if (x > FARTHEST) return 1;
  if (x < -FARTHEST) return 0;
  let term = x;
  let sum = x;
  for (let odd = 3; Math.abs(term) > Math.abs(sum) * 1e-17; odd += 2) {
    term *= (x * x) / odd;
    sum += term;
  }
  return 0.5 + (sum * Math.exp((-x * x) / 2)) / Math.sqrt(2 * Math.PI);
}

/**
 * Probability that the true value lies within the limits when `value` was read with standard uncertainty `uncertainty`
 * (> 0), all in one unit. Missing limits are infinitely far.
 * Source: JCGM 106:2012, clause 7: Φ((TU−y)/u) − Φ((TL−y)/u).
 */
export function probabilityWithin(
  { low = -Infinity, high = Infinity }: { low?: number; high?: number },
  value: number,
  uncertainty: number,
): number {
  const below = normalShareBelow((high - value) / uncertainty);
  const under = normalShareBelow((low - value) / uncertainty);
  return Math.max(0, below - under);
}
