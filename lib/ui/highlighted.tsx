// The search marks what matched with these two private-use characters; they cannot come from anywhere else.
const BEFORE = "\uE000";
const BEHIND = "\uE001";

/** Splits a marked text into plain and matched parts. */
export function markedParts(text: string): { text: string; matched: boolean }[] {
  return text
    .split(BEFORE)
    .flatMap((piece, index) => {
      if (index === 0) return [{ text: piece, matched: false }];
      const [matched = "", ...rest] = piece.split(BEHIND);
      return [
        { text: matched, matched: true },
        { text: rest.join(""), matched: false },
      ];
    })
    .filter((part) => part.text !== "");
}

/** A text of the search with its matches marked. */
export function Highlighted({ text }: { text: string }) {
  return markedParts(text).map((part, index) =>
    // Parts of a text have no identity beyond their order.
    // oxlint-disable-next-line react/no-array-index-key
    part.matched ? <mark key={index}>{part.text}</mark> : part.text,
  );
}
