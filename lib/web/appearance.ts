import "server-only";
import { cookies, headers } from "next/headers";

export interface Appearance {
  /** The nonce of this answer's policy, for the meta element that component libraries look for. */
  nonce: string | undefined;
  /** The member's own choice; undefined follows the device. */
  theme: "light" | "dark" | undefined;
}

/** What the root layout needs to know of the request. */
export async function appearance(): Promise<Appearance> {
  const [given, jar] = [await headers(), await cookies()];
  const theme = jar.get("theme")?.value;
  return {
    nonce: given.get("x-nonce") ?? undefined,
    theme: theme === "light" || theme === "dark" ? theme : undefined,
  };
}
