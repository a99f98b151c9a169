import { notFound } from "#lib/services/errors.ts";

/** The case number in an address. What is no number names no case. */
export function caseNumber(text: string | undefined): number {
  if (!text || !/^[1-9]\d{0,8}$/.test(text)) throw notFound(`case "${text ?? ""}"`);
  return Number(text);
}
