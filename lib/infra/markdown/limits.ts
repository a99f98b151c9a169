/**
 * What is beyond these is shown as typed instead of being read as Markdown. Origin: timed on two cores; reading time
 * grows with the square of both kinds of nesting, and within these bounds 100,000 characters take under a second.
 */
export const MARKDOWN_LIMITS = {
  characters: 100_000,
  /** Quotes and list items opened on one line. */
  containers: 16,
  /** Runs of `*`, `_` or `~` between two blank lines. */
  marksInBlock: 600,
  /** Those, and every `[`, `` ` ``, `<` and `{`, in all: each may begin something that the reader looks for to the end. */
  marks: 5_000,
} as const;

const CONTAINERS = /^(?:[ \t]*(?:>|(?:[-*+]|\d{1,9}[.)])(?=[ \t]|$)))+/;

/** Whether a text can be read in bounded time. */
export function isReadable(text: string): boolean {
  if (text.length > MARKDOWN_LIMITS.characters) return false;
  let inAll = 0;
  let inBlock = 0;
  for (const line of text.split(/\r\n|\r|\n/)) {
    const opened = CONTAINERS.exec(line)?.[0].match(/>|[-*+]|\d+[.)]/g)?.length ?? 0;
    if (opened > MARKDOWN_LIMITS.containers) return false;
    if (line.trim() === "") inBlock = 0;
    const marks = line.match(/\*+|_+|~+/g)?.length ?? 0;
    inAll += marks + (line.match(/[[`<{]/g)?.length ?? 0);
    inBlock += marks;
    if (inBlock > MARKDOWN_LIMITS.marksInBlock || inAll > MARKDOWN_LIMITS.marks) return false;
  }
  return true;
}
