import { isRecordDirective, mentionKey, type LinkTable, type RecordDirective } from "./links.ts";
import type { MarkdownTree } from "./parse.ts";

type Parent = Pick<MarkdownTree, "children">;
type Node = MarkdownTree["children"][number];

/**
 * Directives that name a record become links to it, or marked words where there is none; every other directive and all
 * raw HTML become the text that was typed. Changes the tree.
 */
export function resolveDirectives(tree: MarkdownTree, source: string, links: LinkTable): void {
  rewrite(tree, { source, links, inLink: false, flow: true });
}

interface Around {
  source: string;
  links: LinkTable;
  /** A link within a link is not HTML. */
  inLink: boolean;
  /** Whether the children are blocks: text among them needs a paragraph. */
  flow: boolean;
}

const FLOW_PARENTS = new Set(["root", "blockquote", "listItem"]);

function rewrite(parent: Parent & { type: string }, around: Around): void {
  parent.children = parent.children.map((node) => {
    if (node.type === "html") {
      const text: Node = { type: "text", value: node.value };
      return around.flow ? { type: "paragraph", children: [text] } : text;
    }
    if (node.type === "textDirective") {
      const label = labelOf(node.children, around.source);
      if (label !== null && isRecordDirective(node.name) && !hasAttributes(node.attributes))
        return mention(node.name, label, around);
      return { type: "text", value: sourceOf(node, around.source) };
    }
    if ("children" in node) {
      const inLink = around.inLink || node.type === "link" || node.type === "linkReference";
      rewrite(node, { ...around, inLink, flow: FLOW_PARENTS.has(node.type) });
    }
    return node;
  });
}

function hasAttributes(attributes: object | null | undefined): boolean {
  return Object.keys(attributes ?? {}).length > 0;
}

/** The label as typed, with what Markdown would read in it: an underscore belongs to a code. */
function labelOf(children: readonly Node[], source: string): string | null {
  const start = children[0]?.position?.start.offset;
  const end = children.at(-1)?.position?.end.offset;
  if (start === undefined || end === undefined) return null;
  const label = source.slice(start, end).trim();
  return label === "" || label.includes("\n") ? null : label;
}

function sourceOf(node: Node, source: string): string {
  return source.slice(node.position?.start.offset ?? 0, node.position?.end.offset ?? 0);
}

function mention(kind: RecordDirective, label: string, { links, inLink }: Around): Node {
  const link = links.get(mentionKey(kind, label));
  const text = link?.text ?? (kind === "case" ? `case ${label}` : label);
  const linked = link !== undefined && !inLink;
  return {
    type: "emphasis",
    children: [{ type: "text", value: text }],
    data: {
      hName: linked ? "a" : "span",
      hProperties: { dataRecord: kind, ...(linked && { href: link.href, ...(link.title && { title: link.title }) }) },
    },
  };
}
