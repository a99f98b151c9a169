"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { closeSpare, createSpare, updateSpare } from "#lib/services/spares/index.ts";
import { act, type FormState } from "#lib/web/action.ts";
import { formFields } from "#lib/web/form-fields.ts";

/** Adds a spare, or rewrites the one whose id the form carries. */
export async function saveSpare(_before: FormState, form: FormData): Promise<FormState> {
  return act({ role: "member" }, form, async (ctx) => {
    const { id, version, ...fields } = formFields(form);
    const input = spareOf(fields);
    if (id) await updateSpare(ctx, id, Number(version), input);
    const shown = id ?? (await createSpare(ctx, input)).id;
    revalidatePath("/spares");
    redirect(`/spares#spare-${shown}`);
  });
}

/** Given, used up, or found: it leaves the lists. */
export async function endSpare(_before: FormState, form: FormData): Promise<FormState> {
  return act({ role: "member" }, form, async (ctx) => {
    const { id = "", version } = formFields(form);
    await closeSpare(ctx, id, Number(version));
    revalidatePath("/spares");
    redirect("/spares");
  });
}

function spareOf(fields: Record<string, string>) {
  const { direction, code, chip, chipName, board, boardName, quantity, condition, note, visibility } = fields;
  return {
    direction,
    code: code?.trim() || null,
    // A name that is no offer goes to the service as typed, which says that there is no such record.
    chip: chip || chipName?.trim() || null,
    board: board || boardName?.trim() || null,
    quantity: quantity || 1,
    condition: condition ?? "",
    note: note ?? "",
    visibility,
  };
}
