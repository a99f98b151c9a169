export { boardFacts } from "./facts.ts";
