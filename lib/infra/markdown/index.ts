export { renderMarkdown, type ProseTree } from "./render.ts";
export {
  isRecordDirective,
  mentionKey,
  RECORD_DIRECTIVES,
  type LinkTable,
  type RecordDirective,
  type RecordLink,
} from "./links.ts";
export { MARKDOWN_LIMITS } from "./limits.ts";
