import type { CaseOutcome } from "#lib/core/shared/index.ts";
import { classNames } from "./class-names.ts";
import { Shape, type ShapeName } from "./shape.tsx";
import { OUTCOME_WORDS } from "./words.ts";
import styles from "./verdict.module.css";

const LOOKS: Record<CaseOutcome, { shape: ShapeName; tone: string | undefined }> = {
  open: { shape: "ring", tone: styles.plain },
  waiting: { shape: "hourglass", tone: styles.doubt },
  cured: { shape: "tick", tone: styles.good },
  "cured-cause-unknown": { shape: "question", tone: styles.good },
  "works-not-proved": { shape: "half", tone: styles.doubt },
  "no-fault-found": { shape: "equals", tone: styles.quiet },
  "given-up": { shape: "stop", tone: styles.quiet },
};

export interface OutcomeMarkProps {
  outcome: CaseOutcome;
  large?: boolean;
}

/** How a case stands: a word with a shape before it. */
export function OutcomeMark({ outcome, large }: OutcomeMarkProps) {
  const { shape, tone } = LOOKS[outcome];
  return (
    <span className={classNames(styles.mark, tone, large && styles.large)}>
      <Shape name={shape} />
      {OUTCOME_WORDS[outcome]}
    </span>
  );
}
