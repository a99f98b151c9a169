import "server-only";
import { runtime } from "./runtime.ts";

/** The club's time zone, in which every page writes its times. */
export async function clubZone(): Promise<string> {
  return (await runtime()).env.CLUB_TIME_ZONE;
}

/** The club's public address, without a slash at the end. */
export async function siteAddress(): Promise<string> {
  return (await runtime()).env.SITE_URL.replace(/\/$/, "");
}
