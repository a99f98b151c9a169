import type { Readable } from "node:stream";
import { visibleCases } from "../cases/index.ts";
import type { Ctx } from "../context.ts";
import { notFound } from "../errors.ts";

export interface ServedFile {
  stream: Readable;
  size: number;
  name: string;
  mediaType: string;
  /** A photo of ours, which a page may show; everything else is a download. */
  isPhoto: boolean;
  /** For the ETag: bytes never change under a hash. */
  hash: string;
}

/** Opens an attachment for who may see a record that shows it. Throws `not-found` otherwise. */
export async function openAttachment(ctx: Ctx, id: string, size: "full" | "thumb"): Promise<ServedFile> {
  const found = await ctx.db.attachment.findUnique({
    where: { id },
    select: {
      hash: true,
      name: true,
      mediaType: true,
      kind: true,
      uses: { select: { recordKind: true, recordId: true } },
      documents: { where: { board: { hiddenAt: null } }, select: { id: true }, take: 1 },
      sightings: { where: { code: { hiddenAt: null } }, select: { id: true }, take: 1 },
    },
  });
  if (!found) throw notFound("file with this id");
  const shown = found.documents.length > 0 || found.sightings.length > 0 || (await isShown(ctx, found.uses));
  if (!shown) throw notFound("file with this id");
  const isPhoto = found.kind === "photo";
  const opened = await ctx.files.open(found.hash, isPhoto && size === "thumb" ? "thumb" : undefined);
  if (!opened) throw notFound("file with this id: its bytes are missing from the store");
  return { ...opened, name: found.name, mediaType: found.mediaType, isPhoto, hash: found.hash };
}

async function isShown(ctx: Ctx, uses: readonly { recordKind: string; recordId: string }[]): Promise<boolean> {
  const ids = (kind: string) => uses.filter((use) => use.recordKind === kind).map((use) => use.recordId);
  const open = { hiddenAt: null };
  const counts = await Promise.all([
    ctx.db.faultCase.count({ where: { id: { in: ids("case") }, AND: [visibleCases(ctx.actor)] } }),
    ctx.db.board.count({ where: { id: { in: ids("board") }, ...open } }),
    ctx.db.chip.count({ where: { id: { in: ids("chip") }, ...open } }),
    ctx.db.partCode.count({ where: { id: { in: ids("code") }, ...open } }),
  ]);
  return counts.some((count) => count > 0);
}
