import type { CheckKind } from "../shared/index.ts";
import type { Reading } from "../quantity/index.ts";
import { judgeAgainstLimits } from "./against-limits.ts";
import { judgeAgainstState } from "./against-state.ts";
import { inconclusive, judged, type JudgeInput, type Judgement } from "./judgement.ts";
import { limitsOf } from "./limits.ts";

/** The verdict on one reading, with its figures and the reason in one sentence. */
export function judge(input: JudgeInput): Judgement {
  const { expected, measured, kind } = input;
  if (measured === null) return judged("not-taken", "No reading was taken.");
  if (expected === null) return judged("noted", "Noted; what should be here is not known.");
  if (measured.form === "state" && measured.state === "ok")
    return judged("in-spec", "Found ok by the person who looked.");
  if (measured.form === "state" && measured.state === "not-ok")
    return judged("out-of-spec", "Found not ok by the person who looked.", { size: "clear" });
  if (expected.form === "words") return judgeWords(measured, expected.text, kind);
  if (expected.form === "state") return judgeAgainstState({ ...input, measured }, expected);
  const known = limitsOf(expected, kind);
  return known ? judgeAgainstLimits({ ...input, measured }, known) : inconclusive("The expectation sets no limit.");
}

/** Kinds whose words are codes: another code is another result. Elsewhere the same thing can be said in many words. */
const CODE_KINDS: ReadonlySet<CheckKind> = new Set<CheckKind>(["contents", "node-signature"]);
/** A node signature (0-9 A C F H P U), or a checksum in hexadecimal. */
const CODE = /^[0-9A-FHPU]{4,64}$/;

function judgeWords(measured: Reading, expected: string, kind: CheckKind): Judgement {
  if (measured.form !== "words") return inconclusive(`“${expected}” is expected: decide yourself.`);
  const [found, wanted] = [comparable(measured.text), comparable(expected)];
  if (found === wanted) return judged("in-spec", `“${measured.text}” is what is expected.`);
  if (CODE_KINDS.has(kind) && CODE.test(found) && CODE.test(wanted) && found.length === wanted.length)
    return judged("out-of-spec", `“${measured.text}” is not “${expected}”.`, { size: "clear" });
  return inconclusive(`“${measured.text}” against “${expected}”: these are words, decide yourself.`);
}

function comparable(text: string): string {
  return text.trim().toUpperCase().replaceAll(/\s+/g, " ").replace(/^0X/, "");
}
