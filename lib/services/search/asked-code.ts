import { looksLikeCode, queryTerms } from "#lib/core/marking/index.ts";

/** The query as a code, where all of it reads as one (`74LS244`, `VQ4 0061`); null for words, places and readings. */
export function askedCode(q: string): string | null {
  const text = q.trim().replace(/\s+/g, " ");
  if (text === "" || text.length > 80) return null;
  if (!text.includes(" ")) return looksLikeCode(text) ? text : null;
  const { terms, joined } = queryTerms(text);
  const whole = joined.find(({ from, to }) => from === 0 && to === terms.length);
  // Lower-case words beside a number (`3 beeps`) are words; a print is in capitals, or has a digit in every piece.
  const isPrint = text === text.toUpperCase() || text.split(" ").every((piece) => /\d/.test(piece));
  return whole && isPrint && looksLikeCode(whole.whole) ? text : null;
}
