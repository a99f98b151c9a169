import type { ProseTree } from "#lib/infra/markdown/index.ts";
import type { Ctx } from "../context.ts";
import { mentionedRecords } from "./mentions.ts";

/** A text of a member as a sanitised tree of elements. */
export type Prose = ProseTree;

/** Texts as pages draw them, in the order given, with links to the records that they mention and the actor may see. */
export async function proseOf(ctx: Ctx, texts: readonly string[]): Promise<Prose[]> {
  const links = await mentionedRecords(ctx, texts);
  return texts.map((text) => ctx.prose(text, links));
}
