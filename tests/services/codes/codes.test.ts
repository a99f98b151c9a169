import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { createBoard } from "#lib/services/boards/index.ts";
import { createCase } from "#lib/services/cases/index.ts";
import { createChip } from "#lib/services/chips/index.ts";
import {
  addEvidence,
  addSighting,
  createClaim,
  createCode,
  createHouse,
  findCode,
  listCodes,
  listHouses,
  readCodeView,
  readMarkingText,
  restoreEvidence,
  retractEvidence,
  updateClaim,
  updateCode,
  updateHouse,
} from "#lib/services/codes/index.ts";
import type { MemberActor } from "#lib/services/context.ts";
import { testClub, type TestClub } from "#tests/support/test-club.ts";

let club: TestClub;
let ada: MemberActor;
let bo: MemberActor;
let reviewer: MemberActor;
beforeAll(async () => {
  club = await testClub();
  ada = await club.member("ada");
  bo = await club.member("bo");
  reviewer = await club.member("rea", "reviewer");
  await createHouse(club.ctx(ada), { name: "Veqta", slug: "veqta" });
  await createHouse(club.ctx(ada), { name: "Orvane", notes: "Codes begin with two digits." });
  await createChip(club.ctx(ada), {
    name: "VQ4-0061",
    packages: [{ name: "DIP-4", style: "DIP", pins: [1, 2, 3, 4].map((number) => ({ number: String(number) })) }],
  });
  await createBoard(club.ctx(ada), {
    name: "Test Board",
    kind: "other",
    placements: [{ designator: "U7", kind: "chip" }],
  });
});
afterAll(() => club.close());

const historyOf = (kind: string, id: string) =>
  club.database.db.recordRevision.findMany({
    where: { recordKind: kind, recordId: id },
    select: { did: true, version: true, member: { select: { handle: true } } },
    orderBy: { at: "asc" },
  });

describe("recording a code", () => {
  test("keeps the print, and its first sighting and its history with it", async () => {
    const made = await createCode(club.ctx(ada), {
      code: "VQ4-0061-03",
      house: "veqta",
      chip: "vq4-0061",
      notes: "White print.",
      sighting: { board: "test-board", at: "u7", dateCode: "8712", note: "Socketed." },
    });
    const view = await readCodeView(club.ctx(), "vq4 0061 03");
    expect(view).toMatchObject({
      id: made.id,
      code: "VQ4-0061-03",
      normal: "vq4006103",
      house: { slug: "veqta", name: "Veqta" },
      chip: { slug: "vq4-0061", packages: [{ name: "DIP-4", style: "DIP", pinCount: 4 }] },
      by: { handle: "ada" },
      sightings: [
        { board: { slug: "test-board", name: "Test Board" }, at: "U7", dateCode: "8712", by: { handle: "ada" } },
      ],
      standIns: [],
      standsInFor: [],
      version: 1,
    });
    expect(await historyOf("code", made.id)).toEqual([{ did: "code.create", version: 1, member: { handle: "ada" } }]);
  });

  test("once more under the same id is the same record; another print under it is refused", async () => {
    const id = club.ctx().newId();
    const first = await createCode(club.ctx(ada), { id, code: "AGAIN-1" });
    expect(await createCode(club.ctx(ada), { id, code: "AGAIN-1" })).toEqual({ ...first, made: false });
    await expect(createCode(club.ctx(ada), { id, code: "OTHER-1" })).rejects.toMatchObject({ code: "conflict" });
  });

  test.each([
    ["the same print of the same house", { code: "vq4-0061-03", house: "veqta" }, "code"],
    ["a house that is not there", { code: "N1", house: "nobody" }, "house"],
    ["a chip that is not there", { code: "N2", chip: "nothing" }, "chip"],
    ["a board that is not there", { code: "N3", sighting: { board: "nowhere" } }, "sighting.board"],
  ])("%s is refused at its field", async (_, input, path) => {
    await expect(createCode(club.ctx(ada), input)).rejects.toMatchObject({
      code: "invalid",
      extra: { problems: [expect.objectContaining({ path })] },
    });
  });

  test("a print without a letter or digit is no code, and a visitor records none", async () => {
    await expect(createCode(club.ctx(ada), { code: "--" })).rejects.toThrow("A code needs a letter or a digit.");
    await expect(createCode(club.ctx({ kind: "visitor" }), { code: "V1" })).rejects.toMatchObject({
      code: "not-signed-in",
    });
    await expect(createCode(club.ctx({ ...ada, scopes: ["read"] }), { code: "V1" })).rejects.toMatchObject({
      code: "forbidden",
    });
  });

  test("only the program says who recorded it and when", async () => {
    const at = new Date("2019-03-04T19:00:00Z");
    const made = await createCode(club.ctx(), { code: "OLD-77" }, { memberId: bo.id, at });
    expect(await readCodeView(club.ctx(), made.id)).toMatchObject({ by: { handle: "bo" }, at: at.toISOString() });
    await expect(createCode(club.ctx(ada), { code: "OLD-78" }, { memberId: bo.id, at })).rejects.toMatchObject({
      code: "forbidden",
    });
  });
});

describe("changing a code", () => {
  test("the second writer is shown the first one's version, and nothing is overwritten", async () => {
    const made = await createCode(club.ctx(ada), { code: "ED-100" });
    await updateCode(club.ctx(bo), made.id, 1, { notes: "Seen in a terminal.", house: "orvane" });
    await expect(updateCode(club.ctx(ada), made.id, 1, { notes: "Mine." })).rejects.toMatchObject({
      code: "stale",
      extra: { present: { notes: "Seen in a terminal.", version: 2, house: { slug: "orvane", name: "Orvane" } } },
    });
    expect(await readCodeView(club.ctx(), made.id)).toMatchObject({ notes: "Seen in a terminal.", version: 2 });
  });
});

describe("finding a code", () => {
  test("a form that several records share answers with the choices; an exact print means one", async () => {
    const one = await createCode(club.ctx(ada), { code: "QX-12.5", house: "veqta" });
    const other = await createCode(club.ctx(ada), { code: "QX 125", house: "orvane" });
    expect(await findCode(club.ctx(), "qx125")).toEqual({
      kind: "choices",
      choices: [
        { id: other.id, code: "QX 125", house: { slug: "orvane", name: "Orvane" }, chip: null },
        { id: one.id, code: "QX-12.5", house: { slug: "veqta", name: "Veqta" }, chip: null },
      ],
    });
    expect(await findCode(club.ctx(), "qx-12.5")).toEqual({ kind: "one", id: one.id, code: "QX-12.5" });
    expect(await findCode(club.ctx(), other.id)).toEqual({ kind: "one", id: other.id, code: "QX 125" });
    await expect(readCodeView(club.ctx(), "qx125")).rejects.toMatchObject({ code: "conflict" });
    await expect(findCode(club.ctx(), "no such")).rejects.toMatchObject({ code: "not-found" });
  });

  test("the list narrows by house, by what waits for a name, and by any spelling", async () => {
    const codes = async (query: object) => (await listCodes(club.ctx(), query)).codes.map((one) => one.code);
    expect(await codes({ house: "veqta" })).toEqual(["QX-12.5", "VQ4-0061-03"]);
    expect(await codes({ q: "0061" })).toEqual(["VQ4-0061-03"]);
    expect(await codes({ unknown: "false" })).toEqual(["VQ4-0061-03"]);
    const all = await codes({});
    const first = await listCodes(club.ctx(), { limit: 2 });
    const second = await listCodes(club.ctx(), { limit: 2, cursor: first.next ?? undefined });
    expect([...first.codes, ...second.codes].map((one) => one.code)).toEqual(all.slice(0, 4));
    expect(first.total).toBe(all.length);
  });

  test("a marking is answered with its readings and the records that carry it", async () => {
    const answer = await readMarkingText(club.ctx(), "VQ4 0061 03");
    expect(answer.records.map((one) => [one.kind, one.title])).toEqual([
      ["code", "VQ4-0061-03"],
      ["chip", "VQ4-0061"],
    ]);
    expect((await readMarkingText(club.ctx(), "SN74LS244N")).readings[0]).toMatchObject({
      kind: "logic",
      fields: { series: "74", family: "LS", function: "244" },
    });
    expect(await readMarkingText(club.ctx(), "?")).toMatchObject({ records: [] });
  });
});

describe("claims and evidence", () => {
  const pair = async (from: string, to: string) => {
    await createCode(club.ctx(ada), { code: from });
    await createCode(club.ctx(ada), { code: to });
  };

  test("fitted and worked for one, failed for another: both are counted and the claim is contested", async () => {
    await pair("FIT-1", "FIT-2");
    const failed = await createCase(club.ctx(bo), { symptomText: "Dead.", publish: true });
    const claim = await createClaim(club.ctx(ada), {
      from: "fit 1",
      to: "fit 2",
      grade: "drop-in",
      conditions: ["Issue 3 only"],
      evidence: { kind: "fitted-worked", note: "Ran all evening." },
    });
    await addEvidence(club.ctx(bo), claim.id, {
      kind: "fitted-failed",
      case: failed.number,
      provedElsewhere: "yes",
      note: "One count high.",
    });
    const [read] = (await readCodeView(club.ctx(), "FIT-1")).standIns;
    expect(read).toMatchObject({
      from: { code: "FIT-1" },
      to: { code: "FIT-2" },
      grade: "drop-in",
      conditions: ["Issue 3 only"],
      counts: { "fitted-worked": 1, "fitted-failed": 1 },
      contested: true,
      evidence: [
        { kind: "fitted-worked", by: { handle: "ada" }, case: null, retracted: false },
        { kind: "fitted-failed", by: { handle: "bo" }, case: { number: failed.number }, provedElsewhere: "yes" },
      ],
    });
    expect((await readCodeView(club.ctx(), "FIT-2")).standsInFor).toEqual([read]);
    expect((await historyOf("claim", claim.id)).map((row) => row.did)).toEqual(["claim.create", "evidence.add"]);
  });

  test("evidence that is taken back no longer counts, stays readable, and can count again", async () => {
    await pair("BACK-1", "BACK-2");
    const claim = await createClaim(club.ctx(ada), { from: "BACK-1", to: "BACK-2", grade: "same-part" });
    const evidence = await addEvidence(club.ctx(ada), claim.id, { kind: "told" });
    await expect(retractEvidence(club.ctx(bo), evidence.id)).rejects.toMatchObject({ code: "forbidden" });
    const read = async () => (await readCodeView(club.ctx(), "BACK-1")).standIns[0];
    await retractEvidence(club.ctx(reviewer), evidence.id);
    expect(await read()).toMatchObject({ counts: {}, evidence: [{ kind: "told", retracted: true }] });
    await restoreEvidence(club.ctx(ada), evidence.id);
    expect(await read()).toMatchObject({ counts: { told: 1 }, evidence: [{ kind: "told", retracted: false }] });
  });

  test("the draft that evidence rests on is named to its author alone", async () => {
    await pair("DRAFT-1", "DRAFT-2");
    const draft = await createCase(club.ctx(ada), { symptomText: "Not yet written up." });
    const claim = await createClaim(club.ctx(ada), { from: "DRAFT-1", to: "DRAFT-2", grade: "drop-in" });
    await addEvidence(club.ctx(ada), claim.id, { kind: "fitted-worked", case: draft.number });
    const caseSeenBy = async (actor: MemberActor) =>
      (await readCodeView(club.ctx(actor), "DRAFT-1")).standIns[0]?.evidence[0]?.case?.number ?? null;
    expect(await caseSeenBy(ada)).toBe(draft.number);
    expect(await caseSeenBy(bo)).toBe(null);
    await expect(
      addEvidence(club.ctx(bo), claim.id, { kind: "fitted-worked", case: draft.number }),
    ).rejects.toMatchObject({ code: "invalid" });
  });

  test("the same claim twice, also from its other end, is refused with what to do", async () => {
    await pair("TWICE-1", "TWICE-2");
    await createClaim(club.ctx(ada), { from: "TWICE-1", to: "TWICE-2", grade: "drop-in", bothWays: true });
    for (const [from, to] of [
      ["TWICE-1", "TWICE-2"],
      ["TWICE-2", "TWICE-1"],
    ]) {
      await expect(createClaim(club.ctx(bo), { from, to, grade: "drop-in" })).rejects.toMatchObject({
        extra: { problems: [{ path: "to", message: "There is such a claim already. Add your evidence to it." }] },
      });
    }
    await expect(createClaim(club.ctx(bo), { from: "TWICE-1", to: "twice 1", grade: "drop-in" })).rejects.toThrow(
      "two different codes",
    );
  });

  test("a claim of one direction can be marked as holding both ways; the second writer is stale", async () => {
    await pair("WAY-1", "WAY-2");
    const claim = await createClaim(club.ctx(ada), { from: "WAY-1", to: "WAY-2", grade: "conditional" });
    await updateClaim(club.ctx(bo), claim.id, 1, { bothWays: true });
    await expect(updateClaim(club.ctx(ada), claim.id, 1, { note: "x" })).rejects.toMatchObject({
      code: "stale",
      extra: { present: { bothWays: true, version: 2 } },
    });
  });

  test("whether a part was good elsewhere is asked only of one that failed", async () => {
    await pair("ASK-1", "ASK-2");
    const claim = await createClaim(club.ctx(ada), { from: "ASK-1", to: "ASK-2", grade: "drop-in" });
    await expect(
      addEvidence(club.ctx(ada), claim.id, { kind: "fitted-worked", provedElsewhere: "yes" }),
    ).rejects.toMatchObject({ extra: { problems: [expect.objectContaining({ path: "provedElsewhere" })] } });
  });
});

test("a sighting counts once however often the phone sends it", async () => {
  await createCode(club.ctx(ada), { code: "SEEN-1" });
  const sighting = { id: club.ctx().newId(), at: "in the spares box", seenAt: "2024-05-01T18:00:00Z" };
  expect(await addSighting(club.ctx(bo), "seen1", sighting)).toMatchObject({ made: true });
  expect(await addSighting(club.ctx(bo), "seen1", sighting)).toMatchObject({ made: false });
  expect((await readCodeView(club.ctx(), "SEEN-1")).sightings).toMatchObject([
    { at: "in the spares box", by: { handle: "bo" }, seenAt: "2024-05-01T18:00:00.000Z" },
  ]);
});

test("houses are listed with how many codes they print, and changed with the version that was read", async () => {
  const before = (await listHouses(club.ctx())).find((house) => house.slug === "orvane");
  expect(before).toMatchObject({ name: "Orvane", codes: 2, version: 1 });
  await updateHouse(club.ctx(bo), "orvane", 1, { notes: "A drawing number and a letter." });
  await expect(updateHouse(club.ctx(ada), "orvane", 1, { name: "Orvane Works" })).rejects.toMatchObject({
    code: "stale",
  });
  await expect(createHouse(club.ctx(ada), { name: "Orvane" })).rejects.toMatchObject({ code: "invalid" });
});

test("spares for members are shown to members only", async () => {
  const code = await createCode(club.ctx(ada), { code: "SPARE-1" });
  const at = new Date();
  const spare = { memberId: ada.id, direction: "offer", codeId: code.id, createdAt: at, updatedAt: at };
  await club.database.db.spare.createMany({
    data: [
      { ...spare, id: club.ctx().newId(), visibility: "members", condition: "pulled" },
      { ...spare, id: club.ctx().newId(), visibility: "public", condition: "new" },
    ],
  });
  const seenBy = async (actor: MemberActor | { kind: "visitor" }) =>
    (await readCodeView(club.ctx(actor), code.id)).spares.map((one) => one.condition);
  expect(await seenBy({ kind: "visitor" })).toEqual(["new"]);
  expect((await seenBy(bo)).toSorted()).toEqual(["new", "pulled"]);
});
