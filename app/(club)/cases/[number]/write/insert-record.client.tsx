"use client";

import { useId, useState } from "react";
import { Field } from "#lib/ui/field.tsx";
import fieldStyles from "#lib/ui/field.module.css";
import { hitsOf, type FoundHit } from "#lib/ui/search-answer.ts";
import { useAnswer } from "#lib/ui/use-answer.client.tsx";
import styles from "./write.module.css";

const KINDS = "case,board,chip,code";

/** Finds a record by words and hands over the directive that names it. */
export function InsertRecord({ onInsert }: { onInsert: (directive: string) => void }) {
  const [typed, setTyped] = useState("");
  const list = useId();
  const words = typed.trim();
  const answer = useAnswer(words === "" ? null : `/api/v1/search?kind=${KINDS}&limit=8&q=${encodeURIComponent(words)}`);
  const hits = answer.state === "answered" ? hitsOf(answer.value) : [];
  return (
    <div>
      <Field label="Insert a link to a record" hint="A code, a chip, a board, a case: type what you know of it.">
        {(control) => (
          <input
            {...control}
            type="search"
            className={fieldStyles.control}
            value={typed}
            aria-controls={list}
            onChange={(event) => setTyped(event.target.value)}
            // Enter would send the form around it.
            onKeyDown={(event) => event.key === "Enter" && event.preventDefault()}
          />
        )}
      </Field>
      <ul id={list} className={styles.found} aria-label="Records found">
        {hits.map((hit) => (
          <li key={`${hit.kind} ${hit.id}`}>
            <button
              type="button"
              onClick={() => {
                onInsert(directiveOf(hit));
                setTyped("");
              }}
            >
              <span>{hit.plainTitle}</span> <span className="soft">{hit.kind}</span>
            </button>
          </li>
        ))}
        {answer.state === "answered" && hits.length === 0 && words !== "" && <li className="soft">Nothing like it.</li>}
      </ul>
    </div>
  );
}

/** A board and a chip are named by the end of their address, which stays; a code as it is printed. */
export function directiveOf(hit: Pick<FoundHit, "kind" | "url" | "plainTitle">): string {
  const end = decodeURIComponent(hit.url.slice(hit.url.lastIndexOf("/") + 1));
  return `:${hit.kind}[${hit.kind === "code" ? hit.plainTitle : end}]`;
}
