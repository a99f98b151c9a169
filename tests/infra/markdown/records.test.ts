import { describe, expect, test } from "vitest";
import { type LinkTable, mentionKey } from "#lib/infra/markdown/index.ts";
import { shown } from "./shown.ts";

const links: LinkTable = new Map([
  [mentionKey("code", "27C256"), { href: "/codes/1", text: "27C256", title: "EPROM" }],
  [mentionKey("code", "VQ4_0061_03"), { href: "/codes/2", text: "VQ4_0061_03" }],
  [mentionKey("board", "harrow-80"), { href: "/boards/harrow-80", text: "Harrow 80" }],
  [mentionKey("case", "12"), { href: "/cases/12", text: "case 12", title: "No picture" }],
]);

describe("a directive that names a record", () => {
  const table: [typed: string, drawn: string][] = [
    [":code[27C256]", '<a dataRecord="code" href="/codes/1" title="EPROM">27C256</a>'],
    [":code[ 27C256 ]", '<a dataRecord="code" href="/codes/1" title="EPROM">27C256</a>'],
    ["(:code[27C256])", '(<a dataRecord="code" href="/codes/1" title="EPROM">27C256</a>)'],
    // A code keeps its underscores: they are no emphasis.
    [":code[VQ4_0061_03]", '<a dataRecord="code" href="/codes/2">VQ4_0061_03</a>'],
    [":board[harrow-80]", '<a dataRecord="board" href="/boards/harrow-80">Harrow 80</a>'],
    ["as in :case[12].", 'as in <a dataRecord="case" href="/cases/12" title="No picture">case 12</a>.'],
    // No record, or none for this reader: the words stay, marked.
    [":case[99]", '<span dataRecord="case">case 99</span>'],
    [":chip[74LS244]", '<span dataRecord="chip">74LS244</span>'],
    ["`:code[27C256]`", "<code>:code[27C256]</code>"],
    ["\\:code[27C256]", ":code[27C256]"],
  ];
  test.each(table)("%s", (typed, drawn) => {
    expect(shown(typed, links)).toBe(`<p>${drawn}</p>`);
  });

  test("is no second link within a link", () => {
    expect(shown("[the :code[27C256] page](/codes/9)", links)).toBe(
      '<p><a href="/codes/9">the <span dataRecord="code">27C256</span> page</a></p>',
    );
  });
});
