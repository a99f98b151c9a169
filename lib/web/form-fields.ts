/** The text fields of a form, for a schema to check. Next's own fields are left out. */
export function formFields(form: FormData): Record<string, string> {
  const fields: Record<string, string> = {};
  for (const [name, value] of form.entries()) {
    if (typeof value === "string" && !name.startsWith("$ACTION")) fields[name] = value;
  }
  return fields;
}

/** One text field of a form as typed; empty where it is missing or a file. */
export function text(form: FormData, name: string): string {
  const value = form.get(name);
  return typeof value === "string" ? value : "";
}
