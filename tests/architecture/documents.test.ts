import { existsSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";

const DOCUMENTS = ["README.md", "DEVELOPERS.md"];
const ROOTS = "app|lib|prisma|seed|tests|docs|[.]ci";

interface PackageFile {
  scripts: Record<string, string>;
  dependencies: Record<string, string>;
  devDependencies: Record<string, string>;
}
const npmPackage = JSON.parse(readFileSync("package.json", "utf8")) as PackageFile;

/** What a document names between backquotes or links to. */
function named(document: string): string[] {
  const text = readFileSync(document, "utf8");
  const quoted = [...text.matchAll(/`([^`\n]+)`/g)].map(([, inner]) => inner ?? "");
  const linked = [...text.matchAll(/\]\((?!\w+:|#)([^)\s#]+)/g)].map(([, inner]) => inner ?? "");
  return [...quoted.filter((one) => new RegExp(`^(${ROOTS})(/[^\\s]*)?$`).test(one)), ...linked];
}

test.each(DOCUMENTS)("every path that %s names is there", (document) => {
  const paths = named(document);
  expect(paths.length).toBeGreaterThan(0);
  expect(paths.filter((path) => !existsSync(path))).toEqual([]);
});

test.each(DOCUMENTS)("every command of npm that %s names is one of package.json", (document) => {
  const commands = [...readFileSync(document, "utf8").matchAll(/npm run ([\w:-]+)/g)].map(([, name]) => name ?? "");
  expect(commands.filter((name) => !(name in npmPackage.scripts))).toEqual([]);
});

test("every setting of the environment stands in the README, and it names no other", () => {
  const known = [...readFileSync("lib/infra/env.ts", "utf8").matchAll(/^ {2}([A-Z][A-Z_]+):/gm)].map(
    ([, name]) => name,
  );
  const rows = [...readFileSync("README.md", "utf8").matchAll(/^\| (.+?) \|/gm)].map(([, cell]) => cell ?? "");
  const told = rows.flatMap((cell) => [...cell.matchAll(/`([A-Z][A-Z_]+)`/g)].map(([, name]) => name ?? ""));
  expect(new Set(told)).toEqual(new Set(known));
});

test("every package is asked for in one exact version", () => {
  const asked = Object.entries({ ...npmPackage.dependencies, ...npmPackage.devDependencies });
  expect(asked.length).toBeGreaterThan(20);
  expect(asked.filter(([, version]) => !/^\d+[.]\d+[.]\d+(-[\w.]+)?$/.test(version))).toEqual([]);
});
