"use client";

import { Button, ButtonRow } from "#lib/ui/button.tsx";
import { blankRow, RAIL_FORM, USUAL_RAILS, type Row } from "./edit-lists.ts";
import type { KeyedRow } from "./list-rows.client.tsx";

/** The rails that most boards have, one tap each. */
export function UsualRails({ rows, onAdd }: { rows: readonly KeyedRow[]; onAdd: (row: Row) => void }) {
  const there = new Set(rows.map(({ row }) => row.name));
  const left = USUAL_RAILS.filter((name) => !there.has(name));
  return (
    <ButtonRow>
      {left.map((name) => (
        <Button key={name} onClick={() => onAdd({ ...blankRow(RAIL_FORM), name })}>
          <span className="mono">{name}</span>
        </Button>
      ))}
    </ButtonRow>
  );
}
