import type { CheckContext, CheckFacts, ChipAtPlace, KnownCase } from "./facts.ts";
import { hash32 } from "./hash.ts";
import { placeKey, placeOf, placeWord, railName } from "./place.ts";
import { DEPTH_WEIGHTS, MATCH_WEIGHTS, PLACE_GRAINS } from "./weights.ts";

/**
 * Version of the feature code, kept beside stored features: they are remade where it differs. Raise it with every
 * change to what a check's features are, to their spelling, or to the hash.
 */
export const FEATURE_VERSION = 1;

export type FeatureDepth = keyof typeof DEPTH_WEIGHTS;

/** Which part of a failed check's outcome a feature keeps: that it failed, on which side or how, and how badly. */
export type FeatureGrain = "failed" | "manner" | "size";

export interface Feature {
  depth: FeatureDepth;
  sign: "failed" | "passed";
  grain: FeatureGrain;
  /** What it is about, in words that are also its identity: `board X | U7.28 dc-voltage`. */
  subject: string;
  /** How it went: `low`, `low-clear`, `noise`; empty where only failed or passed is kept. */
  outcome: string;
}

/** A feature of a query, ready for the index. */
export interface WeightedFeature {
  id: number;
  /** Counts for a case that has this feature. Times rarity. */
  weight: number;
  /** Counts against a case that has the feature of opposite sign (`id ^ 1`). Times rarity of that. */
  against: number;
}

/**
 * A feature as an integer that fits the database's 32-bit `integer`. The low bit is the sign (1 = passed), so that the
 * opposite of "U7.28 failed" is one exclusive-or away; the other 31 bits are a hash of depth, subject and outcome.
 *
 * Two different features may fall on one integer. A club of 1,000 boards and 200 places has some 600,000 of them: the
 * chance that a given feature of a query meets a stranger is 600,000 / 2^31, about 1 in 3,600. It then adds one wrong
 * match at one depth to a score that sums dozens; explanations are made from the facts and never show it.
 */
export function featureId(feature: Feature): number {
  const hash = hash32(`${feature.depth}\n${feature.subject}\n${feature.outcome}`);
  return feature.sign === "passed" ? hash | 1 : hash & ~1;
}

/** A feature in words, for lists of reasons: "U7.28 dc-voltage low-clear (board X)". */
export function describeFeature(feature: Feature): string {
  const how = feature.sign === "passed" ? "in spec" : feature.outcome === "" ? "failed" : feature.outcome;
  switch (feature.depth) {
    case "place": {
      const [board, what] = feature.subject.split(" | ");
      return `${what ?? ""} ${how} (${board ?? ""})`;
    }
    case "role":
    case "kind":
      return `${feature.subject} ${how}`;
    case "part": {
      const [board, part] = feature.subject.split(" | ");
      return `something wrong at ${part ?? ""} (${board ?? ""})`;
    }
    case "chip":
      return `something wrong at ${feature.subject}`;
    case "symptom":
      return `symptom ${feature.subject}`;
    case "word":
      return `word "${feature.subject}"`;
    case "board":
    case "board-kind":
      return feature.subject;
  }
}

/** What a check's verdict means for matching; null where nothing can be compared. */
export type CheckSense = "failed" | "passed" | "seen";

/**
 * Failed and passed; or `seen`, a plain observation such as noise that nobody had an expectation for, which is how most
 * checks on an undocumented board end. A trial that changed nothing has passed: the part tried is not the culprit.
 */
export function senseOf(check: CheckFacts): CheckSense | null {
  if (check.kind === "trial" && check.outcome !== undefined) return check.outcome === "no-change" ? "passed" : "failed";
  switch (check.verdict) {
    case "out-of-spec":
      return "failed";
    case "in-spec":
      return "passed";
    case "noted":
      return check.state === null ? null : "seen";
    case "inconclusive":
    case "not-taken":
      return null;
  }
}

/** On which side or in which way a check failed: `low`, `high`, `noise`, `cured`, or null where only that it failed is known. */
export function mannerOf(check: CheckFacts): string | null {
  if (check.kind === "trial" && check.outcome !== undefined) return check.outcome;
  return check.state ?? check.direction;
}

/** What is measured at the place, with the second point and the lead that make it a different measurement. */
function measurement(check: CheckFacts): string {
  const kind = check.kind === "trial" && check.what !== undefined ? `trial ${check.what}` : check.kind;
  const to = check.to === undefined || check.to === "" ? "" : ` to ${placeKey(check.to)}`;
  const lead = check.lead === undefined ? "" : ` ${check.lead} lead`;
  return `${kind}${to}${lead}`;
}

/** Subject of a check at its exact place; null where the board is not known. */
export function placeSubject(check: CheckFacts, context: CheckContext): string | null {
  if (context.board === null) return null;
  return `board ${context.board} | ${placeKey(check.at)} ${measurement(check)}`;
}

/** The pin's role in words, or its name where the role is not known; empty for a check on the part as a whole. */
export function pinWords(chip: ChipAtPlace, pin: string | null): string {
  if (pin === null) return "";
  const role = chip.pinRole(pin);
  return role === "unknown" ? `pin ${chip.pinName(pin)}` : role;
}

/** Subject of a check by chip and pin role, or by rail; null where the place is neither. */
export function roleSubject(check: CheckFacts, context: CheckContext): string | null {
  const rail = railName(check.at);
  if (rail !== null) return `rail ${rail} ${measurement(check)}`;
  const { part, pin } = placeOf(check.at);
  const chip = context.chipAt(part);
  if (chip === null) return null;
  return [chip.slug, pinWords(chip, pin), measurement(check)].filter((word) => word !== "").join(" ");
}

/** Subject of a check as a plain kind: `supply at chip dc-voltage`. */
export function kindSubject(check: CheckFacts, context: CheckContext): string {
  const { part, pin } = placeOf(check.at);
  const chip = context.chipAt(part);
  const what = measurement(check);
  if (chip === null) return `${placeWord(check.at)} ${what}`;
  if (pin === null) return `chip ${what}`;
  const role = chip.pinRole(pin);
  return `${role === "unknown" ? "pin" : role} at chip ${what}`;
}

function failedAtPlace(check: CheckFacts, subject: string, sense: CheckSense): Feature[] {
  const base = { depth: "place", sign: "failed", subject } as const;
  const manner = mannerOf(check);
  const features: Feature[] = sense === "failed" ? [{ ...base, grain: "failed", outcome: "" }] : [];
  if (manner !== null) features.push({ ...base, grain: "manner", outcome: manner });
  if (check.state === null && check.direction !== null && check.size !== null)
    features.push({ ...base, grain: "size", outcome: `${check.direction}-${check.size}` });
  return features;
}

function failedFeatures(check: CheckFacts, context: CheckContext, sense: CheckSense): Feature[] {
  const { part } = placeOf(check.at);
  const place = placeSubject(check, context);
  const role = roleSubject(check, context);
  const chip = context.chipAt(part);
  const outcome = mannerOf(check) ?? "";
  const coarse = { sign: "failed", grain: outcome === "" ? "failed" : "manner", outcome } as const;
  const features: Feature[] = place === null ? [] : failedAtPlace(check, place, sense);
  if (role !== null) features.push({ depth: "role", subject: role, ...coarse });
  features.push({ depth: "kind", subject: kindSubject(check, context), ...coarse });
  if (sense === "failed") features.push(...partFeatures(part, chip, context));
  return features;
}

function partFeatures(part: string, chip: ChipAtPlace | null, context: CheckContext): Feature[] {
  const involved = { sign: "failed", grain: "failed", outcome: "" } as const;
  const features: Feature[] = [];
  if (context.board !== null)
    features.push({ depth: "part", subject: `board ${context.board} | ${placeKey(part)}`, ...involved });
  if (chip !== null) features.push({ depth: "chip", subject: chip.slug, ...involved });
  return features;
}

function passedFeatures(check: CheckFacts, context: CheckContext): Feature[] {
  const passed = { sign: "passed", grain: "failed", outcome: "" } as const;
  const place = placeSubject(check, context);
  const role = roleSubject(check, context);
  const features: Feature[] = [];
  if (place !== null) features.push({ depth: "place", subject: place, ...passed });
  if (role !== null) features.push({ depth: "role", subject: role, ...passed });
  // Not by plain kind: that a supply somewhere was in spec holds for every case, and would only lengthen the index.
  return features;
}

/**
 * A check's outcome as features at several depths, from the exact place on this board through chip and pin role to
 * the plain kind. Inconclusive and untaken checks have none.
 */
export function checkFeatures(check: CheckFacts, context: CheckContext): Feature[] {
  const sense = senseOf(check);
  if (sense === null) return [];
  return sense === "passed" ? passedFeatures(check, context) : failedFeatures(check, context, sense);
}

function surroundings({ facts, context }: KnownCase): Feature[] {
  const there = { sign: "failed", grain: "failed", outcome: "" } as const;
  const features: Feature[] = [];
  for (const symptom of facts.symptoms) features.push({ depth: "symptom", subject: symptom, ...there });
  for (const word of facts.words ?? []) features.push({ depth: "word", subject: word.toLowerCase(), ...there });
  for (const at of facts.parts ?? []) {
    const { part } = placeOf(at);
    features.push(...partFeatures(part, context.chipAt(part), context));
  }
  if (context.board !== null) features.push({ depth: "board", subject: `board ${context.board}`, ...there });
  if (context.boardKind !== undefined)
    features.push({ depth: "board-kind", subject: `kind of board: ${context.boardKind}`, ...there });
  return features;
}

/**
 * All features of a case, each once, in order of their integers. Where one subject failed in one check and passed in
 * another (D0 dead, D1 well; or failed first, passed later), the case counts as having failed there.
 */
export function featuresOf(known: KnownCase): Map<number, Feature> {
  const features = [
    ...known.facts.checks.flatMap((check) => checkFeatures(check, known.context)),
    ...surroundings(known),
  ].map((feature) => [featureId(feature), feature] as const);
  const failedSubjects = new Set(features.filter(([, f]) => f.sign === "failed").map(([, f]) => f.subject));
  return new Map(
    features
      .filter(([, feature]) => feature.sign === "failed" || !failedSubjects.has(feature.subject))
      .toSorted(([a], [b]) => a - b),
  );
}

/** A case's features as stored with it: distinct 32-bit integers in ascending order, the low bit set for passed. */
export function caseFeatures(known: KnownCase): number[] {
  return [...featuresOf(known).keys()];
}

function grainShare(feature: Feature, hasGrain: (grain: FeatureGrain) => boolean): number {
  if (feature.depth !== "place" || feature.sign === "passed") return 1;
  // A check of which less is known keeps its full weight on the grains that it has.
  const present = (Object.keys(PLACE_GRAINS) as FeatureGrain[]).filter(hasGrain);
  const total = present.reduce((sum, grain) => sum + PLACE_GRAINS[grain], 0);
  return PLACE_GRAINS[feature.grain] / total;
}

/** Only an exact place contradicts: of a chip's data pins one may well be dead and the next one alive. */
function contradicts(feature: Feature): boolean {
  return feature.depth === "place" && feature.outcome === "";
}

/** The features of the repair in hand with their weights, in order of their integers. */
export function queryFeatures(query: KnownCase): WeightedFeature[] {
  const features = [...featuresOf(query)];
  const grains = new Map<string, Set<FeatureGrain>>();
  for (const [, { depth, subject, grain }] of features) {
    if (depth !== "place") continue;
    grains.set(subject, (grains.get(subject) ?? new Set()).add(grain));
  }
  const weigh = (feature: Feature) =>
    DEPTH_WEIGHTS[feature.depth] * grainShare(feature, (grain) => grains.get(feature.subject)?.has(grain) === true);
  const sum = (sign: Feature["sign"]) =>
    features.reduce((total, [, feature]) => (feature.sign === sign ? total + weigh(feature) : total), 0);
  const failedSum = sum("failed");
  const passedSum = sum("passed") * MATCH_WEIGHTS.passed;
  const ceiling = failedSum * MATCH_WEIGHTS.passedCeiling;
  const passedFactor = MATCH_WEIGHTS.passed * (failedSum > 0 && passedSum > ceiling ? ceiling / passedSum : 1);
  return features.map(([id, feature]) => ({
    id,
    weight: weigh(feature) * (feature.sign === "passed" ? passedFactor : 1),
    against: contradicts(feature) ? DEPTH_WEIGHTS.place * MATCH_WEIGHTS.contradiction : 0,
  }));
}
