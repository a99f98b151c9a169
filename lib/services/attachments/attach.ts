import { demandVisible } from "../comments/index.ts";
import { change } from "../change.ts";
import { demand, hasRole, memberId, type Ctx } from "../context.ts";
import { invalid, notFound, ServiceError } from "../errors.ts";
import { AttachInput, DocumentInput, type AttachedTo } from "./schema.ts";
import { recordFile, storeFile, type GivenFile } from "./store.ts";

export interface AttachedView {
  /** Of the attachment: what its address is made of. */
  id: string;
  /** Of its place on the record: what is taken away. */
  use: string;
  url: string;
  thumb: string | null;
  name: string;
  mediaType: string;
  byteSize: number;
  kind: "photo" | "file";
  width: number | null;
  height: number | null;
  caption: string;
  check: string | null;
  by: { handle: string; name: string } | null;
}

/** Puts a file on a record that the actor may see. The bytes are stored before the record, so no record lacks its bytes. */
export async function attachFile(ctx: Ctx, raw: unknown, file: GivenFile): Promise<AttachedView> {
  const input = AttachInput.parse(raw);
  demand(ctx.actor, "member", "write");
  await demandVisible(ctx.db, ctx, input.kind, input.record);
  if (input.check) {
    const check = await ctx.db.check.findFirst({
      where: { id: input.check, caseId: input.record },
      select: { id: true },
    });
    if (!check) throw invalid("check", "This is not a check of this case.");
  }
  const stored = await storeFile(ctx, file);
  const use = ctx.newId();
  await change(ctx, "member", async (tx) => {
    const attachmentId = await recordFile(tx, ctx, stored);
    const position = await tx.attachmentUse.count({ where: { recordKind: input.kind, recordId: input.record } });
    await tx.attachmentUse.create({
      data: {
        id: use,
        attachmentId,
        recordKind: input.kind,
        recordId: input.record,
        checkId: input.check ?? null,
        caption: input.caption,
        position,
        createdAt: ctx.now(),
      },
      select: { id: true },
    });
    return { value: undefined, did: "attachment.add", touched: [{ kind: input.kind, id: input.record }] };
  });
  const all = await listAttachments(ctx, input.kind, input.record);
  const made = all.find((one) => one.use === use);
  if (!made) throw notFound("attachment");
  return made;
}

/** Photos and files of a record, in order. The caller has shown that the actor may see the record. */
export async function listAttachments(ctx: Ctx, kind: AttachedTo, recordId: string): Promise<AttachedView[]> {
  const rows = await ctx.db.attachmentUse.findMany({
    where: { recordKind: kind, recordId },
    select: {
      id: true,
      caption: true,
      checkId: true,
      attachment: {
        select: {
          id: true,
          name: true,
          mediaType: true,
          byteSize: true,
          kind: true,
          width: true,
          height: true,
          uploadedBy: { select: { handle: true, name: true } },
        },
      },
    },
    orderBy: [{ position: "asc" }, { id: "asc" }],
  });
  return rows.map(({ id: use, caption, checkId, attachment }) => {
    const { uploadedBy, kind: form, ...rest } = attachment;
    const url = `/api/v1/attachments/${attachment.id}`;
    return {
      ...rest,
      use,
      url,
      thumb: form === "photo" ? `${url}?size=thumb` : null,
      kind: form as "photo" | "file",
      caption,
      check: checkId,
      by: uploadedBy,
    };
  });
}

/** Takes a photo or file off a record. Its bytes stay in the store: another record may show them. */
export async function detachFile(ctx: Ctx, use: string): Promise<void> {
  demand(ctx.actor, "member", "write");
  await change(ctx, "member", async (tx) => {
    const found = await tx.attachmentUse.findUnique({
      where: { id: use },
      select: { recordKind: true, recordId: true, attachment: { select: { uploadedById: true } } },
    });
    if (!found) throw notFound("photo or file with this id");
    const kind = found.recordKind as AttachedTo;
    await demandVisible(tx, ctx, kind, found.recordId);
    const own = found.attachment.uploadedById === memberId(ctx.actor);
    if (!own && !hasRole(ctx.actor, "reviewer"))
      throw new ServiceError("forbidden", "Only who added it, or a reviewer, may take it away.");
    await tx.attachmentUse.delete({ where: { id: use }, select: { id: true } });
    return { value: undefined, did: "attachment.remove", touched: [{ kind, id: found.recordId }] };
  });
}

/** Adds a document (a schematic, a manual) to a board. */
export async function addDocument(
  ctx: Ctx,
  raw: unknown,
  file: GivenFile,
): Promise<{ id: string; attachment: string }> {
  const { board: slug, sheets, ...input } = DocumentInput.parse(raw);
  demand(ctx.actor, "member", "write");
  const board = await ctx.db.board.findFirst({ where: { slug, hiddenAt: null }, select: { id: true } });
  if (!board) throw invalid("board", `There is no board "${slug}".`);
  const stored = await storeFile(ctx, file);
  return change(ctx, "member", async (tx) => {
    const attachmentId = await recordFile(tx, ctx, stored);
    const made = await tx.boardDocument.create({
      data: {
        id: ctx.newId(),
        boardId: board.id,
        attachmentId,
        ...input,
        sheets,
        createdById: memberId(ctx.actor),
        createdAt: ctx.now(),
      },
      select: { id: true },
    });
    const value = { id: made.id, attachment: attachmentId };
    return { value, did: "document.add", touched: [{ kind: "board", id: board.id }] };
  });
}

/** Takes a document off its board. */
export async function removeDocument(ctx: Ctx, id: string): Promise<void> {
  demand(ctx.actor, "member", "write");
  await change(ctx, "member", async (tx) => {
    const found = await tx.boardDocument.findUnique({
      where: { id },
      select: { boardId: true, title: true, createdById: true },
    });
    if (!found) throw notFound("document with this id");
    const own = found.createdById !== null && found.createdById === memberId(ctx.actor);
    if (!own && !hasRole(ctx.actor, "reviewer"))
      throw new ServiceError("forbidden", "Only who added it, or a reviewer, may take it away.");
    await tx.boardDocument.delete({ where: { id }, select: { id: true } });
    return {
      value: undefined,
      did: "document.remove",
      touched: [{ kind: "board", id: found.boardId }],
      detail: { title: found.title },
    };
  });
}
