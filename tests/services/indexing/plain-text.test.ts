import { expect, test } from "vitest";
import { plainText } from "#lib/services/indexing/plain-text.ts";

test.each([
  ["a directive is its words", "New :chip[74LS244] on :board[finch].", "New 74LS244 on finch."],
  ["a case stored by id is only a case", "See :case[0192f0c1-0000-7000-8000-000000000001].", "See case."],
  ["emphasis", "It was **not** *that* one, `U7`.", "It was not that one, U7."],
  ["an active-low signal keeps its star", "RESET* and CS* are *low*", "RESET* and CS* are low"],
  ["a place with a colon, a time and a ratio", "U7:14 at 12:30, 3:1", "U7:14 at 12:30, 3:1"],
  ["a link is its words", "the [sheet](https://example.org/a) says", "the sheet says"],
  ["headings, lists and quotes", "## Found\n- one\n1. two\n> three", "Found\none\ntwo\nthree"],
  ["a table", "| pin | reads |\n| --- | ---: |\n| 7 | 612 |", " pin reads \n\n 7 612 "],
  ["a negative rail at the start of a line is no list", "-12V is gone", "-12V is gone"],
])("%s", (_, markdown, plain) => {
  expect(plainText(markdown)).toBe(plain);
});
