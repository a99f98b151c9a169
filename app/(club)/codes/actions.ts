"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { detachFile } from "#lib/services/attachments/index.ts";
import {
  addEvidence,
  addSighting,
  createClaim,
  createCode,
  createHouse,
  restoreEvidence,
  retractEvidence,
  updateClaim,
  updateCode,
} from "#lib/services/codes/index.ts";
import { act, type FormState } from "#lib/web/action.ts";
import { recordId } from "#lib/web/record-id.ts";

export async function saveHouse(_before: FormState, form: FormData): Promise<FormState> {
  return act({ role: "member" }, form, async (ctx) => {
    await createHouse(ctx, { name: text(form, "name"), notes: text(form, "notes") });
    revalidatePath("/codes");
  });
}

/** Records a code with its first sighting, or changes the one whose id the form carries. */
export async function saveCode(_before: FormState, form: FormData): Promise<FormState> {
  return act({ role: "member" }, form, async (ctx) => {
    const id = text(form, "id");
    const own = {
      code: text(form, "code"),
      house: text(form, "house") || null,
      chip: text(form, "chip") || null,
      notes: text(form, "notes"),
    };
    const saved =
      id === ""
        ? await createCode(ctx, { ...own, ...(hasSighting(form) && { sighting: sightingOf(form) }) })
        : await updateCode(ctx, id, Number(text(form, "version")), own);
    redirect(`/codes/${saved.id}`);
  });
}

export async function saveSighting(_before: FormState, form: FormData): Promise<FormState> {
  return act({ role: "member" }, form, async (ctx) => {
    const { codeId } = await addSighting(ctx, text(form, "codeId"), sightingOf(form));
    revalidatePath(`/codes/${codeId}`);
  });
}

export async function saveClaim(_before: FormState, form: FormData): Promise<FormState> {
  return act({ role: "member" }, form, async (ctx) => {
    const code = text(form, "codeId");
    const other = text(form, "otherId") || text(form, "other");
    const standsIn = text(form, "direction") === "for-this";
    const kind = text(form, "kind");
    await createClaim(ctx, {
      from: standsIn ? code : other,
      to: standsIn ? other : code,
      grade: text(form, "grade"),
      bothWays: form.get("bothWays") !== null,
      conditions: linesOf(text(form, "conditions")),
      note: text(form, "note"),
      ...(kind && { evidence: evidenceOf(form) }),
    });
    revalidatePath(`/codes/${code}`);
  });
}

/** Changes what a claim says, and leads back to the code's page that it was changed from. */
export async function changeClaim(_before: FormState, form: FormData): Promise<FormState> {
  return act({ role: "member" }, form, async (ctx) => {
    const id = recordId(text(form, "claim"), "claim");
    const { fromId, toId } = await updateClaim(ctx, id, Number(text(form, "version")), {
      grade: text(form, "grade"),
      bothWays: form.get("bothWays") !== null,
      conditions: linesOf(text(form, "conditions")),
      note: text(form, "note"),
    });
    redirect(`/codes/${text(form, "codeId") === toId ? toId : fromId}#claim-${id}`);
  });
}

export async function saveEvidence(_before: FormState, form: FormData): Promise<FormState> {
  return act({ role: "member" }, form, async (ctx) => {
    await addEvidence(ctx, text(form, "claim"), evidenceOf(form));
    revalidatePath(`/codes/${text(form, "codeId")}`);
  });
}

/** Takes evidence back, or lets it count again. */
export async function setRetracted(_before: FormState, form: FormData): Promise<FormState> {
  return act({ role: "member" }, form, async (ctx) => {
    const id = text(form, "evidence");
    await (text(form, "retract") === "yes" ? retractEvidence(ctx, id) : restoreEvidence(ctx, id));
    revalidatePath(`/codes/${text(form, "codeId")}`);
  });
}

export async function takePhotoAway(_before: FormState, form: FormData): Promise<FormState> {
  return act({ role: "member" }, form, async (ctx) => {
    await detachFile(ctx, recordId(text(form, "use"), "photo"));
    revalidatePath("/codes/[code]", "page");
  });
}

function hasSighting(form: FormData): boolean {
  return ["boardSlug", "at", "dateCode", "sightingNote"].some((name) => text(form, name) !== "");
}

function sightingOf(form: FormData) {
  return {
    board: text(form, "boardSlug") || null,
    at: text(form, "at"),
    dateCode: text(form, "dateCode"),
    note: text(form, "sightingNote"),
  };
}

function evidenceOf(form: FormData) {
  const number = text(form, "case").replace(/^#/, "");
  const failed = text(form, "kind") === "fitted-failed";
  return {
    kind: text(form, "kind"),
    note: text(form, "evidenceNote"),
    case: number === "" ? null : Number(number),
    provedElsewhere: (failed && text(form, "provedElsewhere")) || null,
  };
}

function linesOf(given: string): string[] {
  return given
    .split("\n")
    .map((line) => line.trim())
    .filter((line) => line !== "");
}

function text(form: FormData, name: string): string {
  const value = form.get(name);
  return typeof value === "string" ? value.trim() : "";
}
