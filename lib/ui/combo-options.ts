import { hitsOf } from "./search-answer.ts";

/** One offer of a combo box. `value` is what the form sends besides the text. */
export interface ComboOption {
  value: string;
  label: string;
  /** A second, quieter line. */
  hint?: string;
}

/**
 * The offers in an answer: `{ options: [{ value, label, hint? }] }`, or the answer of `/api/v1/search`, where `value` is
 * the end of the hit's address (slug, case number, code).
 */
export function optionsOf(answer: unknown): ComboOption[] {
  const options = typeof answer === "object" && answer !== null && "options" in answer ? answer.options : null;
  if (Array.isArray(options)) return options.filter(isOption);
  return hitsOf(answer).map((hit) => ({
    value: endOf(hit.url),
    label: hit.plainTitle,
    ...(hit.board && { hint: hit.board }),
  }));
}

function endOf(url: string): string {
  const end = url.slice(url.lastIndexOf("/") + 1);
  try {
    return decodeURIComponent(end);
  } catch {
    return end;
  }
}

function isOption(raw: unknown): raw is ComboOption {
  if (typeof raw !== "object" || raw === null) return false;
  const { value, label, hint } = raw as Record<string, unknown>;
  return typeof value === "string" && typeof label === "string" && (hint === undefined || typeof hint === "string");
}

/** The offers that hold every typed word, whatever the case: for a list that is there already. */
export function matchingOptions(options: readonly ComboOption[], typed: string): ComboOption[] {
  const words = typed.toLowerCase().split(/\s+/).filter(Boolean);
  return options.filter(({ label, hint = "" }) => {
    const text = `${label} ${hint}`.toLowerCase();
    return words.every((word) => text.includes(word));
  });
}
