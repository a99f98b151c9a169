"use client";

import { Button } from "#lib/ui/button.tsx";

export function PrintButton() {
  return (
    <Button look="quiet" onClick={() => window.print()}>
      Print
    </Button>
  );
}
