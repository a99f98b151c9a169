/** Orders pin numbers as a table lists them: 2 before 10, digits before letters, A2 before A10. */
export function comparePinNumbers(a: string, b: string): number {
  const [lettersA, digitsA] = splitPinNumber(a);
  const [lettersB, digitsB] = splitPinNumber(b);
  if (lettersA.length !== lettersB.length) return lettersA.length - lettersB.length;
  if (lettersA !== lettersB) return lettersA < lettersB ? -1 : 1;
  if (digitsA !== digitsB) return digitsA - digitsB;
  return a < b ? -1 : a > b ? 1 : 0;
}

/** `A12` → `A`, 12. A number without digits at its end counts as -1, so that `A` stands before `A1`. */
function splitPinNumber(number: string): [letters: string, digits: number] {
  let from = number.length;
  while (from > 0 && number.length - from < 9 && isDigit(number.charCodeAt(from - 1))) from--;
  return [number.slice(0, from), from === number.length ? -1 : Number(number.slice(from))];
}

function isDigit(code: number): boolean {
  return code >= 48 && code <= 57;
}
