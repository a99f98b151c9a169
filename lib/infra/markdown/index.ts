export { renderMarkdown } from "./render.ts";
export type { ProseTree } from "./tree.ts";
export {
  isRecordDirective,
  mentionKey,
  RECORD_DIRECTIVES,
  type LinkTable,
  type RecordDirective,
  type RecordLink,
} from "./links.ts";
export { MARKDOWN_LIMITS } from "./limits.ts";
