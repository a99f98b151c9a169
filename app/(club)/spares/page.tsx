import type { Metadata } from "next";
import Link from "next/link";
import { spareLists, type MatchedSpare } from "#lib/services/spares/index.ts";
import { ListSpares } from "#lib/services/spares/schema.ts";
import { ButtonLink, ButtonRow } from "#lib/ui/button.tsx";
import { Code } from "#lib/ui/code.tsx";
import { EmptyState } from "#lib/ui/empty-state.tsx";
import { FieldRow, SelectField, TextField } from "#lib/ui/field.tsx";
import { PageHead, Section } from "#lib/ui/section.tsx";
import { SubmitButton } from "#lib/ui/submit-button.client.tsx";
import { TimeText } from "#lib/ui/time-text.tsx";
import { pageCtx } from "#lib/web/actor.ts";
import { clubZone, pageAddress, queryOfPage, type SearchParams } from "#lib/web/page.ts";
import { EndSpare } from "./end-spare.client.tsx";
import styles from "./spares.module.css";

export const metadata: Metadata = { title: "Spares" };

export default async function SparesPage({ searchParams }: { searchParams: Promise<SearchParams> }) {
  const ctx = await pageCtx();
  const asked = queryOfPage(await searchParams, ListSpares);
  const [{ offers, wants }, zone] = await Promise.all([spareLists(ctx, asked), clubZone()]);
  const member = ctx.actor.kind === "member" ? ctx.actor : null;
  const isFiltered = Object.values(asked).some(Boolean);
  const answered = wants.filter((want) => want.counterparts.length > 0);
  const shared = { zone, isSteward: member?.role === "steward" };
  return (
    <>
      <PageHead title="Spares" lead="Who has one, and who looks for one.">
        <ButtonRow>
          {member ? (
            <>
              <ButtonLink href="/spares/new" look="main">
                Offer a part
              </ButtonLink>
              <ButtonLink href="/spares/new?direction=want">Look for a part</ButtonLink>
            </>
          ) : (
            <ButtonLink href="/signin?next=/spares">
              Sign in to offer, to ask, and to see what is for members only
            </ButtonLink>
          )}
        </ButtonRow>
      </PageHead>
      <form action="/spares" aria-label="Narrow the lists" className="no-print">
        {asked.code && <input type="hidden" name="code" value={asked.code} />}
        {asked.chip && <input type="hidden" name="chip" value={asked.chip} />}
        {asked.board && <input type="hidden" name="board" value={asked.board} />}
        <FieldRow>
          <TextField
            label="Code, chip, board or words"
            name="q"
            defaultValue={asked.q}
            hint="A code however it is written: SN74LS244N, 74ls244"
          />
          <SelectField
            label="Offered or wanted"
            name="direction"
            empty="Both"
            defaultValue={asked.direction ?? ""}
            choices={[
              { value: "offer", label: "offered" },
              { value: "want", label: "wanted" },
            ]}
          />
          {member && (
            <SelectField
              label="Whose"
              name="member"
              empty="Everybody’s"
              defaultValue={asked.member ?? ""}
              choices={[
                { value: member.handle, label: "mine" },
                ...(asked.member && asked.member !== member.handle
                  ? [{ value: asked.member, label: asked.member }]
                  : []),
              ]}
            />
          )}
        </FieldRow>
        <ButtonRow>
          <SubmitButton look="quiet" pendingText="Looking …">
            Show these
          </SubmitButton>
          {isFiltered && (
            <ButtonLink href="/spares" look="quiet">
              Show all
            </ButtonLink>
          )}
        </ButtonRow>
      </form>
      {answered.length > 0 && <Answered wants={answered} />}
      {asked.direction !== "want" && (
        <Section id="offered" title="Offered" count={offers.length}>
          {offers.length === 0 ? (
            <EmptyState title={isFiltered ? "Nobody offers this." : "Nobody offers anything yet."}>
              <p>
                {member ? (
                  <Link href={pageAddress("/spares/new", { direction: "want", code: asked.q })}>
                    Say that you look for it
                  </Link>
                ) : (
                  "Some offers are for members only."
                )}
                {member && ": others see it here, and search finds it."}
              </p>
            </EmptyState>
          ) : (
            <SpareList spares={offers} {...shared} />
          )}
        </Section>
      )}
      {asked.direction !== "offer" && (
        <Section id="wanted" title="Wanted" count={wants.length}>
          {wants.length === 0 ? (
            <EmptyState title={isFiltered ? "Nobody looks for this." : "Nobody looks for anything."} />
          ) : (
            <SpareList spares={wants} {...shared} />
          )}
        </Section>
      )}
    </>
  );
}

/** A want beside what answers it: the two should talk. */
function Answered({ wants }: { wants: readonly MatchedSpare[] }) {
  return (
    <Section id="matches" title="Found for somebody" count={wants.length}>
      <ul className={styles.matches}>
        {wants.map((want) => (
          <li key={want.id}>
            <a href={`#spare-${want.id}`}>{want.member.name}</a> looks for <What spare={want} />:{" "}
            {want.counterparts.map((offer, index) => (
              <span key={offer.id}>
                {index > 0 && "; "}
                <a href={`#spare-${offer.id}`}>{offer.member.name}</a> has {offer.quantity} ×{" "}
                <span className="mono">{offer.what}</span>
              </span>
            ))}
          </li>
        ))}
      </ul>
    </Section>
  );
}

interface SpareListProps {
  spares: readonly MatchedSpare[];
  zone: string;
  isSteward: boolean;
}

function SpareList({ spares, zone, isSteward }: SpareListProps) {
  return (
    <ul className={styles.list}>
      {spares.map((spare) => (
        <li key={spare.id} id={`spare-${spare.id}`} className={styles.item}>
          <p className={styles.what}>
            <span className={styles.count}>{spare.quantity} ×</span>
            <span>
              <What spare={spare} />
            </span>
          </p>
          <div>
            {spare.condition && <p>{spare.condition}</p>}
            {spare.note && <p className={styles.note}>{spare.note}</p>}
          </div>
          <div className={styles.facts}>
            <span>
              <Link prefetch={false} href={`/members/${spare.member.handle}`}>
                {spare.member.name}
              </Link>
              , <TimeText at={spare.createdAt} zone={zone} />
            </span>
            {spare.visibility === "members" && <span>members only</span>}
            {(spare.mine || isSteward) && (
              <Link prefetch={false} href={`/spares/${spare.id}/edit`}>
                Change<span className="visually-hidden"> {nameOf(spare)}</span>
              </Link>
            )}
            {spare.mine && (
              <EndSpare
                id={spare.id}
                version={spare.version}
                isOffer={spare.direction === "offer"}
                what={nameOf(spare)}
              />
            )}
          </div>
        </li>
      ))}
    </ul>
  );
}

function What({ spare }: { spare: MatchedSpare }) {
  const { code, chip, board } = spare;
  if (!code && !chip && !board) return <>something else</>;
  return (
    <>
      {code && <Code code={code.code} href={`/codes/${code.id}`} />}{" "}
      {chip && <Code code={chip.name} href={`/chips/${chip.slug}`} />}{" "}
      {board && (
        <Link prefetch={false} href={`/boards/${board.slug}`}>
          {board.name}
        </Link>
      )}
    </>
  );
}

function nameOf({ code, chip, board }: MatchedSpare): string {
  return code?.code ?? chip?.name ?? board?.name ?? "this";
}
