// npm run bench -- [--part search|advice|pages|imports] [--json] [--cases N]
import { benchImports } from "./imports.ts";
import { setting } from "./machine.ts";
import { benchPages } from "./pages.ts";
import { benchSimilar } from "./similar.ts";

const PARTS = ["similar", "pages", "imports"] as const;
type Part = (typeof PARTS)[number];

const words = process.argv.slice(2);
const asJson = words.includes("--json");
const wanted = after("--part");
const counts = after("--cases") ? [Number(after("--cases"))] : [10_000, 100_000];

if (counts.some((count) => !Number.isInteger(count) || count < 1)) throw new Error("--cases wants a whole number");
if (wanted && !parts(wanted)) throw new Error(`--part is one of search, advice, ${PARTS.join(", ")}`);

const figures: Record<string, unknown> = { ...setting() };
const does = (part: Part) => !wanted || parts(wanted)?.includes(part);
if (does("similar")) figures.similar = Object.fromEntries(counts.map((count) => [String(count), benchSimilar(count)]));
if (does("pages")) figures.pages = await benchPages();
if (does("imports")) figures.imports = await benchImports();
process.stdout.write(asJson ? `${JSON.stringify(figures)}\n` : `${table(figures)}\n`);
process.exit(0);

/** Names of the contract that a part here measures. */
function parts(name: string): readonly Part[] | null {
  if (name === "search" || name === "advice") return ["similar", "pages"];
  return PARTS.some((part) => part === name) ? [name as Part] : null;
}

function after(name: string): string | undefined {
  const at = words.indexOf(name);
  return at < 0 ? undefined : words[at + 1];
}

function table(value: Record<string, unknown>, indent = ""): string {
  return Object.entries(value)
    .map(([name, inner]) =>
      typeof inner === "object" && inner !== null
        ? `${indent}${name}\n${table(inner as Record<string, unknown>, `${indent}  `)}`
        : `${indent}${name.padEnd(12)} ${String(inner)}`,
    )
    .join("\n");
}
