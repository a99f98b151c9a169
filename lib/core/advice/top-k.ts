export interface Ranked {
  case: number;
  score: number;
}

/** True where `a` stands above `b`: higher score, then smaller case number, so that no order of arrival can show. */
export function ranksAbove(a: Ranked, b: Ranked): boolean {
  return a.score > b.score || (a.score === b.score && a.case < b.case);
}

/** The best `k` of what is offered, best first. Made for small `k`: an offer that does not enter costs one comparison. */
export function createTopK(k: number) {
  const best: Ranked[] = [];
  return {
    /** Whether an item of this rank would enter now. */
    accepts(item: Ranked): boolean {
      const last = best[best.length - 1];
      return k > 0 && (best.length < k || (last !== undefined && ranksAbove(item, last)));
    },
    add(item: Ranked): void {
      let low = 0;
      let high = best.length;
      while (low < high) {
        const middle = (low + high) >>> 1;
        const other = best[middle];
        if (other !== undefined && ranksAbove(other, item)) low = middle + 1;
        else high = middle;
      }
      best.splice(low, 0, item);
      if (best.length > k) best.pop();
    },
    items: (): Ranked[] => best,
  };
}
