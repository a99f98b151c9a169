import type { PlacementKind } from "#lib/core/shared/index.ts";

// What the action answers to a pasted parts list, as the browser needs it.

export interface PlannedPart {
  line: number | null;
  designator: string;
  kind: PlacementKind;
  value: string;
  package: string;
  socketed: boolean;
  sheet: string;
  notes: string;
  chip: { slug: string; name: string; function: string } | null;
  code: { id: string; code: string } | null;
  choices: string[];
  change: "new" | "changed" | "same" | "gone";
  before: string | null;
}

export interface PartsPlan {
  parts: PlannedPart[];
  problems: { line: number; text: string; message: string }[];
  counts: Record<PlannedPart["change"], number>;
}
