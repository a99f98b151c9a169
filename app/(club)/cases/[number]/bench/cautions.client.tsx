"use client";

import { useActionState } from "react";
import { checkCautions, type Caution as BoardCaution } from "#lib/core/board/index.ts";
import type { CheckKind } from "#lib/core/shared/index.ts";
import { Caution } from "#lib/ui/notice.tsx";
import { Shape } from "#lib/ui/shape.tsx";
import { SubmitButton } from "#lib/ui/submit-button.client.tsx";
import { tick } from "./actions.ts";
import styles from "./bench.module.css";

interface CautionListProps {
  caseNumber: number;
  cautions: readonly BoardCaution[];
  ticked: readonly string[];
}

/** The board's cautions, once: those to be ticked stand open until they are, the others are one line that opens. */
export function CautionList({ caseNumber, cautions, ticked }: CautionListProps) {
  const open = cautions.filter((caution) => caution.tick && !ticked.includes(caution.key));
  const quiet = cautions.filter((caution) => !open.includes(caution));
  if (cautions.length === 0) return null;
  return (
    <section className={styles.cautions} aria-label="Cautions for this board">
      {open.map((caution) => (
        <TickedCaution key={caution.key} caseNumber={caseNumber} caution={caution} />
      ))}
      {quiet.length > 0 && (
        <details className={styles.quietCautions}>
          <summary>
            <Shape name="triangle" /> {quiet.map((caution) => caution.title).join(", ")}
          </summary>
          {quiet.map((caution) => (
            <p key={caution.key}>
              <b>{caution.title}.</b> {caution.text}
            </p>
          ))}
        </details>
      )}
    </section>
  );
}

function TickedCaution({ caseNumber, caution }: { caseNumber: number; caution: BoardCaution }) {
  const [state, action] = useActionState(tick, {});
  return (
    <Caution harms="people" title={caution.title}>
      <p>{caution.text}</p>
      <form action={action}>
        <input type="hidden" name="case" value={caseNumber} />
        <input type="hidden" name="caution" value={caution.key} />
        <SubmitButton look="danger">I have read this</SubmitButton>
        {state.message && <p role="alert">{state.message}</p>}
      </form>
    </Caution>
  );
}

/** The cautions that concern one check, beside it. */
export function CheckCautions({
  cautions,
  check,
}: {
  cautions: readonly BoardCaution[];
  check: { kind: CheckKind; at: string };
}) {
  return checkCautions(cautions, check).map((caution) => (
    <p key={caution.key} className={styles.checkCaution}>
      <Shape name="triangle" />
      <span>
        <b>{caution.title}:</b> {caution.text}
      </span>
    </p>
  ));
}
