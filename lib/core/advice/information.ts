/** Entropy of a distribution in bits; zero shares say nothing. The shares add up to 1. */
export function entropyBits(shares: readonly number[]): number {
  return shares.reduce((bits, share) => (share > 0 ? bits - share * Math.log2(share) : bits), 0);
}

/** Shares of counts or weights; all zero where there are none. */
export function normalised(weights: readonly number[]): number[] {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.map((weight) => (total > 0 ? weight / total : 0));
}

/**
 * Expected drop in entropy, in bits, from learning the outcome. `joint[outcome][cause]` holds counts or probabilities
 * that the two come together. (Information gain as in Quinlan's ID3.)
 */
export function informationGain(joint: readonly (readonly number[])[]): number {
  const total = joint.flat().reduce((sum, weight) => sum + weight, 0);
  if (total <= 0) return 0;
  const causes = (joint[0] ?? []).map((_, cause) => joint.reduce((sum, row) => sum + (row[cause] ?? 0), 0));
  const left = joint.reduce((bits, row) => {
    const share = row.reduce((sum, weight) => sum + weight, 0) / total;
    return bits + share * entropyBits(normalised(row));
  }, 0);
  return Math.max(0, entropyBits(normalised(causes)) - left);
}

/**
 * A share estimated from few counts: (count + 1) / (known + values), Laplace's rule. With two values it is the mean of
 * Beta(1 + count, 1 + known - count), so one success alone gives 2/3 and not certainty.
 */
export function smoothedShare(count: number, known: number, values: number): number {
  return (count + 1) / (known + values);
}
