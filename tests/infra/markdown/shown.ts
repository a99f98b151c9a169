import { renderMarkdown, type LinkTable, type ProseTree } from "#lib/infra/markdown/index.ts";

type Node = ProseTree["children"][number];

const NO_LINKS: LinkTable = new Map();

/** A tree written out, for comparing: `<p>text <a href="/x">y</a></p>`. Only tests make a string of it. */
export function shown(text: string, links: LinkTable = NO_LINKS): string {
  return renderMarkdown(text, links).children.map(written).join("").replaceAll("\n", " ");
}

function written(node: Node): string {
  if (node.type === "text") return node.value;
  if (node.type !== "element") throw new Error(`a ${node.type} was let through`);
  const attributes = Object.entries(node.properties).map(([name, value]) =>
    value === true ? ` ${name}` : ` ${name}="${Array.isArray(value) ? value.join(" ") : String(value)}"`,
  );
  return `<${node.tagName}${attributes.join("")}>${node.children.map(written).join("")}</${node.tagName}>`;
}

/** The words a reader sees, one space between them. */
export function wordsOf(tree: { children: unknown[] }): string {
  return textOf(tree).replace(/\s+/g, " ").trim();
}

function textOf(node: unknown): string {
  const { value, children, tagName } = node as { value?: string; children?: unknown[]; tagName?: string };
  if (typeof value === "string") return value;
  const within = (children ?? []).map(textOf).join("");
  return tagName === "br" || tagName === "p" || tagName === "td" || tagName === "li" ? `${within} ` : within;
}
