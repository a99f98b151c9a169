export * from "./result.ts";
export * from "./vocabulary.ts";
