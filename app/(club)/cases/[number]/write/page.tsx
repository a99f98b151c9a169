import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { readCase } from "#lib/services/cases/index.ts";
import { proseOf } from "#lib/services/prose/index.ts";
import { Breadcrumb } from "#lib/ui/breadcrumb.tsx";
import { PageHead } from "#lib/ui/section.tsx";
import { Table } from "#lib/ui/table.tsx";
import { pageCtx } from "#lib/web/actor.ts";
import { caseNumber } from "#lib/web/case-number.ts";
import { orNotFound } from "#lib/web/page.ts";
import { StoryEditor } from "./story-editor.client.tsx";

export const metadata: Metadata = { title: "Write the story" };

const HELP: [write: string, becomes: string][] = [
  [":code[27C256]", "a link to the part code, however it is written"],
  [":chip[74LS244]", "a link to the chip"],
  [":board[its name]", "a link to the board"],
  [":case[12]", "a link to the case"],
  ["## The wrong turn", "a heading"],
  ["**not** this", "strong words"],
  ["- first", "a list; 1. counts"],
  ["| Pin | Reading |", "a table, with |---|---| in the second line"],
  ["12:30, 3:1, U7:14", "stay as they are: a colon alone is no command"],
];

export default async function WritePage({ params }: { params: Promise<{ number: string }> }) {
  const ctx = await pageCtx();
  if (ctx.actor.kind !== "member") redirect("/signin");
  const { number } = await params;
  const view = await orNotFound(() => readCase(ctx, caseNumber(number)));
  const [tree] = await proseOf(ctx, [view.story]);
  return (
    <>
      <PageHead
        trail={
          <Breadcrumb
            steps={[
              { text: "Cases", href: "/cases" },
              { text: `Case ${view.number}: ${view.title}`, href: `/cases/${view.number}` },
            ]}
          />
        }
        title="Write the story"
        lead="What you saw, what you tried, the wrong turns, and what you would do first next time."
      />
      {tree && (
        <StoryEditor caseNumber={view.number} caseId={view.id} version={view.version} story={view.story} tree={tree} />
      )}
      <details>
        <summary>What can be written</summary>
        <Table label="What can be written" columns={["You write", "It becomes"]}>
          {HELP.map(([write, becomes]) => (
            <tr key={write}>
              <th scope="row" className="mono">
                {write}
              </th>
              <td>{becomes}</td>
            </tr>
          ))}
        </Table>
      </details>
    </>
  );
}
