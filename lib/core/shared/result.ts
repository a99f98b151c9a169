/** An answer or the reason why there is none: the core never throws for what a person may type. */
export type Result<T, E> = { ok: true; value: T } | { ok: false; problem: E };

export function done<T>(value: T): { ok: true; value: T } {
  return { ok: true, value };
}

export function failed<E>(problem: E): { ok: false; problem: E } {
  return { ok: false, problem };
}
