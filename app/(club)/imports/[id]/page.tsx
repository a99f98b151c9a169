import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { readImport, type ImportView } from "#lib/services/imports/index.ts";
import { IMPORT_STATES, type ImportLineState } from "#lib/services/imports/schema.ts";
import { Breadcrumb } from "#lib/ui/breadcrumb.tsx";
import { ButtonLink } from "#lib/ui/button.tsx";
import { Code } from "#lib/ui/code.tsx";
import { EmptyState } from "#lib/ui/empty-state.tsx";
import { Notice } from "#lib/ui/notice.tsx";
import { Pager } from "#lib/ui/pager.tsx";
import { PageHead, Section } from "#lib/ui/section.tsx";
import { Table } from "#lib/ui/table.tsx";
import { Tag, TagList } from "#lib/ui/tag.tsx";
import { TimeText } from "#lib/ui/time-text.tsx";
import { pageCtx } from "#lib/web/actor.ts";
import { clubZone, orNotFound, pageAddress, type SearchParams } from "#lib/web/page.ts";
import { CommitForm } from "../commit-form.client.tsx";
import styles from "../imports.module.css";

interface ImportPageProps {
  params: Promise<{ id: string }>;
  searchParams: Promise<SearchParams>;
}

export const metadata: Metadata = { title: "Dry run" };

const STATE_WORDS: Record<ImportLineState, string> = {
  new: "new",
  changed: "changed",
  same: "stays as it is",
  refused: "refused",
};
/** Lines of one page; a library may have thousands. */
const LINES = 300;

export default async function ImportPage({ params, searchParams }: ImportPageProps) {
  const ctx = await pageCtx();
  if (ctx.actor.kind !== "member") redirect("/signin");
  const [{ id }, asked, zone] = await Promise.all([params, searchParams, clubZone()]);
  const read = await orNotFound(() => readImport(ctx, id));
  const state = IMPORT_STATES.find((one) => one === asked["state"]);
  const from = typeof asked["from"] === "string" && /^\d{1,6}$/.test(asked["from"]) ? Number(asked["from"]) : 0;
  const lines = read.symbols.filter((one) => state === undefined || one.state === state);
  const path = `/imports/${id}`;
  return (
    <>
      <PageHead
        trail={<Breadcrumb steps={[{ text: "Imports", href: "/imports" }]} />}
        kind={read.state === "committed" ? "Import" : "Dry run"}
        title={read.fileName}
        mono
        meta={
          <>
            <span>{read.by.name}</span>
            <TimeText at={read.createdAt} zone={zone} withClock />
          </>
        }
      />
      <Outcome read={read} />
      <Section id="symbols" title="What the file holds" count={read.symbols.length}>
        <TagList label="Show only">
          {[
            <Tag key="all" href={path} chosen={state === undefined}>
              all {read.symbols.length}
            </Tag>,
            ...IMPORT_STATES.filter((one) => read.counts[one] > 0).map((one) => (
              <Tag key={one} href={pageAddress(path, { state: one })} chosen={state === one}>
                {STATE_WORDS[one]} {read.counts[one]}
              </Tag>
            )),
          ]}
        </TagList>
        {lines.length === 0 ? (
          <EmptyState title="The file holds no symbol." />
        ) : (
          <Table label="Symbols of the file" columns={["Symbol", "State", "What changes, or why not"]}>
            {lines.slice(from, from + LINES).map((line) => (
              // A name may stand twice in a file: the second one is refused at its line.
              <tr key={`${line.name} ${line.line ?? ""}`}>
                <th scope="row">
                  {line.chip && (line.state !== "new" || read.state === "committed") ? (
                    <Code code={line.name} href={`/chips/${line.chip}`} />
                  ) : (
                    <span className="mono">{line.name}</span>
                  )}
                </th>
                <td>{STATE_WORDS[line.state]}</td>
                <td>
                  {line.why && (
                    <>
                      {line.why}
                      {line.line !== null && <span className="soft"> (line {line.line})</span>}
                    </>
                  )}
                  {line.changes.length > 0 && (
                    <ul className={styles.changes}>
                      {line.changes.map((one) => (
                        <li key={one}>{one}</li>
                      ))}
                    </ul>
                  )}
                </td>
              </tr>
            ))}
          </Table>
        )}
        <Pager
          label="Symbols"
          previous={from > 0 ? pageAddress(path, { state, from: String(Math.max(0, from - LINES)) }) : undefined}
          next={from + LINES < lines.length ? pageAddress(path, { state, from: String(from + LINES) }) : undefined}
          text={`${from + 1} to ${Math.min(from + LINES, lines.length)} of ${lines.length}`}
        />
      </Section>
    </>
  );
}

function Outcome({ read }: { read: ImportView }) {
  const { counts } = read;
  const told = IMPORT_STATES.filter((one) => counts[one] > 0).map((one) => `${counts[one]} ${STATE_WORDS[one]}`);
  const sum = told.length === 0 ? "nothing" : told.join(", ");
  if (read.state === "committed") {
    return (
      <Notice kind="done" title={`Written: ${counts.new} new, ${counts.changed} changed.`}>
        <p>
          Each chip names the library it came from, and its history shows this import.{" "}
          <ButtonLink href="/chips">Look at the chips</ButtonLink>
        </p>
      </Notice>
    );
  }
  if (counts.new + counts.changed === 0) {
    return <Notice kind="info" title={`There is nothing to write: ${sum}.`} />;
  }
  return (
    <>
      <Notice kind="info" title={`Nothing is written yet: ${sum}.`}>
        <p>Records that members wrote keep every word and pin.</p>
      </Notice>
      <CommitForm id={read.id} chips={counts.new + counts.changed} />
    </>
  );
}
