"use client";

import { useActionState, useDeferredValue, useState } from "react";
import { readNetLines } from "#lib/core/netlist/index.ts";
import { ButtonLink, ButtonRow } from "#lib/ui/button.tsx";
import { TextArea } from "#lib/ui/field.tsx";
import { FormError, problemAt } from "#lib/ui/form-error.tsx";
import { Notice } from "#lib/ui/notice.tsx";
import { SomeoneWasFirst } from "#lib/ui/someone-was-first.tsx";
import { SubmitButton } from "#lib/ui/submit-button.client.tsx";
import { saveNets } from "./actions.ts";
import { lineDifferences } from "./line-differences.ts";
import { presentOf } from "./present.ts";

/** The nets of a board as lines, read while one types. */
export function NetsForm({ slug, version, text }: { slug: string; version: number; text: string }) {
  const [state, send] = useActionState(saveNets, {});
  const [typed, setTyped] = useState(text);
  const { nets, problems } = readNetLines(useDeferredValue(typed));
  const pins = nets.reduce((sum, net) => sum + net.pins.length, 0);
  const present = presentOf<string>(state.present);
  return (
    <form action={send} onReset={(event) => event.preventDefault()}>
      {present ? (
        <SomeoneWasFirst differences={lineDifferences(present.typed, typed, netName)} />
      ) : (
        <FormError message={state.message} problems={state.problems} />
      )}
      <input type="hidden" name="slug" value={slug} />
      <input type="hidden" name="version" value={present?.version ?? version} />
      <input type="hidden" name="back" value="#nets" />
      <TextArea
        label="Nets, one a line"
        name="nets"
        mono
        wide
        rows={Math.min(40, Math.max(10, typed.split("\n").length + 2))}
        value={typed}
        error={problemAt(state.problems, "nets")}
        onChange={(event) => setTyped(event.target.value)}
        hint="Name, role, colon, pins: “CLK clock: U1.6 U7.37 J2.31”. A run is “U7.11-18”. Roles: power, ground, clock, reset, select, control, address, data, signal."
      />
      <div aria-live="polite">
        {problems.length > 0 && (
          <Notice
            kind="warning"
            title={problems.length === 1 ? "1 line cannot be read" : `${problems.length} lines cannot be read`}
          >
            <ul>
              {problems.slice(0, 10).map(({ line, message }) => (
                <li key={line}>
                  Line {line}: {message}
                </li>
              ))}
            </ul>
          </Notice>
        )}
        <p className="soft">
          Read as {nets.length === 1 ? "1 net" : `${nets.length} nets`} with {pins === 1 ? "1 pin" : `${pins} pins`}.
        </p>
      </div>
      <ButtonRow>
        <SubmitButton>{present ? "Save over the present version" : "Save the nets"}</SubmitButton>
        <ButtonLink href={`/boards/${slug}#nets`} look="quiet">
          Do not save
        </ButtonLink>
      </ButtonRow>
    </form>
  );
}

function netName(line: string): string {
  return line.split(/:(?=\s|$)/, 1)[0]?.split(/\s+/)[0] ?? "";
}
