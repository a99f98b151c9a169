import { inject } from "vitest";
import { createBoard, createCopy } from "#lib/services/boards/index.ts";
import { confirmCase, createCase, readCase } from "#lib/services/cases/index.ts";
import { createChip } from "#lib/services/chips/index.ts";
import { createClaim, createCode, createHouse, readClaim } from "#lib/services/codes/index.ts";
import { createComment } from "#lib/services/comments/index.ts";
import { addDocument, attachFile } from "#lib/services/attachments/index.ts";
import type { MemberActor, Scope } from "#lib/services/context.ts";
import { planImport } from "#lib/services/imports/index.ts";
import { changeMember } from "#lib/services/members/index.ts";
import { saveClubSettings } from "#lib/services/settings/index.ts";
import { createSpare } from "#lib/services/spares/index.ts";
import { onDisk, type ClubOnDisk } from "./served-club.ts";
import { smallPhoto } from "./pictures.ts";
import { startServer, temporaryFolder, copyFolder, type RunningServer } from "./server.ts";

/** A word that stands only in what visitors and other members must not see. */
export const SECRET = "Zephyrine";

export const PEOPLE = ["author", "other", "reviewer", "steward", "disabled"] as const;
export type PersonName = (typeof PEOPLE)[number];
/** Who asks: nobody, a signed-in browser, or a program with the author's token of one scope. */
export type Who = "visitor" | PersonName | `token:${Scope}` | "token:disabled";

export interface Answer {
  status: number;
  headers: Headers;
  text: string;
  json: unknown;
}

export interface Ask {
  as?: Who;
  /** Sent as JSON. */
  body?: unknown;
  /** Sent as it is. */
  raw?: RequestInit["body"];
  headers?: Record<string, string>;
}

/** Ids and addresses of the records that the world has. */
export interface Records {
  board: string;
  boardId: string;
  copy: string;
  document: string;
  chip: string;
  house: string;
  code: string;
  claim: string;
  evidence: string;
  /** A published case of the author. */
  published: number;
  publishedId: string;
  check: string;
  cause: string;
  /** A draft of the author. */
  draft: number;
  draftId: string;
  draftCheck: string;
  draftCause: string;
  comment: string;
  spare: string;
  attachment: string;
  attachmentUse: string;
  draftAttachment: string;
  import: string;
}

export interface ApiWorld {
  server: RunningServer;
  records: Records;
  /** Asks the interface; `path` is below /api/v1. */
  call(method: string, path: string, ask?: Ask): Promise<Answer>;
  /** Asks for a page, as a browser does that follows no redirect. */
  page(path: string, as?: Who): Promise<Answer>;
  /** The headers that make a request somebody's. */
  identity(who: Who): Record<string, string>;
  stop(): Promise<void>;
}

/** A served club with one record of each kind, and people of every sort. */
export async function apiWorld(
  env: Record<string, string> = {},
  { membersOnly = false }: { membersOnly?: boolean } = {},
): Promise<ApiWorld> {
  const dataDir = temporaryFolder("benchlore-world-");
  copyFolder(inject("emptyClub"), dataDir);
  const { records, identities } = await onDisk(dataDir, async (club) => {
    const people = await peopleOf(club);
    await saveClubSettings(club.ctx, { name: "Widgeon club", membersOnly, meeting: "" });
    return { records: await recordsOf(club, people), identities: await identitiesOf(club, people) };
  });
  const server = await startServer({ dataDir, env });
  const identity = (who: Who): Record<string, string> => {
    const known = identities.get(who);
    if (!known) throw new Error(`nobody is called ${who}`);
    // A browser sends the origin of the page with what it writes.
    return "cookie" in known ? { ...known, origin: server.url } : known;
  };
  const call = (method: string, path: string, ask: Ask = {}) =>
    asked(`${server.url}/api/v1${path}`, method, {
      ...ask,
      headers: { ...identity(ask.as ?? "visitor"), ...ask.headers },
    });
  const page = (path: string, as: Who = "visitor") =>
    asked(`${server.url}${path}`, "GET", { headers: { ...identity(as), accept: "text/html" } });
  return { server, records, call, page, identity, stop: () => server.stop() };
}

/** Sends one request and reads its answer whole. */
export async function asked(url: string, method: string, { body, raw, headers }: Ask): Promise<Answer> {
  const response = await fetch(url, {
    method,
    redirect: "manual",
    headers: { ...(body !== undefined && { "content-type": "application/json" }), ...headers },
    ...(body !== undefined && { body: JSON.stringify(body) }),
    ...(raw !== undefined && { body: raw }),
  });
  const text = await response.text();
  const isJson = /\bjson\b/.test(response.headers.get("content-type") ?? "");
  return { status: response.status, headers: response.headers, text, json: isJson ? JSON.parse(text) : null };
}

async function peopleOf(club: ClubOnDisk): Promise<Record<PersonName, MemberActor>> {
  return {
    author: await club.member("author"),
    other: await club.member("other"),
    reviewer: await club.member("reviewer", "reviewer"),
    steward: await club.member("steward-two", "steward"),
    disabled: await club.member("disabled"),
  };
}

async function identitiesOf(
  club: ClubOnDisk,
  people: Record<PersonName, MemberActor>,
): Promise<Map<Who, Record<string, string>>> {
  const identities = new Map<Who, Record<string, string>>([["visitor", {}]]);
  for (const name of PEOPLE) identities.set(name, { cookie: await club.cookie(people[name]) });
  for (const scope of ["read", "write", "review", "import"] as const) {
    identities.set(`token:${scope}`, { authorization: `Bearer ${await club.token(people.author, [scope])}` });
  }
  const lost = await club.token(people.disabled, ["read", "write", "review", "import"]);
  identities.set("token:disabled", { authorization: `Bearer ${lost}` });
  await changeMember(club.ctx, people.disabled.handle, { disabled: true });
  return identities;
}

async function recordsOf(club: ClubOnDisk, people: Record<PersonName, MemberActor>): Promise<Records> {
  const author = club.as(people.author);
  const chip = await createChip(author, {
    name: "74LS244",
    function: "Octal buffer",
    technology: "LS",
    packages: [
      {
        name: "DIP-4",
        style: "DIP",
        pins: [
          { number: "1", name: "IN", type: "input", role: "input" },
          { number: "2", name: "GND", type: "power-in", role: "ground" },
          { number: "3", name: "OUT", type: "output", role: "output" },
          { number: "4", name: "VCC", type: "power-in", role: "supply", supply: 5 },
        ],
      },
    ],
  });
  const board = await createBoard(author, {
    name: "Widgeon mainboard",
    kind: "terminal",
    rails: [{ name: "+5V", nominal: 5, tolerancePercent: 5 }],
    placements: [{ designator: "U7", kind: "chip", chip: chip.slug }],
    nets: [{ name: "+5V", role: "power", pins: ["U7.4"] }],
  });
  const copy = await createCopy(author, { board: board.slug, tag: "bag 12" });
  const house = await createHouse(author, { name: "Widgeon Works" });
  const code = await createCode(author, { code: "WX1 0044", house: house.slug, chip: chip.slug });
  await createCode(author, { code: "WX1 0045", house: house.slug });
  const claim = await createClaim(author, {
    from: "WX1 0045",
    to: "WX1 0044",
    grade: "drop-in",
    evidence: { kind: "told", note: "said at a meeting" },
  });
  const evidence = (await readClaim(author, claim.id)).evidence[0]?.id ?? "";
  const published = await createCase(author, {
    board: board.slug,
    symptoms: ["no picture"],
    symptomText: "The screen stays dark.",
    title: "Dark screen, buffer dead",
    checks: [{ kind: "dc-voltage", at: "U7.4", measured: "0.8 V" }],
    causes: [{ at: "U7", failure: "dead", description: "The buffer pulled the rail down." }],
    publish: true,
  });
  const draft = await createCase(author, {
    board: board.slug,
    symptoms: [`${SECRET} hum`],
    symptomText: `${SECRET} flicker`,
    title: `${SECRET} draft`,
    checks: [{ kind: "dc-voltage", at: "U7.4", measured: "0.7 V", note: SECRET }],
    causes: [{ at: "U7", failure: "dead", description: SECRET, code: "WX1 0044" }],
    openedFrom: published.number,
  });
  await confirmCase(club.as(people.other), published.number, { helped: true, note: "Mine too." });
  const drafted = await readCase(author, draft.number);
  const shown = await readCase(author, published.number);
  const comment = await createComment(author, { kind: "case", record: published.id, body: "More photos to come." });
  await createComment(author, { kind: "case", record: draft.id, body: `${SECRET} comment` });
  const spare = await createSpare(author, { direction: "offer", chip: chip.slug, visibility: "public" });
  await createSpare(author, { direction: "offer", note: "Members see this one.", visibility: "members" });
  const photo = { name: "board.jpg", bytes: await smallPhoto("rgb(20, 90, 60)") };
  const attachment = await attachFile(author, { kind: "case", record: published.id }, photo);
  const draftPhoto = { name: `${SECRET}.jpg`, bytes: await smallPhoto("rgb(90, 20, 60)") };
  const draftAttachment = await attachFile(author, { kind: "case", record: draft.id, caption: SECRET }, draftPhoto);
  const text = { name: "notes.txt", bytes: new TextEncoder().encode("Sheet 1 of 1") };
  const document = await addDocument(author, { board: board.slug, title: "Notes", kind: "manual" }, text);
  const planned = await planImport(author, {
    format: "symbols",
    fileName: "none.kicad_sym",
    bytes: new TextEncoder().encode("(kicad_symbol_lib (version 20211014) (generator test))"),
  });
  return {
    board: board.slug,
    boardId: board.id,
    copy: copy.id,
    document: document.id,
    chip: chip.slug,
    house: house.slug,
    code: code.id,
    claim: claim.id,
    evidence,
    published: published.number,
    publishedId: published.id,
    check: shown.checks[0]?.id ?? "",
    cause: shown.causes[0]?.id ?? "",
    draft: draft.number,
    draftId: draft.id,
    draftCheck: drafted.checks[0]?.id ?? "",
    draftCause: drafted.causes[0]?.id ?? "",
    comment: comment.id,
    spare: spare.id,
    attachment: attachment.id,
    attachmentUse: attachment.use,
    draftAttachment: draftAttachment.id,
    import: planned.id,
  };
}
