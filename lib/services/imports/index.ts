export { commitImport } from "./commit.ts";
export { planSymbolImport, tooLarge } from "./plan.ts";
export { listImports, readImport, type ImportLine, type ImportView } from "./read.ts";
