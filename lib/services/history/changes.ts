export interface FieldChange {
  field: string;
  before: string;
  after: string;
}

/** Fields that no reader compares: they say the same as the entry itself. */
const SILENT = new Set(["version", "id", "position", "by", "takenAt", "number"]);

/** What differs between two states of a record, field by field, as text. A record without an earlier state has none. */
export function fieldChanges(before: unknown, after: unknown): FieldChange[] {
  if (!isRecord(before) || !isRecord(after)) return [];
  const fields = [...new Set([...Object.keys(before), ...Object.keys(after)])].filter((field) => !SILENT.has(field));
  return fields.flatMap((field) => {
    const [was, is] = [valueText(before[field]), valueText(after[field])];
    return was === is ? [] : [{ field, before: was, after: is }];
  });
}

/** Nesting beyond this is cut: no record of ours is as deep. */
const DEEPEST = 6;

function valueText(value: unknown, depth = 0): string {
  if (value === null || value === undefined) return "";
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value === "string") return value;
  if (typeof value === "number") return String(value);
  if (depth >= DEEPEST) return "…";
  if (Array.isArray(value)) {
    const items = value.map((item) => valueText(item, depth + 1));
    return items.join(value.some(isRecord) ? "\n" : ", ");
  }
  if (!isRecord(value)) return "";
  return Object.entries(value)
    .filter(([field]) => !SILENT.has(field))
    .map(([field, inner]) => [field, valueText(inner, depth + 1)] as const)
    .filter(([, text]) => text !== "")
    .map(([field, text]) => `${field}: ${text}`)
    .join("; ");
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
