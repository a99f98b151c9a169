"use client";

import { Button, ButtonRow } from "#lib/ui/button.tsx";

export function PrintButton() {
  return (
    <ButtonRow>
      <Button look="main" onClick={() => window.print()}>
        Print
      </Button>
    </ButtonRow>
  );
}
