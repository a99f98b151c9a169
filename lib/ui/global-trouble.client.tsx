"use client";

import type { TroubleProps } from "./trouble.client.tsx";

/** The last resort, when even the layout broke: a whole document of its own, without the styles of the others. */
export function GlobalTrouble({ retry }: TroubleProps) {
  return (
    <html lang="en">
      <body>
        <title>Benchlore: something broke</title>
        <main>
          <h1>Something broke here</h1>
          <p>The page could not be drawn at all. Nothing that was saved is lost.</p>
          <button type="button" onClick={retry}>
            Try again
          </button>
          <p>If it stays like this, the steward should look at the program’s log, and at whether the disk is full.</p>
        </main>
      </body>
    </html>
  );
}
