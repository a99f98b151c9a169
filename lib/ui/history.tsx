import { TimeText } from "./time-text.tsx";
import styles from "./history.module.css";

export interface HistoryItem {
  id: string;
  /** `case.update`, `check.record`. */
  did: string;
  /** What of the record it concerns: the place of a check; empty: the record itself. */
  about?: string;
  at: string;
  by: { handle: string; name: string } | null;
  changes: readonly { field: string; before: string; after: string }[];
}

/** What was done, as the histories say it. */
const DID_WORDS: Record<string, string> = {
  "case.create": "opened the case",
  "case.update": "changed the case",
  "case.publish": "published it",
  "case.withdraw": "took it back to a draft",
  "check.record": "recorded a check",
  "check.update": "corrected a check",
  "check.delete": "took a check out",
  "cause.record": "named a cause",
  "cause.update": "changed a cause",
  "cause.delete": "took a cause back",
  "proof.record": "recorded a proof",
  "board.create": "recorded the board",
  "board.update": "changed the board",
  "chip.create": "recorded the chip",
  "chip.update": "changed the chip",
  "code.create": "recorded the code",
  "code.update": "changed the code",
  "comment.create": "wrote a comment",
  "import.commit": "imported it",
};

const FIELD_WORDS: Record<string, string> = {
  symptomText: "symptom in own words",
  asksHelp: "asks for help",
  because: "sentence",
  expectedFrom: "expectation from",
  placeKnown: "place on the record",
  computedVerdict: "verdict worked out",
  chosenVerdict: "verdict chosen",
  chosenReason: "reason",
  selfTests: "self-test codes",
  highestVoltage: "highest voltage",
  dataSheet: "data sheet",
  contentsRef: "name of the contents",
};

/** Who changed what and when, newest first, with each changed field before and after. */
export function HistoryList({ items, zone }: { items: readonly HistoryItem[]; zone: string }) {
  return (
    <ol className={styles.list}>
      {items.map((item) => (
        <li key={item.id}>
          <p className={styles.line}>
            <TimeText at={item.at} zone={zone} withClock />{" "}
            <span>
              <strong>{item.by?.name ?? "The program"}</strong> {DID_WORDS[item.did] ?? item.did}
              {item.about && (
                <>
                  : <span className="mono">{item.about}</span>
                </>
              )}
            </span>
          </p>
          {item.changes.length > 0 && (
            <dl className={styles.changes}>
              {item.changes.map((change) => (
                <Change key={change.field} {...change} />
              ))}
            </dl>
          )}
        </li>
      ))}
    </ol>
  );
}

function Change({ field, before, after }: { field: string; before: string; after: string }) {
  const [was, is] = before.includes("\n") || after.includes("\n") ? changedLines(before, after) : [before, after];
  return (
    <div>
      <dt>{FIELD_WORDS[field] ?? field}</dt>
      <dd>
        <del>{was || "nothing"}</del> <span className="visually-hidden">became</span> <ins>{is || "nothing"}</ins>
      </dd>
    </div>
  );
}

/** Of two long texts only the lines between the first and the last that differ. */
export function changedLines(before: string, after: string): [string, string] {
  const [was, is] = [before.split("\n"), after.split("\n")];
  let start = 0;
  while (start < was.length && start < is.length && was[start] === is[start]) start++;
  let end = 0;
  const most = Math.min(was.length, is.length) - start;
  while (end < most && was[was.length - 1 - end] === is[is.length - 1 - end]) end++;
  const part = (lines: string[]) =>
    [start > 0 ? "…" : "", ...lines.slice(start, lines.length - end), end > 0 ? "…" : ""].join("\n").trim();
  return [part(was), part(is)];
}
