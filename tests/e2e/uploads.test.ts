import { readFile } from "node:fs/promises";
import sharp from "sharp";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { apiWorld, type Answer, type ApiWorld, type Who } from "#tests/support/api-world.ts";
import { needsDebianPackage } from "#tests/support/debian.ts";
import { phonePhoto } from "#tests/support/pictures.ts";

let world: ApiWorld;
beforeAll(async () => {
  world = await apiWorld();
});
afterAll(() => world.stop());

interface Attached {
  id: string;
  use: string;
  url: string;
  thumb: string | null;
  name: string;
  mediaType: string;
  width: number;
  height: number;
}

function form(fields: Record<string, string>, name: string, bytes: Uint8Array): FormData {
  const made = new FormData();
  for (const [field, value] of Object.entries(fields)) made.set(field, value);
  made.set("file", new Blob([new Uint8Array(bytes)]), name);
  return made;
}

const attach = (name: string, bytes: Uint8Array, as: Who = "token:write") =>
  world.call("POST", "/attachments", {
    as,
    raw: form({ kind: "case", record: world.records.publishedId }, name, bytes),
  });
const problem = (answer: Answer) => ({
  status: answer.status,
  type: answer.headers.get("content-type"),
  detail: (answer.json as { detail?: string }).detail,
});
const text = (words: string) => new TextEncoder().encode(words);

describe("a photo", () => {
  test("is turned upright and loses where and with what it was taken", async () => {
    const given = await phonePhoto();
    expect((await sharp(given).metadata()).exif?.toString("latin1")).toContain("Widgeon Phones");
    const made = await attach("IMG_0001.jpg", given);
    expect(made.status).toBe(201);
    const { url, thumb, width, height } = made.json as Attached;
    expect([width, height]).toEqual([48, 64]);
    for (const address of [url, thumb ?? ""]) {
      const response = await fetch(`${world.server.url}${address}`);
      const bytes = Buffer.from(await response.arrayBuffer());
      const found = await sharp(bytes).metadata();
      expect([found.format, found.width, found.height, found.exif, found.orientation]).toEqual([
        "webp",
        48,
        64,
        undefined,
        undefined,
      ]);
      expect(bytes.toString("latin1")).not.toContain("Widgeon");
    }
  });

  test("is shown, and a browser that has it need not fetch it again", async () => {
    const { url } = (await attach("board.jpg", await phonePhoto())).json as Attached;
    const first = await fetch(`${world.server.url}${url}`);
    await first.arrayBuffer();
    expect(first.headers.get("content-disposition")).toMatch(/^inline/);
    expect(first.headers.get("content-security-policy")).toBe("default-src 'none'; sandbox");
    const etag = first.headers.get("etag") ?? "";
    const again = await fetch(`${world.server.url}${url}`, { headers: { "if-none-match": etag } });
    expect([again.status, (await again.arrayBuffer()).byteLength]).toEqual([304, 0]);
  });

  const lying: [string, string, () => Promise<Uint8Array>, number, RegExp][] = [
    [
      "a page that calls itself a photo",
      "board.jpg",
      async () => text("<html><script>alert(1)</script>"),
      415,
      /not a JPEG/,
    ],
    ["a drawing that could carry script", "board.svg.png", async () => text("<svg onload='x'/>"), 415, /not a JPEG/],
    ["a photo that breaks off", "board.jpg", async () => (await phonePhoto()).subarray(0, 400), 415, /damaged/],
    ["nothing", "board.jpg", async () => new Uint8Array(), 415, /empty/],
    [
      "a photo of more than 20 MB",
      "board.jpg",
      async () => Buffer.concat([await phonePhoto(), Buffer.alloc(20_000_001)]),
      413,
      /20 MB/,
    ],
    ["a small file with far too many pixels", "wide.png", () => manyPixels(), 415, /50 million pixels/],
    ["a PDF that is none", "schematic.pdf", async () => text("A text."), 415, /not a PDF/],
  ];
  test.each(lying)("%s is refused with the reason", async (_what, name, bytes, status, reason) => {
    const answer = await attach(name, await bytes());
    expect(problem(answer)).toEqual({
      status,
      type: "application/problem+json",
      detail: expect.stringMatching(reason),
    });
  });

  async function manyPixels(): Promise<Uint8Array> {
    return sharp({ create: { width: 9000, height: 9000, channels: 3, background: "white" } })
      .png()
      .toBuffer();
  }
});

describe("any other file", () => {
  test("that is a page with script is only ever a download", async () => {
    const made = await attach("notes.html", text("<html><script>alert(1)</script></html>"));
    expect(made.status).toBe(201);
    const { url } = made.json as Attached;
    const response = await fetch(`${world.server.url}${url}`);
    await response.arrayBuffer();
    expect(response.headers.get("content-disposition")).toMatch(/^attachment/);
    expect(response.headers.get("content-type")).not.toMatch(/html/);
    expect(response.headers.get("x-content-type-options")).toBe("nosniff");
    expect(response.headers.get("content-security-policy")).toBe("default-src 'none'; sandbox");
  });

  test("keeps no path and no control character in its name", async () => {
    const made = await attach('..\\..\\no"tes\r\nx: y.txt', text("hello"));
    expect(made.status).toBe(201);
    expect((made.json as Attached).name).not.toMatch(/[\\/\r\n"]/);
  });
});

describe("a form", () => {
  const send = (raw: FormData | string, headers: Record<string, string> = {}) =>
    world.call("POST", "/attachments", { as: "token:write", raw, headers });

  test("without a file is refused", async () => {
    const empty = new FormData();
    empty.set("kind", "case");
    const answer = await send(empty);
    expect(problem(answer)).toMatchObject({ status: 422, type: "application/problem+json" });
  });

  test("that breaks off, or is none, is refused", async () => {
    const boundary = { "content-type": "multipart/form-data; boundary=x" };
    const half = '--x\r\ncontent-disposition: form-data; name="file"; filename="a.txt"\r\n\r\nhalf';
    expect((await send(half, boundary)).status).toBe(422);
    expect((await send("hello", boundary)).status).toBe(422);
    expect((await send("hello", { "content-type": "multipart/form-data" })).status).toBeLessThan(500);
    expect((await send("{}", { "content-type": "application/json" })).status).toBe(415);
  });

  test("names a record that may be seen, or is refused", async () => {
    const raw = form({ kind: "case", record: world.records.draftId }, "notes.txt", text("hello"));
    expect((await world.call("POST", "/attachments", { as: "other", raw })).status).toBe(404);
  });
});

describe("a symbol library", () => {
  const send = (name: string, bytes: Uint8Array, query = "") =>
    world.call("POST", `/imports${query}`, { as: "token:import", raw: form({ format: "symbols" }, name, bytes) });

  test("that is broken names the line", async () => {
    const lines = ["(kicad_symbol_lib (version 20211014) (generator test)", '  (symbol "A"', "    (pin input line", ""];
    const answer = await send("broken.kicad_sym", text(lines.join("\n")));
    expect(problem(answer)).toEqual({
      status: 422,
      type: "application/problem+json",
      detail: expect.stringMatching(/line \d/i),
    });
  });

  test("of another format is refused", async () => {
    const raw = form({ format: "poem" }, "a.txt", text("x"));
    const answer = await world.call("POST", "/imports", { as: "token:import", raw });
    expect(problem(answer)).toMatchObject({ status: 422 });
  });

  test("is tried first, then written, and the second time there is nothing to write", async (ctx) => {
    const folder = await needsDebianPackage(ctx, "kicad-symbols", "kicad");
    const bytes = await readFile(`${folder}/usr/share/kicad/symbols/74xx.kicad_sym`);
    const planned = await send("74xx.kicad_sym", bytes);
    expect(planned.status).toBe(201);
    const { id, counts } = planned.json as { id: string; counts: Record<string, number> };
    expect(Object.values(counts).reduce((sum, count) => sum + count, 0)).toBe(239);
    expect((await world.call("GET", "/chips/74hc00")).status).toBe(404);
    const done = await world.call("POST", `/imports/${id}/commit`, { as: "token:import", body: {} });
    expect([done.status, (done.json as { state: string }).state]).toEqual([200, "committed"]);
    const again = await send("74xx.kicad_sym", bytes);
    const repeated = (again.json as { counts: Record<string, number> }).counts;
    expect([repeated.new, repeated.changed]).toEqual([0, 0]);
  });
});
