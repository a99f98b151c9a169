import { describe, expect, test } from "vitest";
import { printPlace, readPlace } from "#lib/core/netlist/index.ts";
import { readExpectation, readReading, type Expectation } from "#lib/core/quantity/index.ts";
import { expectFromRail, judge } from "#lib/core/reading/index.ts";
import type { Verdict } from "#lib/core/shared/index.ts";
import type { SeedBoard, SeedCheck, SeedPlacement } from "#seed/shapes.ts";
import { board as harrow } from "#seed/boards/harrow-80.ts";
import { board as merle } from "#seed/boards/merle-mainboard.ts";
import { board as ploverCounter } from "#seed/boards/plover-counter.ts";
import { board as ploverSupply } from "#seed/boards/plover-supply.ts";
import { board as vetchDeflection } from "#seed/boards/vetch-terminal-deflection.ts";
import { board as vetchLogic } from "#seed/boards/vetch-terminal-logic.ts";
import { cases } from "#seed/cases/a/index.ts";
import { chips, claims, codes } from "#seed/customs/a.ts";
import { footprint } from "#seed/notation/placing.ts";

const boards: SeedBoard[] = [harrow, merle, vetchLogic, vetchDeflection, ploverCounter, ploverSupply];
const boardOf = new Map(boards.map((board) => [board.slug, board]));
const members = [
  "ines",
  "otto",
  "mirela",
  "bram",
  "yusuf",
  "kaisa",
  "dolores",
  "pim",
  "anouk",
  "tomasz",
  "femi",
  "greta",
];
const houses = ["veltrax", "orrin", "sunmarsh", "kettering-lo", "hadal", "brightwater"];

function repeated(words: readonly string[]): string[] {
  return words.filter((word, index) => words.indexOf(word) !== index);
}

/** Number of legs that the package name promises, where it promises one. */
function legs(packageName: string | undefined): number | undefined {
  const count = /^(?:DIP|PLCC|QFP|SOIC|SIP)-(\d+)$/.exec(packageName ?? "")?.[1];
  return packageName === "TO-220" ? 3 : count === undefined ? undefined : Number(count);
}

interface Box {
  name: string;
  left: number;
  top: number;
  right: number;
  bottom: number;
}

function box(part: SeedPlacement, anchor: "corner" | "middle"): Box {
  const { width, height } = footprint(part);
  const left = anchor === "corner" ? part.x : part.x - width / 2;
  const top = anchor === "corner" ? part.y : part.y - height / 2;
  return { name: part.designator, left, top, right: left + width, bottom: top + height };
}

function overlapping(boxes: readonly Box[]): string[] {
  return boxes.flatMap((a, index) =>
    boxes
      .slice(index + 1)
      .filter((b) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom)
      .map((b) => `${a.name} on ${b.name}`),
  );
}

/** Every pin, as `U7.14`, that a connector of the board has. */
function connectorPins(board: SeedBoard): string[] {
  return board.connectors.flatMap((one) => one.pins.map((pin) => `${one.designator}.${pin.number}`));
}

function pinProblem(board: SeedBoard, pin: string): string | undefined {
  const [designator = "", leg = ""] = pin.split(".");
  if (board.connectors.some((one) => one.designator === designator)) {
    return connectorPins(board).includes(pin) ? undefined : `${pin}: the connector has no such pin`;
  }
  const placement = board.placements.find((one) => one.designator === designator);
  if (placement === undefined) return `${pin}: no such part`;
  const count = placement.kind === "chip" || placement.kind === "resistor-pack" ? legs(placement.package) : undefined;
  if (count !== undefined && !(Number(leg) >= 1 && Number(leg) <= count)) return `${pin}: only ${count} legs`;
  return undefined;
}

/** Is `at` a designator, a pin, a rail or a net of the board? */
function isPlace(board: SeedBoard, at: string): boolean {
  if (board.nets.some((net) => net.name === at) || board.rails.some((rail) => rail.name === at)) return true;
  if (board.placements.some((one) => one.designator === at)) return true;
  return at.includes(".") && pinProblem(board, at) === undefined;
}

describe.each(boards.map((board) => [board.slug, board] as const))("the board %s", (_slug, board) => {
  test("has 25 to 60 parts, each with its own designator", () => {
    expect(repeated(board.placements.map((one) => one.designator))).toEqual([]);
    expect(board.placements.length).toBeGreaterThanOrEqual(25);
    expect(board.placements.length).toBeLessThanOrEqual(60);
  });

  test("draws each connector once and names each of its pins once", () => {
    const drawn = board.placements.filter((one) => one.kind === "connector").map((one) => one.designator);
    expect(drawn.toSorted()).toEqual(board.connectors.map((one) => one.designator).toSorted());
    expect(repeated(connectorPins(board))).toEqual([]);
  });

  test("has nets of one name each, of parts and pins that exist, and no pin in two", () => {
    const names = [...board.nets.map((net) => net.name), ...board.placements.map((one) => one.designator)];
    expect(repeated(names)).toEqual([]);
    expect(board.nets.flatMap((net) => net.pins).flatMap((pin) => pinProblem(board, pin) ?? [])).toEqual([]);
    expect(repeated(board.nets.flatMap((net) => net.pins))).toEqual([]);
  });

  test("says the same net at the connector's pin and in the list of nets", () => {
    const said = board.connectors.flatMap((one) =>
      one.pins.flatMap((pin) => (pin.net === undefined ? [] : [`${one.designator}.${pin.number} ${pin.net}`])),
    );
    const listed = board.nets.flatMap((net) =>
      net.pins.filter((pin) => connectorPins(board).includes(pin)).map((pin) => `${pin} ${net.name}`),
    );
    expect(said.toSorted()).toEqual(listed.toSorted());
  });

  test("feeds every chip from two nets of power or ground", () => {
    const feeds = board.nets.filter((net) => net.role === "power" || net.role === "ground");
    const fedBy = (designator: string) =>
      feeds.filter((net) => net.pins.some((pin) => pin.split(".")[0] === designator));
    const chipsWithLegs = board.placements.filter((one) => one.kind === "chip" && (legs(one.package) ?? 0) > 3);
    expect(chipsWithLegs.filter((one) => fedBy(one.designator).length < 2).map((one) => one.designator)).toEqual([]);
  });

  test.each(["corner", "middle"] as const)(
    "keeps all parts inside and apart, a place being the part's %s",
    (anchor) => {
      const boxes = board.placements.map((part) => box(part, anchor));
      const outside = boxes.filter(
        (one) => one.left < 0 || one.top < 0 || one.right > board.width || one.bottom > board.height,
      );
      expect(outside).toEqual([]);
      expect(overlapping(boxes)).toEqual([]);
    },
  );

  test("names parts of its own for rails, self-tests and cautions, and has rails among its nets", () => {
    const named = [
      ...board.rails.flatMap((rail) => rail.source ?? []),
      ...board.selfTests.flatMap((one) => one.suspects),
      ...board.cautions.flatMap((one) => one.at ?? []),
    ];
    expect(named.filter((at) => !isPlace(board, at))).toEqual([]);
    const nets = new Set(board.nets.map((net) => net.name));
    expect(board.rails.map((rail) => rail.name).filter((name) => !nets.has(name))).toEqual([]);
  });

  test("lists house codes that have a record, for the chip that the record names", () => {
    const wrong = board.placements.filter((one) => {
      if (one.code === undefined) return false;
      const known = codes.find((code) => code.code === one.code);
      return known === undefined || known.chip !== one.chip;
    });
    expect(wrong.map((one) => one.designator)).toEqual([]);
  });

  test("has copies of members on revisions that exist", () => {
    expect(board.copies.filter((copy) => !members.includes(copy.owner))).toEqual([]);
    const revisions = board.revisions.map((one) => one.name);
    expect(board.copies.flatMap((copy) => copy.revision ?? []).filter((name) => !revisions.includes(name))).toEqual([]);
  });
});

describe("the customs", () => {
  test("are of enough kinds, with as many pins as the package has legs", () => {
    const packages = chips.flatMap((chip) => chip.packages);
    expect(new Set(packages.map((one) => one.name))).toEqual(
      new Set(["DIP-40", "DIP-28", "PLCC-44", "SOIC-28", "PLCC-68", "DIP-24", "DIP-16", "QFP-80", "QFP-44"]),
    );
    const numbers = packages.map((one) => one.pins.map((pin) => Number(pin.number)).toSorted((a, b) => a - b));
    expect(numbers).toEqual(packages.map((one) => Array.from({ length: legs(one.name) ?? 0 }, (_, i) => i + 1)));
  });

  test("have ground and a supply with its voltage in every package", () => {
    const unfed = chips.filter((chip) =>
      chip.packages.some(
        (one) => !one.pins.some((pin) => pin.role === "ground") || !one.pins.some((pin) => pin.supply !== undefined),
      ),
    );
    expect(unfed).toEqual([]);
  });

  test("carry house codes seen on boards, two of them unknown", () => {
    expect(repeated(codes.map((code) => code.code))).toEqual([]);
    expect(codes.filter((code) => !houses.includes(code.house ?? ""))).toEqual([]);
    const known = chips.map((chip) => chip.slug);
    expect(codes.filter((code) => code.chip === undefined).map((code) => code.code)).toEqual([
      "VQ4-0907-01",
      "BW 00630 A",
    ]);
    expect(codes.flatMap((code) => code.chip ?? []).filter((slug) => !known.includes(slug))).toEqual([]);
    const sightings = codes.flatMap((code) => code.sightings.map((seen) => ({ ...seen, chip: code.chip })));
    const misplaced = sightings.filter((seen) => {
      const placement = boardOf.get(seen.board)?.placements.find((one) => one.designator === seen.at);
      return placement === undefined || placement.chip !== seen.chip || !members.includes(seen.member);
    });
    expect(misplaced).toEqual([]);
  });

  test("have claims between codes on record, with evidence by members and cases that exist", () => {
    const known = codes.map((code) => code.code);
    expect(claims.flatMap((one) => [one.from, one.to]).filter((code) => !known.includes(code))).toEqual([]);
    const evidence = claims.flatMap((one) => one.evidence);
    expect(evidence.filter((one) => !members.includes(one.member))).toEqual([]);
    const keys = cases.map((one) => one.key);
    expect(evidence.flatMap((one) => one.case ?? []).filter((key) => !keys.includes(key))).toEqual([]);
    const contested = claims.filter((one) => {
      const kinds = one.evidence.map((each) => each.kind);
      return one.grade !== "not-a-fit" && kinds.includes("fitted-worked") && kinds.includes("fitted-failed");
    });
    expect(contested.map((one) => one.to)).toEqual(["VQ4-0061-02", "HDL-C07-22", "BW 00452 B"]);
  });
});

/** Kinds that only mean something on an unplugged board. */
const UNPLUGGED = ["continuity", "resistance", "diode", "capacitance", "esr"];

function wordsOf(text: string): number {
  return text.split(/\s+/).filter((word) => /\p{L}|\d/u.test(word)).length;
}

/** What the record of the place's rail says, where the check itself says nothing. */
function expectedOf(board: SeedBoard | undefined, check: SeedCheck): Expectation | null {
  if (check.expected !== undefined) {
    const read = readExpectation(check.expected, check.kind);
    return read.ok ? read.value : null;
  }
  const net = board?.nets.find((each) => each.name === check.at || each.pins.includes(check.at));
  const rail = board?.rails.find((each) => each.name === net?.name);
  if (rail === undefined || check.kind !== "dc-voltage" || check.power === "off") return null;
  return expectFromRail({ ...rail, ac: rail.ac ?? false }).expectation;
}

function verdictOf(board: SeedBoard | undefined, check: SeedCheck, measured: string): Verdict {
  const reading = readReading(measured, check.kind);
  return judge({
    kind: check.kind,
    expected: expectedOf(board, check),
    measured: reading.ok ? reading.value : null,
  }).verdict;
}

describe("the cases written by hand", () => {
  test("are fifteen, with keys of their own, and end in every way", () => {
    expect(cases.length).toBe(15);
    expect(repeated(cases.map((one) => one.key))).toEqual([]);
    expect(cases.map((one) => one.outcome).toSorted()).toEqual([
      ...Array.from({ length: 10 }, () => "cured"),
      "cured-cause-unknown",
      "given-up",
      "open",
      "waiting",
      "works-not-proved",
    ]);
    expect(cases.filter((one) => one.checks.length === 0).map((one) => one.key)).toEqual(["harrow-dead-column"]);
    expect(cases.filter((one) => one.causes.some((cause) => cause.failure === "earlier-repair")).length).toBe(2);
    expect(cases.filter((one) => one.causes.length === 2).length).toBe(2);
  });

  test("tell a story of 120 to 350 words and a lesson of one line", () => {
    const lengths = cases.map((one) => ({ key: one.key, words: wordsOf(one.story ?? "") }));
    expect(lengths.filter((one) => one.words < 120 || one.words > 350)).toEqual([]);
    expect(cases.filter((one) => (one.lesson ?? "") === "" || one.lesson?.includes("\n"))).toEqual([]);
  });

  test("link only to records that are there", () => {
    const links = cases.flatMap((one) => [...(one.story ?? "").matchAll(/:(code|chip|board)\[([^\]]+)\]/g)]);
    const known: Record<string, (name: string) => boolean> = {
      code: (name) => codes.some((code) => code.code === name),
      board: (name) => boardOf.has(name),
      // Generic parts have their records elsewhere in the seed; here only a board's own use of them can be asked for.
      chip: (name) =>
        chips.some((chip) => chip.slug === name) ||
        boards.some((board) => board.placements.some((part) => part.chip === name)) ||
        name === "74ls157",
    };
    expect(links.length).toBeGreaterThan(20);
    expect(links.filter(([, kind = "", name = ""]) => !known[kind]?.(name)).map((link) => link[0])).toEqual([]);
  });
});

describe.each(cases.map((one) => [one.key, one] as const))("the case %s", (_key, one) => {
  const board = boardOf.get(one.board);

  test("names a board, a revision, a copy and members that exist", () => {
    expect(board).toBeDefined();
    const revisions = board?.revisions.map((each) => each.name) ?? [];
    expect(revisions).toContain(one.revision ?? revisions[0]);
    const copies = board?.copies.filter((each) => each.tag === one.copyTag && each.revision === one.revision) ?? [];
    expect(copies.length).toBe(one.copyTag === undefined ? 0 : 1);
    const voices = [one.author, ...(one.confirmations ?? []), ...(one.comments ?? [])].map((each) =>
      typeof each === "string" ? each : each.member,
    );
    expect(voices.filter((voice) => !members.includes(voice))).toEqual([]);
    expect((one.comments ?? []).filter((comment) => comment.yearsAgo > one.yearsAgo)).toEqual([]);
  });

  test("checks and names as cause only places that exist", () => {
    const places = [
      ...one.checks.flatMap((check) => [check.at, check.to ?? check.at]),
      ...one.causes.map((cause) => cause.at),
    ];
    expect(places.filter((at) => board === undefined || !isPlace(board, at))).toEqual([]);
  });

  test("spells places as they are spelt everywhere", () => {
    const names = {
      designators: board?.placements.map((part) => part.designator) ?? [],
      nets: board?.nets.map((net) => net.name) ?? [],
    };
    const spelt = one.checks.flatMap((check) => [check.at, ...(check.to === undefined ? [] : [check.to])]);
    const printed = spelt.map((at) => {
      const place = readPlace(at, names);
      return place.ok ? printPlace(place.value) : `${at}: ${place.problem}`;
    });
    expect(printed).toEqual(spelt);
  });

  test("has verdicts that bear its story out", () => {
    const verdicts = one.checks.map((check) => verdictOf(board, check, check.measured));
    const explained = new Set(one.causes.flatMap((cause) => cause.explains));
    const wrong = verdicts.flatMap((verdict, index) => {
      const check = one.checks[index];
      if (check === undefined || check.verdict !== undefined) return [];
      const contradicts = explained.has(index) ? verdict === "in-spec" : verdict === "out-of-spec";
      return contradicts && one.outcome !== "open" ? [`${index} ${check.at} ${check.measured}: ${verdict}`] : [];
    });
    expect(wrong).toEqual([]);
    const pointless = one.checks.filter((check, index) => check.verdict?.chosen === verdicts[index]);
    expect(pointless).toEqual([]);
    const repeats = one.causes.flatMap((cause) => cause.proof?.repeats ?? []);
    const stillWrong = repeats.filter((repeat) => {
      const check = one.checks[repeat.check];
      return check === undefined || verdictOf(board, check, repeat.measured) === "out-of-spec";
    });
    expect(stillWrong).toEqual([]);
  });

  test("has 6 to 18 checks, or none; ohms only with power off; trials with their outcome", () => {
    const count = one.checks.length;
    expect(count === 0 || (count >= 6 && count <= 18)).toBe(true);
    expect(one.checks.filter((check) => UNPLUGGED.includes(check.kind) && check.power === "on")).toEqual([]);
    expect(one.checks.filter((check) => (check.kind === "trial") !== (check.what !== undefined))).toEqual([]);
    expect(one.checks.filter((check) => check.outcome?.replace("-", " ") !== (check.what && check.measured))).toEqual(
      [],
    );
    expect(one.checks.filter((check) => check.kind === "diode" && (check.lead === undefined || !check.to))).toEqual([]);
  });

  test("has readings and expectations that can be read", () => {
    const repeats = one.causes.flatMap((cause) => cause.proof?.repeats ?? []);
    const unread = [
      ...one.checks.filter((check) => !readReading(check.measured, check.kind).ok),
      ...one.checks.filter((check) => check.expected !== undefined && !readExpectation(check.expected, check.kind).ok),
      ...repeats.filter((repeat) => {
        const check = one.checks[repeat.check];
        return check === undefined || !readReading(repeat.measured, check.kind).ok;
      }),
    ];
    expect(unread).toEqual([]);
  });

  test("explains checks that it has, and repeats only what it explains", () => {
    const explained = one.causes.flatMap((cause) => cause.explains);
    expect(explained.filter((index) => one.checks[index] === undefined)).toEqual([]);
    expect(repeated(explained.map(String))).toEqual([]);
    const astray = one.causes.flatMap((cause) =>
      (cause.proof?.repeats ?? []).filter((repeat) => !cause.explains.includes(repeat.check)),
    );
    expect(astray).toEqual([]);
  });

  test("is called cured only where each cause has a cure and a proof", () => {
    const proved =
      one.causes.length > 0 && one.causes.every((cause) => cause.cure !== undefined && cause.proof !== undefined);
    expect(proved).toBe(one.outcome === "cured" || one.outcome === "cured-cause-unknown");
    const fitted = one.causes.flatMap((cause) => cause.cure?.fittedCode ?? []);
    expect(fitted.filter((code) => !codes.some((known) => known.code === code))).toEqual([]);
  });
});
