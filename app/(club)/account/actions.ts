"use server";

import { revalidatePath } from "next/cache";
import { headers } from "next/headers";
import { redirect } from "next/navigation";
import {
  createToken,
  endSession,
  endSessions,
  revokeToken,
  saveProfile,
  setPassword,
} from "#lib/services/members/index.ts";
import type { SimpleFormState } from "#lib/ui/simple-form.client.tsx";
import { act } from "#lib/web/action.ts";
import { sessionIdOf, signOut } from "#lib/web/auth.ts";
import { formFields } from "#lib/web/form-fields.ts";

const present = async () => sessionIdOf(await headers());

export async function profileAction(_: SimpleFormState, form: FormData): Promise<SimpleFormState> {
  const state = await act({ role: "member" }, form, (ctx) => {
    const { name, about, email } = formFields(form);
    return saveProfile(ctx, { name, about, email: email || null });
  });
  revalidatePath("/", "layout");
  return { ...state, value: undefined } as SimpleFormState;
}

export async function passwordAction(_: SimpleFormState, form: FormData): Promise<SimpleFormState> {
  return act({ role: "member" }, form, async (ctx) => {
    const { present: old = "", password } = formFields(form);
    await setPassword(ctx, { present: old, password }, await present());
    revalidatePath("/account");
  });
}

export async function tokenAction(_: SimpleFormState, form: FormData): Promise<SimpleFormState> {
  const state = await act({ role: "member" }, form, async (ctx) => {
    const { name, days } = formFields(form);
    const scopes = (["read", "write", "review", "import"] as const).filter(
      (scope) => form.get(`scope-${scope}`) === "on",
    );
    const { token } = await createToken(ctx, { name, scopes, days: days ? days : null });
    revalidatePath("/account");
    return token;
  });
  const { value, ...rest } = state;
  return { ...rest, ...(value && { secret: value }) };
}

export async function revokeTokenAction(form: FormData): Promise<void> {
  await act({ role: "member" }, form, (ctx) => revokeToken(ctx, formFields(form).id ?? ""));
  revalidatePath("/account");
}

export async function endSessionAction(form: FormData): Promise<void> {
  await act({ role: "member" }, form, async (ctx) => {
    const id = form.get("id");
    await endSessions(ctx, typeof id === "string" && id !== "" ? { one: id } : { allBut: await present() });
  });
  revalidatePath("/account");
}

export async function signOutAction(): Promise<void> {
  await act({ role: "anyone" }, null, async (ctx) => {
    const id = await present();
    if (id) await endSession(ctx, id);
    await signOut();
    redirect("/");
  });
}
