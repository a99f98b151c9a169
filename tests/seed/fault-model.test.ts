import { describe, expect, test } from "vitest";
import { boardNames, expectationAt, placeFacts, type BoardFacts } from "#lib/core/board/index.ts";
import { readPlace } from "#lib/core/netlist/index.ts";
import { readExpectation, readReading } from "#lib/core/quantity/index.ts";
import { judge } from "#lib/core/reading/index.ts";
import type { Failure, Verdict } from "#lib/core/shared/index.ts";
import { generateCases, randomFrom } from "#seed/fault-model/index.ts";
import { boards, chips, codes, members } from "#seed/records.ts";
import type { SeedBoard, SeedCase, SeedCause, SeedCheck } from "#seed/shapes.ts";

const COUNT = 1500;
const cases = generateCases(boards, chips, members, { seed: 4, count: COUNT, codes });
const chipOf = new Map(chips.map((chip) => [chip.slug, chip]));
const boardOf = new Map<string, SeedBoard>(boards.map((board) => [board.slug, board]));

function boardNamed(slug: string): SeedBoard {
  const board = boardOf.get(slug);
  if (board === undefined) throw new Error(`No board ${slug}`);
  return board;
}

/** The board as the bench page knows it, so that a check is judged here as it is there. */
function factsOf(board: SeedBoard): BoardFacts {
  return {
    slug: board.slug,
    name: board.name,
    kind: board.kind,
    hazards: board.hazards,
    highestVoltage: board.highestVoltage,
    rails: board.rails.map((rail) => ({
      name: rail.name,
      nominal: rail.nominal,
      ac: rail.ac ?? false,
      tolerancePercent: rail.tolerancePercent ?? null,
      regulated: rail.regulated,
      source: rail.source ?? "",
    })),
    placements: board.placements.map(({ designator, kind, value, socketed, chip }) => ({
      designator,
      kind,
      value: value ?? "",
      socketed: socketed ?? false,
      chip: chip ?? null,
    })),
    chips: Object.fromEntries(
      board.placements.flatMap((placement) => {
        const chip = chipOf.get(placement.chip ?? "");
        const pack = chip?.packages.find(({ name }) => name === placement.package) ?? chip?.packages[0];
        if (chip === undefined || pack === undefined) return [];
        const pins = pack.pins.map((pin) => ({
          ...pin,
          activeLow: pin.activeLow ?? false,
          supply: pin.supply ?? null,
        }));
        return [[chip.slug, { slug: chip.slug, name: chip.name, technology: chip.technology, pins }]];
      }),
    ),
    connectors: board.connectors.map(({ designator, pins }) => ({
      designator,
      pins: pins.map(({ number, name }) => ({ number, name })),
    })),
    nets: board.nets,
    cautions: [],
  };
}

const facts = new Map(boards.map((board) => [board.slug, factsOf(board)]));

function verdictOf(slug: string, check: SeedCheck, measured = check.measured): Verdict {
  const board = facts.get(slug);
  const place = board === undefined ? undefined : readPlace(check.at, boardNames(board));
  if (board === undefined || place === undefined || !place.ok) throw new Error(`${slug} ${check.at} is no place`);
  const typed = check.expected === undefined ? null : readExpectation(check.expected, check.kind);
  if (typed !== null && !typed.ok) throw new Error(`${check.expected}: ${typed.problem.reason}`);
  const expected = typed?.value ?? expectationAt(placeFacts(board, place.value), check.kind)?.expectation ?? null;
  const reading = readReading(measured, check.kind);
  if (!reading.ok) throw new Error(`${check.kind} ${measured}: ${reading.problem.reason}`);
  return judge({ kind: check.kind, expected, measured: reading.value }).verdict;
}

function placeIsKnown(board: SeedBoard, at: string): boolean {
  const known = facts.get(board.slug);
  if (known === undefined) return false;
  const place = readPlace(at, boardNames(known));
  return place.ok && placeFacts(known, place.value).known;
}

/** Every check of the causes' own, with the case it belongs to. */
function explained(): { one: SeedCase; cause: SeedCause; check: SeedCheck }[] {
  return cases.flatMap((one) =>
    one.causes.flatMap((cause) =>
      cause.explains.flatMap((n) => {
        const check = one.checks[n];
        return check === undefined ? [] : [{ one, cause, check }];
      }),
    ),
  );
}

function of(failure: Failure): { one: SeedCase; cause: SeedCause }[] {
  return cases.flatMap((one) =>
    one.causes.filter((cause) => cause.failure === failure).map((cause) => ({ one, cause })),
  );
}

describe("generated cases", () => {
  test("are the same for the same seed, others for another, and a longer list begins with the shorter", () => {
    const again = generateCases(boards, chips, members, { seed: 4, count: 40, codes });
    const other = generateCases(boards, chips, members, { seed: 5, count: 40, codes });
    expect(again).toEqual(cases.slice(0, 40));
    expect(other).not.toEqual(again);
  });

  test("have keys of their own, and boards, copies, revisions, members, chips and codes that exist", () => {
    const handles = new Set(members.map(({ handle }) => handle));
    const printed = new Map(codes.map(({ code, chip }) => [code, chip]));
    expect(new Set(cases.map(({ key }) => key)).size).toBe(COUNT);
    const wrong = cases.filter((one) => {
      const board = boardNamed(one.board);
      const copy = board.copies.find(({ tag }) => tag === one.copyTag);
      const people = [
        one.author,
        ...(one.confirmations ?? []).map((c) => c.member),
        ...(one.comments ?? []).map((c) => c.member),
      ];
      return (
        (one.copyTag !== undefined && copy === undefined) ||
        (one.revision !== undefined && !board.revisions.some(({ name }) => name === one.revision)) ||
        people.some((handle) => !handles.has(handle)) ||
        one.causes.some(({ chip, cure }) => {
          const fitted = cure?.fittedCode;
          return (chip !== undefined && !chipOf.has(chip)) || (fitted !== undefined && printed.get(fitted) !== chip);
        })
      );
    });
    expect(wrong.map(({ key }) => key)).toEqual([]);
  });

  test("measure at places which the board has", () => {
    const lost = cases.flatMap(({ board, checks, causes }) =>
      [...checks.flatMap(({ at, to }) => (to === undefined ? [at] : [at, to])), ...causes.map(({ at }) => at)].filter(
        (at) => !placeIsKnown(boardNamed(board), at),
      ),
    );
    expect(lost).toEqual([]);
  });

  test("what a cause explains is out of spec, and everything that was repeated is in spec again", () => {
    const wrong = explained().filter(
      ({ one, check }) => (check.verdict?.chosen ?? verdictOf(one.board, check)) !== "out-of-spec",
    );
    expect(wrong.map(({ one, check }) => `${one.key} ${check.kind} ${check.at} ${check.measured}`)).toEqual([]);
    const proofs = cases.flatMap((one) =>
      one.causes.flatMap(({ proof }) => (proof?.repeats ?? []).map((repeat) => ({ one, repeat }))),
    );
    expect(proofs.length).toBeGreaterThan(COUNT / 2);
    const bad = proofs.filter(({ one, repeat }) => {
      const check = one.checks[repeat.check];
      return check === undefined || verdictOf(one.board, check, repeat.measured) !== "in-spec";
    });
    expect(bad.map(({ one, repeat }) => `${one.key} ${repeat.measured}`)).toEqual([]);
  });

  test("nothing else is out of spec: the rest of the board is well", () => {
    const stray = cases.flatMap((one) => {
      const named = new Set(one.causes.flatMap(({ explains }) => explains));
      if (one.outcome === "open") return [];
      return one.checks
        .filter((check, n) => !named.has(n) && check.kind !== "trial" && verdictOf(one.board, check) === "out-of-spec")
        .map((check) => `${one.key} ${check.kind} ${check.at} ${check.measured}`);
    });
    expect(stray).toEqual([]);
  });

  test("end in every way, mostly cured, and are cured only with a proof", () => {
    const outcomes = new Map<string, number>();
    for (const { outcome } of cases) outcomes.set(outcome, (outcomes.get(outcome) ?? 0) + 1);
    expect([...outcomes.keys()].toSorted()).toEqual([
      "cured",
      "cured-cause-unknown",
      "given-up",
      "no-fault-found",
      "open",
      "waiting",
      "works-not-proved",
    ]);
    expect((outcomes.get("cured") ?? 0) / COUNT).toBeGreaterThan(0.7);
    const proved = cases.filter(({ causes }) => causes.some(({ proof }) => proof !== undefined));
    expect(proved.every(({ outcome }) => outcome === "cured")).toBe(true);
    expect(proved.length).toBe(outcomes.get("cured"));
    expect(cases.filter(({ outcome, causes }) => outcome === "open" && causes.length > 0)).toEqual([]);
  });

  test("know every class of fault, on every board, over six years", () => {
    expect(new Set(cases.map(({ board }) => board)).size).toBe(boards.length);
    const words = new Set(cases.map(({ key, board }) => key.slice(board.length + 1).replace(/-\d+-\d+$/, "")));
    expect(words.size).toBeGreaterThanOrEqual(17);
    const years = cases.map(({ yearsAgo }) => yearsAgo);
    expect(Math.max(...years)).toBeLessThanOrEqual(6);
    expect(Math.max(...years)).toBeGreaterThan(5.5);
    expect(Math.min(...years)).toBeGreaterThan(0);
  });

  test("are written by people who had joined by then, and say nothing twice too often", () => {
    const joined = new Map(members.map(({ handle, joinedYearsAgo }) => [handle, joinedYearsAgo]));
    expect(cases.filter(({ author, yearsAgo }) => (joined.get(author) ?? 0) < yearsAgo)).toEqual([]);
    const first = cases.slice(0, 130);
    expect(new Set(first.map(({ title }) => title)).size).toBeGreaterThan(125);
    expect(new Set(first.flatMap(({ lesson }) => lesson ?? [])).size).toBeGreaterThan(60);
  });

  test("read as sentences: nothing is left unfilled", () => {
    const texts = cases.flatMap(({ title, lesson, story, causes }) => [
      title,
      lesson ?? "",
      story ?? "",
      ...causes.flatMap(({ description, cure }) => [description, cure?.description ?? ""]),
    ]);
    expect(texts.filter((text) => /undefined|null|NaN|\[object|\$\{| {2}/.test(text))).toEqual([]);
  });
});

describe("a fault makes the readings that such a fault would", () => {
  test.each(["low", "high"] as const)("an output stuck %s reads so, and its voltage agrees", (side) => {
    const found = of(side === "low" ? "output-stuck-low" : "output-stuck-high").filter(
      ({ one }) => !one.key.includes("at-the-rail"),
    );
    expect(found.length).toBeGreaterThan(20);
    const wrong = found.filter(({ one, cause }) => {
      const states = cause.explains.map((n) => one.checks[n]).filter((check) => check?.kind === "activity");
      const volts = one.checks.filter(
        ({ kind, at, expected }) => kind === "dc-voltage" && at === cause.at && expected === undefined,
      );
      const isRight = (text: string) =>
        side === "low" ? Number.parseFloat(text) < 0.4 : Number.parseFloat(text) > 2.4;
      return (
        !states.every((check) => check?.measured === `stuck ${side}`) ||
        !volts.every(({ measured }) => isRight(measured))
      );
    });
    expect(wrong.map(({ one }) => one.key)).toEqual([]);
  });

  test("a chip with dead outputs has a good supply and inputs that move", () => {
    for (const { one, cause } of of("outputs-dead")) {
      const others = one.checks.filter(
        (check, n) => !cause.explains.includes(n) && check.at.startsWith(`${cause.at}.`),
      );
      expect(others.every((check) => ["in-spec", "noted"].includes(verdictOf(one.board, check)))).toBe(true);
      expect(cause.explains.length).toBeGreaterThanOrEqual(2);
    }
  });

  test("a shorted capacitor pulls its rail to under a tenth and reads a few ohms", () => {
    const shorts = cases.filter(({ key, causes }) => key.includes("-tantalum-") && causes.length > 0);
    expect(shorts.length).toBeGreaterThan(20);
    for (const one of shorts) {
      const [resistance, rail] = ["resistance", "dc-voltage"].map((kind) =>
        one.causes[0]?.explains.map((n) => one.checks[n]).find((check) => check?.kind === kind),
      );
      const nominal = boardNamed(one.board).rails.find(({ name }) => name === rail?.at)?.nominal ?? 0;
      expect(Number.parseFloat(resistance?.measured ?? "")).toBeLessThan(5);
      expect(Math.abs(Number.parseFloat(rail?.measured ?? "")) / Math.abs(nominal)).toBeLessThan(0.1);
    }
  });

  test("ripple is found on a rail whose average is right", () => {
    const dry = cases.filter(({ key, causes }) => key.includes("-ripple-") && causes.length > 0);
    expect(dry.length).toBeGreaterThan(10);
    for (const one of dry) {
      const average = one.checks.find(({ kind }) => kind === "dc-voltage");
      expect(average && verdictOf(one.board, average)).toBe("in-spec");
    }
  });

  test("a broken trace moves at one end, is dead at the other, and does not beep between them", () => {
    const broken = of("broken-trace");
    expect(broken.length).toBeGreaterThan(30);
    for (const { one, cause } of broken) {
      const beep = one.checks.find(({ kind }) => kind === "continuity");
      const at = (place: string | undefined) =>
        one.checks.find(({ kind, at: where }) => kind === "activity" && where === place);
      const [from, to] = [at(beep?.at), at(beep?.to)];
      expect(from && verdictOf(one.board, from)).toBe("in-spec");
      expect(to && verdictOf(one.board, to)).toBe("out-of-spec");
      const net = boardNamed(one.board).nets.find(({ name }) => name === cause.at);
      expect(net?.pins).toEqual(expect.arrayContaining([beep?.at, beep?.to]));
    }
  });

  test("a dead clock reads 0 Hz behind a buffer that has its supply", () => {
    const dead = cases.filter(({ key, causes }) => key.includes("-clock-") && causes.length > 0);
    expect(dead.length).toBeGreaterThan(5);
    for (const { checks } of dead) {
      const frequencies = checks
        .filter(({ kind }) => kind === "frequency")
        .map(({ measured }) => measured.replace(" ", ""));
      expect(frequencies.every((text) => text === "0Hz")).toBe(true);
    }
  });

  test("no power is on while ohms, diodes or capacitors are measured", () => {
    const unplugged = new Set(["continuity", "resistance", "diode", "capacitance", "esr"]);
    const live = cases.flatMap(({ checks }) =>
      checks.filter(({ kind, power }) => unplugged.has(kind) && power === "on"),
    );
    expect(live).toEqual([]);
  });

  test("a rail over 60 V is never measured by the model's members", () => {
    const high = cases.flatMap(({ board, checks }) => {
      const rails = boardNamed(board).rails.filter(({ nominal, ac }) => ac === true || Math.abs(nominal) > 60);
      const names = new Set(rails.map(({ name }) => name));
      return checks.filter(({ at, power }) => power === "on" && names.has(at));
    });
    expect(high).toEqual([]);
  });
});

describe("the random source", () => {
  // First values for seed 1, from memory of the published generator.
  test("is mulberry32", () => {
    const { next } = randomFrom(1);
    expect([next(), next(), next()]).toEqual([0.6270739405881613, 0.002735721180215478, 0.5274470399599522]);
  });

  test("picks evenly and keeps the order of what it takes", () => {
    const random = randomFrom(9);
    const drawn = Array.from({ length: 8000 }, () => random.whole(0, 3));
    const counts = [0, 1, 2, 3].map((value) => drawn.filter((one) => one === value).length);
    // Four standard deviations of a share of a quarter in 8,000 draws are 155.
    expect(counts.every((count) => Math.abs(count - 2000) < 155)).toBe(true);
    const taken = random.some([1, 2, 3, 4, 5, 6], 3);
    expect(taken).toEqual(taken.toSorted((a, b) => a - b));
    expect(taken.length).toBe(3);
    expect(random.some([], 2)).toEqual([]);
  });
});
