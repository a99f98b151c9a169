"use client";

import { useEffect, useState } from "react";
import type { PartsPlan, PlannedPart } from "./plan-shape.ts";
import { Code } from "#lib/ui/code.tsx";
import { CheckboxField, TextArea } from "#lib/ui/field.tsx";
import { Notice } from "#lib/ui/notice.tsx";
import { Shape, type ShapeName } from "#lib/ui/shape.tsx";
import { NumberCell, Table } from "#lib/ui/table.tsx";
import { PLACEMENT_KIND_WORDS } from "#lib/ui/words.ts";
import { planOfParts } from "./actions.ts";
import styles from "./board.module.css";

/** A pause in typing before the server is asked to read the list. */
const PAUSE_MS = 350;

export interface PartsFieldProps {
  /** Slug of the board that has a list already. */
  board?: string;
  text: string;
  /** Whether parts that the text does not name leave the board. */
  whole: boolean;
  error: string | undefined;
  onChange: (text: string) => void;
}

interface Answer {
  /** What was read; the answer to older words stays until the new one is there. */
  text: string;
  whole: boolean;
  plan: PartsPlan | null;
  trouble: string | null;
}

/** The parts list as text, and below it what saving would do: read again at each pause. */
export function PartsField({ board, text, whole, error, onChange }: PartsFieldProps) {
  const [answer, setAnswer] = useState<Answer | null>(null);
  const isEmpty = text.trim() === "" && board === undefined;

  useEffect(() => {
    if (isEmpty) return;
    let dropped = false;
    const keep = (said: Pick<Answer, "plan" | "trouble">) => !dropped && setAnswer({ text, whole, ...said });
    const timer = setTimeout(() => {
      planOfParts({ text, whole, ...(board !== undefined && { board }) })
        .then(({ ok, value, message }) =>
          keep(
            ok && value
              ? { plan: value, trouble: null }
              : { plan: null, trouble: message ?? "The list could not be read." },
          ),
        )
        .catch(() => keep({ plan: null, trouble: "The server does not answer. The list stays as you typed it." }));
    }, PAUSE_MS);
    return () => {
      dropped = true;
      clearTimeout(timer);
    };
  }, [text, board, whole, isEmpty]);

  const isRead = answer !== null && answer.text === text && answer.whole === whole;
  const plan = isEmpty ? null : (answer?.plan ?? null);
  return (
    <>
      <TextArea
        label="Parts list, one part a line"
        name="parts"
        mono
        wide
        rows={Math.min(40, Math.max(10, text.split("\n").length + 2))}
        value={text}
        error={error}
        onChange={(event) => onChange(event.target.value)}
        hint="Any spelling: “U1 74LS244”, “U2 27C256 DIP-28 socketed sheet 3”, “R1-R8 4k7”, “C14: 100n”. A place on the drawing is “at 40,76” (mm from the upper left corner); notes stand in brackets."
      />
      <div aria-live="polite">
        {!isEmpty && !isRead && <p className="soft">Reading the list …</p>}
        {isRead && answer.trouble !== null && <Notice kind="warning" title={answer.trouble} />}
        {isRead && plan && <p>{summary(plan)}</p>}
      </div>
      {plan && <PlanTable plan={plan} />}
    </>
  );
}

function summary({ counts, problems }: PartsPlan): string {
  const parts = (count: number) => (count === 1 ? "1 part" : `${count} parts`);
  const said = [
    counts.new > 0 && `${parts(counts.new)} new`,
    counts.changed > 0 && `${counts.changed} changed`,
    counts.same > 0 && `${counts.same} as before`,
    counts.gone > 0 && `${counts.gone} taken out`,
    problems.length > 0 && (problems.length === 1 ? "1 line not taken" : `${problems.length} lines not taken`),
  ].filter(Boolean);
  return said.length === 0 ? "No part yet." : `Saving would give: ${said.join(", ")}.`;
}

function PlanTable({ plan }: { plan: PartsPlan }) {
  const isNew = plan.counts.changed + plan.counts.same + plan.counts.gone === 0;
  // What stays as it is needs no look.
  const shown = plan.parts.filter((part) => part.change !== "same");
  const unknown = shown.filter(isUnknownChip);
  return (
    <>
      {plan.problems.length > 0 && (
        <Notice
          kind="warning"
          title={plan.problems.length === 1 ? "One line is not taken." : `${plan.problems.length} lines are not taken.`}
        >
          <ul>
            {plan.problems.slice(0, 12).map(({ line, text, message }) => (
              <li key={`${line} ${message}`}>
                Line {line}
                {text && (
                  <>
                    , <span className="mono">{text.slice(0, 60)}</span>
                  </>
                )}
                : {message}
              </li>
            ))}
          </ul>
          <CheckboxField name="leaveOut" value="yes" label="Save without these lines" />
        </Notice>
      )}
      {unknown.length > 0 && (
        <p className="soft">
          {unknown.length === 1 ? "One chip has" : `${unknown.length} chips have`} no record yet. The number stays as it
          is written, and finds its record when the list is saved again after the chip was recorded.
        </p>
      )}
      {shown.length > 0 && (
        <Table
          label="What saving would do"
          columns={[
            { head: "Place", narrow: true },
            "Read as",
            ...(isNew ? [] : [{ head: "Change", narrow: true }]),
            { head: "Socket", narrow: true },
            "Beside it",
            { head: "Line", number: true, narrow: true },
          ]}
        >
          {shown.map((part) => (
            <tr key={part.designator}>
              <th scope="row" className="mono">
                {part.designator}
              </th>
              <td>
                <ReadAs part={part} />
              </td>
              {!isNew && (
                <td>
                  <Change part={part} />
                </td>
              )}
              <td>{part.socketed ? "socketed" : ""}</td>
              <td>{[part.package, part.sheet && `sheet ${part.sheet}`, part.notes].filter(Boolean).join(", ")}</td>
              <NumberCell>{part.line}</NumberCell>
            </tr>
          ))}
        </Table>
      )}
    </>
  );
}

function isUnknownChip({ kind, chip, code, value }: PlannedPart): boolean {
  return kind === "chip" && chip === null && code === null && value !== "";
}

function ReadAs({ part }: { part: PlannedPart }) {
  const { chip, code, value, kind, choices } = part;
  if (part.change === "gone") return <del className="mono">{part.before}</del>;
  return (
    <>
      {code && <Code code={code.code} />} {chip && <Code code={chip.name} />}{" "}
      {value !== "" && value !== code?.code && <span className="mono">{value}</span>}
      {chip?.function && <span className={styles.does}>{chip.function}</span>}
      {!chip && !code && <span className={styles.does}>{PLACEMENT_KIND_WORDS[kind]}</span>}
      {choices.length > 1 && <span className={styles.does}>which one: {choices.join(", ")}?</span>}
      {isUnknownChip(part) && choices.length === 0 && (
        <a className={styles.offer} href={`/chips/new?name=${encodeURIComponent(value)}`} target="_blank">
          Record this chip <span className="visually-hidden">{value} (opens beside)</span>
        </a>
      )}
    </>
  );
}

const CHANGE_LOOKS: Record<PlannedPart["change"], { shape: ShapeName; word: string }> = {
  new: { shape: "ring", word: "new" },
  changed: { shape: "half", word: "changed" },
  same: { shape: "equals", word: "as before" },
  gone: { shape: "cross", word: "taken out" },
};

function Change({ part: { change, before } }: { part: PlannedPart }) {
  const { shape, word } = CHANGE_LOOKS[change];
  return (
    <>
      <span className={styles.change}>
        <Shape name={shape} />
        {word}
      </span>
      {change === "changed" && before && <span className={styles.before}>was {before}</span>}
    </>
  );
}
