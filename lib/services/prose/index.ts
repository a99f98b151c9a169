export { mentionedRecords } from "./mentions.ts";
export { proseOf, type Prose } from "./prose-of.ts";
