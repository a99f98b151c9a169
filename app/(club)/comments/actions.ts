"use server";

import { revalidatePath } from "next/cache";
import { createComment, deleteComment, updateComment } from "#lib/services/comments/index.ts";
import type { Commented } from "#lib/services/comments/schema.ts";
import { act, type FormState } from "#lib/web/action.ts";
import { text } from "#lib/web/form-fields.ts";
import { recordId } from "#lib/web/record-id.ts";

/** The pages under which each kind of record is talked about. */
const PAGES: Record<Commented, string> = {
  case: "/cases/[number]",
  board: "/boards/[slug]",
  chip: "/chips/[slug]",
  code: "/codes/[code]",
};

export async function addComment(kind: Commented, _before: FormState, form: FormData): Promise<FormState> {
  return act({ role: "member" }, form, async (ctx) => {
    await createComment(ctx, { id: text(form, "id"), kind, record: text(form, "record"), body: text(form, "body") });
    revalidatePath(PAGES[kind], "page");
  });
}

export async function editComment(kind: Commented, _before: FormState, form: FormData): Promise<FormState> {
  return act({ role: "member" }, form, async (ctx) => {
    const body = text(form, "body");
    await updateComment(ctx, recordId(text(form, "comment"), "comment"), Number(text(form, "version")), { body });
    revalidatePath(PAGES[kind], "page");
  });
}

export async function takeCommentBack(kind: Commented, _before: FormState, form: FormData): Promise<FormState> {
  return act({ role: "member" }, form, async (ctx) => {
    await deleteComment(ctx, recordId(text(form, "comment"), "comment"), Number(text(form, "version")));
    revalidatePath(PAGES[kind], "page");
  });
}
