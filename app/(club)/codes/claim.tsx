import Link from "next/link";
import { EVIDENCE_KINDS } from "#lib/core/shared/index.ts";
import type { ClaimView, EvidenceView } from "#lib/services/codes/index.ts";
import { Code } from "#lib/ui/code.tsx";
import { Shape } from "#lib/ui/shape.tsx";
import { TimeText } from "#lib/ui/time-text.tsx";
import { EVIDENCE_WORDS, GRADE_WORDS } from "#lib/ui/words.ts";
import { EvidenceForm, RetractForm } from "./evidence-form.client.tsx";
import styles from "./code.module.css";

export interface ClaimProps {
  claim: ClaimView;
  /** The code whose page this is. */
  codeId: string;
  zone: string;
  /** Who looks: members add evidence and take their own back. */
  viewer: { handle: string; isReviewer: boolean } | null;
}

/** A claim with its conditions, and all that was said for and against it, by whom. */
export function Claim({ claim, codeId, zone, viewer }: ClaimProps) {
  const other = claim.from.id === codeId ? claim.to : claim.from;
  return (
    <article className={styles.claim} id={`claim-${claim.id}`}>
      <h3 className={styles.claimHead}>
        <Code code={other.code} href={`/codes/${other.id}`} />
        {other.house && <span className="soft">{other.house.name}</span>}
        <span>{GRADE_WORDS[claim.grade]}</span>
        {claim.bothWays && <span className="soft">both ways</span>}
        {claim.contested && (
          <span className={styles.contested}>
            <Shape name="half" />
            contested
          </span>
        )}
      </h3>
      <p>
        {summary(claim)}
        {claim.note && <>. {claim.note}</>}
      </p>
      {claim.conditions.length > 0 && (
        <ul aria-label="Conditions">
          {claim.conditions.map((condition) => (
            <li key={condition}>{condition}</li>
          ))}
        </ul>
      )}
      <ul className={styles.voices} aria-label="Evidence">
        {claim.evidence.map((one) => (
          <Voice key={one.id} evidence={one} codeId={codeId} zone={zone} viewer={viewer} />
        ))}
      </ul>
      {viewer && (
        <>
          <details className="no-print">
            <summary>Add your evidence</summary>
            <EvidenceForm claim={claim.id} codeId={codeId} />
          </details>
          <p className="no-print">
            <Link
              prefetch={false}
              href={`/codes/claims/${claim.id}/edit?code=${codeId}`}
              aria-label={`Change the claim about ${other.code}`}
            >
              Change this claim
            </Link>
          </p>
        </>
      )}
    </article>
  );
}

/** "fitted, worked 2; fitted, failed 1". */
function summary({ counts }: ClaimView): string {
  const told = EVIDENCE_KINDS.flatMap((kind) => (counts[kind] ? [`${EVIDENCE_WORDS[kind]}: ${counts[kind]}`] : []));
  return told.length === 0 ? "No evidence yet" : told.join("; ");
}

const ELSEWHERE = {
  yes: "good elsewhere",
  "not-known": "",
  "found-bad": "found bad elsewhere: it does not count",
} as const;

function Voice({ evidence, codeId, zone, viewer }: { evidence: EvidenceView } & Omit<ClaimProps, "claim">) {
  const { kind, by, at, note, retracted, provedElsewhere } = evidence;
  const elsewhere = provedElsewhere === null ? "" : ELSEWHERE[provedElsewhere];
  const mayTakeBack = viewer && (viewer.isReviewer || viewer.handle === by?.handle);
  return (
    <li className={retracted ? styles.retracted : undefined}>
      <span className={styles.kind}>{EVIDENCE_WORDS[kind]}</span>
      {elsewhere && <span> ({elsewhere})</span>}
      {retracted && <strong> (taken back)</strong>}
      <span className="soft">
        {" "}
        {by ? (
          <Link prefetch={false} href={`/members/${by.handle}`}>
            {by.name}
          </Link>
        ) : (
          "a former member"
        )}
        , <TimeText at={at} zone={zone} />
        {evidence.case && (
          <>
            ,{" "}
            <Link prefetch={false} href={`/cases/${evidence.case.number}`}>
              case {evidence.case.number}
            </Link>
          </>
        )}
      </span>
      {note && <p>{note}</p>}
      {mayTakeBack && (
        <div className="no-print">
          <RetractForm evidence={evidence.id} codeId={codeId} retracted={retracted} />
        </div>
      )}
    </li>
  );
}
