import { clean } from "../marking/index.ts";
import { done, failed } from "../shared/index.ts";
import type { CheckKind, Lead, Result, Trial } from "../shared/index.ts";
import { readHeadWord } from "./check-words.ts";
import { readPlaceRun } from "./place-run.ts";
import { printPlace, readPlace } from "./place.ts";
import type { BoardNames, Place } from "./place.ts";

/** One check of a typed line. The reading stays as text; what it means is for the reader of quantities. */
export interface CheckEntry {
  place: Place;
  /** The one spelling of the place. */
  at: string;
  /** The second point, in its one spelling; left out means ground or that none was typed. */
  to?: string;
  /** Left out when no kind was typed: the reading may show it. */
  kind?: CheckKind;
  trial?: Trial;
  lead?: Lead;
  measured: string;
}

/** Characters of a line that are read: far above the longest run. */
const LONGEST_LINE = 4_000;

const UNITS = new Set(
  "v mv kv uv a ma ua ohm ohms kohm kohms mohm k m r hz khz mhz f uf nf pf s ms us ns c °c deg degrees w % x".split(
    " ",
  ),
);
const NUMBER = /^[<>~≈]?[+-]?\d+(?:[.,]\d+)?$/;
/** Readings of two words. */
const PHRASES = new Set([
  "stuck low",
  "stuck high",
  "no activity",
  "no change",
  "not taken",
  "no reading",
  "over load",
  "very low",
]);
/** Stands for a place of a run that was not measured. */
const SKIPPED = new Set(["-", "--", "skip"]);
/** Readings of these are sentences, so no further word is taken for a lead or a second point. */
const IN_WORDS: ReadonlySet<CheckKind> = new Set<CheckKind>(["visual", "self-test"]);
const AN_EXAMPLE = "Write for example: U7.14 4.87 V";

interface Head {
  kind?: CheckKind;
  trial?: Trial;
  lead?: Lead;
  to?: string;
}

function splitWords(line: string): string[] {
  // A comma parts readings only where a space follows: 4,87 is one number.
  return line
    .replace(/,(?=\s|$)/g, " ")
    .split(/\s+/)
    .filter((word) => word !== "");
}

/** How many words at the front name the place: `+5 V`, `U7 pin 14`, `U7 pins 11-18` take more than one. */
function takePlaceWords(words: readonly string[]): { text: string; rest: string[] } {
  const [first = "", second = "", third = ""] = words;
  const tidy = first.replace(/[:=]$/, "");
  if (/^(?:pins?|legs?)$/i.test(second) && third !== "") {
    return { text: `${tidy}.${third.replace(/[:=]$/, "")}`, rest: words.slice(3) };
  }
  if (/^[+-]?\d{1,3}(?:[.,]\d)?$/.test(first) && /^v$/i.test(second))
    return { text: `${first}V`, rest: words.slice(2) };
  const equals = first.indexOf("=");
  if (equals > 0 && equals < first.length - 1) {
    return { text: first.slice(0, equals), rest: [first.slice(equals + 1), ...words.slice(1)] };
  }
  const rest = words.slice(1);
  return { text: tidy, rest: /^[:=]$/.test(rest[0] ?? "") ? rest.slice(1) : rest };
}

/** Reads the words between the place and the reading: kind, trial, lead, second point, in any order, each once. */
function takeHead(
  words: readonly string[],
  board: BoardNames | undefined,
): Result<{ head: Head; rest: string[] }, string> {
  const head: Head = {};
  let at = 0;
  while (head.kind === undefined || !IN_WORDS.has(head.kind)) {
    const word = readHeadWord(words, at);
    if (!word || at + word.words > words.length) break;
    if (word.says === "to") {
      const { text, rest } = takePlaceWords(words.slice(at + 1));
      if (head.to !== undefined) break;
      const point = readPlace(text, board);
      if (!point.ok) return failed(`After “to” stands no place. ${point.problem}`);
      head.to = printPlace(point.value);
      at = words.length - rest.length;
      continue;
    }
    if (word.says === "lead") {
      if (head.lead !== undefined) break;
      head.lead = word.lead;
    } else if (head.kind !== undefined) {
      break;
    } else if (word.says === "trial") {
      head.kind = "trial";
      head.trial = word.trial;
    } else {
      head.kind = word.kind;
    }
    at += word.words;
  }
  if (head.lead !== undefined) head.kind ??= "diode";
  return done({ head, rest: words.slice(at) });
}

/** Parts the readings of a run: numbers keep the unit behind them, phrases of two words stay together. */
function splitReadings(words: readonly string[]): string[] {
  if (words.some((word) => word.includes(";"))) {
    return words
      .join(" ")
      .split(";")
      .map((reading) => reading.trim())
      .filter((reading) => reading !== "");
  }
  const readings: string[] = [];
  for (let at = 0; at < words.length; at++) {
    const word = words[at] ?? "";
    const next = words[at + 1];
    const together =
      next !== undefined &&
      ((NUMBER.test(word) && UNITS.has(next.toLowerCase())) || PHRASES.has(`${word} ${next}`.toLowerCase()));
    readings.push(together ? `${word} ${next}` : word);
    if (together) at++;
  }
  return readings;
}

function countProblem(placeText: string, places: number, readings: readonly string[]): string {
  const listed = readings.length > 12 ? `${readings.slice(0, 12).join(", ")}, …` : readings.join(", ");
  return (
    `${placeText} is ${places} places, but ${readings.length} ${readings.length === 1 ? "reading follows" : "readings follow"}` +
    `: ${listed}. Give one reading for each; write - for a place that was not measured.`
  );
}

function missingReading(placeText: string, { trial }: Head): string {
  return trial === undefined
    ? `${placeText} has no reading. ${AN_EXAMPLE}`
    : `What happened after “${trial}” at ${placeText}? Write changed, no change or cured behind it.`;
}

function entry(place: Place, { to, kind, trial, lead }: Head, measured: string): CheckEntry {
  return {
    place,
    at: printPlace(place),
    ...(to !== undefined && { to }),
    ...(kind !== undefined && { kind }),
    ...(trial !== undefined && { trial }),
    ...(lead !== undefined && { lead }),
    measured,
  };
}

/**
 * Reads one line as it is typed at the bench: place, then in any order kind, lead (`red`, `black`) and second point
 * (`to GND`), then the reading. `U7.14 4.87`, `U7.14 dc 4.87V`, `U7.3 diode red 0.61`, `U7.11-18 diode 612 610 …`
 * (one reading for each place), `U7.19 stuck low`. The problem is a sentence that says what to write.
 */
export function readCheckRun(line: string, board?: BoardNames): Result<CheckEntry[], string> {
  if (line.length > LONGEST_LINE) return failed("This line is too long. Enter it in parts, one run of pins each.");
  const words = splitWords(clean(line));
  if (words.length === 0) return failed(`Nothing was typed. ${AN_EXAMPLE}`);
  const { text, rest: afterPlace } = takePlaceWords(words);
  const places = readPlaceRun(text, board);
  if (!places.ok) return places;
  const taken = takeHead(afterPlace, board);
  if (!taken.ok) return taken;
  const { head, rest } = taken.value;
  const [only] = places.value;
  if (rest.length === 0) return failed(missingReading(text, head));
  if (only && places.value.length === 1) return done([entry(only, head, rest.join(" "))]);
  const readings = splitReadings(rest);
  if (readings.length !== places.value.length) return failed(countProblem(text, places.value.length, readings));
  const entries = places.value.flatMap((place, at) => {
    const measured = readings[at] ?? "";
    return SKIPPED.has(measured.toLowerCase()) ? [] : [entry(place, head, measured)];
  });
  return entries.length > 0 ? done(entries) : failed(`${text} has only skipped places. ${AN_EXAMPLE}`);
}
