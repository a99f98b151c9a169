import { caseFeatures, createCaseIndex, queryFeatures, type KnownCase } from "#lib/core/advice/index.ts";
import { boards, chips, members } from "#seed/records.ts";
import { generateCases } from "#seed/fault-model/index.ts";
import type { SeedCase } from "#seed/shapes.ts";
import { percentile } from "./machine.ts";

const SEED = 1;
/** Distinct cases that the generator makes; a larger club repeats them, which makes its features commoner, hence slower. */
const DISTINCT = 5_000;
const QUESTIONS = 500;

export interface SimilarFigures {
  p50: number;
  p95: number;
  mb: number;
  buildMs: number;
}

/** The ranking of similar cases alone, in memory, on generated cases. */
export function benchSimilar(count: number): SimilarFigures {
  const known = generateCases(boards, chips, members, { seed: SEED, count: Math.min(count, DISTINCT) }).map(knownOf);
  const features = known.map((one) => Int32Array.from(caseFeatures(one)));
  const began = performance.now();
  const index = createCaseIndex();
  for (let number = 0; number < count; number++) index.put(number + 1, features[number % features.length] ?? []);
  const buildMs = performance.now() - began;
  const questions = known.slice(0, QUESTIONS).map((one) => queryFeatures(one));
  for (const question of questions.slice(0, 50)) index.search(question, 10);
  const times = questions.map((question) => {
    const start = performance.now();
    index.search(question, 10);
    return performance.now() - start;
  });
  return {
    p50:
      Math.round(
        percentile(
          times.map((time) => time * 100),
          0.5,
        ),
      ) / 100,
    p95:
      Math.round(
        percentile(
          times.map((time) => time * 100),
          0.95,
        ),
      ) / 100,
    mb: Math.round(index.memoryBytes() / 1e5) / 10,
    buildMs: Math.round(buildMs),
  };
}

function knownOf(one: SeedCase): KnownCase {
  return {
    facts: {
      symptoms: one.symptoms,
      parts: one.causes.map((cause) => cause.at),
      checks: one.checks.map((check, index) => {
        const failed = one.causes.some((cause) => cause.explains.includes(index));
        return {
          kind: check.kind,
          at: check.at,
          verdict: failed ? "out-of-spec" : "in-spec",
          direction: null,
          size: null,
          state: null,
        };
      }),
    },
    context: { board: one.board, chipAt: () => null },
  };
}
