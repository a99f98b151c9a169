import { isBusy, isDriving, isLogic, type ChipView, type Leg } from "../board-view.ts";
import {
  activityCheck,
  activityFails,
  beforeOutputs,
  diodeCheck,
  railOf,
  trial,
  type Bench,
  type Probe,
} from "../checks.ts";
import type { FaultClass, Tell, Told } from "../fault.ts";
import { FAULT_WEIGHTS } from "../parameters.ts";

// Chips that died: all outputs of one, one output of one, a driver that shorted, an amplifier at its rail.

/** Pins whose standing still is a fault. */
function busyOutputs(view: ChipView): Leg[] {
  return view.legs.filter((leg) => isDriving(leg) && isBusy(leg));
}

export const outputsDead: FaultClass = {
  weight: FAULT_WEIGHTS.outputsDead,
  places: (board) =>
    board.chips
      .filter((view) => isLogic(view) && view.chip.contents === "none" && busyOutputs(view).length >= 3)
      .map(
        (view): Tell =>
          (bench) =>
            tellOutputsDead(bench, view),
      ),
};

function tellOutputsDead(bench: Bench, view: ChipView): Told {
  const { random } = bench;
  const { designator, chip } = view;
  const outputs = random.some(busyOutputs(view), random.whole(2, 4));
  const word = random.pick(["noise", "noise", "no activity", "floating", "dead"]);
  const before = beforeOutputs(bench, view);
  const dead = outputs.map((leg, n) => activityFails(bench, leg, word, n === 0 ? noteOn(word) : undefined));
  const proofBySwap = view.placement.socketed === true ? [trial(bench, designator, "swap", "changed")] : [];
  return {
    effect: random.pick(["dead", "garbage", "partial"]),
    probes: [...before, ...dead, ...proofBySwap],
    at: designator,
    chip: chip.slug,
    failure: "outputs-dead",
    cure: {
      action: "replaced",
      fits: chip.slug,
      how: random.pick([
        `Cut off, stubs lifted one by one, socket fitted, new ${chip.name}.`,
        `New ${chip.name} in a turned-pin socket.`,
        `Desoldered with hot air and low-melt, pads cleaned, ${chip.name} from another batch.`,
        `Replaced; a socket is under it now.`,
      ]),
    },
    cause: random.pick([
      `All outputs of ${designator} stand still although supply, enables and inputs are well.`,
      `${designator} takes everything in and gives nothing out.`,
      `Output stages of ${designator} gone; on the scope there is only crosstalk of the neighbours.`,
      `${designator} is asleep: inputs move, outputs show ${word}.`,
    ]),
    titles: [
      `${designator} hears everything and says nothing`,
      `${chip.name} at ${designator} with dead outputs`,
      `Inputs alive, outputs ${word}: ${designator}`,
      `Everything well up to ${designator}, nothing behind it`,
      `${designator}: the supply was there, the chip was not`,
    ],
    lessons: [
      `Supply, enable and inputs of ${designator} first, in that order; then the outputs convict it in a minute.`,
      `A ${chip.name} that is not enabled looks just the same. Read the enables before the iron gets warm.`,
      `Dead outputs on a cold chip: ${designator} had no temperature at all, its neighbours were hand-warm.`,
      `All outputs of one chip dead means one chip, not eight traces.`,
    ],
    tale: [
      `The inputs of ${designator} were busy, its outputs were not.`,
      `I looked at the enables twice, because a three-state output that nobody asks looks like that too.`,
      `${outputs[0]?.place ?? designator} on the scope: ${word}, at any time base.`,
      `Nothing else held those lines: with the chip out they floated, and the meter showed no short.`,
    ],
    word: "silent",
  };
}

function noteOn(word: string): string | undefined {
  if (word === "noise") return "A few hundred millivolts of everybody else's signals.";
  return word === "floating" ? "Near 1.5 V, follows the finger." : undefined;
}

export const outputStuck: FaultClass = {
  weight: FAULT_WEIGHTS.outputStuck,
  places: (board) =>
    board.chips
      .filter((view) => isLogic(view) && view.chip.contents === "none" && busyOutputs(view).length >= 2)
      .map(
        (view): Tell =>
          (bench) =>
            tellOutputStuck(bench, view),
      ),
};

function tellOutputStuck(bench: Bench, view: ChipView): Told {
  const { random, hand } = bench;
  const { designator, chip } = view;
  const outputs = busyOutputs(view);
  const stuck = random.pick(outputs);
  const side = random.chance(0.65) ? "low" : "high";
  const like = random.some(
    outputs.filter((leg) => leg !== stuck),
    random.whole(1, 2),
  );
  const volts = side === "low" ? random.between(0.02, 0.28) : random.between(4.3, 4.9);
  const level: Probe = { check: { kind: "dc-voltage", at: stuck.place, power: "on", measured: hand.volts(volts) } };
  const leaky = side === "low" && random.chance(0.6);
  const diodes = leaky
    ? [...like.map((leg) => diodeCheck(bench, leg)), diodeCheck(bench, stuck, random.between(0.02, 0.21))]
    : [];
  const lifted = random.chance(0.4)
    ? [trial(bench, stuck.place, "lift-pin", "changed", "The net is free again with the leg out of its hole.")]
    : [];
  const pin = `pin ${stuck.pin.number} (${stuck.pin.name})`;
  const net = stuck.net?.name ?? stuck.place;
  return {
    effect: random.pick(["garbage", "partial", "dead"]),
    probes: [
      ...diodes,
      ...beforeOutputs(bench, view),
      ...like.map((leg) => activityCheck(bench, leg)),
      activityFails(bench, stuck, `stuck ${side}`),
      level,
      ...lifted,
    ],
    at: stuck.place,
    chip: chip.slug,
    failure: side === "low" ? "output-stuck-low" : "output-stuck-high",
    cure: {
      action: "replaced",
      fits: chip.slug,
      how: random.pick([
        `${designator} replaced, socket fitted.`,
        `New ${chip.name}; the holes were cleared with braid, plating whole on both sides.`,
        `Cut out, ${chip.name} from stock in.`,
        `Replaced ${designator}. The lifted leg went back with it.`,
      ]),
    },
    cause: random.pick([
      `${designator} ${pin} holds ${net} ${side} for ever; the other outputs of the chip move.`,
      `One output of ${designator} is shorted inside to ${side === "low" ? "ground" : "its supply"}: ${pin}.`,
      `${net} is held ${side} by ${designator}, ${pin}.`,
    ]),
    titles: [
      `${net} stuck ${side}, held by ${designator}`,
      `One bad pin on ${designator}`,
      `${designator}, ${pin}, ${side} whatever you do`,
      `The odd one out was ${stuck.place}`,
      `${net} would not move`,
    ],
    lessons: [
      `Pins of one role read alike: ${stuck.place} was the odd one out before any data sheet was open.`,
      `A line stuck ${side} has as many suspects as it has pins. Lift one leg at a time, the driver's first.`,
      `Check ${net} with the chip out before blaming it: a solder bridge reads just so.`,
      `${volts < 1 ? "Below 0.3 V" : "Above 4 V"} and steady is a shorted output; two chips that fight sit between the levels.`,
    ],
    tale: [
      `Every line of the group moved, only ${net} did not.`,
      `${hand.volts(volts)} on it, steady as a rail.`,
      lifted.length > 0
        ? `The question was who holds it. I lifted ${stuck.place} and it came free.`
        : `The question was who holds it, and ${designator} is the one that drives it.`,
      leaky
        ? `Diode readings side by side made it plain: the neighbours near 0.62 V, this one far off.`
        : `With power off the pin looked like its neighbours; only the working board gave it away.`,
    ],
    word: `stuck-${side}`,
  };
}

export const driverDead: FaultClass = {
  weight: FAULT_WEIGHTS.driverDead,
  places: (board) => [
    ...board.chips
      .filter(({ chip, legs }) => /driver/.test(chip.function) && legs.some((leg) => drives(leg)))
      .map(
        (view): Tell =>
          (bench) =>
            tellDriverArray(bench, view),
      ),
    ...board.board.placements
      .filter(({ kind, value, chip }) => kind === "transistor" && isPower(`${value} ${chip}`))
      .filter(({ designator }) => {
        const collector = collectorOf(designator, (place) => board.netOf.has(place));
        // A pass transistor or a follower has its collector on a rail or on ground, which cannot be "always on".
        const role = collector === undefined ? undefined : board.netOf.get(collector)?.role;
        return role !== undefined && role !== "power" && role !== "ground";
      })
      .map(
        ({ designator, chip, value }): Tell =>
          (bench) =>
            tellTransistor(bench, designator, chip, value ?? chip?.toUpperCase() ?? "transistor"),
      ),
  ],
};

function drives({ pin, net }: Leg): boolean {
  return pin.type === "open-collector" && net !== null && net.pins.length > 1;
}

/** Transistors that drive something; those that amplify a small signal fail in other ways. */
function isPower(type: string): boolean {
  return /NPN|PNP|Darlington|tip|MOS/i.test(type) && !/small signal|matched|GHz/i.test(type);
}

function collectorOf(designator: string, isWired: (place: string) => boolean): string | undefined {
  return [`${designator}.C`, `${designator}.2`].find((place) => isWired(place));
}

function tellDriverArray(bench: Bench, view: ChipView): Told {
  const { random, hand } = bench;
  const { designator, chip } = view;
  const outputs = view.legs.filter(drives);
  const dead = random.pick(outputs);
  const like = random.some(
    outputs.filter((leg) => leg !== dead),
    2,
  );
  const toGround = (leg: Leg, ohms: number | null): Probe => ({
    check: {
      kind: "resistance",
      at: leg.place,
      to: "GND",
      power: "off",
      expected: "> 10 k",
      measured: ohms === null ? "OL" : hand.ohms(ohms),
    },
  });
  const short = toGround(dead, random.between(0.8, 6));
  const net = dead.net?.name ?? dead.place;
  return {
    effect: "coil",
    probes: [...like.map((leg) => toGround(leg, null)), { ...short, cured: "OL" }, ...beforeOutputs(bench, view)],
    at: dead.place,
    chip: chip.slug,
    failure: "internal-short",
    cure: {
      action: "replaced",
      fits: chip.slug,
      how: random.pick([
        `${designator} replaced after its load on ${net} had been measured.`,
        `New ${chip.name} in a socket. Load and its diode were well.`,
      ]),
    },
    cause: random.pick([
      `The driver on ${dead.place} is shorted to ground, so ${net} is on as soon as its supply comes.`,
      `Output ${dead.pin.name} of ${designator} burnt through.`,
    ]),
    titles: [
      `${net} is on from the start: ${designator}`,
      `One of seven: ${dead.place} shorted`,
      `${designator} drives ${net} without being asked`,
    ],
    lessons: [
      `Measure the load before the new driver goes in, or it is a new driver for one evening.`,
      `With power off every output of ${designator} reads open to ground. The one that does not is the one.`,
    ],
    tale: [
      `Its neighbours read open, ${dead.place} reads a few ohms.`,
      `The load on ${net} is right, so it did not pull the driver down with it.`,
    ],
    word: "driver",
  };
}

function tellTransistor(bench: Bench, designator: string, chip: string | undefined, value: string): Told {
  const { random, hand, view } = bench;
  const collector = collectorOf(designator, (place) => view.netOf.has(place)) ?? `${designator}.C`;
  const emitter = collector.endsWith(".C") ? `${designator}.E` : `${designator}.3`;
  const net = view.netOf.get(collector)?.name ?? collector;
  const isShort = random.chance(0.7);
  const across: Probe = isShort
    ? {
        check: {
          kind: "resistance",
          at: collector,
          to: emitter,
          power: "off",
          expected: "> 1 k",
          measured: hand.ohms(random.between(0.2, 3.4)),
        },
        cured: hand.ohms(random.between(12_000, 60_000)),
      }
    : {
        check: {
          kind: "diode",
          at: `${designator}.${collector.endsWith(".C") ? "B" : "1"}`,
          to: emitter,
          lead: "red",
          power: "off",
          expected: "0.4..1.4 V",
          measured: "OL",
        },
        cured: hand.diode(random.between(0.6, 0.75)),
      };
  return {
    effect: "coil",
    probes: [...railsWell(bench), across],
    at: designator,
    ...(chip === undefined ? {} : { chip }),
    failure: isShort ? "internal-short" : "open",
    cure: {
      action: "replaced",
      ...(chip === undefined ? {} : { fits: chip }),
      how: random.pick([
        `${value} replaced; what hangs on ${net} measured first.`,
        `New transistor, and the resistor in its base while the iron was warm.`,
        `Replaced with the same type. Load measured before and after.`,
      ]),
    },
    cause: isShort
      ? `${designator} is shorted from collector to emitter, so ${net} is always on.`
      : `${designator} is open at the base: whatever drives it, ${net} never comes.`,
    titles: isShort
      ? [`${designator} always on`, `${net} comes with the power and stays`, `Shorted ${designator}, and why it died`]
      : [`${net} never comes: ${designator} open`, `${designator} driven, and does not answer`],
    lessons: isShort
      ? [
          `After a dead driver measure its load and the diode across it, or the next one dies too.`,
          `Two ohms from collector to emitter with power off: no need for power to know.`,
        ]
      : [
          `A transistor can be open and look well. Diode test from base to emitter, red on the base, takes ten seconds.`,
          `Drive at the base and nothing at the collector: the transistor, before everything behind it.`,
        ],
    tale: [
      `Rails were right, so it was the branch.`,
      `In circuit is good enough for a short; out of circuit it read the same.`,
    ],
    word: isShort ? "always-on" : "never-on",
  };
}

/** Two rails that the branch lives on. */
function railsWell(bench: Bench): Probe[] {
  const { random, hand, view } = bench;
  const rails = random.some(
    [...view.rails.values()].filter((rail) => rail.regulated),
    2,
  );
  return rails.map((rail) => ({
    check: {
      kind: "dc-voltage",
      at: rail.name,
      power: "on",
      measured: hand.volts(rail.nominal * (1 + random.noise(0.004))),
    },
  }));
}

export const amplifierDead: FaultClass = {
  weight: FAULT_WEIGHTS.amplifierDead,
  places: (board) =>
    board.chips
      .filter((view) => /operational amplifier/.test(view.chip.function))
      .flatMap((view) => {
        const supplies = view.legs.filter(({ pin }) => pin.role === "supply").map((leg) => railOf(board, leg));
        const low = supplies.find((rail) => rail !== undefined && rail.nominal < 0);
        const high = supplies.find((rail) => rail !== undefined && rail.nominal > 0);
        const outputs = view.legs.filter((leg) => leg.pin.role === "analog" && isDriving(leg));
        if (low === undefined || high === undefined) return [];
        return outputs.map(
          (leg): Tell =>
            (bench) =>
              tellAmplifier(bench, view, leg, [low.nominal, high.nominal]),
        );
      }),
};

function tellAmplifier(bench: Bench, view: ChipView, out: Leg, rails: readonly [number, number]): Told {
  const { random, hand } = bench;
  const { designator, chip } = view;
  const nominal = random.pick(rails);
  const stuck = nominal - Math.sign(nominal) * random.between(0.9, 1.8);
  const net = out.net?.name ?? out.place;
  const offset = (): number => random.noise(0.006);
  const unit = out.pin.name.replace("OUT", "");
  const inputs = view.legs.filter(({ pin }) => pin.name === `${unit}IN-` || pin.name === `${unit}IN+`);
  return {
    effect: "sound",
    probes: [
      ...beforeOutputs(bench, view),
      ...inputs.map((leg): Probe => ({
        check: { kind: "dc-voltage", at: leg.place, power: "on", measured: hand.volts(offset()) },
      })),
      {
        check: {
          kind: "dc-voltage",
          at: out.place,
          power: "on",
          expected: "0 V ±0.1 V",
          measured: hand.volts(stuck),
          note: "No signal in.",
        },
        cured: hand.volts(offset()),
      },
      ...(random.chance(0.4) ? [trial(bench, designator, "cool", "no-change")] : []),
    ],
    at: out.place,
    chip: chip.slug,
    failure: nominal > 0 ? "output-stuck-high" : "output-stuck-low",
    cure: {
      action: "replaced",
      fits: chip.slug,
      how: random.pick([
        `New ${chip.name}, socketed.`,
        `${designator} replaced, feedback resistors measured and well.`,
      ]),
    },
    cause: random.pick([
      `Amplifier ${unit} of ${designator} sits at ${hand.volts(stuck)} with both inputs at zero.`,
      `${out.place} hangs near the ${nominal} V rail and does not care for its inputs.`,
    ]),
    titles: [
      `${net} hangs on ${nominal > 0 ? "the positive" : "the negative"} rail`,
      `${designator}: one amplifier of ${chip.packages[0]?.name === "DIP-8" ? "two" : "four"}`,
      `${hand.volts(stuck)} where silence should be`,
    ],
    lessons: [
      `Both supplies at the amplifier's own pins first. A missing -${Math.abs(rails[0])} V looks exactly like this.`,
      `Inputs at zero and output at a rail: the amplifier. Inputs apart and output at a rail: what is in front of it.`,
    ],
    tale: [
      `Both inputs sat at a few millivolts, the output at ${hand.volts(stuck)}.`,
      `A capacitor behind it keeps the d.c. from the next stage, so by ear it was only silence.`,
    ],
    word: "at-the-rail",
  };
}
