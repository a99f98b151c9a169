import type { TextToken } from "#lib/core/marking/index.ts";
import { keptTokens } from "./kept-tokens.ts";

/** Stand before and behind a match. Private-use characters that every indexed text has lost, so nobody can forge them. */
export const MARK = { before: "\uE000", behind: "\uE001" } as const;

/** Characters of a snippet, about three lines of a list. */
const SNIPPET_LENGTH = 220;

/** Characters in front of the first match that are kept for its context. */
const SNIPPET_LEAD = 60;

/** Characters of a body that are looked through for the best place. */
const SCANNED = 8_000;

/** A stretch of a text, end exclusive. */
interface Range {
  start: number;
  end: number;
}

/**
 * Where a key lies inside a code as printed: `0061` in `VQ4-0061-03`. The whole token when the key is no part of it
 * (`u12p26` of `U12.26`).
 */
function keyRange(token: TextToken, key: string): Range {
  const whole = { start: token.start, end: token.end };
  if (token.kind !== "code") return whole;
  const places: number[] = [];
  let form = "";
  for (let at = 0; at < token.text.length; at++) {
    const letter = token.text.charAt(at).toLowerCase();
    if (!/^[a-z0-9]$/.test(letter)) continue;
    form += letter;
    places.push(at);
  }
  const from = form.indexOf(key);
  const first = places[from];
  const last = places[from + key.length - 1];
  if (from < 0 || first === undefined || last === undefined) return whole;
  return { start: token.start + first, end: token.start + last + 1 };
}

/** The longest matching key says how much of a token is marked. */
function matchRange(token: TextToken, matched: ReadonlySet<string>): Range | null {
  const keys = token.keys.filter((key) => matched.has(key)).toSorted((a, b) => b.length - a.length);
  return keys[0] === undefined ? null : keyRange(token, keys[0]);
}

function matchRanges(text: string, matched: ReadonlySet<string>): Range[] {
  return keptTokens(text).flatMap((token) => matchRange(token, matched) ?? []);
}

function withMarks(text: string, ranges: readonly Range[]): string {
  let marked = "";
  let done = 0;
  for (const { start, end } of ranges) {
    marked += text.slice(done, start) + MARK.before + text.slice(start, end) + MARK.behind;
    done = end;
  }
  return marked + text.slice(done);
}

/** The text with marks around what matches. The text must have no private-use characters of its own. */
export function highlight(text: string, matched: ReadonlySet<string>): string {
  return withMarks(text, matchRanges(text, matched));
}

/** The stretch in which the most matches lie. */
function bestStart(ranges: readonly Range[]): number {
  let best = { start: ranges[0]?.start ?? 0, count: 0 };
  let behind = 0;
  for (const [at, { start }] of ranges.entries()) {
    const end = start + SNIPPET_LENGTH - SNIPPET_LEAD;
    while ((ranges[behind]?.end ?? Infinity) <= end) behind++;
    if (behind - at > best.count) best = { start, count: behind - at };
  }
  return best.start;
}

function wordStart(text: string, from: number): number {
  if (from <= 0) return 0;
  const space = text.indexOf(" ", from);
  return space < 0 || space - from > SNIPPET_LEAD ? from : space + 1;
}

function wordEnd(text: string, to: number): number {
  if (to >= text.length) return text.length;
  const space = text.lastIndexOf(" ", to);
  return space < to - SNIPPET_LEAD ? to : space;
}

/** Half a surrogate pair must not be cut off. */
function whole(text: string): string {
  return text.replace(/^[\uDC00-\uDFFF]|[\uD800-\uDBFF]$/g, "");
}

/** The part of a body around its matches, plain and with marks; its beginning when nothing in it matches. */
export function snippet(body: string, matched: ReadonlySet<string>): { plain: string; marked: string } {
  const text = body.slice(0, SCANNED).replace(/\s+/g, " ").trim();
  const start = wordStart(text, bestStart(matchRanges(text, matched)) - SNIPPET_LEAD);
  const end = wordEnd(text, start + SNIPPET_LENGTH);
  const cut = whole(text.slice(start, end));
  const lead = start > 0 ? "… " : "";
  const tail = end < text.length || body.length > SCANNED ? " …" : "";
  return { plain: `${lead}${cut}${tail}`, marked: `${lead}${highlight(cut, matched)}${tail}` };
}
