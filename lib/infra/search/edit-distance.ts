/**
 * Optimal string alignment distance: insertions, deletions, substitutions and swaps of neighbours each cost one, and
 * no part is edited twice. Gives `most + 1` as soon as the distance is above `most`.
 */
export function alignmentDistance(a: string, b: string, most: number): number {
  const [short, long] = a.length <= b.length ? [a, b] : [b, a];
  const over = most + 1;
  if (long.length - short.length > most) return over;
  let before: number[] = [];
  let previous = Array.from({ length: short.length + 1 }, (_, at) => at);
  for (let row = 1; row <= long.length; row++) {
    const current = [row];
    let least = row;
    for (let column = 1; column <= short.length; column++) {
      const same = long.charCodeAt(row - 1) === short.charCodeAt(column - 1);
      let cost = Math.min(
        (previous[column] ?? over) + 1,
        (current[column - 1] ?? over) + 1,
        (previous[column - 1] ?? over) + (same ? 0 : 1),
      );
      const swapped =
        row > 1 &&
        column > 1 &&
        long.charCodeAt(row - 1) === short.charCodeAt(column - 2) &&
        long.charCodeAt(row - 2) === short.charCodeAt(column - 1);
      if (swapped) cost = Math.min(cost, (before[column - 2] ?? over) + 1);
      current.push(cost);
      if (cost < least) least = cost;
    }
    // A swap may still come back from two rows above, which is why both rows must be too dear.
    if (least > most && Math.min(...previous) > most) return over;
    before = previous;
    previous = current;
  }
  return Math.min(previous[short.length] ?? over, over);
}
