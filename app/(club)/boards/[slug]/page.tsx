import type { Metadata } from "next";
import Link from "next/link";
import { listAttachments } from "#lib/services/attachments/index.ts";
import { boardCulprits, readBoard, type BoardView } from "#lib/services/boards/index.ts";
import { listCases } from "#lib/services/cases/index.ts";
import { listComments } from "#lib/services/comments/index.ts";
import { proseOf } from "#lib/services/prose/index.ts";
import { listSpares } from "#lib/services/spares/index.ts";
import { Breadcrumb } from "#lib/ui/breadcrumb.tsx";
import { ButtonLink, ButtonRow } from "#lib/ui/button.tsx";
import { Prose } from "#lib/ui/prose.tsx";
import { PageHead, Section } from "#lib/ui/section.tsx";
import { TimeText } from "#lib/ui/time-text.tsx";
import { BOARD_KIND_WORDS } from "#lib/ui/words.ts";
import { pageCtx } from "#lib/web/actor.ts";
import { clubZone, orNotFound } from "#lib/web/page.ts";
import { CommentSection } from "../../comments/comment-section.tsx";
import { Cautions } from "./cautions.tsx";
import { Connectors, Nets } from "./connections.tsx";
import { Copies, Donors } from "./copies.tsx";
import { Documents, Photos } from "./documents.tsx";
import { Cases, Culprits, SelfTests } from "./failures.tsx";
import { Parts } from "./parts.tsx";
import { Rails, Revisions } from "./rails.tsx";
import styles from "../board.module.css";

interface BoardPageProps {
  params: Promise<{ slug: string }>;
}

/** Cases shown on the board's page; the others are a link away. */
const CASES_SHOWN = 10;

export async function generateMetadata({ params }: BoardPageProps): Promise<Metadata> {
  const ctx = await pageCtx();
  const board = await orNotFound(async () => readBoard(ctx, (await params).slug));
  return { title: board.name, description: board.summary };
}

export default async function BoardPage({ params }: BoardPageProps) {
  const ctx = await pageCtx();
  const { slug } = await params;
  const board = await orNotFound(() => readBoard(ctx, slug));
  const [culprits, cases, spares, attached, comments, zone] = await Promise.all([
    boardCulprits(ctx, slug),
    listCases(ctx, { board: slug, limit: CASES_SHOWN }),
    listSpares(ctx, { board: slug }),
    listAttachments(ctx, "board", board.id),
    listComments(ctx, "board", board.id),
    clubZone(),
  ]);
  const [notes, ...trees] = await proseOf(ctx, [board.notes, ...comments.map((comment) => comment.body)]);
  const isMember = ctx.actor.kind === "member";
  return (
    <>
      <PageHead
        trail={<Breadcrumb steps={[{ text: "Boards", href: "/boards" }]} />}
        kind={BOARD_KIND_WORDS[board.kind]}
        title={board.name}
        lead={board.summary}
        meta={<Meta board={board} zone={zone} />}
      >
        <ButtonRow>
          <ButtonLink href={`/cases/new?board=${slug}`} look="main">
            Open a case on this board
          </ButtonLink>
          {isMember && <ButtonLink href={`/boards/${slug}/edit`}>Change this record</ButtonLink>}
        </ButtonRow>
      </PageHead>
      <Cautions board={board} />
      <Jump board={board} hasDonors={spares.length > 0} cases={cases.total} />
      <div className={styles.pair}>
        <Culprits culprits={culprits} total={cases.total} />
        <SelfTests board={board} isMember={isMember} />
      </div>
      <Rails board={board} isMember={isMember} />
      <Parts board={board} culprits={culprits} isMember={isMember} />
      <Connectors board={board} isMember={isMember} />
      <Nets board={board} isMember={isMember} />
      <div className={board.documents.length === 0 ? styles.pair : undefined}>
        <Documents board={board} isMember={isMember} />
        <Photos board={board} attached={attached} isMember={isMember} />
      </div>
      {board.notes !== "" && notes && (
        <Section id="notes" title="Notes from the bench">
          <Prose tree={notes} />
        </Section>
      )}
      <Cases cases={cases.cases} total={cases.total} board={board} zone={zone} />
      <Revisions board={board} />
      <Copies board={board} isMember={isMember} />
      <Donors spares={spares} board={board} isMember={isMember} />
      <div className={comments.length === 0 ? "no-print" : undefined}>
        <CommentSection
          kind="board"
          record={board.id}
          comments={comments}
          trees={trees}
          zone={zone}
          nextId={isMember ? ctx.newId() : null}
        />
      </div>
    </>
  );
}

function Meta({ board, zone }: { board: BoardView; zone: string }) {
  return (
    <>
      {(board.maker !== "" || board.machine !== "") && (
        <span>{[board.maker, board.machine].filter(Boolean).join(", ")}</span>
      )}
      {board.year !== null && <span>{board.year}</span>}
      {board.highestVoltage !== null && <span>up to {board.highestVoltage} V on it</span>}
      <span>
        Changed <TimeText at={board.updatedAt} zone={zone} />
      </span>
      <Link prefetch={false} href={`/boards/${board.slug}/history`}>
        History
      </Link>
    </>
  );
}

/** The parts of a long page, for a thumb. */
function Jump({ board, hasDonors, cases }: { board: BoardView; hasDonors: boolean; cases: number }) {
  const steps = [
    { id: "failures", text: "How it fails", is: true },
    { id: "self-test", text: "Self-test", is: board.selfTests.length > 0 },
    { id: "rails", text: "Rails", is: true },
    { id: "parts", text: "Parts", is: true },
    { id: "connectors", text: "Connectors", is: board.connectors.length > 0 },
    { id: "nets", text: "Nets", is: board.nets.length > 0 },
    { id: "documents", text: "Documents", is: true },
    { id: "notes", text: "Notes", is: board.notes !== "" },
    { id: "cases", text: "Cases", is: cases > 0 },
    { id: "copies", text: "Copies", is: true },
    { id: "donors", text: "Donors", is: hasDonors },
    { id: "comments", text: "Comments", is: true },
  ];
  return (
    <nav aria-label="On this page" className={`${styles.jump} no-print`}>
      <ul>
        {steps
          .filter(({ is }) => is)
          .map(({ id, text }) => (
            <li key={id}>
              <a href={`#${id}`}>{text}</a>
            </li>
          ))}
      </ul>
    </nav>
  );
}
