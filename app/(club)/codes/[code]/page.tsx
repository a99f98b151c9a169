import type { Metadata } from "next";
import Link from "next/link";
import { listAttachments, MOST_PHOTO_BYTES } from "#lib/services/attachments/index.ts";
import { listComments } from "#lib/services/comments/index.ts";
import { hasRole } from "#lib/services/context.ts";
import { findCode, readCodeView, type ClaimView, type CodeChoice, type CodeView } from "#lib/services/codes/index.ts";
import { ServiceError } from "#lib/services/errors.ts";
import { proseOf } from "#lib/services/prose/index.ts";
import { Attached } from "#lib/ui/attached.tsx";
import { Breadcrumb } from "#lib/ui/breadcrumb.tsx";
import { ButtonLink, ButtonRow } from "#lib/ui/button.tsx";
import { Code } from "#lib/ui/code.tsx";
import { EmptyState } from "#lib/ui/empty-state.tsx";
import { Notice } from "#lib/ui/notice.tsx";
import { Place } from "#lib/ui/place.tsx";
import { Prose } from "#lib/ui/prose.tsx";
import { Columns, PageHead, Section } from "#lib/ui/section.tsx";
import { Table } from "#lib/ui/table.tsx";
import { TimeText } from "#lib/ui/time-text.tsx";
import { CONTENTS_WORDS, FAILURE_WORDS, TECHNOLOGY_WORDS } from "#lib/ui/words.ts";
import { pageCtx } from "#lib/web/actor.ts";
import { addressPart, clubZone, pageAddress } from "#lib/web/page.ts";
import { CommentSection } from "../../comments/comment-section.tsx";
import { takePhotoAway } from "../actions.ts";
import { Claim, type ClaimProps } from "../claim.tsx";
import { ClaimForm } from "../claim-form.client.tsx";
import { SightingForm } from "../sighting-form.client.tsx";

interface CodePageProps {
  params: Promise<{ code: string }>;
}

export async function generateMetadata({ params }: CodePageProps): Promise<Metadata> {
  const found = await meant(await params);
  return { title: found.kind === "one" ? found.code : found.text };
}

/** The record that the address means, the records it may mean, or none: then it can be recorded from here. */
async function meant({ code }: { code: string }) {
  const text = addressPart(code).slice(0, 120);
  try {
    return { text, ...(await findCode(await pageCtx(), text)) };
  } catch (error) {
    if (error instanceof ServiceError && error.code === "not-found") return { kind: "none" as const, text };
    throw error;
  }
}

export default async function CodePage({ params }: CodePageProps) {
  const ctx = await pageCtx();
  const found = await meant(await params);
  const isMember = ctx.actor.kind === "member";
  if (found.kind === "none") return <UnknownCode text={found.text} isMember={isMember} />;
  if (found.kind === "choices") return <Choices text={found.text} choices={found.choices} />;
  const [code, attached, comments, zone] = await Promise.all([
    readCodeView(ctx, found.id),
    listAttachments(ctx, "code", found.id),
    listComments(ctx, "code", found.id),
    clubZone(),
  ]);
  const [notes, houseNotes, ...trees] = await proseOf(ctx, [
    code.notes,
    code.house?.notes ?? "",
    ...comments.map((comment) => comment.body),
  ]);
  const viewer =
    ctx.actor.kind === "member" ? { handle: ctx.actor.handle, isReviewer: hasRole(ctx.actor, "reviewer") } : null;
  const claimed = { codeId: code.id, zone, viewer };
  return (
    <>
      <PageHead
        trail={<Breadcrumb steps={[{ text: "Codes", href: "/codes" }]} />}
        kind={code.house ? `Code of ${code.house.name}` : "Code"}
        title={code.code}
        mono
        lead={<WhatItIs code={code} />}
        meta={
          <>
            <span>
              Recorded{code.by && ` by ${code.by.name}`}, <TimeText at={code.at} zone={zone} />
            </span>
            <Link prefetch={false} href={`/history/code/${code.id}`}>
              History
            </Link>
          </>
        }
      >
        {isMember && (
          <ButtonRow>
            <ButtonLink href={`/codes/${code.id}/edit`}>
              {code.chip ? "Change this record" : "Say what it is"}
            </ButtonLink>
          </ButtonRow>
        )}
      </PageHead>
      <Columns>
        <div>
          <Claims
            id="stand-ins"
            title={`What can stand in for ${code.code}`}
            empty="Nobody has claimed that another code fits in its place."
            claims={code.standIns}
            {...claimed}
          />
          <Claims
            id="stands-in"
            title={`What ${code.code} can stand in for`}
            empty="Nobody has claimed that it fits elsewhere."
            claims={code.standsInFor}
            {...claimed}
          />
          {isMember && (
            <details className="no-print">
              <summary>Record a claim</summary>
              <ClaimForm codeId={code.id} code={code.code} />
            </details>
          )}
          <Sightings code={code} zone={zone} isMember={isMember} />
          {code.notes !== "" && notes && (
            <Section id="notes" title="Notes">
              <Prose tree={notes} />
            </Section>
          )}
          <Attached
            attached={attached}
            advice="A straight picture of the print tells it from a copy and from a code that looks like it."
            {...(viewer && {
              write: {
                kind: "code",
                record: code.id,
                mostBytes: MOST_PHOTO_BYTES,
                example: "Print and date code of one that works",
                viewer,
                from: "this code",
                takeAway: takePhotoAway,
              },
            })}
          />
          <Cases code={code} />
        </div>
        <aside>
          {code.house && (
            <Section id="house" title="House">
              <p>
                <Link prefetch={false} href={pageAddress("/codes", { house: code.house.slug })}>
                  {code.house.name}
                </Link>
              </p>
              {houseNotes && code.house.notes && <Prose tree={houseNotes} />}
            </Section>
          )}
          <Boards code={code} />
          <Spares code={code} isMember={isMember} />
        </aside>
      </Columns>
      <div className={comments.length === 0 ? "no-print" : undefined}>
        <CommentSection
          kind="code"
          record={code.id}
          comments={comments}
          trees={trees}
          zone={zone}
          nextId={viewer ? ctx.newId() : null}
        />
      </div>
    </>
  );
}

function WhatItIs({ code }: { code: CodeView }) {
  if (!code.chip) return <>Nobody knows yet what it is.</>;
  const { chip } = code;
  return (
    <>
      <Code code={chip.name} href={`/chips/${chip.slug}`} /> {chip.function}
      {chip.technology !== "unknown" && <>, {TECHNOLOGY_WORDS[chip.technology]}</>}
      {chip.packages.length > 0 && <>, {chip.packages.map((one) => one.name).join(", ")}</>}
      {chip.contents !== "none" && chip.contents !== "unknown" && (
        <>. It holds contents: {CONTENTS_WORDS[chip.contents]}</>
      )}
    </>
  );
}

interface ClaimsProps extends Omit<ClaimProps, "claim"> {
  id: string;
  title: string;
  empty: string;
  claims: readonly ClaimView[];
}

function Claims({ id, title, empty, claims, ...claimed }: ClaimsProps) {
  return (
    <Section id={id} title={title} count={claims.length}>
      {claims.length === 0 && (
        <EmptyState title={empty}>
          <p>A part that was fitted and worked is the best evidence; one that failed counts too.</p>
        </EmptyState>
      )}
      {claims.map((claim) => (
        <Claim key={claim.id} claim={claim} {...claimed} />
      ))}
    </Section>
  );
}

function Sightings({ code, zone, isMember }: { code: CodeView; zone: string; isMember: boolean }) {
  return (
    <Section id="sightings" title="Sightings" count={code.sightings.length}>
      {code.sightings.length === 0 ? (
        <EmptyState title="Nobody has said where it was seen.">
          <p>Boards and date codes tell what a code is, sooner than the print does.</p>
        </EmptyState>
      ) : (
        <Table label="Sightings" columns={["Board", "Place", "Date code", "Note", "Seen by"]}>
          {code.sightings.map((one) => (
            <tr key={one.id}>
              <th scope="row">
                {one.board ? (
                  <Link prefetch={false} href={`/boards/${one.board.slug}`}>
                    {one.board.name}
                  </Link>
                ) : (
                  <span className="soft">no board</span>
                )}
              </th>
              <td>{one.at && <Place at={one.at} />}</td>
              <td className="mono">{one.dateCode}</td>
              <td>{one.note}</td>
              <td>
                {one.by?.name ?? "a former member"}, <TimeText at={one.seenAt} zone={zone} />
              </td>
            </tr>
          ))}
        </Table>
      )}
      {isMember && (
        <details className="no-print">
          <summary>Record a sighting</summary>
          <SightingForm codeId={code.id} />
        </details>
      )}
    </Section>
  );
}

function Cases({ code }: { code: CodeView }) {
  return (
    <>
      <Section id="failed" title="Cases in which it failed" count={code.failedIn.length}>
        {code.failedIn.length === 0 ? (
          <EmptyState title="No case names it as the cause." />
        ) : (
          <ul>
            {code.failedIn.map((one) => (
              <li key={`${one.number} ${one.at}`}>
                <Link prefetch={false} href={`/cases/${one.number}`}>
                  {one.number}: {one.title}
                </Link>{" "}
                {FAILURE_WORDS[one.failure]} {one.at && <Place at={one.at} />}
              </li>
            ))}
          </ul>
        )}
      </Section>
      <Section id="fitted" title="Cases in which it was fitted" count={code.fittedIn.length}>
        {code.fittedIn.length === 0 ? (
          <EmptyState title="No case tells of one that was fitted." />
        ) : (
          <ul>
            {code.fittedIn.map((one) => (
              <li key={one.number}>
                <Link prefetch={false} href={`/cases/${one.number}`}>
                  {one.number}: {one.title}
                </Link>
                {one.from && <span className="soft">, from {one.from}</span>}
              </li>
            ))}
          </ul>
        )}
      </Section>
    </>
  );
}

function Boards({ code }: { code: CodeView }) {
  return (
    <Section id="boards" title="Boards that carry it" count={code.boards.length}>
      {code.boards.length === 0 ? (
        <EmptyState title="On no board’s record." />
      ) : (
        <ul>
          {code.boards.map((board) => (
            <li key={board.slug}>
              <Link prefetch={false} href={`/boards/${board.slug}`}>
                {board.name}
              </Link>{" "}
              {board.designators.map((designator) => (
                <span key={designator}>
                  <Place at={designator} />{" "}
                </span>
              ))}
            </li>
          ))}
        </ul>
      )}
    </Section>
  );
}

function Spares({ code, isMember }: { code: CodeView; isMember: boolean }) {
  return (
    <Section id="spares" title="Spares" count={code.spares.length}>
      {code.spares.length === 0 ? (
        <EmptyState title="Nobody offers or wants one.">
          {!isMember && <p>Some offers are shown to members only.</p>}
        </EmptyState>
      ) : (
        <ul>
          {code.spares.map((one) => (
            <li key={one.id}>
              {one.direction === "offer" ? "Offered" : "Wanted"}: {one.quantity}
              {one.condition && <>, {one.condition}</>},{" "}
              <Link prefetch={false} href={`/members/${one.by.handle}`}>
                {one.by.name}
              </Link>
              {one.note && <p className="small soft">{one.note}</p>}
            </li>
          ))}
        </ul>
      )}
    </Section>
  );
}

/** A code that nobody has recorded: the page is there at once, and recording it is one step. */
function UnknownCode({ text, isMember }: { text: string; isMember: boolean }) {
  return (
    <>
      <PageHead
        trail={<Breadcrumb steps={[{ text: "Codes", href: "/codes" }]} />}
        kind="Code without a record"
        title={text}
        mono
        lead="Nobody in the club has recorded this code."
      >
        <ButtonRow>
          {isMember && (
            <ButtonLink href={pageAddress("/codes/new", { code: text })} look="main">
              Record this code
            </ButtonLink>
          )}
          <ButtonLink href={pageAddress("/search", { q: text })}>Search for it</ButtonLink>
        </ButtonRow>
      </PageHead>
      {!isMember && (
        <Notice kind="info" title="Members record codes.">
          <p>
            If you have met this one, <Link href="/signin">sign in</Link> and say where.
          </p>
        </Notice>
      )}
    </>
  );
}

function Choices({ text, choices }: { text: string; choices: readonly CodeChoice[] }) {
  return (
    <>
      <PageHead
        trail={<Breadcrumb steps={[{ text: "Codes", href: "/codes" }]} />}
        kind="Several records"
        title={text}
        mono
        lead="More than one record is written so. Which print is on your package?"
      />
      <Table label="Records written so" columns={["Code", "House", "What it is"]}>
        {choices.map((one) => (
          <tr key={one.id}>
            <th scope="row">
              <Code code={one.code} href={`/codes/${one.id}`} />
            </th>
            <td>{one.house?.name}</td>
            <td>{one.chip ? <Code code={one.chip.name} href={`/chips/${one.chip.slug}`} /> : "not known"}</td>
          </tr>
        ))}
      </Table>
    </>
  );
}
