import type { SeedCheck } from "#seed/shapes.ts";
import type { ChipView, Leg } from "../board-view.ts";
import { beforeOutputs, type Bench, type Probe } from "../checks.ts";
import type { FaultClass, Tell, Told } from "../fault.ts";
import { FAULT_WEIGHTS } from "../parameters.ts";

// A part that fits the holes and is not the part: an earlier repair.

/** The part that belongs there, the one that was found, and the reading that gives it away. */
interface Mistake {
  right: string;
  wrong: string;
  pin: string;
  kind: SeedCheck["kind"];
  expected: string;
  bad: (bench: Bench) => string;
  good: (bench: Bench) => string;
  note: string;
}

const level = (right: string, wrong: string, pin: string, expected: "high" | "low", note: string): Mistake => ({
  right,
  wrong,
  pin,
  kind: "level",
  expected,
  bad: () => (expected === "high" ? "low" : "high"),
  good: () => expected,
  note,
});

const MISTAKES: readonly Mistake[] = [
  level("74ls244", "74LS240", "18", "low", "Pin 2 is low, pin 1 is low."),
  level("74ls240", "74LS244", "18", "high", "Pin 2 is low, pin 1 is low."),
  level("74ls373", "74LS374", "2", "high", "Pin 3 is high and LE is high, so it should follow."),
  level("74ls374", "74LS373", "2", "low", "Pin 3 went high long after the clock, and the output went with it."),
  level("74ls08", "74LS32", "3", "low", "Pin 1 high, pin 2 low."),
  level("74ls32", "74LS08", "3", "high", "Pin 1 high, pin 2 low."),
  level("74ls00", "74LS08", "3", "high", "Both inputs low."),
  level("74ls86", "74LS32", "3", "low", "Both inputs high."),
  level("74ls157", "74LS158", "4", "low", "Pin 1 low, pin 2 low, pin 15 low."),
  level("74ls04", "74LS07", "2", "low", "Pin 1 high."),
  {
    right: "74ls245",
    wrong: "74HC245",
    pin: "18",
    kind: "dc-voltage",
    expected: "≥ 3.15 V",
    bad: ({ random, hand }) => hand.volts(random.between(2.5, 2.95)),
    good: ({ random, hand }) => hand.volts(random.between(3.3, 3.9)),
    note: "What an LS output gives for a high, with the line held.",
  },
];

export const wrongPart: FaultClass = {
  weight: FAULT_WEIGHTS.wrongPart,
  places: (board) =>
    board.chips.flatMap((view) =>
      MISTAKES.filter(({ right }) => right === view.chip.slug).flatMap((mistake): Tell[] => {
        const leg = view.legs.find(({ pin }) => pin.number === mistake.pin);
        const wired =
          leg?.net !== null && leg?.net !== undefined && leg.net.role !== "power" && leg.net.role !== "ground";
        return wired ? [(bench) => tellWrongPart(bench, view, leg, mistake)] : [];
      }),
    ),
};

function tellWrongPart(bench: Bench, view: ChipView, leg: Leg, mistake: Mistake): Told {
  const { random } = bench;
  const { designator, chip } = view;
  const year = bench.view.board.year;
  const late = `${String((year + random.whole(4, 9)) % 100).padStart(2, "0")}${String(random.whole(2, 51)).padStart(2, "0")}`;
  const around = `${String((year - 1) % 100).padStart(2, "0")}${String(random.whole(10, 50))}`;
  const look: Probe = {
    check: {
      kind: "visual",
      at: designator,
      power: "off",
      measured: `${mistake.wrong}, date code ${late}; its neighbours are about ${around}`,
      verdict: { chosen: "out-of-spec", reason: `The parts list says ${chip.name}.` },
    },
    cured: `${chip.name}`,
  };
  const told: Probe = {
    check: {
      kind: mistake.kind,
      at: leg.place,
      power: "on",
      expected: mistake.expected,
      measured: mistake.bad(bench),
      note: mistake.note,
    },
    cured: mistake.good(bench),
  };
  const seenFirst = random.chance(0.5);
  const before = beforeOutputs(bench, view);
  return {
    effect: random.pick(["garbage", "partial"]),
    probes: seenFirst ? [look, ...before, told] : [...before, told, look],
    at: designator,
    chip: chip.slug,
    failure: random.chance(0.6) ? "earlier-repair" : "wrong-part",
    cure: {
      action: "replaced",
      fits: chip.slug,
      how: random.pick([
        `${mistake.wrong} out, ${chip.name} in, socket under it.`,
        `The part that belongs there. The wrong one went into the drawer with its right label.`,
      ]),
    },
    cause: random.pick([
      `Somebody fitted a ${mistake.wrong} for a ${chip.name}.`,
      `An earlier repair: ${mistake.wrong} at ${designator}, where a ${chip.name} belongs.`,
    ]),
    titles: [
      `${mistake.wrong} in the place of a ${chip.name}`,
      `Somebody was here before: ${designator}`,
      `${designator} is younger than the board`,
      `One figure wrong on ${designator}`,
      `A good chip, the wrong one`,
    ],
    lessons: [
      `Read every number on the board against the list. It takes ten minutes and no power.`,
      `A date code later than its neighbours' is a repair. Ask what was wrong then.`,
      `Same pins is not same function: ${mistake.wrong} and ${chip.name} fit the same holes.`,
      `Flux that nobody cleaned is a signpost.`,
    ],
    tale: [
      `${designator} carried ${late}, everything round it ${around}.`,
      `The chip is well; in a board that wants a ${mistake.wrong} it would be right.`,
      `I measured for an hour before I read what is printed on it.`,
    ],
    word: "wrong-part",
  };
}
