import type { SeedChip, SeedNet, SeedPlacement } from "#seed/shapes.ts";
import { isBusy, isDriving, isReceiving, partOf, type BoardView, type ChipView, type Leg } from "../board-view.ts";
import {
  activityCheck,
  activityFails,
  beforeOutputs,
  railCheck,
  standing,
  trial,
  type Bench,
  type Probe,
} from "../checks.ts";
import { checksum } from "../hand.ts";
import { randomFrom } from "../random.ts";
import type { FaultClass, Tell, Told } from "../fault.ts";
import { FAULT_WEIGHTS } from "../parameters.ts";

// Contents, memories, clock and reset.

/** Checksum of the image that belongs there: as the board's record says, else always the same for the same place. */
function imageOf({ view: { board } }: Bench, { designator, placement }: ChipView): string {
  const noted = /checksum ([0-9A-F]{4})/.exec(placement.notes ?? "")?.[1];
  if (noted !== undefined) return noted;
  const letters = Array.from(`${board.slug} ${designator}`).reduce(
    (sum, letter) => (sum * 31 + letter.charCodeAt(0)) % 1_000_003,
    7,
  );
  return checksum(randomFrom(letters));
}

const HOLDING = new Set<SeedChip["contents"]>(["eprom", "prom", "mask-rom", "eeprom"]);

export const contentsLost: FaultClass = {
  weight: FAULT_WEIGHTS.contentsLost,
  places: (board) =>
    board.chips
      .filter(({ chip }) => HOLDING.has(chip.contents))
      .map(
        (view): Tell =>
          (bench) =>
            tellContents(bench, view),
      ),
};

function tellContents(bench: Bench, view: ChipView): Told {
  const { random } = bench;
  const { designator, chip } = view;
  const wanted = imageOf(bench, view);
  let found = checksum(random);
  if (found === wanted) found = wanted === "1000" ? "1001" : "1000";
  const again = chip.contents === "eprom" && random.chance(0.5);
  const data = view.legs.filter((leg) => leg.pin.role === "data" && isBusy(leg));
  return {
    effect: random.pick(["dead", "garbage"]),
    probes: [
      ...beforeOutputs(bench, view),
      ...random.some(data, 2).map((leg) => activityCheck(bench, leg)),
      {
        check: {
          kind: "contents",
          at: designator,
          power: "off",
          expected: wanted,
          measured: found,
          note: random.pick([
            "Read twice, the same twice.",
            "Read twice: two answers, neither right.",
            "Compared with the club's copy.",
          ]),
        },
        cured: wanted,
      },
    ],
    at: designator,
    chip: chip.slug,
    failure: "contents-lost",
    cure: {
      action: again ? "reprogrammed" : "replaced",
      ...(again || chip.contents !== "eprom" ? {} : { fits: chip.slug }),
      how: again
        ? random.pick([
            `Erased for twenty minutes, programmed again, verified at 4.5 and 5.5 V.`,
            `Same part, programmed again, foil over the window.`,
          ])
        : random.pick([
            `Another part with the club's image, verified, labelled with date and checksum.`,
            `Replaced by a part with the same contents, read back in the machine's own voltage.`,
          ]),
    },
    cause: random.pick([
      `${designator} has lost bits: checksum ${found} instead of ${wanted}.`,
      `${designator} reads ${found}, the image is ${wanted}.`,
    ]),
    titles: [
      `${designator} has forgotten`,
      `Checksum ${found} where ${wanted} belongs`,
      `Bit rot in ${designator}`,
      `Address and data alive, and nonsense between them`,
      chip.contents === "eprom"
        ? `The label had fallen off ${designator}`
        : `${designator} read, compared, and not the same`,
    ],
    lessons: [
      `Lines that move prove that the processor runs, not that it reads sense. Read ${designator} out.`,
      `Read first, twice, and compare; then decide whether to program.`,
      `Keep the foil on the window. The sun through a club-room pane is weak and patient.`,
      `Programmed is not proved: read it back at 4.5 V too.`,
    ],
    tale: [
      `Everything moved and nothing came of it, which is what a processor with a wrong program looks like.`,
      `The programmer said ${found}. The list in the drawer said ${wanted}.`,
      `Three bytes differ, all in one corner, all a bit too high.`,
    ],
    word: "contents",
  };
}

export const memoryBad: FaultClass = {
  weight: FAULT_WEIGHTS.memoryBad,
  places: (board) =>
    board.chips
      .filter((view) => /\bRAM\b/.test(view.chip.function) && dataOut(view).length > 0 && view.chip.contents === "none")
      .map(
        (view): Tell =>
          (bench) =>
            tellMemory(bench, view),
      ),
};

function dataOut(view: ChipView): Leg[] {
  return view.legs.filter((leg) => leg.pin.role === "data" && isDriving(leg));
}

function tellMemory(bench: Bench, view: ChipView): Told {
  const { random } = bench;
  const { designator, chip, placement } = view;
  const bad = random.pick(dataOut(view));
  const side = random.pick(["low", "high"] as const);
  const hot = random.chance(0.5);
  const signal = bench.view.board.selfTests.find(({ suspects }) => suspects.includes(designator));
  const tested: Probe[] =
    signal === undefined
      ? []
      : [{ check: { kind: "self-test", at: designator, power: "on", measured: signal.signal } }];
  const warmth: Probe[] = hot
    ? [
        {
          check: {
            kind: "temperature",
            at: designator,
            power: "on",
            expected: "< 55 °C",
            measured: `${random.whole(64, 86)} °C`,
            when: "after 5 min",
          },
          cured: `${random.whole(34, 46)} °C`,
        },
      ]
    : [];
  const helps = placement.socketed === true ? "swap" : "piggy-back";
  return {
    effect: random.pick(["garbage", "garbage", hot ? "hot" : "dead"]),
    probes: [
      ...tested,
      ...beforeOutputs(bench, view),
      activityFails(bench, bad, `stuck ${side}`),
      ...warmth,
      trial(bench, designator, helps, "changed"),
    ],
    at: designator,
    chip: chip.slug,
    failure: side === "low" ? "output-stuck-low" : "output-stuck-high",
    cure: {
      action: "replaced",
      fits: chip.slug,
      how: random.pick([
        `New ${chip.name} in a socket.`,
        `Cut off, socket, ${chip.name} from the tube that was tested last winter.`,
        `Replaced, then a night of memory test.`,
      ]),
    },
    cause: random.pick([
      `${designator} holds ${bad.net?.name ?? "its data line"} ${side} whenever it is asked.`,
      `Memory ${designator} gives the same bit for every cell.`,
    ]),
    titles: [
      `Bad RAM at ${designator}`,
      `${bad.net?.name ?? designator} always ${side} out of ${designator}`,
      hot ? `The hot one is the bad one: ${designator}` : `A cold RAM that lied: ${designator}`,
      signal === undefined ? `One bit wrong everywhere` : `Self-test said it first: ${designator}`,
    ],
    lessons: [
      hot
        ? `A finger along the row before the scope: ${designator} was the only one to hurt.`
        : `Not every bad RAM gets hot. ${designator} was as cool as its neighbours.`,
      `Piggy-back a good one first. If the picture changes, it is the one underneath, or its supply.`,
      `Measure all supplies of the RAM before a new one goes in.`,
    ],
    tale: [
      `Supply at its own pins was right; ${bad.place} was not.`,
      hot ? `It was too hot to touch after five minutes.` : `Nothing got hot, which told us nothing.`,
      helps === "swap"
        ? `With another ${chip.name} in its socket the fault was another one.`
        : `With a good ${chip.name} on its back the fault changed at once.`,
    ],
    word: "ram",
  };
}

export const clockDead: FaultClass = {
  weight: FAULT_WEIGHTS.clockDead,
  places: (view) =>
    view.board.placements
      .filter(({ kind, value }) => kind === "crystal" && /^[\d.]+ MHz/.test(value ?? ""))
      .flatMap((crystal) => {
        const { first, behind } = clockPath(view, crystal);
        return first === undefined || behind.length === 0
          ? []
          : [(bench: Bench) => tellClock(bench, crystal, first, behind)];
      }),
};

/** The chip that the crystal hangs on, and pins which see its clock. */
function clockPath(view: BoardView, { designator }: SeedPlacement): { first: ChipView | undefined; behind: Leg[] } {
  const own = view.board.nets.filter(({ pins }) => pins.some((pin) => partOf(pin) === designator));
  const first = own
    .flatMap(({ pins }) => pins)
    .map((pin) => view.chipAt.get(partOf(pin)))
    .find((chip) => chip !== undefined);
  const outputs =
    first?.legs.filter((leg) => leg.net?.role === "clock" && !own.includes(leg.net) && isDriving(leg)) ?? [];
  const behind = outputs.flatMap(({ net }) => (net === null ? [] : clockUsers(view, net)));
  return { first, behind };
}

function clockUsers(view: BoardView, net: SeedNet): Leg[] {
  return net.pins
    .flatMap((pin) => view.legAt.get(pin) ?? [])
    .filter((leg) => isReceiving(leg) && leg.pin.role === "clock");
}

function tellClock(bench: Bench, crystal: SeedPlacement, first: ChipView, behind: readonly Leg[]): Told {
  const { random, hand } = bench;
  const { designator, value = "" } = crystal;
  const megahertz = Number(/^[\d.]+/.exec(value)?.[0] ?? 1);
  const output = first.legs.find((leg) => leg.net?.role === "clock" && isDriving(leg) && leg.net === behind[0]?.net);
  const quiet = behind.slice(0, 2).map((leg) => activityFails(bench, leg, standing(bench)));
  return {
    effect: "dead",
    probes: [
      ...beforeOutputs(bench, first).filter(({ check }) => check.kind === "dc-voltage"),
      ...quiet,
      ...(output === undefined
        ? []
        : [
            {
              check: {
                kind: "frequency",
                at: output.place,
                power: "on",
                expected: `${megahertz} MHz ±0.1 %`,
                measured: hand.hertz(0),
                note: "At the buffer, not on the crystal.",
              },
              cured: hand.hertz(megahertz * 1e6 * (1 + random.noise(0.00002))),
            } as const,
          ]),
      trial(bench, designator, "piggy-back", "changed", "Another crystal of that value held across it."),
    ],
    at: designator,
    failure: "dead",
    cure: {
      action: "replaced",
      how: random.pick([
        `New ${value} crystal, legs bent so that nothing pulls on them.`,
        `Crystal replaced from a donor board, ${value}.`,
      ]),
    },
    cause: random.pick([
      `Crystal ${designator} does not start, ${value}.`,
      `${designator} has a broken leg inside: it rattles.`,
    ]),
    titles: [
      `No clock: ${designator}`,
      `${value} that were none`,
      `Everything supplied, nothing moving`,
      `Somebody dropped it: crystal ${designator}`,
    ],
    lessons: [
      `Rails, then clock, then reset. Without the second the third is not worth a look.`,
      `Measure the clock behind the buffer. The probe on the crystal can stop a good one.`,
      `Crystals do not age much, but they do not survive a fall from a bench.`,
    ],
    tale: [
      `A board on which nothing at all moves has a short list.`,
      `${first.designator} was supplied and its inputs were well; ${designator} gave it nothing to amplify.`,
    ],
    word: "clock",
  };
}

export const resetHeld: FaultClass = {
  weight: FAULT_WEIGHTS.resetHeld,
  places: (view) => {
    const capacitor = view.board.placements.find(
      ({ designator, kind }) =>
        kind === "capacitor" &&
        view.board.nets.some(({ role, pins }) => role === "reset" && pins.some((pin) => partOf(pin) === designator)),
    );
    const held = view.chips.flatMap(({ legs }) =>
      legs.filter((leg) => leg.pin.role === "reset" && leg.net?.role === "reset" && isReceiving(leg)),
    );
    return capacitor === undefined
      ? []
      : held.map(
          (leg): Tell =>
            (bench) =>
              tellReset(bench, leg, capacitor),
        );
  },
};

function tellReset(bench: Bench, leg: Leg, capacitor: SeedPlacement): Told {
  const { random, hand, view } = bench;
  const { designator, value = "capacitor" } = capacitor;
  const released = leg.pin.activeLow === true ? "high" : "low";
  const held = released === "high" ? "low" : "high";
  const plus =
    ["1", "2"].map((n) => `${designator}.${n}`).find((place) => view.netOf.get(place)?.role === "reset") ?? designator;
  const timing = view.netOf.get(plus);
  const volts = random.between(0.4, 1.2);
  const rails = random.some(
    [...view.rails.values()].filter((rail) => rail.regulated),
    2,
  );
  return {
    effect: "dead",
    probes: [
      ...rails.map((rail) => railCheck(bench, rail)),
      {
        check: { kind: "level", at: leg.place, power: "on", expected: released, measured: `stuck ${held}` },
        cured: released,
      },
      {
        check: {
          kind: "dc-voltage",
          at: plus,
          power: "on",
          expected: "≥ 3 V",
          measured: hand.volts(volts),
          note: "Five seconds after power-on.",
        },
        cured: hand.volts(random.between(4.6, 4.95)),
      },
      ...(random.chance(0.5)
        ? [trial(bench, designator, "lift-pin", "changed", "Starts by itself, without the delay.")]
        : []),
    ],
    at: designator,
    failure: "leaky",
    cure: {
      action: "replaced",
      how: random.pick([`${value} replaced.`, `New capacitor; the resistor that charges it was right.`]),
    },
    cause: random.pick([
      `${designator} leaks so much that ${timing?.name ?? "the reset"} never gets past ${hand.volts(volts)}.`,
      `The reset capacitor ${designator} draws what the resistor gives.`,
    ]),
    titles: [
      `Held in reset by ${designator}`,
      `${leg.net?.name ?? leg.place} never lets go`,
      `The processor was well and was never let run`,
      `${hand.volts(volts)} and no higher: reset`,
    ],
    lessons: [
      `Reset that never comes: the capacitor. Reset that comes again and again: a watchdog, so look at the program.`,
      `A meter of 10 megohm still loads a reset circuit. Read the level behind the Schmitt trigger.`,
      `Clock well and nothing fetched: read reset at the processor's own pin before lifting anything.`,
    ],
    tale: [
      `Clock there, supply there, and ${leg.place} ${held}.`,
      `Back along the line to ${designator}: ${hand.volts(volts)} and not rising.`,
    ],
    word: "reset",
  };
}
