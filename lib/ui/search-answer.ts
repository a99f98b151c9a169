/** What the lists under a search box need of a hit of `/api/v1/search`. */
export interface FoundHit {
  kind: string;
  id: string;
  url: string;
  /** With the search's marks around what matched. */
  title: string;
  snippet: string;
  /** Without marks. */
  plainTitle: string;
  board: string;
}

const GROUPS: readonly { kind: string; label: string }[] = [
  { kind: "case", label: "Cases" },
  { kind: "board", label: "Boards" },
  { kind: "chip", label: "Chips" },
  { kind: "code", label: "Codes" },
  { kind: "spare", label: "Spares" },
];

export interface HitGroup {
  label: string;
  hits: FoundHit[];
}

/** Hits by kind; the kind of the best hit first, hits of one kind in the order of the answer. */
export function groupedHits(hits: readonly FoundHit[]): HitGroup[] {
  const kinds = [...new Set(hits.map((hit) => hit.kind))];
  return kinds.map((kind) => ({
    label: GROUPS.find((group) => group.kind === kind)?.label ?? "Other",
    hits: hits.filter((hit) => hit.kind === kind),
  }));
}

/** The hits of an answer; what is not a hit of ours is passed over. */
export function hitsOf(answer: unknown): FoundHit[] {
  const hits = field(answer, "hits");
  return Array.isArray(hits) ? hits.map(hitOf).filter((hit) => hit !== null) : [];
}

function hitOf(raw: unknown): FoundHit | null {
  const url = textAt(raw, "url");
  // Only a page of this club: never `//elsewhere` or another scheme.
  if (!url.startsWith("/") || url.startsWith("//")) return null;
  const marked = field(raw, "highlights");
  const plainTitle = textAt(raw, "title");
  return {
    kind: textAt(raw, "kind"),
    id: textAt(raw, "id"),
    url,
    plainTitle,
    title: textAt(marked, "title") || plainTitle,
    snippet: textAt(marked, "snippet") || textAt(raw, "snippet"),
    board: textAt(field(raw, "board"), "name"),
  };
}

function field(from: unknown, name: string): unknown {
  return typeof from === "object" && from !== null ? (from as Record<string, unknown>)[name] : undefined;
}

function textAt(from: unknown, name: string): string {
  const value = field(from, name);
  return typeof value === "string" ? value : "";
}
