/** A number from 0 to below 1 that always is the same for the same words: the drawing's only source of variety. */
export function chance(...words: readonly string[]): number {
  // FNV-1a, 32 bit.
  let hash = 0x811c9dc5;
  for (const letter of words.join("\u0001")) {
    hash = Math.imul(hash ^ (letter.codePointAt(0) ?? 0), 0x01000193) >>> 0;
  }
  // The last letters alone would hardly move the upper bits.
  hash = Math.imul(hash ^ (hash >>> 15), 0x2c1b3c6d) >>> 0;
  return ((hash ^ (hash >>> 13)) >>> 0) / 0x1_0000_0000;
}

/** One of the choices, always the same for the same words. */
export function chosen<T>(choices: readonly [T, ...T[]], ...words: readonly string[]): T {
  return choices[Math.floor(chance(...words) * choices.length)] ?? choices[0];
}
