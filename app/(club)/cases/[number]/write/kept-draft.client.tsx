"use client";

export interface KeptDraft {
  text: string;
  /** The story that it began from. */
  from: string;
}

const keyOf = (caseId: string) => `benchlore:story:${caseId}`;

/** What was typed and not saved. A browser without a store keeps nothing, and the page works all the same. */
export function keptDraft(caseId: string): KeptDraft | null {
  try {
    const kept: unknown = JSON.parse(window.localStorage.getItem(keyOf(caseId)) ?? "null");
    if (typeof kept !== "object" || kept === null) return null;
    const { text, from } = kept as Record<string, unknown>;
    return typeof text === "string" && typeof from === "string" ? { text, from } : null;
  } catch {
    return null;
  }
}

export function keepDraft(caseId: string, draft: KeptDraft | null): void {
  try {
    if (draft === null || draft.text === draft.from) window.localStorage.removeItem(keyOf(caseId));
    else window.localStorage.setItem(keyOf(caseId), JSON.stringify(draft));
  } catch {
    // The store is full or not allowed: the text is still in the page.
  }
}
