"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { detachFile } from "#lib/services/attachments/index.ts";
import { createChip, packagesOfText, updateChip, type PackageText } from "#lib/services/chips/index.ts";
import { act, type FormState } from "#lib/web/action.ts";
import { text } from "#lib/web/form-fields.ts";
import { recordId } from "#lib/web/record-id.ts";

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

export async function takePhotoAway(_before: FormState, form: FormData): Promise<FormState> {
  return act({ role: "member" }, form, async (ctx) => {
    await detachFile(ctx, recordId(text(form, "use"), "photo"));
    revalidatePath("/chips/[slug]", "page");
  });
}

function packagesOf(form: FormData): PackageText[] {
  const names = form.getAll("packageName").map(String);
  const styles = form.getAll("packageStyle").map(String);
  const pins = form.getAll("packagePins").map(String);
  return names.map((name, index) => ({ name, style: styles[index] ?? "", pins: pins[index] ?? "" }));
}
