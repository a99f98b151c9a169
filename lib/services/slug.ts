import { invalid } from "./errors.ts";

/** Longest address form, characters. */
const LONGEST = 80;

/** The address form of a text: `Harrow 80 (main board)` → `harrow-80-main-board`. Empty where it has no letter or digit. */
export function slugOfText(text: string): string {
  return text
    .normalize("NFKD")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-+|-+$/g, "")
    .slice(0, LONGEST)
    .replace(/-+$/, "");
}

/** The address form of a record's name. Throws `invalid` at `name` where there is none. */
export function slugOfName(name: string): string {
  const slug = slugOfText(name);
  if (slug === "") throw invalid("name", "The name needs a letter or a digit.");
  return slug;
}
