import { remark } from "remark";
import remarkDirective from "remark-directive";
import remarkGfm from "remark-gfm";

export type MarkdownTree = ReturnType<ReturnType<typeof remark>["parse"]>;

/**
 * Leaf and container directives are never read: a line of colons is text like any other. Footnotes would make ids that
 * clash where several texts stand on one page.
 */
function onlyDirectivesWithinText(this: { data(): object }): void {
  const data = this.data() as { micromarkExtensions?: Record<string, unknown>[] };
  data.micromarkExtensions = [
    ...(data.micromarkExtensions ?? []).map((extension) =>
      isDirectives(extension) ? { text: extension.text } : extension,
    ),
    { disable: { null: ["gfmFootnoteDefinition", "gfmFootnoteCall", "gfmPotentialFootnoteCall"] } },
  ];
}

const COLON = 58;

function isDirectives(extension: Record<string, unknown>): boolean {
  return [extension.text, extension.flow].every((part) => typeof part === "object" && part !== null && COLON in part);
}

const parser = remark().use(remarkGfm).use(remarkDirective).use(onlyDirectivesWithinText).freeze();

/** Reads Markdown with GitHub's tables, strike-through, task lists and bare addresses, and directives within text. */
export function parseMarkdown(text: string): MarkdownTree {
  return parser.parse(text);
}
