"use client";

import { useRef, useState } from "react";
import { Button, ButtonRow } from "#lib/ui/button.tsx";
import { Notice } from "#lib/ui/notice.tsx";
import { QrCode } from "#lib/ui/qr-code.tsx";
import styles from "./desk.module.css";

/** A link that is shown this once: to be copied, or read by a phone from the screen. */
export function ShownOnce({ link, title, label }: { link: string; title: string; label: string }) {
  const field = useRef<HTMLInputElement>(null);
  const [copied, setCopied] = useState<"no" | "yes" | "by-hand">("no");

  async function copy() {
    field.current?.select();
    try {
      // Over plain http there is no clipboard: then the link stays selected.
      await navigator.clipboard.writeText(link);
      setCopied("yes");
    } catch {
      setCopied("by-hand");
    }
  }

  return (
    <output className={styles.said}>
      <Notice kind="done" title={title}>
        <div className={styles.once}>
          <QrCode text={link} label={label} size="9rem" />
          <div>
            <input
              ref={field}
              className={styles.link}
              value={link}
              readOnly
              aria-label={label}
              onFocus={(event) => event.target.select()}
            />
            <ButtonRow>
              <Button onClick={() => void copy()}>Copy the link</Button>
              <output>
                {copied === "yes" && "Copied."}
                {copied === "by-hand" && "This browser copies only by hand: the link is selected."}
              </output>
            </ButtonRow>
          </div>
        </div>
      </Notice>
    </output>
  );
}
