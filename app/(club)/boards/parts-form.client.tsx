"use client";

import { useActionState, useState } from "react";
import { Button, ButtonLink, ButtonRow } from "#lib/ui/button.tsx";
import { FormError, problemAt } from "#lib/ui/form-error.tsx";
import { SomeoneWasFirst } from "#lib/ui/someone-was-first.tsx";
import { SubmitButton } from "#lib/ui/submit-button.client.tsx";
import { saveParts } from "./actions.ts";
import { lineDifferences } from "./line-differences.ts";
import { PartsField } from "./parts-field.client.tsx";
import { presentOf } from "./present.ts";
import styles from "./board.module.css";

/** The parts of a board: its whole list to work in, or a pasted one that adds and changes. */
export function PartsForm({ slug, version, text }: { slug: string; version: number; text: string }) {
  const [state, send] = useActionState(saveParts, {});
  const [whole, setWhole] = useState(text !== "");
  const [list, setList] = useState(text);
  const [added, setAdded] = useState("");
  const present = presentOf<string>(state.present);
  const typed = whole ? list : added;
  return (
    <form action={send} onReset={(event) => event.preventDefault()}>
      {present ? (
        <SomeoneWasFirst differences={whole ? lineDifferences(present.typed, list, partName) : []} />
      ) : (
        <FormError message={state.message} problems={state.problems} />
      )}
      <input type="hidden" name="slug" value={slug} />
      <input type="hidden" name="version" value={present?.version ?? version} />
      <input type="hidden" name="whole" value={whole ? "yes" : "no"} />
      <input type="hidden" name="back" value="#parts" />
      {text !== "" && (
        <div className={styles.modes}>
          <Button aria-pressed={whole} onClick={() => setWhole(true)}>
            Work in the whole list
          </Button>
          <Button aria-pressed={!whole} onClick={() => setWhole(false)}>
            Paste parts to add or change
          </Button>
        </div>
      )}
      <p className="soft">
        {whole
          ? "This is the whole list: a line that you take out takes the part off the board."
          : "Parts that your lines do not name stay as they are; what a line leaves out stays too."}
      </p>
      <PartsField
        key={whole ? "whole" : "added"}
        board={slug}
        text={typed}
        whole={whole}
        error={problemAt(state.problems, "parts")}
        onChange={whole ? setList : setAdded}
      />
      <ButtonRow>
        <SubmitButton>{present ? "Save over the present version" : "Save the parts"}</SubmitButton>
        <ButtonLink href={`/boards/${slug}#parts`} look="quiet">
          Do not save
        </ButtonLink>
      </ButtonRow>
    </form>
  );
}

function partName(line: string): string {
  return line.split(/[\s|:;,]+/, 1)[0] ?? "";
}
