import { notFound } from "#lib/services/errors.ts";

/** A record's id in an address. What is no uuid names no record. */
export function recordId(text: string | undefined, what: string): string {
  if (!text || !/^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i.test(text)) throw notFound(`${what} "${text ?? ""}"`);
  return text.toLowerCase();
}
