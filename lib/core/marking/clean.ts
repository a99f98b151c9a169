// One spelling of what people paste: the same text must give the same keys wherever it was copied from.

/** Hyphens, dashes and minus signs that print alike and are typed for one another. */
const DASHES = /[\u2010-\u2015\u2043\u2212\uFE58\uFE63\uFF0D]/g;

/** Characters that nobody sees: soft hyphen, zero-width and direction marks, variation selectors. */
const UNSEEN = /[\u00AD\u180E\u200B-\u200F\u202A-\u202E\u2060-\u2064\u2066-\u206F\uFEFF]|\p{Variation_Selector}/gu;

/** Private-use characters. The marks around matches (U+E000, U+E001) are two of them, so no text may bring its own. */
const PRIVATE_USE = /[\uE000-\uF8FF\u{F0000}-\u{FFFFD}\u{100000}-\u{10FFFD}]/gu;

/** Letters of units that come in two codings each, or that a keyboard lacks. */
const UNIT_LETTERS: readonly (readonly [RegExp, string])[] = [
  [/[\u00B5\u03BC]/g, "u"],
  [/[\u2126\u03A9]/g, "R"],
  [/[\u2206\u0394]/g, "delta"],
];

/** Printable ASCII without a space is already clean: most words of most texts, so it is worth asking first. */
const PLAIN = /^[!-~]*$/;

// Control characters count as spaces. \p{Cc} is exactly the two control blocks.
const SPACES = /[\s\p{Cc}]+/gu;

/** The text without private-use characters: safe to show between the marks of a match, otherwise as it was typed. */
export function withoutPrivateUse(text: string): string {
  return text.replace(PRIVATE_USE, "");
}

/**
 * The text in its plain spelling: one hyphen, no unseen or private-use characters, `µ` as `u`, `Ω` as `R`, `Δ` as
 * `delta`, compatibility forms folded (NFKC), spaces collapsed and trimmed. Letters keep their case. Cleaning twice
 * changes nothing.
 */
export function clean(text: string): string {
  if (PLAIN.test(text)) return text;
  let plain = text.normalize("NFKC");
  plain = withoutPrivateUse(plain).replace(UNSEEN, "").replace(DASHES, "-");
  for (const [letter, spelling] of UNIT_LETTERS) plain = plain.replace(letter, spelling);
  // A letter that was replaced or an unseen one that went may leave a base and its accent side by side.
  return plain.normalize("NFKC").replace(SPACES, " ").trim();
}

/** A prose word as it is compared: cleaned, lower case, no accents, letters and digits only. May be empty. */
export function foldWord(word: string): string {
  return clean(word)
    .normalize("NFKD")
    .toLowerCase()
    .normalize("NFKD")
    .replace(/[^\p{L}\p{N}]/gu, "");
}
