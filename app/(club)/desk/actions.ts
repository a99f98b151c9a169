"use server";

import { revalidatePath } from "next/cache";
import { ROLES } from "#lib/core/shared/index.ts";
import { changeMember, createInvitation, makeSignInLink, revokeInvitation } from "#lib/services/members/index.ts";
import { saveClubSettings } from "#lib/services/settings/index.ts";
import type { SimpleFormState } from "#lib/ui/simple-form.client.tsx";
import { act, type FormState } from "#lib/web/action.ts";
import { formFields } from "#lib/web/form-fields.ts";
import { recordId } from "#lib/web/record-id.ts";
import { siteAddress } from "#lib/web/zone.ts";

/** Makes an invitation. Its link is in this answer and nowhere else. */
export async function inviteAction(_before: FormState<string>, form: FormData): Promise<FormState<string>> {
  return act({ role: "steward" }, form, async (ctx) => {
    const { role, note, uses, days } = formFields(form);
    const { token } = await createInvitation(ctx, { role, note, uses, days });
    revalidatePath("/desk");
    return `${await siteAddress()}/join/${token}`;
  });
}

export async function revokeAction(_before: FormState, form: FormData): Promise<FormState> {
  return act({ role: "steward" }, form, async (ctx) => {
    await revokeInvitation(ctx, recordId(formFields(form).id, "invitation"));
    revalidatePath("/desk");
  });
}

/** Makes a link that signs a member in once. It is in this answer and nowhere else. */
export async function linkAction(_before: FormState<string>, form: FormData): Promise<FormState<string>> {
  return act({ role: "steward" }, form, async (ctx) => {
    const { token } = await makeSignInLink(ctx, formFields(form).handle ?? "");
    return `${await siteAddress()}/link/${token}`;
  });
}

/** Gives a member another role, or shuts or opens the account. */
export async function memberAction(_before: FormState, form: FormData): Promise<FormState> {
  return act({ role: "steward" }, form, async (ctx) => {
    const { handle = "", role, disabled } = formFields(form);
    await changeMember(ctx, handle, {
      ...(ROLES.some((one) => one === role) && { role }),
      ...(disabled && { disabled: disabled === "yes" }),
    });
    revalidatePath("/desk");
  });
}

export async function settingsAction(_before: SimpleFormState, form: FormData): Promise<SimpleFormState> {
  const state = await act({ role: "steward" }, form, async (ctx) => {
    const { name, meeting } = formFields(form);
    await saveClubSettings(ctx, { name, meeting, membersOnly: form.get("membersOnly") === "on" });
    revalidatePath("/", "layout");
  });
  return { ...state, value: undefined } as SimpleFormState;
}
