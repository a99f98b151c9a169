import { clean } from "../marking/index.ts";
import { done, failed } from "../shared/index.ts";
import type { Result } from "../shared/index.ts";
import { readPlace } from "./place.ts";
import type { BoardNames, Place } from "./place.ts";

/** At most this many places stand in one run: the pins of the largest package or connector of the period, twice. */
export const LONGEST_RUN = 256;

/** `U7.11-18`, `U7.11..18`, `CN3.A1-A8`, `U7.1,3,5-7`: a part, then pins. */
const PINS =
  /^([^.\s]{1,12})[.:]([A-Z]{0,2}\d{1,4}(?:(?:-|\.\.)[A-Z]{0,2}\d{1,4})?(?:,[A-Z]{0,2}\d{1,4}(?:(?:-|\.\.)[A-Z]{0,2}\d{1,4})?)*)$/i;
const PIN_SPAN = /^([A-Z]{0,2})(\d{1,4})(?:(?:-|\.\.)([A-Z]{0,2})(\d{1,4}))?$/i;
/** `R1-R8`, `D0-D7`: the same letters twice. */
const NAMES = /^([A-Z_]{1,6})(\d{1,4})(?:-|\.\.)\1(\d{1,4})$/i;

function span(letters: string, first: number, last: number): string[] {
  const step = first <= last ? 1 : -1;
  const length = Math.min(Math.abs(last - first) + 1, LONGEST_RUN + 1);
  return Array.from({ length }, (_, at) => `${letters}${first + at * step}`);
}

function spanPins(text: string): string[] | null {
  const match = PIN_SPAN.exec(text);
  if (!match) return null;
  const [, letters = "", first = "", again = "", last] = match;
  if (last !== undefined && again !== "" && again.toUpperCase() !== letters.toUpperCase()) return null;
  return span(letters, Number(first), Number(last ?? first));
}

/** The words for the places of a run, or null when the text names one place only. */
export function runWords(text: string): string[] | null {
  const names = NAMES.exec(text);
  if (names) return span(names[1] ?? "", Number(names[2]), Number(names[3]));
  const pins = PINS.exec(text);
  if (!pins) return null;
  const words: string[] = [];
  for (const part of (pins[2] ?? "").split(",")) {
    const spanned = spanPins(part);
    if (!spanned) return null;
    words.push(...spanned.map((pin) => `${pins[1] ?? ""}.${pin}`));
  }
  return words.length > 1 ? words : null;
}

/**
 * Reads a run of places: `U7.11-18` → eight pins in the order given, `U7.18-11` backwards, `U7.1,3,5-7`, `CN3.A1-A8`,
 * `TP1-TP4`, `D0-D7`; a single place is a run of one.
 */
export function readPlaceRun(text: string, board?: BoardNames): Result<Place[], string> {
  const plain = clean(text);
  const words = runWords(plain);
  if (!words) {
    const single = readPlace(plain, board);
    return single.ok ? done([single.value]) : single;
  }
  if (words.length > LONGEST_RUN) return failed(`“${plain}” is more than ${LONGEST_RUN} places. Enter it in parts.`);
  const places: Place[] = [];
  for (const word of words) {
    const place = readPlace(word, board);
    if (!place.ok) return place;
    places.push(place.value);
  }
  return done(places);
}
