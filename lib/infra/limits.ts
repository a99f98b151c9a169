import type pg from "pg";
import { RateLimiterPostgres, RateLimiterRes } from "rate-limiter-flexible";

/** How often something may be tried. Counted in the database, so that several processes count together. */
export const LIMITS = {
  /** Wrong passwords for one account. Origin: OWASP Authentication Cheat Sheet asks for a limit by account; the number is ours. */
  signInAccount: { points: 10, duration: 15 * 60 },
  /** Wrong passwords from one address. Higher: a whole club sits behind one address. */
  signInAddress: { points: 50, duration: 15 * 60 },
  /** Links and invitations tried from one address. */
  linkAddress: { points: 30, duration: 15 * 60 },
} as const;
export type LimitName = keyof typeof LIMITS;

export interface Limits {
  /** Takes one try. Answers the seconds to wait where none is left, else null. */
  take(name: LimitName, key: string): Promise<number | null>;
  /** Gives all tries back, after a success. */
  forgive(name: LimitName, key: string): Promise<void>;
}

export function databaseLimits(pool: pg.Pool): Limits {
  const limiters = new Map<LimitName, RateLimiterPostgres>();
  const limiterOf = (name: LimitName) => {
    const made = limiters.get(name);
    if (made) return made;
    const limiter = new RateLimiterPostgres({
      storeClient: pool,
      storeType: "client",
      tableName: "rate_limit",
      tableCreated: true,
      keyPrefix: name,
      ...LIMITS[name],
    });
    limiters.set(name, limiter);
    return limiter;
  };
  return {
    async take(name, key) {
      try {
        await limiterOf(name).consume(key);
        return null;
      } catch (refused) {
        if (refused instanceof RateLimiterRes) return Math.ceil(refused.msBeforeNext / 1000);
        throw refused;
      }
    },
    async forgive(name, key) {
      await limiterOf(name).delete(key);
    },
  };
}
