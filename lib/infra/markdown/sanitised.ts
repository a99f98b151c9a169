import type rehypeSanitize from "rehype-sanitize";

type Schema = NonNullable<Parameters<typeof rehypeSanitize>[0]>;

/** All that a text may become: what Markdown makes, and nothing that runs, loads, frames or styles. */
export const SANITISED: Schema = {
  tagNames: `h1 h2 h3 h4 h5 h6 p br hr blockquote pre code em strong del span a img
    ul ol li input table thead tbody tr th td`.split(/\s+/),
  attributes: {
    a: ["href", "title", "dataRecord"],
    img: ["src", "alt", "title"],
    span: ["dataRecord"],
    code: [["className", /^language-[\w+-]{1,20}$/]],
    ol: ["start"],
    li: [["className", "task-list-item"]],
    ul: [["className", "contains-task-list"]],
    input: [["type", "checkbox"], ["disabled", true], "checked"],
    th: ["align"],
    td: ["align"],
  },
  required: { input: { type: "checkbox", disabled: true } },
  ancestors: { thead: ["table"], tbody: ["table"], tr: ["table"], th: ["table"], td: ["table"], li: ["ul", "ol"] },
  protocols: { href: ["http", "https", "mailto"], src: [] },
  strip: ["script", "style"],
  clobber: [],
  allowComments: false,
  allowDoctypes: false,
};
