import { hash, verify } from "@node-rs/argon2";

/** argon2id, 19 MiB, two passes: OWASP Password Storage Cheat Sheet's first recommendation; about 36 ms on two cores. */
const COST = { memoryCost: 19 * 1024, timeCost: 2, parallelism: 1 } as const;

export function hashPassword(password: string): Promise<string> {
  return hash(password, COST);
}

let decoy: Promise<string> | undefined;

/** Whether the password is right. A member without a password takes as long to refuse as one with another password. */
export async function checkPassword(stored: string | null | undefined, password: string): Promise<boolean> {
  decoy ??= hashPassword("nobody has this password");
  const right = await verify(stored ?? (await decoy), password);
  return right && stored !== null && stored !== undefined;
}
