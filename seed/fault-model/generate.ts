import type { CaseOutcome } from "#lib/core/shared/index.ts";
import type { SeedBoard, SeedCase, SeedCause, SeedChip, SeedCode, SeedMember } from "#seed/shapes.ts";
import { partOf, viewOf, type BoardView, type Leg } from "./board-view.ts";
import { activityCheck, trial, type Bench, type Probe } from "./checks.ts";
import type { Told, Tell } from "./fault.ts";
import { FAULT_CLASSES } from "./faults/index.ts";
import { handOf } from "./hand.ts";
import { OUTCOME_WEIGHTS, SHARES, YEARS } from "./parameters.ts";
import { CONFIRMED, ENDINGS, NOT_CONFIRMED, REPEAT_NOTES, SOAK_NOTES, SOURCES } from "./prose.ts";
import { randomFrom, type Random } from "./random.ts";
import { REPRODUCED, symptomsOf } from "./symptoms.ts";
import { voiceOf } from "./voices.ts";

export interface GenerateOptions {
  /** The same seed and the same records give the same cases. */
  seed: number;
  count: number;
  /** Codes that can be fitted; without them no cure names one. */
  codes?: readonly SeedCode[];
}

/** What can go wrong on one board, gathered once. */
interface Stock {
  view: BoardView;
  classes: { weight: number; places: Tell[] }[];
}

/**
 * Cases from the fault model: a fault in a part of a board makes the readings that such a fault would make, in the
 * order in which a careful repairer takes them. Pure; thousands a second. Throws where no board has a place
 * for any fault, or there are no members.
 */
export function generateCases(
  boards: readonly SeedBoard[],
  chips: readonly SeedChip[],
  members: readonly SeedMember[],
  { seed, count, codes = [] }: GenerateOptions,
): SeedCase[] {
  const bySlug = new Map(chips.map((chip) => [chip.slug, chip]));
  const stocks = boards.map((board) => stockOf(viewOf(board, bySlug))).filter(({ classes }) => classes.length > 0);
  const fitting = codesByChip(codes);
  const said = new Map<string, number>();
  return Array.from({ length: count }, (_, index) => {
    // A source of its own for each case, so that a longer list begins with the shorter one.
    const random = randomFrom(seed * 1_000_003 + index * 7919);
    return oneCase({ random, stock: random.pick(stocks), members, fitting, said, key: `${seed}-${index + 1}` });
  });
}

function stockOf(view: BoardView): Stock {
  const classes = FAULT_CLASSES.map(({ weight, places }) => ({ weight, places: places(view) }));
  return { view, classes: classes.filter(({ places }) => places.length > 0) };
}

function codesByChip(codes: readonly SeedCode[]): ReadonlyMap<string, string[]> {
  const byChip = new Map<string, string[]>();
  for (const { code, chip } of codes) {
    if (chip !== undefined) byChip.set(chip, [...(byChip.get(chip) ?? []), code]);
  }
  return byChip;
}

interface Input {
  random: Random;
  stock: Stock;
  members: readonly SeedMember[];
  fitting: ReadonlyMap<string, string[]>;
  /** How often each sentence was used in this list, so that the next case says it another way. */
  said: Map<string, number>;
  key: string;
}

function oneCase({ random, stock, members, fitting, said, key }: Input): SeedCase {
  const { view } = stock;
  const { board } = view;
  const { outcome } = random.weighted(OUTCOME_WEIGHTS);
  const yearsAgo = ageOf(random, outcome);
  const copy = random.chance(0.6) && board.copies.length > 0 ? random.pick(board.copies) : undefined;
  const author = authorOf(random, members, yearsAgo, copy?.owner);
  const voice = voiceOf(author.handle);
  const bench: Bench = { view, random, hand: handOf(voice.habit) };
  const told = random.pick(random.weighted(stock.classes).places)(bench);
  const symptom = random.pick(symptomsOf(board, told.effect));
  const second = told.effect === "intermittent" ? "intermittent" : undefined;
  const probes = probesOf(bench, told, outcome);
  const revision =
    copy?.revision ??
    (random.chance(0.5) ? board.revisions[random.whole(0, board.revisions.length - 1)]?.name : undefined);
  const lesson = lessonOf(random, said, told, outcome);
  const story = random.chance(SHARES.withStory) ? storyOf(random, told, outcome, author.handle) : undefined;
  const asksHelp = outcome === "waiting" || outcome === "open" ? random.pick(ENDINGS[outcome].ask) : undefined;
  return {
    key: `${board.slug}-${told.word}-${key}`,
    title: titleOf(random, said, told, outcome, { machine: board.machine, symptom: symptom.label }),
    board: board.slug,
    ...(revision === undefined ? {} : { revision }),
    ...(copy === undefined ? {} : { copyTag: copy.tag }),
    author: author.handle,
    yearsAgo,
    symptoms: [...new Set([symptom.label, ...(second === undefined ? [] : [second])])],
    symptomText: random.pick(symptom.said),
    reproduced: random.pick(REPRODUCED[told.effect === "intermittent" ? "sometimes" : "always"]),
    outcome,
    ...(lesson === undefined ? {} : { lesson }),
    ...(story === undefined ? {} : { story }),
    ...(asksHelp === undefined ? {} : { asksHelp }),
    checks: probes.map(({ check }) => check),
    causes: causesOf(random, told, outcome, probes, fitting),
    ...reactionsOf(random, members, author, outcome, yearsAgo),
  };
}

/** Years back, to the hundredth; what is still open is young. */
function ageOf(random: Random, outcome: CaseOutcome): number {
  const isPending = outcome === "open" || outcome === "waiting";
  const years = isPending
    ? random.between(YEARS.newest, 0.6)
    : YEARS.newest + (YEARS.oldest - YEARS.newest) * random.next() ** YEARS.crowding;
  return Math.round(years * 100) / 100;
}

/** The owner of the copy most often, else any member who had joined by then. */
function authorOf(random: Random, members: readonly SeedMember[], yearsAgo: number, owner?: string): SeedMember {
  const there = members.filter(({ joinedYearsAgo }) => joinedYearsAgo >= yearsAgo);
  const owning = there.find(({ handle }) => handle === owner);
  if (owning !== undefined && random.chance(0.7)) return owning;
  return random.pick(there.length > 0 ? there : members);
}

function probesOf(bench: Bench, told: Told, outcome: CaseOutcome): Probe[] {
  const probes = withWrongTurns(bench, told);
  const firstFailure = probes.findIndex(({ cured }) => cured !== undefined);
  switch (outcome) {
    case "no-fault-found":
    case "cured-cause-unknown": {
      // What would have failed was well: either it was never ill, or it had healed before it was measured.
      const well = probes
        .filter(({ check }) => check.kind !== "trial" && check.kind !== "visual")
        .map(({ check, cured }): Probe => ({ check: wellAgain(check, cured) }));
      const place = partOf(told.at);
      return outcome === "no-fault-found"
        ? well
        : [...well, trial(bench, place, "reseat", "cured", "All sockets at once.")];
    }
    case "open":
      return probes.slice(0, firstFailure + 1);
    case "cured":
    case "waiting":
    case "given-up":
    case "works-not-proved":
      return probes;
  }
}

function wellAgain(check: Probe["check"], cured: string | undefined): Probe["check"] {
  if (cured === undefined) return check;
  const { note: _failed, ...rest } = check;
  return { ...rest, measured: cured };
}

/** A passed check or a fruitless trial elsewhere, before the first failure. */
function withWrongTurns(bench: Bench, told: Told): Probe[] {
  const { random } = bench;
  const turns = random.chance(SHARES.withWrongTurn) ? (random.chance(SHARES.withSecondWrongTurn) ? 2 : 1) : 0;
  const firstFailure = told.probes.findIndex(({ cured }) => cured !== undefined);
  const powered = told.probes.findIndex(({ check }) => check.power === "on");
  const at = Math.max(firstFailure, powered < 0 ? told.probes.length : powered);
  const probes = [...told.probes];
  for (let n = 0; n < turns; n += 1) probes.splice(at, 0, ...wrongTurn(bench, told));
  return probes;
}

function wrongTurn(bench: Bench, told: Told): Probe[] {
  const { random, view } = bench;
  const guilty = partOf(told.at);
  const others = view.chips.filter(({ designator }) => designator !== guilty);
  const socketed = others.filter(({ placement }) => placement.socketed === true);
  if (socketed.length > 0 && random.chance(0.6)) {
    const { designator } = random.pick(socketed);
    return [trial(bench, designator, random.pick(["swap", "reseat", "cool"]), "no-change")];
  }
  const tested = new Set(told.probes.map(({ check }) => check.at));
  const isFree = ({ net }: Leg): boolean =>
    net !== null && net.name !== told.at && !net.pins.some((pin) => tested.has(pin) || partOf(pin) === guilty);
  // Nearly every line is free, so a few draws find one without looking at all of them.
  const drawn = view.lines.length === 0 ? [] : Array.from({ length: 6 }, () => random.pick(view.lines));
  return drawn
    .filter(isFree)
    .slice(0, 1)
    .map((leg) => activityCheck(bench, leg));
}

function causesOf(
  random: Random,
  told: Told,
  outcome: CaseOutcome,
  probes: readonly Probe[],
  fitting: ReadonlyMap<string, string[]>,
): SeedCause[] {
  const isNamed =
    outcome === "cured" || outcome === "waiting" || outcome === "works-not-proved" || outcome === "given-up";
  if (!isNamed) return [];
  const explains = probes.flatMap(({ cured }, index) => (cured === undefined ? [] : [index]));
  const cause: SeedCause = {
    at: told.at,
    ...(told.chip === undefined ? {} : { chip: told.chip }),
    failure: told.failure,
    description: told.cause,
    explains,
  };
  if (outcome === "waiting" || outcome === "given-up") return [cause];
  const code = random.some(fitting.get(told.cure.fits ?? "") ?? [], 1)[0];
  const isNew = told.cure.action === "replaced";
  const cure = {
    action: told.cure.action,
    description: told.cure.how,
    ...(isNew && code !== undefined ? { fittedCode: code } : {}),
    ...(isNew ? { from: random.pick(SOURCES) } : {}),
  };
  return [{ ...cause, cure, ...(outcome === "cured" ? { proof: proofOf(random, probes) } : {}) }];
}

function proofOf(random: Random, probes: readonly Probe[]): NonNullable<SeedCause["proof"]> {
  const repeats = probes.flatMap(({ check, cured }, index) =>
    cured === undefined || check.kind === "visual" ? [] : [{ check: index, measured: cured }],
  );
  if (repeats.length > 0 && !random.chance(SHARES.soakProof)) {
    return { kind: "checks-repeated", note: random.pick(REPEAT_NOTES), repeats };
  }
  const minutes = random.pick([60, 90, 120, 180, 240, 480, 720]);
  const hours = minutes < 120 ? `${minutes} minutes` : `${minutes / 60} hours`;
  return {
    kind: "soak",
    minutes,
    note: `${hours}, ${random.pick(SOAK_NOTES)}.`,
    ...(repeats.length > 0 ? { repeats } : {}),
  };
}

function titleOf(
  random: Random,
  said: Map<string, number>,
  told: Told,
  outcome: CaseOutcome,
  { machine, symptom }: { machine: string; symptom: string },
): string {
  if (outcome === "no-fault-found" || outcome === "cured-cause-unknown") {
    return `${capital(symptom)}: ${random.pick(ENDINGS[outcome].titles).toLowerCase()}`;
  }
  if (outcome === "open") {
    return random.pick([
      `${machine}: ${symptom}, and no idea yet`,
      `${capital(symptom)}, rails well`,
      `Stuck at ${symptom}, ${machine}`,
    ]);
  }
  const title = leastSaid(random, said, told.titles);
  const isRepeated = (said.get(title) ?? 0) > 1;
  const hasColon = title.includes(":");
  if (!hasColon && (isRepeated || random.chance(0.2))) return `${capital(symptom)}: ${lower(title)}`;
  return isRepeated ? `${capital(title)} (${machine})` : capital(title);
}

/** One of the sentences that were used least so far. */
function leastSaid(random: Random, said: Map<string, number>, sentences: readonly string[]): string {
  const times = sentences.map((sentence) => said.get(sentence) ?? 0);
  const least = Math.min(...times);
  const chosen = random.pick(sentences.filter((_, n) => times[n] === least));
  said.set(chosen, least + 1);
  return chosen;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** Only words that begin a sentence lose their capital; designators and nets keep theirs. */
function lower(text: string): string {
  return /^[A-Z][a-z]+\b/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;
}

function lessonOf(random: Random, said: Map<string, number>, told: Told, outcome: CaseOutcome): string | undefined {
  switch (outcome) {
    case "cured":
    case "waiting":
    case "works-not-proved":
      return random.chance(0.85) ? leastSaid(random, said, told.lessons) : undefined;
    case "open":
    case "given-up":
    case "no-fault-found":
    case "cured-cause-unknown":
      return random.pick(ENDINGS[outcome].lessons);
  }
}

function storyOf(random: Random, told: Told, outcome: CaseOutcome, author: string): string | undefined {
  if (outcome === "open" || outcome === "no-fault-found" || outcome === "cured-cause-unknown") return undefined;
  const voice = voiceOf(author);
  const parts = random.some(told.tale, Math.max(1, Math.round(told.tale.length * voice.talk)));
  const first = random.chance(0.7) ? [random.pick(voice.openings)] : [];
  const aside = random.chance(0.4) ? [random.pick(voice.asides)] : [];
  const last = outcome === "cured" && random.chance(0.7) ? [random.pick(voice.closings)] : [];
  const mention = told.chip !== undefined && random.chance(0.4) ? [`The part: :chip[${told.chip}].`] : [];
  const middle = [...parts, ...aside].join(" ");
  return [[...first, middle].join(" "), [...mention, ...last].join(" ")].filter((text) => text !== "").join("\n\n");
}

function reactionsOf(
  random: Random,
  members: readonly SeedMember[],
  author: SeedMember,
  outcome: CaseOutcome,
  yearsAgo: number,
): Pick<SeedCase, "confirmations" | "comments"> {
  const others = members.filter(({ handle }) => handle !== author.handle);
  const isCured = outcome === "cured" && yearsAgo > 0.2;
  const confirming = isCured && random.chance(SHARES.withConfirmation) ? random.some(others, random.whole(1, 3)) : [];
  const confirmations = confirming.map(({ handle }) => {
    const helped = !random.chance(SHARES.notHelped);
    return { member: handle, helped, note: random.pick(helped ? CONFIRMED : NOT_CONFIRMED) };
  });
  const later = others.filter(({ joinedYearsAgo }) => joinedYearsAgo >= yearsAgo);
  const commenting = random.chance(SHARES.withComment) ? random.some(later, random.whole(1, 2)) : [];
  const comments = commenting.map(({ handle }) => ({
    member: handle,
    body: random.pick(voiceOf(handle).comments),
    yearsAgo: Math.round(yearsAgo * random.between(0.6, 0.97) * 100) / 100,
  }));
  return {
    ...(confirmations.length > 0 ? { confirmations } : {}),
    ...(comments.length > 0 ? { comments } : {}),
  };
}
