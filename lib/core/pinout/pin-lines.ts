import { PIN_ROLES, PIN_TYPES, type PinRole, type PinType } from "../shared/index.ts";
import { pinRoles, supplyVolts } from "./pin-role.ts";

export interface LinedPin {
  number: string;
  /** Without a bar. */
  name: string;
  type: PinType;
  role: PinRole;
  activeLow: boolean;
  /** Volts, for supply pins, where told. */
  supply: number | null;
  unit: number;
}

export interface PinLines {
  pins: LinedPin[];
  /** Lines that could not be read, counted from 1. */
  problems: { line: number; reason: string }[];
}

/** Short ways of writing a type, by common practice (no source). */
const TYPE_WORDS: ReadonlyMap<string, PinType> = new Map<string, PinType>([
  ...PIN_TYPES.map((type): [string, PinType] => [type, type]),
  ["in", "input"],
  ["out", "output"],
  ["bi", "bidirectional"],
  ["io", "bidirectional"],
  ["i/o", "bidirectional"],
  ["3s", "three-state"],
  ["oc", "open-collector"],
  ["od", "open-collector"],
  ["oe", "open-emitter"],
  ["pas", "passive"],
  ["pwr", "power-in"],
  ["power", "power-in"],
  ["reg", "power-out"],
  ["nc", "no-connect"],
  ["dnc", "do-not-connect"],
]);
const ROLE_WORDS: ReadonlyMap<string, PinRole> = new Map(PIN_ROLES.map((role) => [role, role]));

/** Lines that are read; the largest packages of the trade have some hundred pins. */
const MOST_LINES = 4_000;
/** Pins of one run. */
const LONGEST_RUN = 64;

/**
 * Reads a pin table with one pin a line: number, name, then in any order the type, the role and the volts of a supply:
 * `1 A0 input address`, `19 /OE in enable`, `20 VCC power-in supply 5`. A slash or a tilde before the name means active
 * low; a run of pins is one line: `11-18 D0-7 bi data`. A word that is both (`input`) is the type first and the role second.
 * A type that is left out is unspecified, a role is guessed from the name. Empty lines and lines that begin with `#` are
 * skipped. Never throws; each line that cannot be read is named.
 */
export function readPinLines(text: string): PinLines {
  const read: PinLines = { pins: [], problems: [] };
  const bare: BarePin[] = [];
  const lines = text.split(/\r\n|\r|\n/).slice(0, MOST_LINES + 1);
  for (const [index, given] of lines.entries()) {
    const line = given.trim();
    if (line === "" || line.startsWith("#")) continue;
    const pins = index < MOST_LINES ? pinsOfLine(line) : `at most ${MOST_LINES} lines are read`;
    if (typeof pins === "string") read.problems.push({ line: index + 1, reason: pins });
    else {
      const twice = pins.find((pin) => bare.some((other) => other.number === pin.number));
      if (twice) read.problems.push({ line: index + 1, reason: `pin ${twice.number} stands here twice` });
      else bare.push(...pins);
    }
  }
  const guessed = pinRoles(bare);
  read.pins = bare.map(({ role, supply, ...pin }, index) => {
    const known = role ?? guessed[index] ?? "unknown";
    return { ...pin, role: known, supply: supply ?? (known === "supply" ? supplyVolts(pin.name) : null), unit: 1 };
  });
  return read;
}

type BarePin = Omit<LinedPin, "role" | "unit"> & { role: PinRole | null };

function pinsOfLine(line: string): BarePin[] | string {
  const [numberWord = "", nameWord = "", ...rest] = line.split(/[\s,;]+/).filter((word) => word !== "");
  const numbers = spread(numberWord);
  if (numbers === null) return `“${numberWord}” is no pin number`;
  if (nameWord === "") return `pin ${numberWord} has no name; write - for none`;
  const activeLow = /^[/~!]./.test(nameWord);
  const bareName = activeLow ? nameWord.slice(1) : nameWord;
  const names = numbers.length === 1 ? [bareName === "-" ? "" : bareName] : runOfNames(bareName, numbers.length);
  if (names === null) return `${numbers.length} pins and not as many names in “${nameWord}”`;
  const told = readWords(rest);
  if (typeof told === "string") return told;
  return numbers.map((number, index) => ({ number, name: names[index] ?? "", activeLow, ...told }));
}

function readWords(words: readonly string[]): Pick<BarePin, "type" | "role" | "supply"> | string {
  const told: { type?: PinType; role?: PinRole; supply?: number } = {};
  for (const word of words) {
    const plain = word.toLowerCase();
    const type = TYPE_WORDS.get(plain);
    const role = ROLE_WORDS.get(plain);
    const volts = /^([+-]?\d{1,4}(?:\.\d{1,3})?)v?$/.exec(plain)?.[1];
    if (type !== undefined && told.type === undefined) told.type = type;
    else if (role !== undefined && told.role === undefined) told.role = role;
    else if (volts !== undefined && told.supply === undefined) told.supply = Number(volts);
    else return `“${word}” is no type, role or voltage of a pin`;
  }
  return { type: told.type ?? "unspecified", role: told.role ?? null, supply: told.supply ?? null };
}

/** `11-18` → 11 … 18; counts down where the second number is the smaller. Null where it is no pin number. */
function spread(word: string): string[] | null {
  const run = /^([A-Za-z]{0,2})(\d{1,4})-(\d{1,4})$/.exec(word);
  if (!run) return /^[A-Za-z]{0,3}\d{0,4}$/.test(word) && word !== "" ? [word] : null;
  return counted(run[1] ?? "", Number(run[2]), Number(run[3]));
}

function runOfNames(word: string, count: number): string[] | null {
  const run = /^(.*?)(\d{1,4})-(\d{1,4})$/.exec(word);
  if (!run) return Array.from({ length: count }, () => (word === "-" ? "" : word));
  const names = counted(run[1] ?? "", Number(run[2]), Number(run[3]));
  return names?.length === count ? names : null;
}

function counted(prefix: string, from: number, to: number): string[] | null {
  const count = Math.abs(to - from) + 1;
  if (count > LONGEST_RUN) return null;
  const step = to < from ? -1 : 1;
  return Array.from({ length: count }, (_, index) => `${prefix}${from + index * step}`);
}

/** A pin table as `readPinLines` reads it, one pin a line. */
export function printPinLines(pins: readonly Omit<LinedPin, "unit">[]): string {
  return pins
    .map(({ number, name, type, role, activeLow, supply }) => {
      const words = [number, `${activeLow ? "/" : ""}${name.replace(/[\s,;]+/g, "_") || "-"}`, type, role];
      return [...words, ...(supply === null ? [] : [String(supply)])].join(" ");
    })
    .join("\n");
}
