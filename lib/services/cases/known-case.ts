import { FEATURE_VERSION, type CheckContext, type CheckFacts, type KnownCase } from "#lib/core/advice/index.ts";
import type { BoardFacts } from "#lib/core/board/index.ts";
import { textTokens } from "#lib/core/marking/index.ts";
import type { BoardKind, CheckKind, Lead, Trial, TrialOutcome, Verdict } from "#lib/core/shared/index.ts";
import type { Prisma } from "#lib/infra/db/index.ts";

/** What of a check the ranker needs. */
export const CHECK_FACTS = {
  kind: true,
  at: true,
  to: true,
  lead: true,
  computedVerdict: true,
  chosenVerdict: true,
  direction: true,
  size: true,
  reading: true,
  outcome: true,
  what: true,
  measured: true,
  expected: true,
} as const satisfies Prisma.CheckSelect;
export type CheckFactsRow = Prisma.CheckGetPayload<{ select: typeof CHECK_FACTS }>;

/** What of a case the ranker needs. Checks that repeat another prove a cure and say nothing of the fault. */
export const CASE_FACTS = {
  number: true,
  symptomText: true,
  symptoms: { select: { symptom: { select: { slug: true } } } },
  causes: { select: { at: true } },
  checks: { where: { repeatsId: null }, select: CHECK_FACTS, orderBy: { position: "asc" } },
} as const satisfies Prisma.FaultCaseSelect;
export type CaseFactsRow = Prisma.FaultCaseGetPayload<{ select: typeof CASE_FACTS }>;

/** Version of the features that are stored with a case: they are made anew where it differs. */
export const STORED_FEATURES = FEATURE_VERSION;

export function knownCase(row: CaseFactsRow, facts: BoardFacts | null): KnownCase {
  return {
    facts: {
      symptoms: row.symptoms.map((one) => one.symptom.slug),
      words: tellingWords(row.symptomText),
      parts: row.causes.flatMap((cause) => (cause.at === "" ? [] : [cause.at])),
      checks: row.checks.map(checkFacts),
    },
    context: checkContext(facts),
  };
}

/** Shorter words say too little, and a long story adds nothing after so many; rarity sorts out the rest. */
const SHORTEST_WORD = 4;
const MOST_WORDS = 40;

/** Words of a member's own description that may tell cases apart. */
export function tellingWords(text: string): string[] {
  const words = textTokens(text).flatMap((token) =>
    token.kind === "word" && token.text.length >= SHORTEST_WORD ? [token.text.toLowerCase()] : [],
  );
  return [...new Set(words)].slice(0, MOST_WORDS);
}

export function checkFacts(row: CheckFactsRow): CheckFacts {
  return {
    kind: row.kind as CheckKind,
    at: row.at,
    verdict: (row.chosenVerdict ?? row.computedVerdict) as Verdict,
    direction: row.direction as CheckFacts["direction"],
    size: row.size as CheckFacts["size"],
    state: row.reading,
    ...(row.outcome && { outcome: row.outcome as TrialOutcome }),
    ...(row.what && { what: row.what as Trial }),
    ...(row.to !== "" && { to: row.to }),
    ...(row.lead && { lead: row.lead as Lead }),
    measured: row.measured,
    expected: row.expected,
  };
}

/** The board as the ranker asks it: what chip is at a place, and what its pins are for. */
export function checkContext(facts: BoardFacts | null): CheckContext {
  if (!facts) return { board: null, chipAt: () => null };
  const placements = new Map(facts.placements.map((one) => [one.designator.toUpperCase(), one]));
  return {
    board: facts.slug,
    boardKind: facts.kind satisfies BoardKind,
    chipAt(designator) {
      const slug = placements.get(designator.toUpperCase())?.chip;
      const chip = slug ? facts.chips[slug] : undefined;
      if (!chip) return null;
      const pinOf = (number: string) => chip.pins.find((pin) => pin.number.toUpperCase() === number.toUpperCase());
      return {
        slug: chip.slug,
        name: chip.name,
        pinRole: (number) => pinOf(number)?.role ?? "unknown",
        pinName: (number) => pinOf(number)?.name ?? "",
      };
    },
  };
}
