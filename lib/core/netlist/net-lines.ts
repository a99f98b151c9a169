import { readRail } from "../marking/index.ts";
import { NET_ROLES, type NetRole } from "../shared/index.ts";
import { runWords } from "./place-run.ts";

export interface NetLine {
  /** Counted from 1. */
  line: number;
  name: string;
  role: NetRole;
  /** `U7.14`, upper case. */
  pins: string[];
}

export interface LineProblem {
  line: number;
  message: string;
}

export interface NetLines {
  nets: NetLine[];
  problems: LineProblem[];
}

/** Lines that are read; far above any board of the period. */
const MOST_LINES = 8_000;

const ROLE_WORDS: ReadonlyMap<string, NetRole> = new Map<string, NetRole>([
  ...NET_ROLES.map((role): [string, NetRole] => [role, role]),
  ["supply", "power"],
  ["gnd", "ground"],
  ["not-known", "unknown"],
]);
const PIN = /^[^.\s:,]{1,20}\.[^.\s:,]{1,20}$/;

/**
 * Reads nets, one a line: name, role, colon, pins: `CLK clock: U1.6 U7.37 J2.31`. Commas between pins are fine, a run is
 * `U7.11-18`. A role that is left out is guessed for ground and rails. A line of pins alone goes on with the net above;
 * empty lines and lines that begin with `#` are skipped. Never throws; each line that cannot be read is named.
 */
export function readNetLines(text: string): NetLines {
  const read: NetLines = { nets: [], problems: [] };
  const lines = text.split(/\r\n|[\n\r]/);
  for (const [index, raw] of lines.slice(0, MOST_LINES).entries()) {
    const given = raw.trim();
    if (given === "" || given.startsWith("#")) continue;
    const problem = takeLine(read.nets, index + 1, given);
    if (problem !== null) read.problems.push({ line: index + 1, message: problem });
  }
  if (lines.length > MOST_LINES)
    read.problems.push({ line: MOST_LINES + 1, message: `Only the first ${MOST_LINES} lines were read.` });
  return read;
}

/** Adds what a line says to the nets; answers what is wrong with it. */
function takeLine(nets: NetLine[], line: number, text: string): string | null {
  const colon = /:(?=\s|$)/.exec(text);
  const above = nets.at(-1);
  if (!colon) {
    const more = readPins(text);
    if (!above || typeof more === "string")
      return "No colon was found. Write name, role, colon, pins, for example: CLK clock: U1.6 U7.37";
    above.pins.push(...more);
    return null;
  }
  const { name, role } = readHead(text.slice(0, colon.index).trim());
  if (name === "") return "The net has no name. Write it first, for example: CLK clock: U1.6 U7.37";
  const pins = readPins(text.slice(colon.index + 1));
  if (typeof pins === "string") return pins;
  nets.push({ line, name, role, pins });
  return null;
}

function readHead(head: string): { name: string; role: NetRole } {
  const split = /^(.*\S)\s+(\S+)$/.exec(head);
  const role = split && ROLE_WORDS.get(split[2]?.toLowerCase() ?? "");
  return split && role ? { name: split[1] ?? "", role } : { name: head, role: usualRole(head) };
}

function usualRole(name: string): NetRole {
  if (/^(?:gnd|ground)$/i.test(name)) return "ground";
  return readRail(name) ? "power" : "unknown";
}

/** The pins, or what is wrong with one of them. */
function readPins(text: string): string[] | string {
  const pins: string[] = [];
  for (const word of text.split(/[\s,;]+/).filter((one) => one !== "")) {
    const run = runWords(word) ?? [word];
    const wrong = run.find((one) => !PIN.test(one));
    if (wrong !== undefined) return `“${wrong.slice(0, 40)}” is no pin. Write part, point, pin, for example U7.14.`;
    pins.push(...run.map((one) => one.toUpperCase()));
  }
  return pins;
}

/** Nets as lines that `readNetLines` takes. */
export function printNetLines(nets: readonly Omit<NetLine, "line">[]): string {
  return nets.map(({ name, role, pins }) => `${name} ${role}: ${pins.join(" ")}`.trimEnd()).join("\n");
}
