import pino from "pino";

/** One line of JSON an event, to standard output. No secrets: callers log names and ids, never bodies, cookies or tokens. */
export const log = pino({
  base: null,
  level: process.env.LOG_LEVEL ?? "info",
  timestamp: pino.stdTimeFunctions.isoTime,
});
