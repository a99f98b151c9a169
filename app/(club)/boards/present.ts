/** What the board's actions answer to a second writer: the present version of what the form edits. */
export function presentOf<T>(present: unknown): { version: number; typed: T } | null {
  if (typeof present !== "object" || present === null || !("version" in present) || !("typed" in present)) return null;
  // The shape is that of `presentAs` in actions.ts, which is the only one to answer this form.
  return typeof present.version === "number" ? { version: present.version, typed: present.typed as T } : null;
}
