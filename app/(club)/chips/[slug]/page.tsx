import type { Metadata } from "next";
import Link from "next/link";
import { comparePinNumbers } from "#lib/core/pinout/index.ts";
import type { CaseOutcome, Failure } from "#lib/core/shared/index.ts";
import { listAttachments, MOST_PHOTO_BYTES } from "#lib/services/attachments/index.ts";
import { listCases, type CaseLine } from "#lib/services/cases/index.ts";
import { readChip, type ChipView } from "#lib/services/chips/index.ts";
import { listComments } from "#lib/services/comments/index.ts";
import { hasRole } from "#lib/services/context.ts";
import { proseOf } from "#lib/services/prose/index.ts";
import { Attached } from "#lib/ui/attached.tsx";
import { Breadcrumb } from "#lib/ui/breadcrumb.tsx";
import { ButtonLink, ButtonRow } from "#lib/ui/button.tsx";
import { Code } from "#lib/ui/code.tsx";
import { EmptyState } from "#lib/ui/empty-state.tsx";
import { KeyValue } from "#lib/ui/key-value.tsx";
import { Notice } from "#lib/ui/notice.tsx";
import { OutcomeMark } from "#lib/ui/outcome-mark.tsx";
import { PackageFlip } from "#lib/ui/package-flip.client.tsx";
import { Pager } from "#lib/ui/pager.tsx";
import { Place } from "#lib/ui/place.tsx";
import { Prose } from "#lib/ui/prose.tsx";
import { Columns, PageHead, Section } from "#lib/ui/section.tsx";
import { Table } from "#lib/ui/table.tsx";
import { TimeText } from "#lib/ui/time-text.tsx";
import { CONTENTS_WORDS, FAILURE_WORDS, TECHNOLOGY_WORDS } from "#lib/ui/words.ts";
import { pageCtx } from "#lib/web/actor.ts";
import { clubZone, orNotFound } from "#lib/web/page.ts";
import { CommentSection } from "../../comments/comment-section.tsx";
import { takePhotoAway } from "../actions.ts";
import { PinTable } from "../pin-table.tsx";
import styles from "../chip.module.css";

interface ChipPageProps {
  params: Promise<{ slug: string }>;
}

export async function generateMetadata({ params }: ChipPageProps): Promise<Metadata> {
  const { slug } = await params;
  const ctx = await pageCtx();
  const chip = await orNotFound(() => readChip(ctx, slug));
  return { title: chip.name, description: chip.function };
}

export default async function ChipPage({ params }: ChipPageProps) {
  const ctx = await pageCtx();
  const { slug } = await params;
  const chip = await orNotFound(() => readChip(ctx, slug));
  const [cases, attached, comments, zone] = await Promise.all([
    listCases(ctx, { chip: slug, limit: 100 }),
    listAttachments(ctx, "chip", chip.id),
    listComments(ctx, "chip", chip.id),
    clubZone(),
  ]);
  const [notes, ...trees] = await proseOf(ctx, [chip.notes, ...comments.map((comment) => comment.body)]);
  const viewer =
    ctx.actor.kind === "member" ? { handle: ctx.actor.handle, isReviewer: hasRole(ctx.actor, "reviewer") } : null;
  return (
    <>
      <PageHead
        trail={<Breadcrumb steps={[{ text: "Chips", href: "/chips" }]} />}
        kind="Chip"
        title={chip.name}
        mono
        lead={chip.function}
        meta={
          <>
            {chip.technology !== "unknown" && <span>{TECHNOLOGY_WORDS[chip.technology]}</span>}
            {chip.packages.length > 0 && <span>{chip.packages.map((one) => one.name).join(", ")}</span>}
            <span>
              Changed <TimeText at={chip.updatedAt} zone={zone} />
            </span>
            <Link prefetch={false} href={`/history/chip/${chip.id}`}>
              History
            </Link>
          </>
        }
      >
        {viewer && (
          <ButtonRow>
            <ButtonLink href={`/chips/${slug}/edit`}>Change this record</ButtonLink>
            <ButtonLink href={`/codes/new?chip=${slug}`} look="quiet">
              Record a code that carries it
            </ButtonLink>
          </ButtonRow>
        )}
      </PageHead>
      <Contents chip={chip} />
      <Columns>
        <div>
          <Packages chip={chip} isMember={viewer !== null} />
          {chip.notes !== "" && notes && (
            <Section id="notes" title="Notes from the bench">
              <Prose tree={notes} />
            </Section>
          )}
          <Attached
            attached={attached}
            advice="A straight picture of the top mark, and of how it differs from a copy, helps most."
            {...(viewer && {
              write: {
                kind: "chip",
                record: chip.id,
                mostBytes: MOST_PHOTO_BYTES,
                example: "Top mark of one that works",
                viewer,
                from: "this chip",
                takeAway: takePhotoAway,
              },
            })}
          />
          <Cases chip={chip} cases={cases.cases} total={cases.total} next={cases.next} />
        </div>
        <aside>
          <Codes chip={chip} />
          <Boards chip={chip} />
          {(chip.dataSheet || chip.source) && (
            <Section id="record" title="This record">
              <KeyValue
                items={[
                  {
                    name: "Data sheet",
                    value: chip.dataSheet && (
                      <a href={chip.dataSheet} rel="noopener nofollow ugc">
                        {URL.canParse(chip.dataSheet) ? new URL(chip.dataSheet).host : chip.dataSheet}
                      </a>
                    ),
                  },
                  { name: "Imported from", value: chip.source && <span className="mono">{chip.source}</span> },
                ]}
              />
            </Section>
          )}
        </aside>
      </Columns>
      <div className={comments.length === 0 ? "no-print" : undefined}>
        <CommentSection
          kind="chip"
          record={chip.id}
          comments={comments}
          trees={trees}
          zone={zone}
          nextId={viewer ? ctx.newId() : null}
        />
      </div>
    </>
  );
}

/** Parts with contents look alike from outside and are not interchangeable. */
function Contents({ chip }: { chip: ChipView }) {
  if (chip.contents === "none" || chip.contents === "unknown") return null;
  return (
    <Notice
      kind="info"
      title={`It holds contents (${CONTENTS_WORDS[chip.contents]}${chip.contentsRef && `: ${chip.contentsRef}`}).`}
    >
      <p>Two of them are alike only if they hold the same. Read it twice and compare before you replace or erase it.</p>
    </Notice>
  );
}

function Packages({ chip, isMember }: { chip: ChipView; isMember: boolean }) {
  if (chip.packages.length === 0) {
    return (
      <Section id="pins" title="Pins">
        <EmptyState title="No pin table yet.">
          <p>
            {isMember ? <Link href={`/chips/${chip.slug}/edit`}>Paste its pins</Link> : "Members add one"}, one pin a
            line.
          </p>
        </EmptyState>
      </Section>
    );
  }
  return chip.packages.map((one, index) => (
    <Section
      key={one.name}
      id={index === 0 ? "pins" : `pins-${index + 1}`}
      title={`Pins of the ${one.name}`}
      count={one.pinCount}
    >
      <div className={styles.preview}>
        <PackageFlip style={one.style} name={one.name} pins={one.pins} chip={chip.name} />
        <PinTable
          label={`Pins of ${chip.name}, ${one.name}`}
          pins={one.pins.toSorted((a, b) => comparePinNumbers(a.number, b.number))}
        />
      </div>
    </Section>
  ));
}

function Codes({ chip }: { chip: ChipView }) {
  return (
    <Section id="codes" title="Codes that carry it" count={chip.codes.length}>
      {chip.codes.length === 0 ? (
        <EmptyState title="No code is recorded for it yet." />
      ) : (
        <ul>
          {chip.codes.map((code) => (
            <li key={code.id}>
              <Code code={code.code} href={`/codes/${code.id}`} />{" "}
              {code.house && <span className="soft">{code.house.name}</span>}
            </li>
          ))}
        </ul>
      )}
    </Section>
  );
}

function Boards({ chip }: { chip: ChipView }) {
  return (
    <Section id="boards" title="Boards it sits on" count={chip.boards.length}>
      {chip.boards.length === 0 ? (
        <EmptyState title="On no board’s record yet." />
      ) : (
        <ul>
          {chip.boards.map((board) => (
            <li key={board.slug}>
              <Link prefetch={false} href={`/boards/${board.slug}`}>
                {board.name}
              </Link>
              :{" "}
              {board.designators.map((designator, index) => (
                <span key={designator}>
                  {index > 0 && ", "}
                  <Place at={designator} />
                </span>
              ))}
            </li>
          ))}
        </ul>
      )}
    </Section>
  );
}

function Cases({
  chip,
  cases,
  total,
  next,
}: {
  chip: ChipView;
  cases: CaseLine[];
  total: number;
  next: number | null;
}) {
  const groups = byFailure(chip.slug, cases);
  return (
    <Section id="cases" title="Cases in which it was the cause" count={total}>
      {cases.length === 0 && (
        <EmptyState title="No case names it as the cause yet.">
          <p>When one does, it stands here under the way in which the chip failed.</p>
        </EmptyState>
      )}
      {groups.map(([failure, lines]) => (
        <div key={failure}>
          <h3>
            {FAILURE_WORDS[failure]} <span className="soft">{lines.length}</span>
          </h3>
          <Table label={`Cases: ${FAILURE_WORDS[failure]}`} columns={["Case", "Board", "Place", "Outcome"]}>
            {lines.map(({ line, at }) => (
              <tr key={`${line.number} ${at}`}>
                <th scope="row">
                  <Link prefetch={false} href={`/cases/${line.number}`}>
                    {line.number}: {line.title}
                  </Link>
                </th>
                <td>{line.board?.name}</td>
                <td>{at && <Place at={at} />}</td>
                <td>
                  <OutcomeMark outcome={line.outcome satisfies CaseOutcome} />
                </td>
              </tr>
            ))}
          </Table>
        </div>
      ))}
      <Pager
        label="Cases"
        next={next === null ? undefined : `/cases?chip=${chip.slug}&cursor=${next}`}
        text={`${total} in all`}
      />
    </Section>
  );
}

/** The cases under each way in which the chip failed, the most frequent way first. */
function byFailure(slug: string, cases: readonly CaseLine[]): [Failure, { line: CaseLine; at: string }[]][] {
  const groups = new Map<Failure, { line: CaseLine; at: string }[]>();
  for (const line of cases) {
    for (const cause of line.causes) {
      if (cause.chip?.slug !== slug) continue;
      const failure = cause.failure as Failure;
      groups.set(failure, [...(groups.get(failure) ?? []), { line, at: cause.at }]);
    }
  }
  return [...groups].toSorted((a, b) => b[1].length - a[1].length);
}
