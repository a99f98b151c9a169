import type { Difference } from "#lib/ui/someone-was-first.tsx";

/** Lines of two versions of a text that differ, side by side by what they begin with. */
export function lineDifferences(present: string, mine: string, nameOf: (line: string) => string): Difference[] {
  const [theirs, yours] = [linesByName(present, nameOf), linesByName(mine, nameOf)];
  return [...new Set([...theirs.keys(), ...yours.keys()])].flatMap((name) => {
    const [one, other] = [theirs.get(name) ?? "", yours.get(name) ?? ""];
    return one === other ? [] : [{ field: name, present: one, yours: other }];
  });
}

function linesByName(text: string, nameOf: (line: string) => string): Map<string, string> {
  const lines = text
    .split(/\r\n|[\n\r]/)
    .map((line) => line.trim())
    .filter((line) => line !== "");
  return new Map(lines.map((line) => [nameOf(line), line]));
}
