/** The visitor's address as lib/cli/start.mjs found it: from the socket, or from the trusted proxy's header. */
export function clientAddress(headers: { get(name: string): string | null }): string {
  return headers.get("x-benchlore-address") ?? "unknown";
}
