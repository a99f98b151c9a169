import Link from "next/link";
import type { BoardView } from "#lib/services/boards/index.ts";
import type { SpareView } from "#lib/services/spares/index.ts";
import { ButtonLink } from "#lib/ui/button.tsx";
import { EmptyState } from "#lib/ui/empty-state.tsx";
import { KeyValue } from "#lib/ui/key-value.tsx";
import { Section } from "#lib/ui/section.tsx";
import { Shape } from "#lib/ui/shape.tsx";
import styles from "../board.module.css";

/** The real boards that members have. */
export function Copies({ board, isMember }: { board: BoardView; isMember: boolean }) {
  const working = board.copies.filter((copy) => copy.works === true).length;
  return (
    <Section
      id="copies"
      title="Copies in the club"
      count={board.copies.length === 0 ? 0 : `${board.copies.length}, ${working} working`}
      aside={
        isMember && (
          <Link prefetch={false} className="no-print" href={`/boards/${board.slug}/copies/new`}>
            Add a copy
          </Link>
        )
      }
    >
      {board.copies.length === 0 ? (
        <EmptyState title="No copy is recorded yet.">
          <p>A working one is worth most: its owner can be asked for readings.</p>
        </EmptyState>
      ) : (
        <ul className={styles.copies}>
          {board.copies.map((copy) => (
            <li key={copy.id}>
              <p className={styles.copyHead}>
                <strong className="mono">{copy.tag}</strong> <Works works={copy.works} />{" "}
                <span className="soft">
                  {[copy.owner?.name ?? "nobody’s", copy.revision?.name].filter(Boolean).join(", ")}
                </span>
                {isMember && (
                  <Link
                    prefetch={false}
                    className="no-print"
                    href={`/boards/${board.slug}/copies/${copy.id}`}
                    aria-label={`Change the copy ${copy.tag}`}
                  >
                    Change
                  </Link>
                )}
              </p>
              <KeyValue
                items={[
                  { name: "Serial", value: copy.serial && <span className="mono">{copy.serial}</span> },
                  { name: "Modifications", value: copy.modifications },
                  { name: "Jumpers", value: copy.jumpers },
                  { name: "Kept by its battery", value: copy.contents },
                  { name: "Notes", value: copy.notes },
                ]}
              />
            </li>
          ))}
        </ul>
      )}
    </Section>
  );
}

function Works({ works }: { works: boolean | null }) {
  return (
    <span className={styles.works}>
      <Shape name={works === null ? "question" : works ? "tick" : "cross"} />
      {works === null ? "not known whether it works" : works ? "works" : "does not work"}
    </span>
  );
}

/** Who offers one as a donor, and who looks for one. */
export function Donors({
  spares,
  board,
  isMember,
}: {
  spares: readonly SpareView[];
  board: BoardView;
  isMember: boolean;
}) {
  if (spares.length === 0 && !isMember) return null;
  return (
    <Section id="donors" title="Donors and spare boards" count={spares.length}>
      {spares.length === 0 ? (
        <EmptyState title="Nobody offers or looks for one.">
          <ButtonLink href={`/spares/new?board=${board.slug}`}>Offer or look for one</ButtonLink>
        </EmptyState>
      ) : (
        <ul>
          {spares.map((spare) => (
            <li key={spare.id}>
              <Link prefetch={false} href={`/members/${spare.member.handle}`}>
                {spare.member.name}
              </Link>{" "}
              {spare.direction === "offer" ? "offers" : "looks for"} {spare.quantity}
              {spare.condition && `, ${spare.condition}`}
              {spare.note && `: ${spare.note}`}
            </li>
          ))}
        </ul>
      )}
    </Section>
  );
}
