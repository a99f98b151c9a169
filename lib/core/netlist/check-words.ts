import { CHECK_KINDS, TRIALS } from "../shared/index.ts";
import type { CheckKind, Lead, Trial } from "../shared/index.ts";

/** Short forms that people type at the bench, beside the names themselves. */
const KIND_WORDS: readonly (readonly [CheckKind, string])[] = [
  ["visual", "look seen"],
  ["self-test", "selftest"],
  ["continuity", "cont beep"],
  ["resistance", "ohm ohms res"],
  ["diode", "dio"],
  ["dc-voltage", "dc vdc volts voltage dcv"],
  ["ac-voltage", "ac vac acv"],
  ["current", "amps"],
  ["frequency", "freq"],
  ["level", "logic lvl"],
  ["activity", "act"],
  ["capacitance", "cap"],
  ["temperature", "temp"],
  ["waveform", "wave scope"],
  ["contents", "checksum"],
  ["node-signature", "sig signature"],
];

const KIND_OF = new Map<string, CheckKind>([
  ...CHECK_KINDS.map((kind) => [kind, kind] as const),
  ...KIND_WORDS.flatMap(([kind, words]) => words.split(" ").map((word) => [word, kind] as const)),
]);

const TRIAL_OF = new Map<string, Trial>([
  ...TRIALS.map((trial) => [trial, trial] as const),
  ["swapped", "swap"],
  ["reseated", "reseat"],
  ["piggyback", "piggy-back"],
  ["cooled", "cool"],
  ["heated", "heat"],
  ["pressed", "press"],
  ["cleaned", "clean"],
]);

const LEADS = new Map<string, Lead>([
  ["red", "red"],
  ["black", "black"],
  ["blk", "black"],
]);

/** A word in front of the reading: what it says, and how many words of the line it takes. */
export type HeadWord =
  | { says: "kind"; kind: CheckKind; words: number }
  | { says: "trial"; trial: Trial; words: number }
  | { says: "lead"; lead: Lead; words: number }
  | { says: "to"; words: number };

/** Reads the word that begins at `at`, or null when it is part of the reading. */
export function readHeadWord(words: readonly string[], at: number): HeadWord | null {
  const first = (words[at] ?? "").toLowerCase();
  const second = (words[at + 1] ?? "").toLowerCase();
  const pair = KIND_OF.get(`${first}-${second}`);
  if (pair) return { says: "kind", kind: pair, words: 2 };
  const kind = KIND_OF.get(first);
  if (kind && kind !== "trial") return { says: "kind", kind, words: 1 };
  const twoWords = TRIAL_OF.get(`${first}-${second}`);
  if (twoWords) return { says: "trial", trial: twoWords, words: 2 };
  const trial = TRIAL_OF.get(first);
  if (trial) return { says: "trial", trial, words: 1 };
  const lead = LEADS.get(first) ?? (first === "lead" ? LEADS.get(second) : undefined);
  if (lead) return { says: "lead", lead, words: first === "lead" || second === "lead" ? 2 : 1 };
  return first === "to" ? { says: "to", words: 1 } : null;
}
