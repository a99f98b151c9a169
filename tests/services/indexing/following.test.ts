import fc from "fast-check";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { createCaseIndex } from "#lib/core/advice/index.ts";
import { createEmbeddedSearch } from "#lib/infra/search/embedded.ts";
import type { SearchDocument } from "#lib/infra/search/types.ts";
import { createBoard, createCopy, createFactsCache, readBoard, updateBoard } from "#lib/services/boards/index.ts";
import {
  confirmCase,
  createCase,
  publishCase,
  readCase,
  recordCause,
  recordChecks,
  updateCase,
  withdrawCase,
} from "#lib/services/cases/index.ts";
import { createChip, readChip, updateChip } from "#lib/services/chips/index.ts";
import { addSighting, createCode, createHouse, updateCode, updateHouse } from "#lib/services/codes/index.ts";
import type { Ctx } from "#lib/services/context.ts";
import { followChanges } from "#lib/services/indexing/index.ts";
import { saveProfile } from "#lib/services/members/index.ts";
import { search } from "#lib/services/search/index.ts";
import { closeSpare, createSpare, listSpares, updateSpare } from "#lib/services/spares/index.ts";
import { testClub, type TestClub } from "#tests/support/test-club.ts";
import { remembering } from "./document-store.ts";

let club: TestClub;
let ada: Ctx;
let bo: Ctx;
const visitor = () => club.ctx({ kind: "visitor" });

beforeAll(async () => {
  club = await testClub();
  ada = club.ctx(await club.member("ada"));
  bo = club.ctx(await club.member("bo"));
  await createHouse(ada, { name: "Veqta", slug: "veqta" });
  await createChip(ada, { name: "74LS244", function: "octal buffer" });
  await createChip(ada, { name: "74LS240", function: "octal inverter" });
  await createCode(ada, { code: "VQ4-0061-03", house: "veqta", chip: "74ls244" });
  await createBoard(ada, {
    name: "Finch CPU",
    slug: "finch",
    kind: "home-computer",
    placements: [{ designator: "U7", kind: "chip", chip: "74ls244", code: "VQ4-0061-03" }],
  });
});
afterAll(() => club.close());

/** A second follower of the same database, with an index of its own, as another process has one. */
function anotherFollower() {
  const engine = remembering(createEmbeddedSearch());
  const follower = followChanges(
    { db: club.database.db, search: engine, cases: createCaseIndex(), boards: createFactsCache(club.database.db) },
    {
      onProblem: (problem) => {
        throw new Error(`following: ${JSON.stringify(problem)}`);
      },
    },
  );
  return { engine, follower };
}

/** What the index must hold: read from the database by a follower that begins now. */
async function freshDocuments(): Promise<Map<string, SearchDocument>> {
  const { engine, follower } = anotherFollower();
  await follower.settled();
  await follower.stop();
  return engine.held();
}

const titles = async (ctx: Ctx, q: string, kind?: string) => {
  await club.settled();
  return (await search(ctx, { q, ...(kind && { kind }) })).hits.map((hit) => hit.title);
};
const boardVersion = async () => (await readBoard(ada, "finch")).version;

describe("what is saved is found", () => {
  test("a published case is found by its words, and no longer once its author takes it back", async () => {
    const { number } = await createCase(ada, {
      board: "finch",
      symptomText: "kazoo noise",
      title: "Kazoo",
      publish: true,
    });
    expect(await titles(visitor(), "kazoo")).toEqual([`${number} · Kazoo`]);
    await withdrawCase(ada, number);
    expect(await titles(visitor(), "kazoo")).toEqual([]);
    await publishCase(ada, number);
    expect(await titles(visitor(), "kazoo")).toEqual([`${number} · Kazoo`]);
  });

  test("a board's new name is found on its cases, on the codes seen there and on its donors", async () => {
    const { number } = await createCase(ada, { board: "finch", symptomText: "mute", title: "Mute", publish: true });
    await addSighting(ada, "VQ4-0061-03", { board: "finch", at: "U7" });
    await createSpare(ada, { direction: "offer", board: "finch", visibility: "public" });
    await updateBoard(ada, "finch", await boardVersion(), { name: "Ouzel CPU" });
    expect(await titles(visitor(), "ouzel", "case")).toContain(`${number} · Mute`);
    expect(await titles(visitor(), "ouzel", "code")).toEqual(["VQ4-0061-03"]);
    expect(await titles(visitor(), "ouzel", "spare")).toEqual(["1 × Ouzel CPU, offered"]);
    expect(await titles(visitor(), "finch", "board")).toEqual([]);
    await updateBoard(ada, "finch", await boardVersion(), { name: "Finch CPU" });
  });

  test("a code that turns out to be another chip leaves the page of the first one", async () => {
    const { id } = await createCode(ada, { code: "QX77-1", chip: "74ls244" });
    expect(await titles(visitor(), "QX77-1", "chip")).toEqual(["74LS244"]);
    await updateCode(ada, id, 1, { chip: "74ls240" });
    expect(await titles(visitor(), "QX77-1", "chip")).toEqual(["74LS240"]);
  });

  test("Markdown is read, not shown: directives and stars are no part of a snippet", async () => {
    await createCase(ada, {
      symptomText: "narwhal",
      title: "Narwhal",
      story: "## Found\nIt was **narwhal** again, :chip[74LS244] at U7:14 and RESET* low.",
      publish: true,
    });
    await club.settled();
    const [hit] = (await search(visitor(), { q: "narwhal again " })).hits;
    expect(hit?.snippet).toBe("narwhal Found It was narwhal again, 74LS244 at U7:14 and RESET* low.");
  });
});

describe("the index agrees with the database, document by document", () => {
  /** Everything that changes what a document says. Each may be done at any time. */
  const deeds: Record<string, () => Promise<unknown>> = {
    "opens a case": () => createCase(ada, { board: "finch", symptoms: ["no picture"], publish: true }),
    "keeps a draft": () => createCase(bo, { board: "finch", symptomText: "half a thought" }),
    "writes the lesson": async () => {
      const view = await readCase(ada, await someCase());
      await updateCase(ada, view.number, view.version, { lesson: `Lesson ${view.version}` });
    },
    "takes a case back": async () => withdrawCase(ada, await someCase()),
    "publishes a case": async () => publishCase(ada, await someCase()),
    "takes a reading": async () =>
      recordChecks(ada, await someCase(), [{ kind: "level", at: "U7.12", measured: "low" }]),
    "names a cause": async () =>
      recordCause(ada, await someCase(), { at: "U7", failure: "outputs-dead", code: "VQ4-0061-03" }),
    "is helped": async () => confirmCase(bo, await publishedCase(), { helped: true }),
    "renames the board": async () => {
      const version = await boardVersion();
      await updateBoard(ada, "finch", version, { name: `Finch ${version}` });
    },
    "adds a copy": async () => createCopy(ada, { board: "finch", tag: `tag ${ada.newId()}` }),
    "renames a chip": async () => {
      const { version } = await readChip(ada, "74ls244");
      await updateChip(ada, "74ls244", version, { name: `74LS244 v${version}`, function: `buffer ${version}` });
    },
    "moves a code": async () => {
      const { id, version, chip } = await codeNow();
      await updateCode(ada, id, version, { chip: chip?.slug === "74ls244" ? "74ls240" : "74ls244" });
    },
    "sees a code": () => addSighting(ada, "VQ4-0061-03", { board: "finch", at: "U7" }),
    "renames a house": async () => {
      const house = await ada.db.house.findUniqueOrThrow({ where: { slug: "veqta" }, select: { version: true } });
      await updateHouse(ada, "veqta", house.version, { name: `Veqta ${house.version}` });
    },
    "offers a spare": () => createSpare(ada, { direction: "offer", code: "VQ4-0061-03" }),
    "changes a spare": async () => {
      const spare = await ownSpare();
      await updateSpare(ada, spare.id, spare.version, { direction: "want", chip: "74ls240", quantity: 2 });
    },
    "closes a spare": async () => {
      const spare = await ownSpare();
      await closeSpare(ada, spare.id, spare.version);
    },
    "takes another name": async () => {
      await ownSpare();
      await saveProfile(ada, { name: `Ada ${ada.newId()}`, about: "", email: null });
    },
  };

  async function someCase(): Promise<number> {
    const { db, actor } = ada;
    const authorId = actor.kind === "member" ? actor.id : "";
    const row = await db.faultCase.findFirst({
      where: { authorId },
      select: { number: true },
      orderBy: { updatedAt: "asc" },
    });
    return row?.number ?? (await createCase(ada, { board: "finch", symptomText: "anything", publish: true })).number;
  }
  async function publishedCase(): Promise<number> {
    const number = await someCase();
    await publishCase(ada, number);
    return number;
  }
  async function codeNow() {
    return ada.db.partCode.findFirstOrThrow({
      where: { normal: "vq4006103" },
      select: { id: true, version: true, chip: { select: { slug: true } } },
    });
  }
  async function ownSpare() {
    const mine = (await listSpares(ada, {})).find((spare) => spare.mine);
    if (mine) return mine;
    await createSpare(ada, { direction: "offer", chip: "74ls244" });
    return ownSpare();
  }
  async function doAll(names: readonly string[]): Promise<void> {
    for (const name of names) await deeds[name]?.();
  }

  test("whatever is done, in whatever order", { timeout: 240_000 }, async () => {
    const { engine, follower } = anotherFollower();
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.constantFrom(...Object.keys(deeds)), { minLength: 1, maxLength: 8 }),
        async (names) => {
          await doAll(names);
          follower.wake();
          await follower.settled();
          expect(engine.held()).toEqual(await freshDocuments());
        },
      ),
      { numRuns: 12 },
    );
    await follower.stop();
  });

  test.each(Object.keys(deeds))("after one %s", async (name) => {
    const { engine, follower } = anotherFollower();
    await follower.settled();
    await doAll([name]);
    await follower.settled();
    await follower.stop();
    expect(engine.held()).toEqual(await freshDocuments());
  });

  test("two followers, of which one begins while others write, end with the same", async () => {
    const names = Object.keys(deeds);
    const first = anotherFollower();
    const writing = doAll([...names, ...names]);
    const second = anotherFollower();
    await writing;
    await Promise.all([first.follower.settled(), second.follower.settled()]);
    await Promise.all([first.follower.stop(), second.follower.stop()]);
    const expected = await freshDocuments();
    expect(first.engine.held()).toEqual(expected);
    expect(second.engine.held()).toEqual(expected);
  });

  test("an index that is rebuilt while others write loses nothing", async () => {
    const { engine, follower } = anotherFollower();
    await follower.settled();
    const names = Object.keys(deeds);
    const rebuilding = engine.rebuild(slowly([...engine.held().values()]));
    await doAll(names);
    await follower.settled();
    await rebuilding;
    await follower.stop();
    expect(engine.held()).toEqual(await freshDocuments());
    expect((await engine.stats()).documents).toBe(engine.held().size);
  });
});

/** Documents as they were when the rebuild began, one a turn: older than what is written meanwhile. */
async function* slowly(documents: readonly SearchDocument[]): AsyncGenerator<SearchDocument> {
  for (const document of documents) {
    await new Promise((resume) => setTimeout(resume, 5));
    yield document;
  }
}
