import { describe, expect, test } from "vitest";
import { printPlace, readPlace } from "#lib/core/netlist/index.ts";
import { readExpectation, readReading, type Expectation } from "#lib/core/quantity/index.ts";
import { expectFromRail, judge } from "#lib/core/reading/index.ts";
import type { Verdict } from "#lib/core/shared/index.ts";
import { board as mothDriver } from "#seed/boards/moth-driver.ts";
import { board as mothMpu } from "#seed/boards/moth-mpu.ts";
import { board as ospreyKeyer } from "#seed/boards/osprey-keyer.ts";
import { board as ospreyVoice } from "#seed/boards/osprey-voice-card.ts";
import { board as ternMain } from "#seed/boards/tern-arcade-main.ts";
import { board as ternSound } from "#seed/boards/tern-arcade-sound.ts";
import { cases } from "#seed/cases/b/index.ts";
import { chips as generics } from "#seed/chips/index.ts";
import { chips, claims, codes } from "#seed/customs/b.ts";
import { houses } from "#seed/houses.ts";
import { members } from "#seed/members.ts";
import { footprint } from "#seed/notation/placing.ts";
import type { SeedBoard, SeedCheck, SeedPin, SeedPlacement } from "#seed/shapes.ts";

const boards: SeedBoard[] = [ospreyVoice, ospreyKeyer, ternMain, ternSound, mothDriver, mothMpu];
const boardOf = new Map(boards.map((board) => [board.slug, board]));
const allChips = [...chips, ...generics];
const handles = members.map((member) => member.handle);

function repeated(words: readonly string[]): string[] {
  return words.filter((word, index) => words.indexOf(word) !== index);
}

function pinsOf(part: SeedPlacement): SeedPin[] | undefined {
  return allChips.find((one) => one.slug === part.chip)?.packages.find((one) => one.name === part.package)?.pins;
}

/** Legs of a part that has no chip record, where its package's name tells. */
function legsOf(part: SeedPlacement): number | undefined {
  const count = /^(?:DIP|PLCC|QFP|SOIC|SIP)-(\d+)$/.exec(part.package ?? "")?.[1];
  return count === undefined ? undefined : Number(count);
}

/** What is wrong with a pin such as `U7.14`; undefined where the board has it. */
function pinProblem(board: SeedBoard, pin: string): string | undefined {
  const [designator = "", leg = ""] = pin.split(".");
  const connector = board.connectors.find((one) => one.designator === designator);
  if (connector !== undefined) {
    return connector.pins.some((one) => one.number === leg) ? undefined : `${pin}: no such contact`;
  }
  const part = board.placements.find((one) => one.designator === designator);
  if (part === undefined) return `${pin}: no such part`;
  const pins = pinsOf(part);
  if (pins !== undefined) return pins.some((one) => one.number === leg) ? undefined : `${pin}: no such pin`;
  const legs = legsOf(part);
  return legs === undefined || (Number(leg) >= 1 && Number(leg) <= legs) ? undefined : `${pin}: only ${legs} legs`;
}

/** Is `at` a designator, a pin, a rail or a net of the board? */
function isPlace(board: SeedBoard, at: string): boolean {
  const names = [...board.nets, ...board.rails].map((one) => one.name);
  if (names.includes(at) || board.placements.some((one) => one.designator === at)) return true;
  return at.includes(".") && pinProblem(board, at) === undefined;
}

/** The drawing takes a place as the part's middle. */
function box(part: SeedPlacement): { name: string; left: number; top: number; right: number; bottom: number } {
  const { width, height } = footprint(part);
  const [left, top] = [part.x - width / 2, part.y - height / 2];
  return { name: part.designator, left, top, right: left + width, bottom: top + height };
}

function overlapping(placements: readonly SeedPlacement[]): string[] {
  const boxes = placements.map(box);
  return boxes.flatMap((a, index) =>
    boxes
      .slice(index + 1)
      .filter((b) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom)
      .map((b) => `${a.name} on ${b.name}`),
  );
}

/** Pins of parts with a chip record, each with its net. */
function wiredPins(board: SeedBoard): { pin: string; record: SeedPin; net: string | undefined; role: string }[] {
  const netOf = new Map(board.nets.flatMap((net) => net.pins.map((pin) => [pin, net] as const)));
  return board.placements.flatMap((part) =>
    (pinsOf(part) ?? []).map((record) => {
      const pin = `${part.designator}.${record.number}`;
      const net = netOf.get(pin);
      return { pin, record, net: net?.name, role: net?.role ?? "none" };
    }),
  );
}

describe.each(boards.map((board) => [board.slug, board] as const))("the board %s", (_slug, board) => {
  test("has 25 to 60 parts, each with its own designator, and knows every chip in its package", () => {
    expect(repeated(board.placements.map((one) => one.designator))).toEqual([]);
    expect(board.placements.length).toBeGreaterThanOrEqual(25);
    expect(board.placements.length).toBeLessThanOrEqual(60);
    const withChip = board.placements.filter((one) => one.chip !== undefined);
    expect(withChip.filter((one) => pinsOf(one) === undefined).map((one) => one.designator)).toEqual([]);
  });

  test("has nets of one name each, of parts and pins that exist, and no pin in two", () => {
    const pins = board.nets.flatMap((net) => net.pins);
    expect(repeated([...board.nets.map((net) => net.name), ...board.placements.map((one) => one.designator)])).toEqual(
      [],
    );
    expect(pins.flatMap((pin) => pinProblem(board, pin) ?? [])).toEqual([]);
    expect(repeated(pins)).toEqual([]);
    expect(board.nets.filter((net) => net.pins.length < 2).map((net) => net.name)).toEqual([]);
  });

  test("draws each connector once and says the same net at its contacts and in the list", () => {
    const drawn = board.placements.filter((one) => one.kind === "connector").map((one) => one.designator);
    expect(drawn.toSorted()).toEqual(board.connectors.map((one) => one.designator).toSorted());
    const contacts = board.connectors.flatMap((one) =>
      one.pins.map((pin) => ({ pin: `${one.designator}.${pin.number}`, net: pin.net })),
    );
    expect(repeated(contacts.map((one) => one.pin))).toEqual([]);
    const listed = (pin: string) => board.nets.find((net) => net.pins.includes(pin))?.name;
    expect(contacts.filter((one) => listed(one.pin) !== one.net)).toEqual([]);
  });

  test("feeds every supply pin of every chip record, and drives no line from two outputs", () => {
    const wired = wiredPins(board);
    const hungry = wired.filter(
      ({ record, role }) => record.type === "power-in" && role !== "power" && role !== "ground",
    );
    expect(hungry.map((one) => one.pin)).toEqual([]);
    const drivers = wired.filter(({ record, net }) => record.type === "output" && net !== undefined);
    const onRails = drivers.filter(({ role }) => role === "power" || role === "ground").map((one) => one.pin);
    // Makers say so: a 6809 clocked from outside has XTAL on ground, a DAC0800 used single-ended its other output.
    expect(onRails.filter((pin) => pin !== "4F.39" && pin !== "U9.2")).toEqual([]);
    expect(repeated(drivers.filter((one) => !onRails.includes(one.pin)).map((one) => one.net ?? ""))).toEqual([]);
  });

  test("keeps all parts inside its outline and apart", () => {
    const outside = board.placements
      .map(box)
      .filter((one) => one.left < 0 || one.top < 0 || one.right > board.width || one.bottom > board.height);
    expect(outside).toEqual([]);
    expect(overlapping(board.placements)).toEqual([]);
  });

  test("names places of its own in rails, self-tests and cautions, and owners who are members", () => {
    const named = [
      ...board.rails.flatMap((rail) => rail.source ?? []),
      ...board.selfTests.flatMap((one) => one.suspects),
      ...board.cautions.flatMap((one) => one.at ?? []),
    ];
    expect(named.filter((at) => !isPlace(board, at))).toEqual([]);
    const nets = board.nets.map((net) => net.name);
    expect(board.rails.map((rail) => rail.name).filter((name) => !nets.includes(name))).toEqual([]);
    const revisions = board.revisions.map((one) => one.name);
    const astray = board.copies.filter(
      (copy) => !handles.includes(copy.owner) || !revisions.includes(copy.revision ?? ""),
    );
    expect(astray).toEqual([]);
  });
});

describe("the customs", () => {
  test("have as many pins as their packages have legs, counted through, with ground and supply", () => {
    const packages = chips.flatMap((one) => one.packages.map((each) => ({ slug: one.slug, ...each })));
    const wrong = packages.filter((one) => {
      const count = Number(/-(\d+)$/.exec(one.name)?.[1]);
      const numbers = one.pins.map((pin) => Number(pin.number)).toSorted((a, b) => a - b);
      const counted = numbers.length === count && numbers.every((number, index) => number === index + 1);
      const fed = one.pins.some((pin) => pin.role === "ground") && one.pins.some((pin) => pin.supply !== undefined);
      return !counted || !fed;
    });
    expect(wrong.map((one) => `${one.slug} ${one.name}`)).toEqual([]);
    expect([...new Set(packages.map((one) => one.name))].toSorted()).toEqual(
      ["DIP-16", "DIP-24", "DIP-28", "DIP-40", "PLCC-44", "PLCC-68", "QFP-64", "QFP-80", "SOIC-16"].toSorted(),
    );
  });

  test("in two packages have the same pins by name in both", () => {
    const names = (pins: readonly SeedPin[]) => pins.map((pin) => pin.name).toSorted();
    const [dip, soic] = chips.find((one) => one.slug === "kl-0702")?.packages ?? [];
    expect(names(soic?.pins ?? [])).toEqual(names(dip?.pins ?? []));
    expect(soic?.pins.map((pin) => pin.name)).not.toEqual(dip?.pins.map((pin) => pin.name));
  });

  test("carry codes of known houses, seen on boards where such a chip stands; two are unknown", () => {
    expect(repeated(codes.map((one) => one.code))).toEqual([]);
    expect(codes.filter((one) => !houses.some((house) => house.slug === one.house)).map((one) => one.code)).toEqual([]);
    expect(codes.filter((one) => one.chip === undefined).map((one) => one.code)).toEqual(["VQ4-0899-01", "BW 80590 B"]);
    const misplaced = codes.flatMap((one) =>
      one.sightings.filter((seen) => {
        const part = boardOf.get(seen.board)?.placements.find((each) => each.designator === seen.at);
        return part === undefined || part.chip !== one.chip || !handles.includes(seen.member);
      }),
    );
    expect(misplaced).toEqual([]);
    const fitted = boards.flatMap((board) => board.placements).filter((part) => part.code !== undefined);
    expect(fitted.filter((part) => codes.find((one) => one.code === part.code)?.chip !== part.chip)).toEqual([]);
  });

  test("have claims between known codes with evidence of members and cases; two are contested", () => {
    const known = codes.map((one) => one.code);
    expect(claims.flatMap((one) => [one.from, one.to]).filter((code) => !known.includes(code))).toEqual([]);
    const evidence = claims.flatMap((one) => one.evidence);
    expect(evidence.filter((one) => !handles.includes(one.member))).toEqual([]);
    const keys = cases.map((one) => one.key);
    expect(evidence.flatMap((one) => one.case ?? []).filter((key) => !keys.includes(key))).toEqual([]);
    const contested = claims.filter((one) => {
      const kinds = one.evidence.map((each) => each.kind);
      return one.grade !== "not-a-fit" && kinds.includes("fitted-worked") && kinds.includes("fitted-failed");
    });
    expect(contested.map((one) => one.to)).toEqual(["SM6931", "HDL-C48-10"]);
  });
});

/** Kinds that only mean something on an unplugged board. */
const UNPLUGGED = ["continuity", "resistance", "diode", "capacitance", "esr"];

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
  const expected = expectedOf(board, check);
  return judge({ kind: check.kind, expected, measured: reading.ok ? reading.value : null }).verdict;
}

describe("the cases written by hand", () => {
  test("are fifteen and end in every way that they may", () => {
    expect(repeated(cases.map((one) => one.key))).toEqual([]);
    expect(cases.map((one) => one.outcome).toSorted()).toEqual([
      ...Array.from({ length: 10 }, () => "cured"),
      "given-up",
      "no-fault-found",
      "open",
      "waiting",
      "works-not-proved",
    ]);
    expect(cases.filter((one) => one.checks.length === 0).map((one) => one.key)).toEqual(["osprey-keyer-wheel"]);
    const twice = cases.filter((one) => one.causes.length > 1).map((one) => one.key);
    expect(twice).toEqual(["osprey-voice-drift", "tern-sound-no-speech", "moth-coil-stuck"]);
    const chosen = cases.flatMap((one) => one.checks).filter((check) => check.verdict !== undefined);
    expect(chosen.length).toBe(2);
  });

  test("link only to records that are there", () => {
    const links = cases.flatMap((one) => [...(one.story ?? "").matchAll(/:(code|chip|board)\[([^\]]+)\]/g)]);
    const known: Record<string, readonly string[]> = {
      code: codes.map((one) => one.code),
      chip: allChips.map((one) => one.slug),
      board: boards.map((one) => one.slug),
    };
    expect(links.length).toBeGreaterThan(20);
    expect(links.filter(([, kind = "", name = ""]) => !known[kind]?.includes(name)).map((link) => link[0])).toEqual([]);
  });
});

describe.each(cases.map((one) => [one.key, one] as const))("the case %s", (_key, one) => {
  const board = boardOf.get(one.board);
  const repeats = one.causes.flatMap((cause) => cause.proof?.repeats ?? []);
  const explained = one.causes.flatMap((cause) => cause.explains);

  test("names a board, its revision, its copy and members that exist, in an order that can be", () => {
    expect(board?.revisions.map((each) => each.name)).toContain(one.revision);
    const copies = board?.copies.filter((each) => each.tag === one.copyTag && each.revision === one.revision) ?? [];
    expect(copies.length).toBe(one.copyTag === undefined ? 0 : 1);
    const said = [...(one.confirmations ?? []), ...(one.comments ?? [])];
    expect([one.author, ...said.map((each) => each.member)].filter((voice) => !handles.includes(voice))).toEqual([]);
    expect((one.comments ?? []).filter((each) => each.yearsAgo > one.yearsAgo)).toEqual([]);
  });

  test("tells a story of 120 to 350 words and a lesson of one line", () => {
    const words = (one.story ?? "").split(/\s+/).filter((word) => /\p{L}|\d/u.test(word)).length;
    expect(words).toBeGreaterThanOrEqual(120);
    expect(words).toBeLessThanOrEqual(350);
    expect(one.lesson).toMatch(/^[^\n]+$/);
  });

  test("checks and blames only places of its board, spelt as they are spelt everywhere", () => {
    const places = one.checks.flatMap((check) => [check.at, check.to ?? check.at]);
    const blamed = one.causes.map((cause) => cause.at);
    expect([...places, ...blamed].filter((at) => board === undefined || !isPlace(board, at))).toEqual([]);
    const names = {
      designators: board?.placements.map((part) => part.designator) ?? [],
      nets: board?.nets.map((net) => net.name) ?? [],
    };
    const printed = places.map((at) => {
      const place = readPlace(at, names);
      return place.ok ? printPlace(place.value) : place.problem;
    });
    expect(printed).toEqual(places);
  });

  test("has readings and expectations that can be read", () => {
    const unread = one.checks.filter((check) => {
      const expectation = check.expected === undefined ? null : readExpectation(check.expected, check.kind);
      return !readReading(check.measured, check.kind).ok || expectation?.ok === false;
    });
    expect(unread).toEqual([]);
    const repeatedUnread = repeats.filter((repeat) => {
      const check = one.checks[repeat.check];
      return check === undefined || !readReading(repeat.measured, check.kind).ok;
    });
    expect(repeatedUnread).toEqual([]);
  });

  test("has 6 to 18 checks, or none; ohms only unplugged; trials with their outcome", () => {
    expect(one.checks.length === 0 || (one.checks.length >= 6 && one.checks.length <= 18)).toBe(true);
    const wrong = one.checks.filter((check) => {
      const isTrial = check.kind === "trial";
      const trialFits = isTrial ? check.outcome?.replace("-", " ") === check.measured : check.outcome === undefined;
      const meterFits = !UNPLUGGED.includes(check.kind) || check.power === "off";
      const diodeFits = check.kind !== "diode" || (check.lead !== undefined && check.to !== undefined);
      return !trialFits || isTrial !== (check.what !== undefined) || !meterFits || !diodeFits;
    });
    expect(wrong).toEqual([]);
  });

  test("has verdicts that bear its story out", () => {
    const wrong = one.checks.flatMap((check, index) => {
      const verdict = check.verdict?.chosen ?? verdictOf(board, check, check.measured);
      const contradicts = explained.includes(index) ? verdict === "in-spec" : verdict === "out-of-spec";
      return contradicts && one.outcome !== "open" ? [`${index} ${check.at} ${check.measured}: ${verdict}`] : [];
    });
    expect(wrong).toEqual([]);
    const stillWrong = repeats.filter((repeat) => {
      const check = one.checks[repeat.check];
      return check === undefined || !["in-spec", "noted"].includes(verdictOf(board, check, repeat.measured));
    });
    expect(stillWrong).toEqual([]);
  });

  test("explains and repeats checks that it has, and is cured only where each cause is cured and proved", () => {
    expect(explained.filter((index) => one.checks[index] === undefined)).toEqual([]);
    expect(repeated(explained.map(String))).toEqual([]);
    expect(repeats.filter((repeat) => !explained.includes(repeat.check))).toEqual([]);
    const proved = one.causes.every((cause) => cause.cure !== undefined && cause.proof !== undefined);
    expect(one.causes.length > 0 && proved).toBe(one.outcome === "cured");
    const fitted = one.causes.flatMap((cause) => cause.cure?.fittedCode ?? []);
    expect(fitted.filter((code) => !codes.some((known) => known.code === code))).toEqual([]);
  });
});
