import { textTokens, type TextToken } from "#lib/core/marking/index.ts";

/** Characters of texts whose tokens are kept, about 20 MB of tokens. Whoever types meets the same hits letter after letter. */
const KEPT_CHARACTERS = 1_000_000;

const kept = new Map<string, TextToken[]>();
let characters = 0;

/** The tokens of a text, worked out once while the text is among those lately asked for. They must not be changed. */
export function keptTokens(text: string): readonly TextToken[] {
  const known = kept.get(text);
  if (known) {
    // Put behind the others: the first of the map is the one not asked for the longest.
    kept.delete(text);
    kept.set(text, known);
    return known;
  }
  const tokens = textTokens(text);
  kept.set(text, tokens);
  characters += text.length;
  for (const oldest of kept.keys()) {
    if (characters <= KEPT_CHARACTERS) break;
    kept.delete(oldest);
    characters -= oldest.length;
  }
  return tokens;
}
