import type { CheckView } from "#lib/services/cases/index.ts";
import { Place } from "#lib/ui/place.tsx";
import { QuantityText } from "#lib/ui/quantity-text.tsx";
import { CHECK_KIND_WORDS, LEAD_WORDS, TRIAL_OUTCOME_WORDS, TRIAL_WORDS } from "#lib/ui/words.ts";
import { Verdict } from "#lib/ui/verdict.tsx";
import styles from "./case.module.css";

/** What was checked, as one says it: "diode test, red lead here", "reseat". */
export function checkWords(check: CheckView): string {
  const words = check.what ? TRIAL_WORDS[check.what] : CHECK_KIND_WORDS[check.kind];
  return [words, check.lead && LEAD_WORDS[check.lead], check.when].filter(Boolean).join(", ");
}

/** The reading as typed, or what came of a trial. */
export function readingWords(check: CheckView): string {
  if (check.measured !== "") return check.measured;
  return check.outcome ? TRIAL_OUTCOME_WORDS[check.outcome] : "";
}

interface ChecksProps {
  checks: readonly CheckView[];
  label: string;
  /** Adds power and who took it. */
  whole?: boolean;
  /** Places of the checks that others repeat, by id. */
  places?: ReadonlyMap<string, string>;
}

/** Checks with what was expected, what was read, the verdict and, where it tells more, the judge's sentence. */
export function Checks({ checks, label, whole = false, places }: ChecksProps) {
  return (
    <table className={styles.checks} aria-label={label}>
      <thead>
        <tr>
          {["Where", "Check", "Expected", "Measured", "Verdict"].map((head) => (
            <th key={head} scope="col">
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {checks.map((check) => (
          <tr key={check.id} id={whole ? `check-${check.id}` : undefined}>
            <th scope="row">
              <Place at={check.at} to={check.to} unknown={!check.placeKnown} />
              {!check.placeKnown && <span className={styles.under}>not on the record</span>}
            </th>
            <td>
              {checkWords(check)}
              {whole && <span className={styles.power}>power {check.power}</span>}
            </td>
            <td data-head="expected">
              <ReadingText text={check.expected} />
            </td>
            <td data-head="measured">
              <ReadingText text={readingWords(check)} strong={check.verdict === "out-of-spec"} />
            </td>
            <td>
              <Verdict verdict={check.verdict} />
              <span className={styles.under}>{verdictText(check)}</span>
              {check.repeats && places?.has(check.repeats) && (
                <span className={styles.under}>Measured again after the cure.</span>
              )}
              {check.note && <span className={styles.note}>{check.note}</span>}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** Longest reading that is kept on one line: words may break, a quantity may not. */
const ONE_LINE = 16;

/** A reading as typed. */
export function ReadingText({ text, strong = false }: { text: string; strong?: boolean }) {
  if (text === "") return null;
  if (text.length > ONE_LINE) return strong ? <strong>{text}</strong> : <span>{text}</span>;
  return <QuantityText text={text} strong={strong} />;
}

/** In spec and noted say it all; a doubt, a failure and a chosen verdict are explained. */
function verdictText(check: CheckView): string {
  if (check.chosenVerdict && check.chosenVerdict !== check.computedVerdict) return `Chosen: ${check.chosenReason}`;
  const old = check.outdated ? " The record that the expectation came from was corrected since." : "";
  const says = check.verdict === "out-of-spec" || check.verdict === "inconclusive" || check.unreadable !== "";
  return says ? `${check.because}${old}` : old.trim();
}
