import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { readCase } from "#lib/services/cases/index.ts";
import { ServiceError } from "#lib/services/errors.ts";
import { QrCode } from "#lib/ui/qr-code.tsx";
import { timeText } from "#lib/ui/time-text.tsx";
import { pageCtx } from "#lib/web/actor.ts";
import { caseNumber } from "#lib/web/case-number.ts";
import { runtime } from "#lib/web/runtime.ts";
import { PrintButton } from "./print-button.client.tsx";
import styles from "./label.module.css";

interface LabelPageProps {
  params: Promise<{ number: string }>;
}

export async function generateMetadata({ params }: LabelPageProps): Promise<Metadata> {
  return { title: `Label, case ${(await params).number}` };
}

/** A label for the bag: the number is read across the bench, the code by a phone. */
export default async function LabelPage({ params }: LabelPageProps) {
  const ctx = await pageCtx();
  const { SITE_URL, CLUB_TIME_ZONE } = (await runtime()).env;
  const view = await (async () => {
    try {
      return await readCase(ctx, caseNumber((await params).number));
    } catch (error) {
      if (error instanceof ServiceError && error.code === "not-found") notFound();
      throw error;
    }
  })();
  const address = new URL(`/cases/${view.number}`, SITE_URL).href;
  return (
    <>
      <div className="no-print">
        <p>
          <Link href={`/cases/${view.number}/bench`}>Case {view.number}, at the bench</Link>
        </p>
        <h1>Label for the bag</h1>
        <p className={styles.lead}>
          62 × 29 mm, one label alone. On other paper it prints in the corner of the sheet; cut it out.
        </p>
      </div>
      <div className={styles.label}>
        <QrCode text={address} label={`Case ${view.number}`} size="25mm" />
        <div className={styles.words}>
          <p className={styles.number}>
            <span className={styles.small}>Case </span>
            {view.number}
          </p>
          <p className={styles.board}>{view.boardName ?? "Board without a record"}</p>
          <p className={styles.small}>
            {view.copy && <b>{view.copy} </b>}
            {timeText(view.openedAt, CLUB_TIME_ZONE)}
          </p>
        </div>
      </div>
      <PrintButton />
    </>
  );
}
