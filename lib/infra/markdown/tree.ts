import type rehypeSanitize from "rehype-sanitize";

/** A sanitised tree of HTML elements (hast): what a page turns into elements without ever making a string of HTML. */
export type ProseTree = ReturnType<ReturnType<typeof rehypeSanitize>>;
