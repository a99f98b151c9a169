import type { LineProblem } from "./net-lines.ts";

/** A pin of a connector: its number and what it is called. */
export interface ContactLine {
  number: string;
  name: string;
}

export interface ContactLines {
  contacts: ContactLine[];
  problems: LineProblem[];
}

/** Lines that are read, and pins of one run; the largest connectors of the period have some hundred. */
const MOST_LINES = 1_000;
const LONGEST_RUN = 100;

const NUMBER = /^[A-Z]{0,2}\d{0,4}$/i;
const RUN = /^([A-Z]{0,2})(\d{1,4})(?:-|\.\.)\1(\d{1,4})$/i;
/** Behind a run, names may count along: `D0-7` or `D0-D7`. */
const NAMED_RUN = /^(\D*)(\d{1,3})(?:-|\.\.)(?:\1)?(\d{1,3})(\D*)$/;

/**
 * Reads the pins of a connector, one a line: `1 GND`, `A12 /RD`, `5` (without a name). A run is one line: `3-10 D0-7`
 * counts along, `11-14 GND` names four alike. Never throws; each line that cannot be read is named.
 */
export function readContactLines(text: string): ContactLines {
  const read: ContactLines = { contacts: [], problems: [] };
  for (const [index, raw] of text
    .split(/\r\n|[\n\r]/)
    .slice(0, MOST_LINES)
    .entries()) {
    const given = raw.trim();
    if (given === "" || given.startsWith("#")) continue;
    const contacts = contactsOf(given);
    if (typeof contacts === "string") read.problems.push({ line: index + 1, message: contacts });
    else read.contacts.push(...contacts);
  }
  return read;
}

function contactsOf(text: string): ContactLine[] | string {
  const [, first = "", rest = ""] = /^(\S+?)[:=,;]?(?:\s+(.*))?$/.exec(text) ?? [];
  const name = rest.replace(/^[-=:]\s+/, "").trim();
  const run = RUN.exec(first);
  if (!run) {
    if (!NUMBER.test(first)) return `“${first.slice(0, 40)}” is no pin number. Begin with it, for example: 1 GND`;
    return [{ number: first.toUpperCase(), name }];
  }
  const [, letters = "", from = "", to = ""] = run;
  const count = Number(to) - Number(from) + 1;
  if (count < 2 || count > LONGEST_RUN)
    return `${first} is no run of 2 to ${LONGEST_RUN} pins. Write the lower number first.`;
  const names = countedNames(name, count);
  if (names === null) return `${first} is ${count} pins, but “${name.slice(0, 40)}” counts otherwise.`;
  return names.map((one, index) => ({ number: `${letters.toUpperCase()}${Number(from) + index}`, name: one }));
}

/** A name for each pin of a run; null where they count differently. */
function countedNames(name: string, count: number): string[] | null {
  const run = NAMED_RUN.exec(name);
  if (!run) return Array.from({ length: count }, () => name);
  const [, before = "", from = "", to = "", after = ""] = run;
  const step = Number(to) >= Number(from) ? 1 : -1;
  if (Math.abs(Number(to) - Number(from)) + 1 !== count) return null;
  return Array.from({ length: count }, (_, index) => `${before}${Number(from) + index * step}${after}`);
}

/** Pins of a connector as lines that `readContactLines` takes. */
export function printContactLines(contacts: readonly ContactLine[]): string {
  return contacts.map(({ number, name }) => `${number} ${name}`.trimEnd()).join("\n");
}
