import type { Db } from "#lib/infra/db/index.ts";
import type { SearchDocument, SearchKind } from "#lib/infra/search/types.ts";
import { plainText } from "./plain-text.ts";

/** Signals and places written in prose are found too; the search engine reads them out of these texts. */
interface DocumentSource {
  kind: SearchKind;
  documents(db: Db, ids: readonly string[]): Promise<SearchDocument[]>;
  /** All ids in a fixed order, a page after the id given. */
  ids(db: Db, after: string | null, limit: number): Promise<string[]>;
}

type IdQuery = { where: { id?: { gt: string } }; select: { id: true }; orderBy: { id: "asc" }; take: number };

function pageAfter(after: string | null, limit: number): IdQuery {
  return { where: after ? { id: { gt: after } } : {}, select: { id: true }, orderBy: { id: "asc" }, take: limit };
}

const idsOf = (rows: { id: string }[]) => rows.map((row) => row.id);
const words = (...parts: (string | null | undefined)[]) => parts.filter(Boolean).join("\n");
const body = (...parts: (string | null | undefined)[]) => plainText(words(...parts));

const cases: DocumentSource = {
  kind: "case",
  ids: async (db, after, limit) => idsOf(await db.faultCase.findMany(pageAfter(after, limit))),
  async documents(db, ids) {
    const rows = await db.faultCase.findMany({
      where: { id: { in: [...ids] }, state: { in: ["published", "draft"] } },
      select: {
        id: true,
        number: true,
        title: true,
        state: true,
        outcome: true,
        authorId: true,
        lesson: true,
        symptomText: true,
        reproduced: true,
        story: true,
        openedAt: true,
        updatedAt: true,
        board: { select: { slug: true, name: true, kind: true, machine: true } },
        symptoms: { select: { symptom: { select: { label: true, synonyms: true } } } },
        checks: { select: { at: true, kind: true, measured: true, note: true }, orderBy: { position: "asc" } },
        causes: {
          select: {
            at: true,
            description: true,
            chip: { select: { name: true } },
            code: { select: { code: true } },
            cure: { select: { description: true, fittedText: true } },
          },
        },
        _count: { select: { confirmations: { where: { helped: true } } } },
      },
    });
    return rows.map((row) => ({
      id: row.id,
      kind: "case" as const,
      title: `${row.number} · ${row.title}`,
      url: `/cases/${row.number}`,
      body: body(
        row.lesson,
        row.symptomText,
        ...row.causes.map((cause) => words(cause.description, cause.cure?.description)),
        row.reproduced,
        row.story,
        ...row.checks.map((check) => words(check.note)),
      ),
      codes: row.causes.flatMap((cause) => [cause.chip?.name, cause.code?.code, cause.cure?.fittedText]).filter(isText),
      signals: [],
      refs: [...new Set([...row.checks.map((check) => check.at), ...row.causes.map((cause) => cause.at)])].filter(
        isText,
      ),
      symptoms: row.symptoms.flatMap(({ symptom }) => [symptom.label, ...symptom.synonyms]),
      ...(row.board && { board: { slug: row.board.slug, name: row.board.name }, boardKind: row.board.kind }),
      outcome: row.outcome,
      year: row.openedAt.getUTCFullYear(),
      visibility: row.state === "published" ? ("public" as const) : { memberId: row.authorId },
      boost: Math.min(row._count.confirmations, 10),
      updatedAt: row.updatedAt.getTime(),
    }));
  },
};

const boards: DocumentSource = {
  kind: "board",
  ids: async (db, after, limit) => idsOf(await db.board.findMany(pageAfter(after, limit))),
  async documents(db, ids) {
    const rows = await db.board.findMany({
      where: { id: { in: [...ids] }, hiddenAt: null },
      select: {
        id: true,
        slug: true,
        name: true,
        kind: true,
        maker: true,
        machine: true,
        year: true,
        summary: true,
        notes: true,
        updatedAt: true,
        rails: { select: { name: true } },
        placements: {
          select: { designator: true, value: true, chip: { select: { name: true } }, code: { select: { code: true } } },
        },
        nets: { select: { name: true } },
        selfTests: { select: { form: true, signal: true, meaning: true } },
        copies: { select: { tag: true, serial: true } },
      },
    });
    return rows.map((row) => ({
      id: row.id,
      kind: "board" as const,
      title: row.name,
      url: `/boards/${row.slug}`,
      body: body(
        row.maker,
        row.machine,
        row.summary,
        ...row.selfTests.map((code) => `${code.signal} ${code.form}: ${code.meaning}`),
        row.notes,
        ...row.copies.map((copy) => `${copy.tag} ${copy.serial}`),
      ),
      codes: row.placements
        .flatMap((one) => [one.chip?.name, one.code?.code, one.chip ? null : one.value])
        .filter(isText),
      signals: [...row.rails, ...row.nets].map((one) => one.name),
      refs: row.placements.map((one) => one.designator),
      symptoms: [],
      board: { slug: row.slug, name: row.name },
      boardKind: row.kind,
      ...(row.year && { year: row.year }),
      visibility: "public" as const,
      boost: 0,
      updatedAt: row.updatedAt.getTime(),
    }));
  },
};

const chips: DocumentSource = {
  kind: "chip",
  ids: async (db, after, limit) => idsOf(await db.chip.findMany(pageAfter(after, limit))),
  async documents(db, ids) {
    const rows = await db.chip.findMany({
      where: { id: { in: [...ids] }, hiddenAt: null },
      select: {
        id: true,
        slug: true,
        name: true,
        function: true,
        notes: true,
        updatedAt: true,
        codes: { where: { hiddenAt: null }, select: { code: true } },
        packages: { select: { name: true, pins: { select: { name: true } } } },
      },
    });
    return rows.map((row) => ({
      id: row.id,
      kind: "chip" as const,
      title: row.name,
      url: `/chips/${row.slug}`,
      body: body(row.function, row.notes, row.packages.map((one) => one.name).join(" ")),
      codes: [row.name, ...row.codes.map((one) => one.code)],
      signals: [...new Set(row.packages.flatMap((one) => one.pins.map((pin) => pin.name)))].filter(isText),
      refs: [],
      symptoms: [],
      visibility: "public" as const,
      boost: 0,
      updatedAt: row.updatedAt.getTime(),
    }));
  },
};

const codes: DocumentSource = {
  kind: "code",
  ids: async (db, after, limit) => idsOf(await db.partCode.findMany(pageAfter(after, limit))),
  async documents(db, ids) {
    const rows = await db.partCode.findMany({
      where: { id: { in: [...ids] }, hiddenAt: null },
      select: {
        id: true,
        code: true,
        notes: true,
        updatedAt: true,
        house: { select: { name: true } },
        chip: { select: { name: true, function: true } },
        sightings: { select: { note: true, at: true, board: { select: { name: true } } } },
      },
    });
    return rows.map((row) => ({
      id: row.id,
      kind: "code" as const,
      title: row.code,
      url: `/codes/${row.id}`,
      body: body(
        row.house?.name,
        row.chip ? `${row.chip.name} ${row.chip.function}` : "unknown",
        row.notes,
        ...row.sightings.map((one) => words(one.board && `${one.board.name} ${one.at}`, one.note)),
      ),
      codes: [row.code],
      signals: [],
      refs: [],
      symptoms: [],
      visibility: "public" as const,
      boost: 0,
      updatedAt: row.updatedAt.getTime(),
    }));
  },
};

const spares: DocumentSource = {
  kind: "spare",
  ids: async (db, after, limit) => idsOf(await db.spare.findMany(pageAfter(after, limit))),
  async documents(db, ids) {
    const rows = await db.spare.findMany({
      where: { id: { in: [...ids] }, doneAt: null },
      select: {
        id: true,
        direction: true,
        quantity: true,
        condition: true,
        note: true,
        visibility: true,
        updatedAt: true,
        member: { select: { name: true } },
        code: { select: { code: true } },
        chip: { select: { name: true } },
        board: { select: { slug: true, name: true } },
      },
    });
    return rows.map((row) => {
      const what = row.code?.code ?? row.chip?.name ?? row.board?.name ?? "part";
      return {
        id: row.id,
        kind: "spare" as const,
        title: row.direction === "offer" ? `${row.quantity} × ${what}, offered` : `${what}, wanted`,
        url: `/spares#spare-${row.id}`,
        body: body(row.condition, row.note, row.member.name),
        codes: [row.code?.code, row.chip?.name].filter(isText),
        signals: [],
        refs: [],
        symptoms: [],
        ...(row.board && { board: row.board }),
        visibility: row.visibility === "public" ? ("public" as const) : ("members" as const),
        boost: 0,
        updatedAt: row.updatedAt.getTime(),
      };
    });
  },
};

function isText(value: string | null | undefined): value is string {
  return typeof value === "string" && value !== "";
}

/** Where the documents of each kind come from. The record kinds of the change log have the same names. */
export const SOURCES: readonly DocumentSource[] = [cases, boards, chips, codes, spares];
