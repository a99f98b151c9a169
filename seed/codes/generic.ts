import type { SeedChip, SeedCode } from "#seed/shapes.ts";
import { chips } from "#seed/chips/index.ts";

// What is printed on generic parts: the industry's number with prefix and package letters.

/** Speeds and packages that are printed behind a memory's number. */
const MEMORY_CODES: Record<string, readonly string[]> = {
  "2114": ["2114-2", "2114L-3"],
  "6116": ["6116P-3", "6116LP-3"],
  "62256": ["62256LP-10", "62256LP-12"],
  "4116": ["4116-2", "4116-3"],
  "4164": ["4164-15", "4164-20"],
  "41256": ["41256-12", "41256-15"],
  "2716": ["2716", "2716-1"],
  "2732": ["2732", "2732A-2"],
  "2764": ["2764-25", "2764A-20"],
  "27128": ["27128-25", "27128A-20"],
  "27c256": ["27C256-15", "27C256-20"],
  "27c512": ["27C512-12", "27C512-15"],
};

const PROCESSOR_CODES: Record<string, readonly string[]> = {
  z80cpu: ["Z80 CPU", "Z80A CPU"],
  "6502": ["6502", "6502A"],
  "6809": ["6809P", "68A09P"],
  "6809e": ["6809EP", "68B09EP"],
  "6821": ["6821P", "68B21P"],
  "6522": ["6522", "6522A"],
  "6551": ["6551", "6551A"],
  "6850": ["6850P", "68A50P"],
  "8251": ["8251A"],
  "8255": ["8255A-5"],
};

function printedOn({ slug, name, packages }: SeedChip): readonly string[] {
  const known = MEMORY_CODES[slug] ?? PROCESSOR_CODES[slug];
  if (known !== undefined) return known;
  if (slug.startsWith("74")) {
    const flat = packages.some((one) => one.style === "SOIC") ? [`${name}D`] : [];
    return [`${name}N`, ...(/^74(LS|\d)/.test(name) ? [`SN${name}N`] : []), ...flat];
  }
  if (/^4\d{3}$/.test(slug)) return [`${name}BE`, `${name}BP`];
  if (/^(78|79)\d\d$/.test(slug)) return [`${name}CT`, `${name}CV`];
  if (/^(lm|tl|ne|mc)/.test(slug)) return [slug.startsWith("mc") ? `${name}P` : `${name}N`];
  return [name];
}

/** Two parts whose number alone does not say enough; the note is what the club learnt. */
const NOTES: Record<string, string> = {
  "2732A-2": "A: programs at 21 V. 25 V kills it.",
  "2764A-20": "A: programs at 12.5 V.",
  "27128A-20": "A: programs at 12.5 V.",
  "4116-2": "150 ns on most makers' parts; -2 is the maker's own grade.",
  "6116P-3": "Draws some 30 µA at rest: too much for a battery.",
  "6116LP-3": "The low-power one, for battery-backed places.",
  "Z80A CPU": "Up to 4 MHz.",
  "68B09EP": "Up to 2 MHz. E, so clock from outside.",
  "68A09P": "Up to 1.5 MHz. Clock inside.",
};

/** At least one printed code for every generic chip. */
export const genericCodes: SeedCode[] = chips.flatMap((chip) =>
  printedOn(chip).map((code): SeedCode => {
    const notes = NOTES[code];
    return { code, chip: chip.slug, ...(notes === undefined ? {} : { notes }), sightings: [] };
  }),
);
