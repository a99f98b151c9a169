import type { CheckContext, CheckFacts } from "./facts.ts";
import { mannerOf, pinWords, senseOf } from "./features.ts";
import { placeKey, placeOf, placeWord } from "./place.ts";

/** How a check went, in a repairer's words: "low", "slightly low", "absent", "no activity", "in spec", "cured by swap". */
export function outcomeWords(check: CheckFacts): string {
  const trial = trialWords(check);
  if (trial !== null) return trial;
  if (senseOf(check) === "passed") return "in spec";
  if (check.state !== null) return check.state.replaceAll("-", " ");
  switch (check.size) {
    case "absent":
      return "absent";
    case "marginal":
      return check.direction === null ? "just out of spec" : `slightly ${check.direction}`;
    case "clear":
    case null:
      return check.direction ?? "out of spec";
  }
}

function trialWords({ kind, what, outcome }: CheckFacts): string | null {
  if (kind !== "trial" || outcome === undefined) return null;
  const tried = what ?? "trial";
  switch (outcome) {
    case "changed":
      return `changed by ${tried}`;
    case "no-change":
      return `not changed by ${tried}`;
    case "cured":
      return `cured by ${tried}`;
  }
}

/** Kinds that the place's own word does not already tell: "U7.28 supply low" is a voltage, "U7.28 supply diode open" is said. */
function kindWord(check: CheckFacts): string {
  switch (check.kind) {
    case "dc-voltage":
    case "level":
    case "activity":
    case "trial":
      return "";
    case "visual":
    case "self-test":
    case "continuity":
    case "resistance":
    case "diode":
    case "ac-voltage":
    case "current":
    case "ripple":
    case "frequency":
    case "capacitance":
    case "esr":
    case "temperature":
    case "waveform":
    case "contents":
    case "node-signature":
      return ` ${check.kind.replaceAll("-", " ")}`;
  }
}

/** Exact place in words: "U7.28 supply", "U7.28 supply to J1.2 resistance", "+5V". */
export function placeWords(check: CheckFacts, context: CheckContext): string {
  const { part, pin } = placeOf(check.at);
  const chip = context.chipAt(part);
  const pinText = chip === null || pin === null ? "" : ` ${pinWords(chip, pin)}`;
  const to = check.to === undefined || check.to === "" ? "" : ` to ${placeKey(check.to)}`;
  return `${placeKey(check.at)}${pinText}${to}${kindWord(check)}`;
}

/** The place by chip and role: "supply of 27C256"; a rail or a net goes by its own name. */
export function roleWords(check: CheckFacts, context: CheckContext): string {
  const { part, pin } = placeOf(check.at);
  const chip = context.chipAt(part);
  if (chip === null) return `${placeKey(check.at)}${kindWord(check)}`;
  const role = pinWords(chip, pin);
  return `${role === "" ? chip.name : `${role} of ${chip.name}`}${kindWord(check)}`;
}

/** The place as a plain kind: "supply at a chip", "a rail". */
export function kindWords(check: CheckFacts, context: CheckContext): string {
  const { part, pin } = placeOf(check.at);
  const chip = context.chipAt(part);
  if (chip === null) return `a ${placeWord(check.at)}${kindWord(check)}`;
  const role = pin === null ? "unknown" : chip.pinRole(pin);
  return `${role === "unknown" ? "a pin of a chip" : `${role} at a chip`}${kindWord(check)}`;
}

/** ": 0.8 V here" where a reading was noted. */
export function readingHere(check: CheckFacts): string {
  return check.measured === undefined || check.measured === "" ? "" : `: ${check.measured} here`;
}

/** `mannerOf` without size, for telling whether two failed checks failed alike. */
export function failedAlike(a: CheckFacts, b: CheckFacts): boolean {
  return mannerOf(a) === mannerOf(b);
}
