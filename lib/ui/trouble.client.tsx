"use client";

import { Button, ButtonLink, ButtonRow } from "./button.tsx";
import { PageHead } from "./section.tsx";

export interface TroubleProps {
  error: unknown;
  retry: () => void;
}

/** What a person sees when a page broke: what happened, that nothing was lost, what to do. */
export function Trouble({ error, retry }: TroubleProps) {
  const mark = digestOf(error);
  return (
    <>
      <PageHead
        title="This page broke"
        lead="Something in the program went wrong while it was drawn. Nothing that was saved is lost."
      />
      <ButtonRow>
        <Button look="main" onClick={retry}>
          Try again
        </Button>
        <ButtonLink href="/">To the first page</ButtonLink>
      </ButtonRow>
      {mark && (
        <p className="soft">
          If it comes again, tell the steward this number, which the log has as well: <code>{mark}</code>
        </p>
      )}
    </>
  );
}

function digestOf(error: unknown): string | null {
  const digest = typeof error === "object" && error !== null && "digest" in error ? error.digest : null;
  return typeof digest === "string" ? digest : null;
}
