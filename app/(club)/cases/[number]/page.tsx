import type { Metadata } from "next";
import Link from "next/link";
import { hasRole } from "#lib/services/context.ts";
import { adviseCase } from "#lib/services/advice/index.ts";
import { listAttachments, type AttachedView } from "#lib/services/attachments/index.ts";
import { readCase, type CaseView } from "#lib/services/cases/index.ts";
import { listComments } from "#lib/services/comments/index.ts";
import { proseOf } from "#lib/services/prose/index.ts";
import { Breadcrumb } from "#lib/ui/breadcrumb.tsx";
import { ButtonLink, ButtonRow } from "#lib/ui/button.tsx";
import { EmptyState } from "#lib/ui/empty-state.tsx";
import { KeyValue } from "#lib/ui/key-value.tsx";
import { Notice } from "#lib/ui/notice.tsx";
import { OutcomeMark } from "#lib/ui/outcome-mark.tsx";
import { PhotoGrid } from "#lib/ui/photo-grid.tsx";
import { Prose } from "#lib/ui/prose.tsx";
import { Columns, PageHead, Section } from "#lib/ui/section.tsx";
import { Tag, TagList } from "#lib/ui/tag.tsx";
import { TimeText } from "#lib/ui/time-text.tsx";
import { pageCtx } from "#lib/web/actor.ts";
import { caseNumber } from "#lib/web/case-number.ts";
import { clubZone, orNotFound } from "#lib/web/page.ts";
import { CommentSection } from "../../comments/comment-section.tsx";
import { Answer } from "./answer.tsx";
import { Helped, Similar } from "./beside.tsx";
import { Checks } from "./checks.tsx";
import { PrintButton } from "./print.client.tsx";
import { Publish } from "./publish.client.tsx";
import styles from "./case.module.css";

interface CasePageProps {
  params: Promise<{ number: string }>;
}

export async function generateMetadata({ params }: CasePageProps): Promise<Metadata> {
  const ctx = await pageCtx();
  const view = await orNotFound(async () => readCase(ctx, caseNumber((await params).number)));
  return { title: `${view.number}: ${view.title}`, description: view.lesson || view.symptomText.slice(0, 160) };
}

export default async function CasePage({ params }: CasePageProps) {
  const ctx = await pageCtx();
  const view = await orNotFound(async () => readCase(ctx, caseNumber((await params).number)));
  const [comments, attached, advice, zone] = await Promise.all([
    listComments(ctx, "case", view.id),
    listAttachments(ctx, "case", view.id),
    adviseCase(ctx, view.number),
    clubZone(),
  ]);
  const [story, ...trees] = await proseOf(ctx, [view.story, ...comments.map((comment) => comment.body)]);
  const member = ctx.actor.kind === "member" ? ctx.actor : null;
  const isMine = member?.handle === view.author.handle || (member !== null && hasRole(member, "reviewer"));
  const failed = view.checks.filter((check) => check.verdict === "out-of-spec" && !check.repeats);
  const places = new Map(view.checks.map((check) => [check.id, check.at]));
  return (
    <div className={styles.sheet}>
      <PageHead
        trail={<Breadcrumb steps={[{ text: "Cases", href: "/cases" }, ...boardStep(view)]} />}
        kind={`Case ${view.number}`}
        title={view.title}
        lead={view.lesson}
        meta={
          <>
            <OutcomeMark outcome={view.outcome} />
            <span>{view.author.name}</span>
            <span>
              opened <TimeText at={view.openedAt} zone={zone} />
            </span>
            {view.closedAt && (
              <span>
                closed <TimeText at={view.closedAt} zone={zone} />
              </span>
            )}
          </>
        }
      >
        <State view={view} isMine={isMine} />
        <ButtonRow>
          {member && (
            <>
              <ButtonLink href={`/cases/${view.number}/bench`} {...(view.causes.length === 0 && { look: "main" })}>
                Bench
              </ButtonLink>
              <ButtonLink href={`/cases/${view.number}/close`}>What was it?</ButtonLink>
              <ButtonLink href={`/cases/${view.number}/write`}>Write the story</ButtonLink>
            </>
          )}
          <ButtonLink href={`/cases/${view.number}/label`} look="quiet">
            Label
          </ButtonLink>
          <PrintButton />
        </ButtonRow>
      </PageHead>
      <Columns>
        <div>
          <Facts view={view} />
          <Section id="failed" title="What failed" count={failed.length}>
            {failed.length === 0 ? (
              <EmptyState title="No check is out of spec." />
            ) : (
              <Checks checks={failed} label="Failed checks" />
            )}
          </Section>
          <Section id="answer" title="What it was">
            <Answer view={view} zone={zone} isMember={member !== null} />
          </Section>
          {view.story !== "" && story && (
            <Section id="story" title="The story">
              <Prose tree={story} />
            </Section>
          )}
          {view.checks.length > failed.length && (
            <Section id="checks" title="All checks in order" count={view.checks.length}>
              <Checks checks={view.checks} label="All checks in the order they were made" whole places={places} />
            </Section>
          )}
          <Attached attached={attached} />
        </div>
        <aside>
          <Section id="helped" title="Did it help?">
            <Helped view={view} zone={zone} reader={member?.handle ?? null} />
          </Section>
          <div className="no-print">
            <Section id="similar" title="Past cases like it">
              <Similar similar={advice.similar} />
            </Section>
          </div>
          <p className="soft no-print">
            Changed <TimeText at={view.updatedAt} zone={zone} />.{" "}
            <Link prefetch={false} href={`/cases/${view.number}/history`}>
              History
            </Link>
          </p>
          {view.state === "published" && isMine && <Publish caseNumber={view.number} isDraft={false} />}
        </aside>
      </Columns>
      <div className="no-print">
        <CommentSection
          kind="case"
          record={view.id}
          comments={comments}
          trees={trees}
          zone={zone}
          nextId={member ? ctx.newId() : null}
        />
      </div>
    </div>
  );
}

function boardStep(view: CaseView): { text: string; href: string }[] {
  return view.board ? [{ text: view.boardName ?? view.board, href: `/boards/${view.board}` }] : [];
}

function State({ view, isMine }: { view: CaseView; isMine: boolean }) {
  return (
    <>
      {view.state === "draft" && (
        <Notice kind="info" title="A draft: only its author sees it.">
          {isMine && <Publish caseNumber={view.number} isDraft />}
        </Notice>
      )}
      {view.state === "hidden" && <Notice kind="warning" title="Hidden: only stewards see it." />}
      {view.asksHelp !== "" && (
        <Notice kind="info" title="Help is asked for.">
          <p>{view.asksHelp}</p>
        </Notice>
      )}
      {view.openedFrom && (
        <p>
          Opened because{" "}
          <Link prefetch={false} href={`/cases/${view.openedFrom.number}`}>
            case {view.openedFrom.number}, {view.openedFrom.title},
          </Link>{" "}
          did not help here.
        </p>
      )}
    </>
  );
}

function Facts({ view }: { view: CaseView }) {
  return (
    <Section id="symptom" title="What it did">
      {view.symptoms.length > 0 && (
        <TagList label="Symptoms">
          {view.symptoms.map((symptom) => (
            <Tag key={symptom.slug} href={`/cases?symptom=${symptom.slug}`}>
              {symptom.label}
            </Tag>
          ))}
        </TagList>
      )}
      {view.symptomText !== "" && <p className={styles.text}>{view.symptomText}</p>}
      <KeyValue
        items={[
          { name: "Reproduced", value: view.reproduced },
          {
            name: "Board",
            value: view.board ? (
              <Link prefetch={false} href={`/boards/${view.board}`}>
                {view.boardName}
              </Link>
            ) : (
              "no record of this board"
            ),
          },
          { name: "Revision", value: view.revision },
          { name: "Copy", value: view.copy && <span className="mono">{view.copy}</span> },
        ]}
      />
    </Section>
  );
}

function Attached({ attached }: { attached: readonly AttachedView[] }) {
  const photos = attached.filter((one) => one.kind === "photo");
  const files = attached.filter((one) => one.kind === "file");
  if (attached.length === 0) return null;
  return (
    <Section id="photos" title="Photos and files" count={attached.length}>
      <PhotoGrid
        photos={photos.map((photo) => ({
          src: photo.thumb ?? photo.url,
          href: photo.url,
          alt: photo.caption || photo.name,
          width: photo.width ?? 400,
          height: photo.height ?? 300,
          caption: photo.caption,
        }))}
      />
      {files.length > 0 && (
        <ul>
          {files.map((file) => (
            <li key={file.use}>
              <a href={file.url}>{file.name}</a> {file.caption}
            </li>
          ))}
        </ul>
      )}
    </Section>
  );
}
