import { ServiceError } from "#lib/services/errors.ts";

/** A character that no database keeps (U+0000), or half of one: JSON and addresses can spell both. */
const UNKEEPABLE = /\0|\p{Surrogate}/u;

/** Whether a text can be kept as it is. */
export function isKeepable(text: string): boolean {
  return !UNKEEPABLE.test(text);
}

/** Refuses texts that cannot be kept, wherever they stand in a value as JSON has it. Walks without recursion. */
export function demandKeepable(value: unknown): void {
  const left: { value: unknown; path: string }[] = [{ value, path: "" }];
  for (let one = left.pop(); one; one = left.pop()) {
    if (typeof one.value === "string") demandKeepableText(one.value, one.path);
    if (typeof one.value !== "object" || one.value === null) continue;
    for (const [name, inner] of Object.entries(one.value)) {
      demandKeepableText(name, one.path);
      left.push({ value: inner, path: one.path === "" ? name : `${one.path}.${name}` });
    }
  }
}

export function demandKeepableText(text: string, path: string): void {
  if (isKeepable(text)) return;
  throw new ServiceError("invalid", "A text holds a character that cannot be kept. Type it anew.", {
    problems: [{ path, message: "holds a character that cannot be kept" }],
  });
}
