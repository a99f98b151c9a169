import type { Verdict as VerdictName } from "#lib/core/shared/index.ts";
import { classNames } from "./class-names.ts";
import { Shape, type ShapeName } from "./shape.tsx";
import { VERDICT_WORDS } from "./words.ts";
import styles from "./verdict.module.css";

const LOOKS: Record<VerdictName, { shape: ShapeName; tone: string | undefined }> = {
  "in-spec": { shape: "tick", tone: styles.good },
  "out-of-spec": { shape: "cross", tone: styles.bad },
  inconclusive: { shape: "diamond", tone: styles.doubt },
  noted: { shape: "note", tone: styles.quiet },
  "not-taken": { shape: "dash", tone: styles.quiet },
};

export interface VerdictProps {
  verdict: VerdictName;
  /** On the bench, read from further away. */
  large?: boolean;
}

/** A verdict: a word with a shape before it. */
export function Verdict({ verdict, large }: VerdictProps) {
  const { shape, tone } = LOOKS[verdict];
  return (
    <span className={classNames(styles.mark, tone, large && styles.large)}>
      <Shape name={shape} />
      {VERDICT_WORDS[verdict]}
    </span>
  );
}
