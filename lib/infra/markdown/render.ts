import rehypeSanitize from "rehype-sanitize";
import remarkRehype from "remark-rehype";
import { unified } from "unified";
import { resolveDirectives } from "./directives.ts";
import { isReadable } from "./limits.ts";
import type { LinkTable } from "./links.ts";
import { parseMarkdown } from "./parse.ts";
import { SANITISED } from "./sanitised.ts";
import { settle } from "./settle.ts";
import type { ProseTree } from "./tree.ts";

const toElements = unified().use(remarkRehype).use(rehypeSanitize, SANITISED).freeze();

/**
 * Reads what a member wrote. Records named by our directives become links from `links`; everything that is no Markdown
 * of ours (other directives, raw HTML) comes out as the text it is. Headings begin at `h1` and step down one by one: the
 * page shifts them to their place. A text beyond the limits is shown as typed.
 */
export function renderMarkdown(text: string, links: LinkTable): ProseTree {
  if (!isReadable(text)) return asTyped(text);
  const tree = parseMarkdown(text);
  resolveDirectives(tree, text, links);
  const elements = toElements.runSync(tree);
  settle(elements);
  return elements;
}

/** Paragraphs and line breaks, and nothing else is read. */
function asTyped(text: string): ProseTree {
  const paragraphs = text.split(/(?:\r\n|\r|\n)[ \t]*(?:\r\n|\r|\n)\s*/).filter((one) => one.trim() !== "");
  return {
    type: "root",
    children: paragraphs.map((paragraph) => ({
      type: "element",
      tagName: "p",
      properties: {},
      children: paragraph
        .split(/\r\n|\r|\n/)
        .flatMap((line, index) => [
          ...(index > 0 ? [{ type: "element" as const, tagName: "br", properties: {}, children: [] }] : []),
          { type: "text" as const, value: line },
        ]),
    })),
  };
}
