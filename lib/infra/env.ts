import { z } from "zod";

const flag = (fallback: "on" | "off") => z.enum(["on", "off"]).default(fallback);
const address = z.url({ protocol: /^https?$/, error: "must be an address that begins with http:// or https://" });

/** The configuration, as contract and README name it. Every value is checked at start. */
const Env = z.object({
  DATABASE_URL: z
    .string()
    .regex(/^postgres(ql)?:\/\//, "must begin with postgres://")
    .optional(),
  DATA_DIR: z.string().min(1).default("data"),
  AUTH_SECRET: z.string().min(32, "must have at least 32 characters").optional(),
  /** Left out: this machine, at the port it listens on. */
  SITE_URL: address.optional(),
  PORT: z.coerce.number({ error: "must be a number" }).int().min(1).max(65535).default(3000),
  LISTEN: z.string().min(1).default("127.0.0.1"),
  CLUB_DEMO: flag("on"),
  CLUB_TIME_ZONE: z.string().refine(isTimeZone, "must be a time zone such as Europe/Vienna").default("UTC"),
  TRUST_PROXY: z.coerce.number({ error: "must be a number of proxies, 0 for none" }).int().min(0).max(10).default(0),
  MAX_HEAP_MB: z.coerce.number({ error: "must be a number" }).int().min(256).optional(),
});
export type Env = Omit<z.infer<typeof Env>, "SITE_URL"> & { SITE_URL: string };

function isTimeZone(name: string): boolean {
  try {
    new Intl.DateTimeFormat("en-GB", { timeZone: name });
    return true;
  } catch {
    return false;
  }
}

/** Reads and checks the configuration. Throws one error that names every value that is wrong; an empty value is none. */
export function readEnv(source: Record<string, string | undefined>): Env {
  const given = Object.fromEntries(Object.entries(source).filter(([, value]) => value !== undefined && value !== ""));
  const read = Env.safeParse(given);
  if (read.success) return { ...read.data, SITE_URL: read.data.SITE_URL ?? `http://127.0.0.1:${read.data.PORT}` };
  const lines = read.error.issues.map((issue) => `  ${issue.path.join(".")} ${issue.message}`);
  throw new Error(`The configuration has values that cannot be used:\n${lines.join("\n")}`);
}
