import { z } from "zod";
import type { Role } from "#lib/core/shared/index.ts";
import { AdviceInput, JudgeInput } from "#lib/services/advice/schema.ts";
import { AttachInput, DocumentInput } from "#lib/services/attachments/schema.ts";
import { CopyInput, CreateBoard, ListBoards, UpdateBoard } from "#lib/services/boards/schema.ts";
import {
  CauseInput,
  CheckInput,
  ConfirmInput,
  CreateCase,
  ListCases,
  RecordChecks,
  RecordProof,
  UpdateCase,
  UpdateCheck,
} from "#lib/services/cases/schema.ts";
import { CreateChip, ListChips, UpdateChip } from "#lib/services/chips/schema.ts";
import {
  CreateClaim,
  CreateCode,
  CreateHouse,
  EvidenceInput,
  ListCodes,
  RetractEvidence,
  SightingInput,
  UpdateClaim,
  UpdateCode,
  UpdateHouse,
} from "#lib/services/codes/schema.ts";
import { CreateComment, UpdateComment } from "#lib/services/comments/schema.ts";
import { SCOPES, type Scope } from "#lib/services/context.ts";
import { ProseInput } from "#lib/services/prose/schema.ts";
import { SearchInput } from "#lib/services/search/schema.ts";
import { ListSpares, SpareInput } from "#lib/services/spares/schema.ts";

/** The schemas that check the requests, under the names that the document gives them. */
const SCHEMAS = {
  Advice: AdviceInput,
  Cause: CauseInput,
  Check: CheckInput,
  Checks: z.union([CheckInput, RecordChecks]),
  Claim: CreateClaim,
  Code: CreateCode,
  Comment: CreateComment,
  Confirmation: ConfirmInput,
  Copy: CopyInput,
  // The board is in the address.
  CopyOfBoard: CopyInput.omit({ board: true }),
  Evidence: EvidenceInput,
  EvidenceCounts: RetractEvidence,
  House: CreateHouse,
  Judge: JudgeInput,
  NewBoard: CreateBoard,
  NewCase: CreateCase,
  NewChip: CreateChip,
  Proof: RecordProof,
  Prose: ProseInput,
  Sighting: SightingInput,
  Spare: SpareInput,
  UpdateBoard,
  UpdateCase,
  UpdateCheck,
  UpdateChip,
  UpdateClaim,
  UpdateCode,
  UpdateComment,
  UpdateHouse,
} as const;
type SchemaName = keyof typeof SCHEMAS;

/** One request that the interface answers. */
export interface Operation {
  method: "get" | "post" | "put" | "patch" | "delete";
  /** Below /api/v1. */
  path: string;
  summary: string;
  role: Role | "anyone";
  scope: Scope;
  /** Answered to visitors of a members-only club too. */
  always?: boolean;
  query?: z.ZodObject;
  body?: SchemaName;
  /** Fields of a multipart form, beside its file. */
  form?: z.ZodObject;
  /** Needs If-Match with the ETag read. */
  versioned?: boolean;
  /** A POST whose `id` makes it safe to send again: 200 where it was done already. */
  repeatable?: boolean;
  success: { status: 200 | 201 | 204; says: string; type?: string };
  /** Statuses of this operation beside those that its other fields bring with them. */
  also?: Record<number, string>;
}

const read = { role: "anyone", scope: "read" } as const;
const write = { role: "member", scope: "write" } as const;
const importing = { role: "member", scope: "import" } as const;
const found = (says: string) => ({ success: { status: 200, says } }) as const;
const made = (says: string) => ({ success: { status: 201, says } }) as const;
const gone = { success: { status: 204, says: "Done; nothing to say." } } as const;
const saved = { success: { status: 200, says: "The record as it is now, with its new ETag." } } as const;

const commit = z.strictObject({ commit: z.literal("1").optional() });
const importForm = z.strictObject({ format: z.enum(["symbols"]) });

/** Every route of app/api/v1. A test holds it against the files. */
export const OPERATIONS: readonly Operation[] = [
  { method: "get", path: "/healthz", ...read, always: true, summary: "The process is alive", ...found("Alive.") },
  {
    method: "get",
    path: "/readyz",
    ...read,
    always: true,
    summary: "Whether database, search and storage can be used",
    ...found("All can be used; each is named."),
    also: { 503: "Something cannot be used; each is named." },
  },
  { method: "get", path: "/openapi.json", ...read, summary: "This document", ...found("OpenAPI 3.1.") },
  {
    method: "get",
    path: "/search",
    ...read,
    query: SearchInput,
    summary: "Search cases, boards, chips, codes and spares",
    ...found("Hits with highlights, and facets with counts. Totals are counted to 200."),
  },
  { method: "get", path: "/cases", ...read, query: ListCases, summary: "Cases, newest first", ...found("A page.") },
  {
    method: "post",
    path: "/cases",
    ...write,
    body: "NewCase",
    repeatable: true,
    summary: "Open a case, with all that is known of it",
    ...made("The case."),
  },
  { method: "get", path: "/cases/{number}", ...read, summary: "A case with its checks and causes", ...found("It.") },
  {
    method: "patch",
    path: "/cases/{number}",
    ...write,
    body: "UpdateCase",
    versioned: true,
    summary: "Change a case's own fields",
    ...saved,
  },
  {
    method: "post",
    path: "/cases/{number}/checks",
    ...write,
    body: "Checks",
    repeatable: true,
    summary: "Record a check, or a list of them",
    ...made("The check; `{ checks }` where a list was sent."),
  },
  {
    method: "patch",
    path: "/cases/{number}/checks/{id}",
    ...write,
    body: "UpdateCheck",
    versioned: true,
    summary: "Correct a check",
    ...saved,
  },
  {
    method: "delete",
    path: "/cases/{number}/checks/{id}",
    ...write,
    versioned: true,
    summary: "Take a check back",
    ...gone,
  },
  {
    method: "post",
    path: "/cases/{number}/causes",
    ...write,
    body: "Cause",
    summary: "Record a cause, with its cure and proof where known",
    ...made("The cause."),
  },
  {
    method: "patch",
    path: "/cases/{number}/causes/{id}",
    ...write,
    body: "Cause",
    versioned: true,
    summary: "Rewrite a cause and its cure",
    ...saved,
  },
  {
    method: "delete",
    path: "/cases/{number}/causes/{id}",
    ...write,
    versioned: true,
    summary: "Take a cause back",
    ...gone,
  },
  {
    method: "post",
    path: "/cases/{number}/proofs",
    ...write,
    body: "Proof",
    summary: "Record what shows that a cure holds",
    ...made("Its id; the case counts as cured."),
  },
  {
    method: "post",
    path: "/cases/{number}/confirmations",
    ...write,
    body: "Confirmation",
    summary: "Say whether a case helped with one's own",
    ...made("Its id. A later word replaces the earlier one."),
  },
  {
    method: "get",
    path: "/cases/{number}/advice",
    ...read,
    summary: "Similar cases, likely causes and checks worth making, for a case",
    ...found("Advice."),
  },
  {
    method: "post",
    path: "/advice",
    ...read,
    body: "Advice",
    summary: "The same for a repair that is not recorded; nothing is kept",
    ...found("Advice."),
  },
  {
    method: "post",
    path: "/judge",
    ...read,
    body: "Judge",
    summary: "What one reading says against what is expected; nothing is kept",
    ...found("The verdict with its limits, in words too."),
  },
  { method: "get", path: "/symptoms", ...read, summary: "The vocabulary of symptoms", ...found("All of it.") },
  { method: "get", path: "/boards", ...read, query: ListBoards, summary: "Boards by name", ...found("A page.") },
  {
    method: "post",
    path: "/boards",
    ...write,
    body: "NewBoard",
    repeatable: true,
    summary: "Record a board",
    ...made("The board."),
  },
  {
    method: "get",
    path: "/boards/{slug}",
    ...read,
    summary: "A board with rails, connectors, placements and nets",
    ...found("It."),
  },
  {
    method: "patch",
    path: "/boards/{slug}",
    ...write,
    body: "UpdateBoard",
    versioned: true,
    summary: "Change parts of a board; a list that is sent replaces the whole list",
    ...saved,
  },
  {
    method: "post",
    path: "/boards/{slug}/copies",
    ...write,
    body: "CopyOfBoard",
    repeatable: true,
    summary: "Record a copy of a board: what lies on the bench",
    ...made("The copy."),
  },
  {
    method: "patch",
    path: "/copies/{id}",
    ...write,
    body: "Copy",
    versioned: true,
    summary: "Rewrite a copy of a board",
    ...saved,
  },
  {
    method: "post",
    path: "/boards/{slug}/documents",
    ...write,
    form: DocumentInput.omit({ board: true }),
    summary: "Add a document to a board; `sheets` is a JSON list",
    ...made("Its id and that of its file."),
  },
  { method: "delete", path: "/documents/{id}", ...write, summary: "Take a document off its board", ...gone },
  { method: "get", path: "/chips", ...read, query: ListChips, summary: "Chips by name", ...found("A page.") },
  {
    method: "post",
    path: "/chips",
    ...write,
    body: "NewChip",
    repeatable: true,
    summary: "Record a chip with its pin tables",
    ...made("The chip."),
  },
  { method: "get", path: "/chips/{slug}", ...read, summary: "A chip with its pin tables", ...found("It.") },
  {
    method: "patch",
    path: "/chips/{slug}",
    ...write,
    body: "UpdateChip",
    versioned: true,
    summary: "Change parts of a chip; packages that are sent replace them all",
    ...saved,
  },
  { method: "get", path: "/codes", ...read, query: ListCodes, summary: "Part codes", ...found("A page.") },
  {
    method: "post",
    path: "/codes",
    ...write,
    body: "Code",
    repeatable: true,
    summary: "Record a code, with where it was seen",
    ...made("The code."),
  },
  {
    method: "get",
    path: "/codes/read",
    ...read,
    query: z.strictObject({ text: z.string() }),
    summary: "What a marking says, and the records that it names",
    ...found("Readings and records."),
  },
  {
    method: "get",
    path: "/codes/{code}",
    ...read,
    summary: "A code by its id or by any way of writing it",
    ...found("The code, or `{ choices }` where several records share the form."),
  },
  {
    method: "patch",
    path: "/codes/{code}",
    ...write,
    body: "UpdateCode",
    versioned: true,
    summary: "Change a code",
    ...saved,
  },
  {
    method: "post",
    path: "/codes/{code}/sightings",
    ...write,
    body: "Sighting",
    repeatable: true,
    summary: "Say where a code was seen",
    ...made("Its id and that of the code."),
  },
  {
    method: "post",
    path: "/codes/claims",
    ...write,
    body: "Claim",
    repeatable: true,
    summary: "Claim that one code can stand in for another",
    ...made("The claim."),
  },
  { method: "get", path: "/codes/claims/{id}", ...read, summary: "A claim with its evidence", ...found("It.") },
  {
    method: "patch",
    path: "/codes/claims/{id}",
    ...write,
    body: "UpdateClaim",
    versioned: true,
    summary: "Change a claim",
    ...saved,
  },
  {
    method: "post",
    path: "/codes/claims/{id}/evidence",
    ...write,
    body: "Evidence",
    repeatable: true,
    summary: "Add evidence for or against a claim",
    ...made("The claim as it stands now."),
  },
  {
    method: "put",
    path: "/codes/evidence/{id}",
    ...write,
    body: "EvidenceCounts",
    summary: "Take one's own evidence back, or let it count again",
    ...gone,
  },
  { method: "get", path: "/codes/houses", ...read, summary: "Houses that print codes of their own", ...found("All.") },
  {
    method: "post",
    path: "/codes/houses",
    ...write,
    body: "House",
    repeatable: true,
    summary: "Record a house",
    ...made("The house."),
  },
  { method: "get", path: "/codes/houses/{slug}", ...read, summary: "A house", ...found("It.") },
  {
    method: "patch",
    path: "/codes/houses/{slug}",
    ...write,
    body: "UpdateHouse",
    versioned: true,
    summary: "Change a house",
    ...saved,
  },
  {
    method: "get",
    path: "/spares",
    ...read,
    query: ListSpares,
    summary: "Spares and donor boards, offered and wanted",
    ...found("All that may be seen."),
  },
  {
    method: "post",
    path: "/spares",
    ...write,
    body: "Spare",
    repeatable: true,
    summary: "Offer or seek a part",
    ...made("Its id."),
  },
  {
    method: "patch",
    path: "/spares/{id}",
    ...write,
    body: "Spare",
    versioned: true,
    summary: "Rewrite one's own spare",
    ...saved,
  },
  {
    method: "delete",
    path: "/spares/{id}",
    ...write,
    versioned: true,
    summary: "Given, found or gone: it leaves the lists",
    ...gone,
  },
  {
    method: "post",
    path: "/comments",
    ...write,
    body: "Comment",
    repeatable: true,
    summary: "Comment on a case, a board, a chip or a code",
    ...made("Its id."),
  },
  {
    method: "patch",
    path: "/comments/{id}",
    ...write,
    body: "UpdateComment",
    versioned: true,
    summary: "Rewrite one's own comment",
    ...saved,
  },
  {
    method: "delete",
    path: "/comments/{id}",
    ...write,
    versioned: true,
    summary: "Take one's own comment back",
    ...gone,
  },
  {
    method: "post",
    path: "/attachments",
    ...write,
    form: AttachInput,
    summary: "Put a photo or a file on a record; photos are encoded anew without place and camera data",
    ...made("Where it is served."),
  },
  {
    method: "get",
    path: "/attachments/{id}",
    ...read,
    query: z.strictObject({ size: z.enum(["full", "thumb"]).optional() }),
    summary: "A photo, or a file as a download",
    success: { status: 200, says: "Its bytes.", type: "application/octet-stream" },
    also: { 304: "Not changed since the ETag in If-None-Match." },
  },
  {
    method: "delete",
    path: "/attachments/{id}",
    ...write,
    summary: "Take a photo or a file off one record; the id is its `use`",
    ...gone,
  },
  {
    method: "post",
    path: "/prose",
    role: "member",
    scope: "read",
    body: "Prose",
    summary: "A text as a page would draw it; nothing is kept",
    ...found("A tree of elements."),
  },
  { method: "get", path: "/imports", role: "member", scope: "read", summary: "Imports", ...found("Newest first.") },
  {
    method: "post",
    path: "/imports",
    ...importing,
    query: commit,
    form: importForm,
    summary: "Try an import; with `commit=1` write it at once",
    ...made("What is new, changed, the same and refused, and why."),
  },
  {
    method: "get",
    path: "/imports/{id}",
    role: "member",
    scope: "read",
    summary: "An import with its lines",
    ...found("It."),
  },
  {
    method: "post",
    path: "/imports/{id}/commit",
    ...importing,
    summary: "Write what the dry run showed",
    ...found("The import as it was written."),
    also: { 409: "A record of the plan has changed since; try the import again." },
  },
];

type Json = Record<string, unknown>;

let kept: Json | undefined;

/** The OpenAPI 3.1 document of the interface; made at the first call. */
export function openApiDocument(): Json {
  kept ??= {
    openapi: "3.1.0",
    info: {
      title: "Benchlore",
      version: "1",
      description:
        "Fault cases, boards, chips and part codes of a repair club. Ids are uuids of version 7 unless said otherwise, times are RFC 3339, errors are problem documents of RFC 9457.",
      license: { name: "MPL-2.0", identifier: "MPL-2.0" },
    },
    servers: [{ url: "/api/v1" }],
    paths: pathsOf(OPERATIONS),
    components: {
      schemas: { ...requestSchemas(), Problem: PROBLEM },
      responses: { Problem: { description: "What was wrong, in words.", content: problemContent() } },
      securitySchemes: {
        token: {
          type: "http",
          scheme: "bearer",
          description: `Made on the member's account page. Scopes: ${SCOPES.join(", ")}.`,
        },
        session: {
          type: "apiKey",
          in: "cookie",
          name: "authjs.session-token",
          description: "A signed-in browser; writing needs an Origin of this club.",
        },
      },
    },
  };
  return kept;
}

const PROBLEM = {
  type: "object",
  required: ["type", "title", "status", "detail"],
  properties: {
    type: { type: "string", format: "uri-reference" },
    title: { type: "string" },
    status: { type: "integer" },
    detail: { type: "string" },
    errors: {
      type: "array",
      items: {
        type: "object",
        required: ["path", "message"],
        properties: { path: { type: "string" }, message: { type: "string" } },
      },
    },
    present: { description: "The record as it stands, where someone was first." },
  },
};

function problemContent(): Json {
  return { "application/problem+json": { schema: { $ref: "#/components/schemas/Problem" } } };
}

/** What a request may hold, as JSON Schema; `input` because defaults are filled in by us. */
function jsonSchema(schema: z.ZodType): Json {
  const { $schema: _dialect, ...rest } = z.toJSONSchema(schema, { io: "input" }) as Json;
  return rest;
}

function requestSchemas(): Json {
  return Object.fromEntries(Object.entries(SCHEMAS).map(([name, schema]) => [name, jsonSchema(schema)]));
}

function pathsOf(operations: readonly Operation[]): Json {
  const paths: Record<string, Json> = {};
  for (const operation of operations) {
    paths[operation.path] = { ...paths[operation.path], [operation.method]: described(operation) };
  }
  return paths;
}

function described(operation: Operation): Json {
  const parameters = parametersOf(operation);
  const body = bodyOf(operation);
  return {
    operationId: operationId(operation),
    summary: operation.summary,
    description: whoMay(operation),
    ...(parameters.length > 0 && { parameters }),
    ...(body && { requestBody: { required: true, content: body } }),
    responses: responsesOf(operation),
    security: securityOf(operation),
  };
}

function operationId({ method, path }: Operation): string {
  return `${method}${path.replaceAll(/[^A-Za-z]+([A-Za-z])/g, (_, letter: string) => letter.toUpperCase()).replaceAll(/[^A-Za-z]/g, "")}`;
}

function whoMay({ role, scope, always }: Operation): string {
  if (always) return "Anyone.";
  const who = role === "anyone" ? "Anyone; in a members-only club, members" : `A ${role}`;
  return `${who}. A token needs the scope "${scope}".`;
}

function securityOf({ role, always }: Operation): Json[] {
  const signedIn = [{ token: [] }, { session: [] }];
  return role === "anyone" || always ? [{}, ...signedIn] : signedIn;
}

function parametersOf({ path, query, versioned }: Operation): Json[] {
  const inPath = [...path.matchAll(/\{(\w+)\}/g)].map(([, name]) => ({
    name,
    in: "path",
    required: true,
    schema: name === "number" ? { type: "integer", minimum: 1 } : { type: "string" },
  }));
  const fields = query ? jsonSchema(query) : {};
  const required = (fields.required ?? []) as string[];
  const inQuery = Object.entries((fields.properties ?? {}) as Record<string, Json>).map(([name, schema]) => ({
    name,
    in: "query",
    required: required.includes(name),
    schema,
  }));
  const ifMatch = {
    name: "If-Match",
    in: "header",
    required: true,
    description: "The ETag as read.",
    schema: { type: "string" },
  };
  return [...inPath, ...inQuery, ...(versioned ? [ifMatch] : [])];
}

function bodyOf({ body, form }: Operation): Json | null {
  if (body) return { "application/json": { schema: { $ref: `#/components/schemas/${body}` } } };
  if (!form) return null;
  const fields = jsonSchema(form);
  const properties = { ...(fields.properties as Json), file: { type: "string", contentEncoding: "binary" } };
  const required = [...((fields.required as string[] | undefined) ?? []), "file"];
  return { "multipart/form-data": { schema: { ...fields, properties, required } } };
}

function responsesOf(operation: Operation): Json {
  const { success, also = {}, repeatable } = operation;
  const content = { [success.type ?? "application/json"]: { schema: success.type ? { type: "string" } : {} } };
  return {
    [success.status]: { description: success.says, ...(success.status !== 204 && { content }) },
    ...(repeatable && { 200: { description: "It was there already, with the same content.", content } }),
    ...Object.fromEntries(
      problemStatuses(operation).map((status) => [status, { $ref: "#/components/responses/Problem" }]),
    ),
    ...Object.fromEntries(
      Object.entries(also).map(([status, description]) => [
        status,
        { description, ...(Number(status) >= 400 && { content: problemOrHealth(operation) }) },
      ]),
    ),
  };
}

/** The answer of an unready club is no problem document: it names each part as a ready one does. */
function problemOrHealth({ always }: Operation): Json {
  return always ? { "application/json": { schema: {} } } : problemContent();
}

function problemStatuses(operation: Operation): number[] {
  const { path, query, body, form, versioned, repeatable, always, role } = operation;
  return [
    ...(always ? [] : [401]),
    ...(role !== "anyone" || !always ? [403] : []),
    ...(path.includes("{") ? [404] : []),
    ...(repeatable ? [409] : []),
    ...(versioned ? [412, 428] : []),
    ...(body || form ? [413, 415] : []),
    ...(body || form || query ? [422] : []),
  ];
}
