import type { CaseIndex, SearchOptions } from "./case-index.ts";
import type { CheckFacts, KnownCase } from "./facts.ts";
import { kindSubject, placeSubject, queryFeatures, roleSubject, senseOf, type CheckSense } from "./features.ts";
import { SIMILAR_CASES } from "./weights.ts";
import { failedAlike, kindWords, outcomeWords, placeWords, readingHere, roleWords } from "./words.ts";

export interface SimilarCase {
  case: number;
  /** Between 0 and 1: the share of what is known here, by weight, that is so there too, less what contradicts. */
  score: number;
  /** What agrees, failed checks first. */
  matched: string[];
  /** It failed there and passed here, or the reverse, or failed the other way. */
  contradicted: string[];
  /** What failed in one of the two and was never checked in the other. */
  unchecked: string[];
}

export interface SimilarOptions extends Pick<SearchOptions, "exclude" | "allowed"> {
  /** How many cases to answer; ten unless told otherwise. */
  limit?: number;
}

/**
 * Past cases that agree best with the repair in hand, best first, each with its reasons. Ranking reads the index only;
 * facts are asked for the winners alone. A case whose facts are gone by now (null) is left out.
 */
export function similarCases(
  query: KnownCase,
  index: CaseIndex,
  factsOf: (caseId: number) => KnownCase | null,
  { limit = SIMILAR_CASES, ...visible }: SimilarOptions = {},
): SimilarCase[] {
  const features = queryFeatures(query);
  const best = index.best(features);
  return index.search(features, limit, visible).flatMap(({ case: number, score }) => {
    const past = factsOf(number);
    if (past === null) return [];
    return [{ case: number, score: Math.min(1, score / best), ...explainMatch(query, past) }];
  });
}

type Reasons = Pick<SimilarCase, "matched" | "contradicted" | "unchecked">;

interface CheckThere {
  check: CheckFacts;
  sense: CheckSense;
}

/** Checks that can be compared, by exact place, by chip and role, and by plain kind; failed ones hide passed ones. */
interface ChecksBySubject {
  place: Map<string, CheckThere>;
  role: Map<string, CheckThere>;
  kind: Map<string, CheckThere>;
}

function comparable(known: KnownCase): CheckThere[] {
  const checks = known.facts.checks.flatMap((check) => {
    const sense = senseOf(check);
    return sense === null ? [] : [{ check, sense }];
  });
  return [...checks.filter(({ sense }) => sense !== "passed"), ...checks.filter(({ sense }) => sense === "passed")];
}

function bySubject(known: KnownCase): ChecksBySubject {
  const found: ChecksBySubject = { place: new Map(), role: new Map(), kind: new Map() };
  const keep = (map: Map<string, CheckThere>, subject: string | null, there: CheckThere) => {
    if (subject !== null && !map.has(subject)) map.set(subject, there);
  };
  for (const there of comparable(known)) {
    const alike = there.sense === "passed" ? "passed" : outcomeWords({ ...there.check, size: null });
    keep(found.place, placeSubject(there.check, known.context), there);
    keep(found.role, roleSubject(there.check, known.context), there);
    keep(found.role, `${roleSubject(there.check, known.context)} = ${alike}`, there);
    keep(found.kind, `${kindSubject(there.check, known.context)} = ${alike}`, there);
  }
  return found;
}

/** Compares two cases check by check, in words. */
export function explainMatch(here: KnownCase, there: KnownCase): Reasons {
  const reasons: Reasons = { matched: [], contradicted: [], unchecked: [] };
  const pastBySubject = bySubject(there);
  for (const [subject, mine] of oncePerPlace(here)) explainCheck(subject, mine, here, there, pastBySubject, reasons);
  explainSurroundings(here, there, reasons);
  explainOnlyThere(here, there, reasons);
  return reasons;
}

/** Each place of the repair in hand once, the failed check before a passed one. */
function oncePerPlace(known: KnownCase): Map<string, CheckThere> {
  const found = new Map<string, CheckThere>();
  for (const there of comparable(known)) {
    const subject = placeSubject(there.check, known.context) ?? placeWords(there.check, known.context);
    if (!found.has(subject)) found.set(subject, there);
  }
  return found;
}

function explainCheck(
  subject: string,
  mine: CheckThere,
  here: KnownCase,
  there: KnownCase,
  past: ChecksBySubject,
  reasons: Reasons,
): void {
  const same = past.place.get(subject);
  if (same !== undefined) explainSamePlace(mine, same, here, reasons);
  else if (mine.sense !== "passed") explainElsewhere(mine, here, there, past, reasons);
}

function explainSamePlace(mine: CheckThere, theirs: CheckThere, here: KnownCase, reasons: Reasons): void {
  const place = placeWords(mine.check, here.context);
  const now = `${place} ${outcomeWords(mine.check)}`;
  const passedHere = mine.sense === "passed";
  const passedThere = theirs.sense === "passed";
  if (passedHere && passedThere) reasons.matched.push(`${now} there too`);
  else if (!passedHere && !passedThere && failedAlike(mine.check, theirs.check))
    reasons.matched.push(`${now} there too${readingHere(mine.check)}`);
  else
    reasons.contradicted.push(
      `${place} ${outcomeWords(theirs.check)} there, ${outcomeWords(mine.check)} here${readingInBrackets(mine.check)}`,
    );
}

function readingInBrackets(check: CheckFacts): string {
  return check.measured === undefined || check.measured === "" ? "" : ` (${check.measured})`;
}

function explainElsewhere(
  mine: CheckThere,
  here: KnownCase,
  there: KnownCase,
  past: ChecksBySubject,
  reasons: Reasons,
): void {
  const alike = outcomeWords({ ...mine.check, size: null });
  const role = past.role.get(`${roleSubject(mine.check, here.context)} = ${alike}`);
  const kind = past.kind.get(`${kindSubject(mine.check, here.context)} = ${alike}`);
  const now = outcomeWords(mine.check);
  const where = (match: CheckThere) => `at ${placeWords(match.check, there.context).split(" ")[0] ?? ""}`;
  if (role !== undefined)
    reasons.matched.push(
      `${roleWords(mine.check, here.context)} ${now} there too, ${where(role)}${readingHere(mine.check)}`,
    );
  else if (kind !== undefined)
    reasons.matched.push(
      `${kindWords(mine.check, here.context)} ${now} there too, ${where(kind)}${readingHere(mine.check)}`,
    );
  else reasons.unchecked.push(`${placeWords(mine.check, here.context)} ${now} here, not checked there`);
}

function explainSurroundings(here: KnownCase, there: KnownCase, reasons: Reasons): void {
  const theirs = new Set(there.facts.symptoms);
  for (const symptom of new Set(here.facts.symptoms))
    if (theirs.has(symptom)) reasons.matched.push(`symptom "${symptom.replaceAll("-", " ")}" there too`);
  if (here.context.board !== null && here.context.board === there.context.board) reasons.matched.push("same board");
}

/** What failed there and was not checked here: often the next thing worth looking at. */
function explainOnlyThere(here: KnownCase, there: KnownCase, reasons: Reasons): void {
  const mine = bySubject(here);
  const sameBoard = here.context.board !== null && here.context.board === there.context.board;
  for (const [subject, theirs] of oncePerPlace(there)) {
    if (theirs.sense === "passed" || mine.place.has(subject)) continue;
    const role = roleSubject(theirs.check, there.context);
    const place = placeWords(theirs.check, there.context);
    const how = outcomeWords(theirs.check);
    if (sameBoard) reasons.unchecked.push(`${place} ${how} there, not checked here`);
    else if (role !== null && !mine.role.has(role))
      reasons.unchecked.push(`${roleWords(theirs.check, there.context)} ${how} there (${place}), not checked here`);
  }
}
