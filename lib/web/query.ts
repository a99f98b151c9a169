/** The search part of an address as plain values, for a schema to check. */
export function queryValues(query: URLSearchParams): Record<string, string> {
  return Object.fromEntries([...query].filter(([, value]) => value !== ""));
}
