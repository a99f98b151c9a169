import { afterAll, beforeAll, expect, test } from "vitest";
import { addDocument, openAttachment, removeDocument } from "#lib/services/attachments/index.ts";
import { createBoard, readBoard } from "#lib/services/boards/index.ts";
import type { Ctx } from "#lib/services/context.ts";
import { BOARD, refusal, smallClub, type SmallClub } from "../cases/a-club.ts";
import { bytesOf, pdf, picture } from "./files.ts";

let at: SmallClub;
beforeAll(async () => {
  at = await smallClub();
});
afterAll(() => at.club.close());

const add = (ctx: Ctx, more: object = {}, bytes = pdf(), name = "finch.pdf") =>
  addDocument(ctx, { board: BOARD, title: "Schematic, Issue 2", ...more }, { name, bytes });

async function served(ctx: Ctx, attachment: string) {
  const { stream, ...file } = await openAttachment(ctx, attachment, "full");
  return { ...file, bytes: await bytesOf(stream) };
}

test("a schematic with its sheets stands on the board's page, and anybody reads it as it was sent", async () => {
  const sheets = [
    { sheet: "1", page: 1, title: "Power" },
    { sheet: "3", page: 2, title: "" },
  ];
  const made = await add(at.ada, { sheets, rights: "own" });
  expect((await readBoard(at.visitor, BOARD)).documents.find(({ id }) => id === made.id)).toMatchObject({
    title: "Schematic, Issue 2",
    kind: "schematic",
    rights: "own",
    sheets,
    attachment: { id: made.attachment, name: "finch.pdf", mediaType: "application/pdf" },
  });
  const file = await served(at.visitor, made.attachment);
  expect(file).toMatchObject({ name: "finch.pdf", mediaType: "application/pdf", isPhoto: false });
  expect(file.bytes.equals(pdf())).toBe(true);
});

test("a scan as a picture is a document too", async () => {
  const made = await add(at.ada, { kind: "layout" }, await picture("png"), "layout.png");
  expect(await served(at.visitor, made.attachment)).toMatchObject({ isPhoto: true });
});

test("what is not known of its rights stays not known", async () => {
  const { id } = await add(at.ada);
  expect((await readBoard(at.ada, BOARD)).documents.find((one) => one.id === id)).toMatchObject({ rights: "unknown" });
});

const POOR: [string, object, string[]][] = [
  ["without a title", { title: "  " }, ["title"]],
  ["of a kind that there is not", { kind: "novel" }, ["kind"]],
  ["for a board that there is not", { board: "no-such-board" }, ["board"]],
  ["with a sheet on page 0", { sheets: [{ sheet: "1", page: 0 }] }, ["sheets.0.page"]],
  ["with a field that there is not", { hidden: true }, [""]],
];
test.each(POOR)("a document %s is refused at that field", async (_what, more, paths) => {
  expect(await refusal(add(at.ada, more))).toEqual({ code: "invalid", paths });
});

test("text that is called a PDF is refused; a visitor adds nothing", async () => {
  expect(await refusal(add(at.ada, {}, Buffer.from("no pdf")))).toEqual({ code: "unsupported", paths: ["file"] });
  expect(await refusal(add(at.visitor))).toMatchObject({ code: "not-signed-in" });
});

test("who added it and reviewers take it away; then nobody reads it any more", async () => {
  const [first, second] = [await add(at.ada), await add(at.ada)];
  expect(await refusal(removeDocument(at.bob, first.id))).toMatchObject({ code: "forbidden" });
  expect(await refusal(removeDocument(at.visitor, first.id))).toMatchObject({ code: "not-signed-in" });
  await removeDocument(at.ada, first.id);
  await removeDocument(at.rita, second.id);
  const listed = (await readBoard(at.ada, BOARD)).documents.map(({ id }) => id);
  for (const gone of [first, second]) {
    expect(listed).not.toContain(gone.id);
    expect(await refusal(openAttachment(at.ada, gone.attachment, "full"))).toMatchObject({ code: "not-found" });
    expect(await refusal(removeDocument(at.ada, gone.id))).toMatchObject({ code: "not-found" });
  }
});

test("a hidden board's documents are served to nobody, and none is added to it", async () => {
  await createBoard(at.club.ctx(), { slug: "wren", name: "Wren", kind: "terminal" });
  const made = await add(at.ada, { board: "wren" });
  expect(await served(at.visitor, made.attachment)).toMatchObject({ name: "finch.pdf" });
  await at.club.database.db.board.update({ where: { slug: "wren" }, data: { hiddenAt: new Date() } });
  for (const ctx of [at.visitor, at.ada, at.rita, at.stella]) {
    expect(await refusal(openAttachment(ctx, made.attachment, "full"))).toMatchObject({ code: "not-found" });
  }
  expect(await refusal(add(at.ada, { board: "wren" }))).toEqual({ code: "invalid", paths: ["board"] });
});

test("the audit trail keeps what was taken away", async () => {
  const board = await readBoard(at.ada, BOARD);
  const { id } = await add(at.bob, { title: "Manual of a friend" });
  await removeDocument(at.bob, id);
  const rows = await at.club.database.db.auditEntry.findMany({
    where: { recordId: board.id, member: { handle: "bob" } },
    select: { action: true, detail: true },
    orderBy: [{ at: "asc" }, { id: "asc" }],
  });
  expect(rows).toEqual([
    { action: "document.add", detail: {} },
    { action: "document.remove", detail: { title: "Manual of a friend" } },
  ]);
});
