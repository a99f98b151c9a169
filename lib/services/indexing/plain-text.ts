const UUID = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;

/**
 * Markdown as its reader sees it, roughly: for the searched text and the snippets of it, in which `:chip[27C256]` and
 * `**` would only be noise. Places and signals such as `U7:14` and `RESET*` stay as they are.
 */
export function plainText(markdown: string): string {
  return (
    markdown
      // A case is stored by its id, which says nothing to a reader.
      .replace(/:(case|board|chip|code)\[([^\]\n]{1,160})\]/g, (_, kind: string, name: string) =>
        UUID.test(name) ? kind : name,
      )
      .replace(/!?\[([^\]\n]{0,300})\]\([^)\s]{1,2000}\)/g, "$1")
      .replace(/^[ \t]*(?:#{1,6}|>|[-+*]|\d{1,3}\.)[ \t]+/gm, "")
      .replace(/^[ \t]*\|?[ \t]*:?-{3,}[-:| \t]*$/gm, "")
      .replace(/\*\*|__|~~|`/g, "")
      // Emphasis only: a star behind a name alone marks an active-low signal.
      .replace(/(^|[\s(])\*([^\s*][^*\n]{0,300})\*(?=[\s.,;:!?)]|$)/gm, "$1$2")
      .replace(/[ \t]*\|[ \t]*/g, " ")
  );
}
