export { generateCases, type GenerateOptions } from "./generate.ts";
export { randomFrom, type Random } from "./random.ts";
