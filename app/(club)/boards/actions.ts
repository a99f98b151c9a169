"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { detachFile, removeDocument } from "#lib/services/attachments/index.ts";
import {
  createBoard,
  createCopy,
  listOfTyped,
  netsOfText,
  placementsOfText,
  planParts,
  TYPED_LISTS,
  updateBoard,
  updateCopy,
  type BoardView,
  type PartsPlan,
} from "#lib/services/boards/index.ts";
import type { Ctx } from "#lib/services/context.ts";
import { invalid, type FieldProblem } from "#lib/services/errors.ts";
import { act, type FormState } from "#lib/web/action.ts";
import { text } from "#lib/web/form-fields.ts";
import type { EditedList } from "./edit-lists.ts";
import { typedFacts, typedRows, typedText } from "./typed-rows.ts";

/** Records a board: its facts, its rails, and the parts of the pasted list. */
export async function recordBoard(_before: FormState, form: FormData): Promise<FormState> {
  return act({ role: "member" }, form, async (ctx) => {
    const placements = await placementsOfText(ctx, { text: text(form, "parts") }, { leaveOut: leavesOut(form) });
    const rails = listOfTyped("rails", jsonOf(form, "rails"));
    const { slug } = await createBoard(ctx, { ...factsOf(form), ...rails, placements });
    redirect(`/boards/${slug}`);
  });
}

/** Changes name, kind and the other plain facts. */
export async function saveFacts(_before: FormState, form: FormData): Promise<FormState> {
  const state = await act({ role: "member" }, form, (ctx) => save(ctx, form, factsOf(form)));
  return { ...state, ...(state.present !== undefined && { present: presentAs(state.present, typedFacts) }) };
}

/** Changes one list that is typed row by row. */
export async function saveList(_before: FormState, form: FormData): Promise<FormState> {
  const list = TYPED_LISTS.find((one): one is EditedList => one === text(form, "list"));
  const state = await act({ role: "member" }, form, async (ctx) => {
    if (!list) throw invalid("list", "There is no such list.");
    await save(ctx, form, listOfTyped(list, jsonOf(form, "rows")));
  });
  if (state.present === undefined || !list) return state;
  return { ...state, present: presentAs(state.present, (board) => typedRows(board, list)) };
}

export async function saveNets(_before: FormState, form: FormData): Promise<FormState> {
  const state = await act({ role: "member" }, form, (ctx) => save(ctx, form, { nets: netsOfText(text(form, "nets")) }));
  return { ...state, ...(state.present !== undefined && { present: presentAs(state.present, textOf("nets")) }) };
}

export async function saveParts(_before: FormState, form: FormData): Promise<FormState> {
  const state = await act({ role: "member" }, form, async (ctx) => {
    const asked = { text: text(form, "parts"), board: text(form, "slug"), whole: text(form, "whole") === "yes" };
    await save(ctx, form, { placements: await placementsOfText(ctx, asked, { leaveOut: leavesOut(form) }) });
  });
  return { ...state, ...(state.present !== undefined && { present: presentAs(state.present, textOf("parts")) }) };
}

/** What a pasted parts list would do, before it is saved. */
export async function planOfParts(asked: {
  text: string;
  board?: string;
  whole: boolean;
}): Promise<FormState<Omit<PartsPlan, "placements">>> {
  return act({ role: "member", scope: "read" }, null, async (ctx) => {
    const { placements: _saved, ...plan } = await planParts(ctx, asked);
    return plan;
  });
}

/** Adds a copy, or changes the one whose id the form carries. */
export async function saveCopy(_before: FormState, form: FormData): Promise<FormState> {
  return act({ role: "member" }, form, async (ctx) => {
    const works = text(form, "works");
    const owner = text(form, "owner");
    const board = text(form, "board");
    const input = {
      board,
      tag: text(form, "tag"),
      owner: owner === "" ? null : owner,
      revision: text(form, "revision"),
      serial: text(form, "serial"),
      modifications: text(form, "modifications"),
      jumpers: text(form, "jumpers"),
      contents: text(form, "contents"),
      works: works === "" ? null : works === "yes",
      notes: text(form, "notes"),
    };
    const id = text(form, "id");
    await (id === "" ? createCopy(ctx, input) : updateCopy(ctx, id, Number(text(form, "version")), input));
    redirect(`/boards/${board}#copies`);
  });
}

export async function takeDocumentAway(_before: FormState, form: FormData): Promise<FormState> {
  return act({ role: "member" }, form, async (ctx) => {
    await removeDocument(ctx, text(form, "document"));
    revalidatePath("/boards/[slug]/edit/documents", "page");
  });
}

export async function takePhotoAway(_before: FormState, form: FormData): Promise<FormState> {
  return act({ role: "member" }, form, async (ctx) => {
    await detachFile(ctx, text(form, "use"));
    revalidatePath("/boards/[slug]/edit/documents", "page");
  });
}

async function save(ctx: Ctx, form: FormData, input: unknown): Promise<void> {
  const { slug } = await updateBoard(ctx, text(form, "slug"), Number(text(form, "version")), input);
  redirect(`/boards/${slug}${text(form, "back")}`);
}

/** What the second writer is shown: the present version of what the form edits. */
function presentAs<T>(present: unknown, as: (board: BoardView) => T): { version: number; typed: T } {
  const board = present as BoardView;
  return { version: board.version, typed: as(board) };
}

function textOf(list: "parts" | "nets"): (board: BoardView) => string {
  return (board) => typedText(board, list);
}

/** The plain facts as typed; a number that is none is named, not guessed. */
function factsOf(form: FormData): Record<string, unknown> {
  const problems: FieldProblem[] = [];
  const number = (name: string) => {
    const typed = text(form, name).trim().replace(",", ".");
    if (typed === "") return null;
    const value = Number(typed.replace(/\s*(?:mm|v)$/i, ""));
    if (!Number.isFinite(value)) problems.push({ path: name, message: "Write a number, or leave it out." });
    return value;
  };
  const facts = {
    name: text(form, "name"),
    kind: text(form, "kind"),
    maker: text(form, "maker"),
    machine: text(form, "machine"),
    summary: text(form, "summary"),
    notes: text(form, "notes"),
    hazards: form.getAll("hazards").map(String),
    year: number("year"),
    width: number("width"),
    height: number("height"),
    highestVoltage: number("highestVoltage"),
  };
  const [first] = problems;
  if (first) throw invalid(first.path, first.message);
  return facts;
}

function leavesOut(form: FormData): boolean {
  return text(form, "leaveOut") === "yes";
}

function jsonOf(form: FormData, name: string): unknown {
  try {
    return JSON.parse(text(form, name) || "[]");
  } catch {
    throw invalid(name, "The form broke on its way. Send it again.");
  }
}
