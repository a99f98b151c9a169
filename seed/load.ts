import { createBoard, createCopy } from "#lib/services/boards/index.ts";
import { createChip } from "#lib/services/chips/index.ts";
import { addEvidence, addSighting, createClaim, createCode, createHouse } from "#lib/services/codes/index.ts";
import type { Ctx, MemberActor } from "#lib/services/context.ts";
import { ServiceError } from "#lib/services/errors.ts";
import { addMember } from "#lib/services/members/index.ts";
import { saveClubSettings } from "#lib/services/settings/index.ts";
import { createSpare } from "#lib/services/spares/index.ts";
import { generateCases } from "#seed/fault-model/index.ts";
import { demoId } from "#seed/identity.ts";
import { loadCase, type CaseSurroundings } from "#seed/load-case.ts";
import { loadPictures } from "#seed/load-pictures.ts";
import { clubName } from "#seed/members.ts";
import { boards, chips, claims, codes, handWritten, houses, members, spares } from "#seed/records.ts";
import type { SeedBoard, SeedChip, SeedClaim, SeedCode, SeedSpare } from "#seed/shapes.ts";

export type Progress = (done: number, of: number, what: string) => void;

/** Cases that the fault model adds to the hand-written ones, always the same. */
const GENERATED = { count: 130, seed: 19_870 } as const;
const YEAR_MS = 365.25 * 86_400_000;

/**
 * Loads the demo club through the services, so that it obeys every rule. `newest` is the day of the newest case. May be
 * run again after it was interrupted, with the same `newest`: what is there stays.
 */
export async function loadDemoClub(ctx: Ctx, newest: Date, progress: Progress): Promise<void> {
  const generated = generateCases(boards, chips, members, { ...GENERATED, codes });
  const cases = [...handWritten, ...generated].toSorted((a, b) => b.yearsAgo - a.yearsAgo);
  const of =
    members.length +
    houses.length +
    chips.length +
    codes.length +
    boards.length +
    cases.length +
    claims.length +
    spares.length;
  let done = 0;
  const each = async <T>(what: string, list: readonly T[], load: (one: T) => Promise<unknown>) => {
    for (const one of list) {
      await load(one);
      progress(++done, of, what);
    }
  };
  const yearsAgo = (years: number) => new Date(newest.getTime() - years * YEAR_MS);
  const actors = new Map<string, MemberActor>();
  const memberOf = (handle: string) => {
    const found = actors.get(handle);
    if (!found) throw new Error(`the demo club has no member "${handle}"`);
    return found;
  };
  const chipSlugs = new Set(chips.map((chip) => chip.slug));
  const around: CaseSurroundings = { memberOf, yearsAgo, hasChip: (slug) => chipSlugs.has(slug) };
  const began = yearsAgo(8);

  await saveClubSettings(ctx, {
    name: clubName,
    membersOnly: false,
    meeting: "Thursdays, 19:00, the old fire station",
  });
  await each("members", members, async (one) => {
    const joined = yearsAgo(one.joinedYearsAgo);
    const input = {
      id: demoId("member", one.handle, joined),
      handle: one.handle,
      name: one.name,
      role: one.role,
      about: one.about,
    };
    const { id } = await addMember({ ...ctx, now: () => joined }, input, joined);
    actors.set(one.handle, { kind: "member", id, handle: one.handle, name: one.name, role: one.role });
  });
  const keeper = { ...ctx, now: () => began, onBehalfOf: memberOf("ines").id };
  await each("chip makers", houses, (one) =>
    ignoringKnown(createHouse(keeper, { id: demoId("house", one.slug, began), ...one })),
  );
  await each("chips", chips, (one) => createChip(keeper, chipInput(one, began)));
  await each("part codes", codes, (one) => {
    const provenance = { memberId: memberOf(one.sightings[0]?.member ?? "mirela").id, at: began };
    return ignoringKnown(createCode({ ...keeper, onBehalfOf: provenance.memberId }, codeInput(one, began), provenance));
  });
  await each("boards", boards, async (one) => {
    await createBoard(keeper, boardInput(one, began));
    for (const copy of one.copies) await loadCopy(keeper, one.slug, copy);
  });
  await loadPictures({ ...ctx, now: () => began }, boards, memberOf("anouk"));
  await loadSightings(ctx, around);
  const numbers = new Map<string, number>();
  await each("fault cases", cases, async (one) => numbers.set(one.key, await loadCase(ctx, around, one)));
  await each("interchange claims", claims, (one) => loadClaim(ctx, around, numbers, one));
  await each("spares", spares, (one: SeedSpare) => {
    const { member, ...plain } = one;
    const at = yearsAgo(0.2);
    const key = `${member} ${plain.code ?? plain.chip ?? plain.board ?? plain.note} ${plain.direction}`;
    const input = { id: demoId("spare", key, at), visibility: "public", ...plain };
    return createSpare({ ...ctx, now: () => at }, input, { memberId: memberOf(member).id, at });
  });
}

/** What an interrupted load left is there under its own name already. */
async function ignoringKnown(work: Promise<unknown>): Promise<void> {
  try {
    await work;
  } catch (error) {
    const known = error instanceof ServiceError && (error.code === "conflict" || /already/.test(error.message));
    if (!known) throw error;
  }
}

function chipInput(one: SeedChip, at: Date) {
  const { slug, name, technology, contents, notes, packages } = one;
  return {
    id: demoId("chip", slug, at),
    slug,
    name,
    function: one.function,
    technology,
    contents,
    notes: notes ?? "",
    packages: packages.map((pack) => ({
      name: pack.name,
      style: pack.style,
      pins: pack.pins.map(({ supply, activeLow, ...pin }) => ({
        ...pin,
        activeLow: activeLow ?? false,
        supply: supply ?? null,
      })),
    })),
  };
}

function codeInput(one: SeedCode, at: Date) {
  return {
    id: demoId("code", `${one.house ?? ""} ${one.code}`, at),
    code: one.code,
    house: one.house ?? null,
    chip: one.chip ?? null,
    notes: one.notes ?? "",
  };
}

function boardInput(one: SeedBoard, at: Date) {
  const { copies: _copies, selfTests, cautions, ...plain } = one;
  return {
    ...plain,
    id: demoId("board", one.slug, at),
    connectors: one.connectors.map(({ pins, ...rest }) => ({
      ...rest,
      pins: pins.map(({ number, name }) => ({ number, name })),
    })),
    nets: withConnectorPins(one),
    selfTests,
    cautions: cautions.map((caution) => ({ at: caution.at ?? "", text: caution.text })),
  };
}

/** Connector pins that name their net belong to it. */
function withConnectorPins(one: SeedBoard): SeedBoard["nets"] {
  const nets = new Map(one.nets.map((net) => [net.name, { ...net, pins: [...net.pins] }]));
  for (const connector of one.connectors) {
    for (const pin of connector.pins) {
      const net = pin.net ? nets.get(pin.net) : undefined;
      const spelled = `${connector.designator}.${pin.number}`;
      if (net && !net.pins.includes(spelled)) net.pins.push(spelled);
    }
  }
  return [...nets.values()];
}

async function loadCopy(ctx: Ctx, board: string, copy: SeedBoard["copies"][number]): Promise<void> {
  const { owner, ...plain } = copy;
  await ignoringKnown(
    createCopy(ctx, { id: demoId("copy", `${board} ${copy.tag}`, ctx.now()), board, owner, ...plain }),
  );
}

async function loadSightings(ctx: Ctx, around: CaseSurroundings): Promise<void> {
  for (const code of codes) {
    for (const [index, seen] of code.sightings.entries()) {
      const at = around.yearsAgo(1 + ((index * 7 + code.code.length) % 50) / 10);
      const input = {
        id: demoId("sighting", `${code.code} ${index}`, at),
        board: seen.board,
        at: seen.at,
        dateCode: seen.dateCode ?? "",
        note: seen.note ?? "",
        seenAt: at.toISOString(),
      };
      const provenance = { memberId: around.memberOf(seen.member).id, at };
      await ignoringKnown(
        addSighting(
          { ...ctx, now: () => at },
          demoId("code", `${code.house ?? ""} ${code.code}`, around.yearsAgo(8)),
          input,
          provenance,
        ),
      );
    }
  }
}

async function loadClaim(
  ctx: Ctx,
  around: CaseSurroundings,
  numbers: ReadonlyMap<string, number>,
  one: SeedClaim,
): Promise<void> {
  const first = one.evidence[0];
  const oldest = Math.max(...one.evidence.map((evidence) => evidence.yearsAgo), 1);
  const at = around.yearsAgo(oldest);
  const by = { memberId: around.memberOf(first?.member ?? "ines").id, at };
  const claimId = demoId("claim", `${one.from} ${one.to} ${one.grade}`, at);
  const { from, to, grade, bothWays, conditions } = one;
  const input = { id: claimId, from, to, grade, bothWays, conditions, note: one.note ?? "" };
  await ignoringKnown(createClaim({ ...ctx, now: () => at, onBehalfOf: by.memberId }, input, by));
  for (const [index, evidence] of one.evidence.entries()) {
    const said = around.yearsAgo(evidence.yearsAgo);
    const provenance = { memberId: around.memberOf(evidence.member).id, at: said };
    await ignoringKnown(
      addEvidence(
        { ...ctx, now: () => said, onBehalfOf: provenance.memberId },
        claimId,
        {
          id: demoId("evidence", `${claimId} ${index}`, said),
          kind: evidence.kind,
          case: evidence.case ? (numbers.get(evidence.case) ?? null) : null,
          provedElsewhere: evidence.provedElsewhere ?? null,
          note: evidence.note,
        },
        provenance,
      ),
    );
  }
}

/** Adds invented cases on the demo boards of a club that has them: for trying a club of any size. */
export async function loadGeneratedCases(
  ctx: Ctx,
  options: { count: number; seed: number },
  progress: (done: number, of: number) => void,
): Promise<void> {
  const rows = await ctx.db.member.findMany({ select: { id: true, handle: true, name: true, role: true } });
  const actors = new Map(
    rows.map((row) => [row.handle, { kind: "member" as const, ...row, role: row.role as MemberActor["role"] }]),
  );
  const known = members.filter((one) => actors.has(one.handle));
  if (known.length === 0)
    throw new Error("This club has no demo members: start it once with CLUB_DEMO=on and an empty database.");
  const newest = ctx.now();
  const around: CaseSurroundings = {
    memberOf(handle) {
      const found = actors.get(handle);
      if (!found) throw new Error(`This club has no member "${handle}".`);
      return found;
    },
    yearsAgo: (years) => new Date(newest.getTime() - years * YEAR_MS),
    hasChip: () => true,
  };
  const cases = generateCases(boards, chips, known, { ...options, codes });
  for (const [index, one] of cases.entries()) {
    await loadCase(ctx, around, { ...one, key: `${options.seed} ${one.key}` });
    progress(index + 1, cases.length);
  }
}
