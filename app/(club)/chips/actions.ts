"use server";

import { redirect } from "next/navigation";
import { createChip, packagesOfText, updateChip, type PackageText } from "#lib/services/chips/index.ts";
import { act, type FormState } from "#lib/web/action.ts";

/** Records a chip from the form, or changes the one whose address the form carries. */
export async function saveChip(_before: FormState, form: FormData): Promise<FormState> {
  return act({ role: "member" }, form, async (ctx) => {
    const slug = text(form, "slug");
    const input = {
      name: text(form, "name"),
      function: text(form, "function"),
      technology: text(form, "technology"),
      contents: text(form, "contents"),
      contentsRef: text(form, "contentsRef"),
      dataSheet: text(form, "dataSheet"),
      notes: text(form, "notes"),
      packages: packagesOfText(packagesOf(form)),
    };
    const saved =
      slug === "" ? await createChip(ctx, input) : await updateChip(ctx, slug, Number(text(form, "version")), input);
    redirect(`/chips/${saved.slug}`);
  });
}

function packagesOf(form: FormData): PackageText[] {
  const names = form.getAll("packageName").map(String);
  const styles = form.getAll("packageStyle").map(String);
  const pins = form.getAll("packagePins").map(String);
  return names.map((name, index) => ({ name, style: styles[index] ?? "", pins: pins[index] ?? "" }));
}

function text(form: FormData, name: string): string {
  const value = form.get(name);
  return typeof value === "string" ? value : "";
}
