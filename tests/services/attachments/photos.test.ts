import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import sharp from "sharp";
import { afterAll, beforeAll, expect, test } from "vitest";
import { folderStore } from "#lib/infra/files/index.ts";
import {
  attachFile,
  detachFile,
  listAttachments,
  MOST_FILE_BYTES,
  MOST_PHOTO_BYTES,
  openAttachment,
  type AttachedView,
} from "#lib/services/attachments/index.ts";
import { publishCase, readCase } from "#lib/services/cases/index.ts";
import { readChip } from "#lib/services/chips/index.ts";
import { createCode } from "#lib/services/codes/index.ts";
import type { Ctx } from "#lib/services/context.ts";
import { failedCase, openedCase, refusal, smallClub, type SmallClub } from "../cases/a-club.ts";
import { refusalOf } from "../members/deeds.ts";
import { bytesOf, claimingPng, heicHead, pdf, phonePhoto, picture } from "./files.ts";

let at: SmallClub;
let chip: string;
let phone: Uint8Array;
beforeAll(async () => {
  at = await smallClub();
  chip = (await readChip(at.ada, "74ls244")).id;
  phone = await phonePhoto();
});
afterAll(() => at.club.close());

const onChip = (ctx: Ctx, name: string, bytes: Uint8Array, more: object = {}) =>
  attachFile(ctx, { kind: "chip", record: chip, ...more }, { name, bytes });

async function served(ctx: Ctx, view: AttachedView, size: "full" | "thumb" = "full") {
  const { stream, ...file } = await openAttachment(ctx, view.id, size);
  return { ...file, bytes: await bytesOf(stream) };
}

/** The colour of one pixel, as the eye names it. */
async function colourAt(bytes: Buffer, left: number, top: number): Promise<"red" | "blue" | "other"> {
  const pixel = await sharp(bytes).extract({ left, top, width: 1, height: 1 }).removeAlpha().raw().toBuffer();
  const [red = 0, , blue = 0] = pixel;
  if (red > 150 && blue < 100) return "red";
  return blue > 80 && red < 100 ? "blue" : "other";
}

test("the phone's photo of these tests has place, camera and a turn in it", async () => {
  const { exif, icc, orientation, width, height } = await sharp(phone).metadata();
  expect({ orientation, width, height, hasIcc: icc !== undefined }).toEqual({
    orientation: 6,
    width: 600,
    height: 400,
    hasIcc: true,
  });
  expect(exif?.includes("Invented Optics")).toBe(true);
  // Exif 2.32, 4.6.3: tag 0x8825 points to the GPS directory.
  expect(exif?.includes(Buffer.from([0x25, 0x88])) || exif?.includes(Buffer.from([0x88, 0x25]))).toBe(true);
});

test("a photo is kept turned upright, with nothing in it that says where and with what it was taken", async () => {
  const view = await onChip(at.ada, "IMG_0815.JPG", phone, { caption: " Top mark " });
  expect(view).toEqual({
    id: expect.any(String),
    use: expect.any(String),
    url: `/api/v1/attachments/${view.id}`,
    thumb: `/api/v1/attachments/${view.id}?size=thumb`,
    name: "IMG_0815.webp",
    mediaType: "image/webp",
    byteSize: expect.any(Number),
    kind: "photo",
    width: 400,
    height: 600,
    caption: "Top mark",
    check: null,
    by: { handle: "ada", name: "ada" },
  });
  for (const size of ["full", "thumb"] as const) {
    const file = await served(at.visitor, view, size);
    expect(file).toMatchObject({ name: "IMG_0815.webp", mediaType: "image/webp", isPhoto: true });
    expect(file.size).toBe(file.bytes.length);
    const { format, orientation, exif, icc, xmp, iptc } = await sharp(file.bytes).metadata();
    expect({ format, orientation, exif, icc, xmp, iptc }).toEqual({ format: "webp" });
    const words = ["Exif", "GPS", "Invented Optics", "bench-camera"];
    expect(words.filter((word) => file.bytes.includes(word, 0, "latin1"))).toEqual([]);
  }
});

test("orientation 6 is a quarter turn clockwise: what was at the left is at the top", async () => {
  const view = await onChip(at.ada, "turned.jpg", phone);
  const { bytes } = await served(at.visitor, view);
  expect([await colourAt(bytes, 200, 20), await colourAt(bytes, 200, 580)]).toEqual(["red", "blue"]);
});

test("a large photo is kept at 2400 pixels, its thumbnail at 480; a small one is not blown up", async () => {
  const large = await sharp({ create: { width: 3000, height: 1500, channels: 3, background: "#445566" } })
    .jpeg()
    .toBuffer();
  const sizesOf = async (bytes: Uint8Array) => {
    const view = await onChip(at.ada, "size.jpg", bytes);
    const [full, thumb] = [await served(at.visitor, view), await served(at.visitor, view, "thumb")];
    const [a, b] = [await sharp(full.bytes).metadata(), await sharp(thumb.bytes).metadata()];
    return [view.width, view.height, a.width, a.height, b.width, b.height];
  };
  expect(await sizesOf(large)).toEqual([2400, 1200, 2400, 1200, 480, 240]);
  expect(await sizesOf(await picture("png", 30))).toEqual([30, 30, 30, 30, 30, 30]);
});

test.each([
  ["a PNG", "board.png", "png"],
  ["a WebP", "board.webp", "webp"],
  ["a JPEG that is called HEIC", "IMG_1.HEIC", "jpeg"],
  ["a JPEG without an ending", "board", "jpeg"],
] as const)("%s is read by what it is", async (_what, name, format) => {
  const view = await onChip(at.ada, name, await picture(format));
  expect(view).toMatchObject({ kind: "photo", mediaType: "image/webp", name: expect.stringMatching(/\.webp$/) });
});

const HEIC = "This is a HEIC photo. Set the phone to “most compatible” (JPEG), or share it as JPEG, and try again.";
const LYING = "This is not a JPEG, PNG or WebP picture, whatever its name says.";
const DAMAGED = "This picture is damaged: it could not be decoded.";
const REFUSED: [what: string, name: string, bytes: () => Promise<Uint8Array> | Uint8Array, why: string][] = [
  ["an empty file", "empty.jpg", () => new Uint8Array(), "The file is empty."],
  ["a HEIC photo", "IMG_2.HEIC", () => heicHead(), HEIC],
  ["a HEIC photo that is called JPEG", "IMG_2.jpg", () => heicHead(), HEIC],
  ["text that is called a photo", "photo.jpg", () => Buffer.from("no picture at all"), LYING],
  ["a PDF that is called a photo", "photo.png", () => pdf(), LYING],
  ["a GIF", "moving.gif", () => picture("gif"), LYING],
  ["an AVIF that is called JPEG", "new.jpg", () => picture("avif"), LYING],
  ["a JPEG that breaks off", "half.jpg", async () => (await phonePhoto()).subarray(0, 900), DAMAGED],
  ["a head of a PNG with nothing behind it", "head.png", async () => (await picture("png")).subarray(0, 40), DAMAGED],
  [
    "a small file that claims 51 million pixels",
    "bomb.png",
    () => claimingPng(10_000, 5_100),
    "This picture has more than 50 million pixels.",
  ],
  [
    "text that is called a PDF",
    "manual.pdf",
    () => Buffer.from("not a manual"),
    "This is not a PDF, whatever its name says.",
  ],
  ["an empty PDF", "empty.pdf", () => new Uint8Array(), "The file is empty."],
];
test.each(REFUSED)("%s is refused and nothing of it is kept", async (_what, name, bytes, why) => {
  const before = await at.club.database.db.attachment.count();
  expect(await refusalOf(onChip(at.ada, name, await bytes()))).toEqual({
    code: "unsupported",
    message: why,
    problems: [{ path: "file", message: why }],
  });
  expect(await at.club.database.db.attachment.count()).toBe(before);
});

test("a photo over 20 MB and a file over 100 MB are refused with the limit, before anything is decoded", async () => {
  const photo = new Uint8Array(MOST_PHOTO_BYTES + 1);
  photo.set(phone);
  expect(await refusalOf(onChip(at.ada, "large.jpg", photo))).toEqual({
    code: "too-large",
    message: "The photo is larger than 20 MB. Most phones can send a smaller one.",
    problems: [],
  });
  const file = new Uint8Array(MOST_FILE_BYTES + 1);
  file.set(pdf());
  expect(await refusalOf(onChip(at.ada, "large.pdf", file))).toEqual({
    code: "too-large",
    message: "The file is larger than 100 MB.",
    problems: [],
  });
});

test("a PDF and a capture are kept byte for byte and are no photos", async () => {
  const given: [string, Uint8Array, string][] = [
    ["Schematic.pdf", pdf("byte for byte"), "application/pdf"],
    ["U7 bus.csv", Buffer.from("time,D0\r\n0,1\r\n"), "text/plain"],
    ["dump.bin", Uint8Array.from({ length: 256 }, (_, n) => n), "application/octet-stream"],
  ];
  for (const [name, bytes, mediaType] of given) {
    const view = await onChip(at.ada, name, bytes);
    expect(view).toMatchObject({ name, mediaType, kind: "file", thumb: null, width: null, byteSize: bytes.length });
    for (const size of ["full", "thumb"] as const) {
      const file = await served(at.visitor, view, size);
      expect(file).toMatchObject({ isPhoto: false, mediaType, size: bytes.length });
      expect(file.bytes.equals(bytes)).toBe(true);
    }
  }
});

test("markup that a browser would run is kept as a download, not as a picture", async () => {
  const svg = Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>');
  const file = await served(at.visitor, await onChip(at.ada, "drawing.svg", svg));
  expect(file).toMatchObject({ isPhoto: false, name: "drawing.svg" });
});

test.each([
  ["../../etc/passwd.txt", "passwd.txt"],
  ["C:\\photos\\dump.bin", "dump.bin"],
  ['a"b<c>|d.txt', "a_b_c__d.txt"],
  ["line\r\nbreak.txt", "line__break.txt"],
  ["..", "file"],
  ["", "file"],
])("the name %j is kept as %j", async (name, kept) => {
  expect(await onChip(at.ada, name, Buffer.from(`named ${name}`))).toMatchObject({ name: kept });
});

test("the same bytes are stored once, by their hash, however often they are sent", async () => {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), "benchlore-once-"));
  try {
    const ctx: Ctx = { ...at.ada, files: folderStore(folder) };
    const views = [
      await onChip(ctx, "first.pdf", pdf("once")),
      await onChip(ctx, "second.pdf", pdf("once")),
      await onChip(ctx, "photo.jpg", phone),
      await onChip(ctx, "again.jpg", phone),
    ];
    expect(new Set(views.map(({ id }) => id)).size).toBe(4);
    const hashes = await Promise.all(views.map(async (view) => (await served(ctx, view)).hash));
    const [file = "", , photo = ""] = hashes;
    expect(hashes).toEqual([file, file, photo, photo]);
    const stored = fs.readdirSync(folder, { recursive: true, withFileTypes: true }).filter((one) => one.isFile());
    expect(stored.map(({ name }) => name).toSorted()).toEqual([file, photo, `${photo}.thumb`].toSorted());
  } finally {
    fs.rmSync(folder, { recursive: true, force: true });
  }
});

test("photos stand on the record in the order in which they came, with who added them", async () => {
  const { id } = await createCode(at.ada, { code: "ZK-77" });
  const onCode = (ctx: Ctx, caption: string) =>
    attachFile(ctx, { kind: "code", record: id, caption }, { name: "p.jpg", bytes: phone });
  const [first, second] = [await onCode(at.ada, "first"), await onCode(at.bob, "second")];
  expect(await listAttachments(at.visitor, "code", id)).toEqual([first, second]);
  expect(second.by).toEqual({ handle: "bob", name: "bob" });
});

test("a photo belongs to a check of that very case", async () => {
  const [one, other] = [await failedCase(at.ada), await failedCase(at.ada)];
  const to = (check: string) =>
    attachFile(at.bob, { kind: "case", record: one.view.id, check }, { name: "p.jpg", bytes: phone });
  expect(await to(one.failed)).toMatchObject({ check: one.failed });
  expect(await refusal(to(other.failed))).toEqual({ code: "invalid", paths: ["check"] });
});

const NOWHERE = "0190a0b0-0000-7000-8000-000000000000";
test.each([
  ["a record that is not there", { kind: "case", record: NOWHERE }, { code: "not-found", paths: [] }],
  ["what is no id", { kind: "chip", record: "74ls244" }, { code: "invalid", paths: ["record"] }],
  ["a kind that takes no photos", { kind: "member", record: NOWHERE }, { code: "invalid", paths: ["kind"] }],
  ["an unknown field", { kind: "case", record: NOWHERE, role: "x" }, { code: "invalid", paths: [""] }],
])("a photo for %s is refused", async (_what, input, why) => {
  expect(await refusal(attachFile(at.ada, input, { name: "p.jpg", bytes: phone }))).toEqual(why);
});

test("visitors add nothing and take nothing away", async () => {
  const view = await onChip(at.ada, "p.jpg", phone);
  expect(await refusal(onChip(at.visitor, "p.jpg", phone))).toMatchObject({ code: "not-signed-in" });
  expect(await refusal(detachFile(at.visitor, view.use))).toMatchObject({ code: "not-signed-in" });
});

test("a draft's photo is its author's alone until the case is published", async () => {
  const draft = await openedCase(at.ada, { publish: false });
  const file = { name: "p.jpg", bytes: phone };
  const view = await attachFile(at.ada, { kind: "case", record: draft.id }, file);
  const others = [at.visitor, at.bob, at.rita, at.stella];
  for (const ctx of others) {
    for (const size of ["full", "thumb"] as const) {
      expect(await refusal(openAttachment(ctx, view.id, size))).toMatchObject({ code: "not-found" });
    }
  }
  for (const ctx of others.slice(1)) {
    expect(await refusal(attachFile(ctx, { kind: "case", record: draft.id }, file))).toMatchObject({
      code: "not-found",
    });
    expect(await refusal(detachFile(ctx, view.use))).toMatchObject({ code: "not-found" });
  }
  expect((await served(at.ada, view)).isPhoto).toBe(true);
  await publishCase(at.ada, draft.number);
  for (const ctx of others) expect((await served(ctx, view)).isPhoto).toBe(true);
});

test("who added a photo and reviewers take it away; another member does not, nor the author of the case", async () => {
  const { id } = await openedCase(at.ada);
  const add = (ctx: Ctx) => attachFile(ctx, { kind: "case", record: id }, { name: "p.jpg", bytes: phone });
  const [bobs, another] = [await add(at.bob), await add(at.bob)];
  expect(await refusal(detachFile(at.ada, bobs.use))).toMatchObject({ code: "forbidden" });
  await detachFile(at.bob, bobs.use);
  await detachFile(at.rita, another.use);
  expect(await listAttachments(at.visitor, "case", id)).toEqual([]);
  for (const gone of [bobs, another]) {
    expect(await refusal(openAttachment(at.bob, gone.id, "full"))).toMatchObject({ code: "not-found" });
    expect(await refusal(detachFile(at.bob, gone.use))).toMatchObject({ code: "not-found" });
  }
});

test("a photo of a record that was hidden is not served; nothing can be added to it", async () => {
  const made = await createCode(at.ada, { code: "ZK-78" });
  const to = { kind: "code", record: made.id };
  const view = await attachFile(at.ada, to, { name: "p.jpg", bytes: phone });
  expect((await served(at.visitor, view)).isPhoto).toBe(true);
  await at.club.database.db.partCode.update({ where: { id: made.id }, data: { hiddenAt: new Date() } });
  for (const ctx of [at.visitor, at.bob, at.ada]) {
    expect(await refusal(openAttachment(ctx, view.id, "full"))).toMatchObject({ code: "not-found" });
  }
  expect(await refusal(attachFile(at.ada, to, { name: "p.jpg", bytes: phone }))).toMatchObject({ code: "not-found" });
});

test("an attachment whose bytes are lost is missing, not broken", async () => {
  const view = await onChip(at.ada, "lost.bin", Buffer.from("soon lost"));
  const empty: Ctx = { ...at.ada, files: folderStore(path.join(os.tmpdir(), "benchlore-nothing-here")) };
  expect(await refusal(openAttachment(empty, view.id, "full"))).toMatchObject({ code: "not-found" });
});

test("adding and taking away stand in the audit trail of the record", async () => {
  const { number } = await openedCase(at.ada);
  const { id } = await readCase(at.ada, number);
  const view = await attachFile(at.bob, { kind: "case", record: id }, { name: "p.jpg", bytes: phone });
  await detachFile(at.bob, view.use);
  const rows = await at.club.database.db.auditEntry.findMany({
    where: { recordId: id, action: { startsWith: "attachment" } },
    select: { action: true, recordKind: true, member: { select: { handle: true } } },
    orderBy: [{ at: "asc" }, { id: "asc" }],
  });
  const by = { recordKind: "case", member: { handle: "bob" } };
  expect(rows).toEqual([
    { action: "attachment.add", ...by },
    { action: "attachment.remove", ...by },
  ]);
});
