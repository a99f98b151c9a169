export { commitImport } from "./commit.ts";
export { planImport } from "./formats.ts";
export { planSymbolImport } from "./plan.ts";
export { listImports, readImport, type ImportLine, type ImportView } from "./read.ts";
export { MOST_IMPORT_BYTES } from "./schema.ts";
