import type { SeedPlacement, SeedRail } from "#seed/shapes.ts";
import type { BoardView, ChipView } from "../board-view.ts";
import { goodRail, railCheck, railFails, trial, type Bench, type Probe } from "../checks.ts";
import type { FaultClass, Tell, Told } from "../fault.ts";
import { FAULT_WEIGHTS, WELL } from "../parameters.ts";

// What goes wrong between the transformer and the chip's supply pin.

export const regulatorDead: FaultClass = {
  weight: FAULT_WEIGHTS.regulatorDead,
  places: (view) =>
    [...view.rails.values()].flatMap((rail) => {
      const source = view.chipAt.get(rail.source ?? "");
      const isKnown = source !== undefined && /regulator/.test(source.chip.function);
      return isKnown ? [(bench: Bench) => tellRegulator(bench, rail, source)] : [];
    }),
};

function tellRegulator(bench: Bench, rail: SeedRail, source: ChipView): Told {
  const { random, hand, view } = bench;
  const { designator, chip } = source;
  const input = source.legs.find(({ pin }) => pin.type === "power-in" && pin.role === "supply");
  const raw = view.rails.get(input?.net?.name ?? "");
  const least = rail.nominal + Math.sign(rail.nominal) * 2;
  const before = raw === undefined ? least * random.between(1.15, 1.5) : goodRail(bench, raw);
  const left = rail.nominal * random.pick([0, 0.004, 0.02, 0.31, 0.55]);
  const others = random.some(
    [...view.rails.values()].filter((other) => other !== rail && other !== raw && other.regulated),
    2,
  );
  return {
    effect: random.pick(["dead", "partial"]),
    probes: [
      ...others.map((other) => railCheck(bench, other)),
      railFails(bench, rail, left),
      {
        check: {
          kind: "dc-voltage",
          at: input?.place ?? designator,
          power: "on",
          expected: `${rail.nominal > 0 ? "≥" : "≤"} ${least} V`,
          measured: hand.volts(before),
        },
      },
      {
        check: {
          kind: "resistance",
          at: rail.name,
          to: "GND",
          power: "off",
          expected: "> 20 ohm",
          measured: hand.ohms(random.between(140, 1900)),
          note: "So nothing pulls it down.",
        },
      },
    ],
    at: designator,
    chip: chip.slug,
    failure: "dead",
    cure: {
      action: "replaced",
      fits: chip.slug,
      how: random.pick([
        `New ${chip.name} with fresh compound and the old mica washer.`,
        `${designator} replaced. Tried on a dummy load before the board saw it.`,
        `Replaced; the cold joint at its input was made good as well.`,
      ]),
    },
    cause: random.pick([
      `${designator} gets ${hand.volts(before)} and gives ${hand.volts(left)}.`,
      `No ${rail.name}: ${designator} is open inside, the load is well.`,
    ]),
    titles: [
      `No ${rail.name}, raw voltage well`,
      `${designator} took in ${hand.volts(before)} and kept it`,
      `${rail.name} missing: the regulator for once`,
      `${chip.name} dead, board innocent`,
    ],
    lessons: [
      `Input of the regulator, output, then resistance of the load: three readings, and it is decided.`,
      `The regulator is seldom the first to die. Measure ${rail.name} to ground before the new one goes in.`,
      `Try the new ${chip.name} on a dummy load. It costs a minute, a board full of chips costs more.`,
    ],
    tale: [
      `${hand.volts(before)} in, ${hand.volts(left)} out, and no short behind it.`,
      `The other rails were well, so I could stay in one corner of the board.`,
      `With the output leg unsoldered it still gave nothing.`,
    ],
    word: "regulator",
  };
}

/** Capacitors whose one leg is on a rail, the other on ground. */
function onRail(view: BoardView, isMeant: (value: string) => boolean): [SeedPlacement, SeedRail][] {
  return view.board.placements.flatMap((placement): [SeedPlacement, SeedRail][] => {
    if (placement.kind !== "capacitor" || !isMeant(placement.value ?? "")) return [];
    const legs = ["1", "2"].map((leg) => view.netOf.get(`${placement.designator}.${leg}`));
    const rail = legs.map((net) => view.rails.get(net?.name ?? "")).find((found) => found !== undefined);
    return rail !== undefined && legs.some((net) => net?.role === "ground") ? [[placement, rail]] : [];
  });
}

export const tantalumShort: FaultClass = {
  weight: FAULT_WEIGHTS.tantalumShort,
  places: (view) =>
    onRail(view, (value) => /tantalum/.test(value)).map(
      ([part, rail]): Tell =>
        (bench) =>
          tellTantalum(bench, part, rail),
    ),
};

function tellTantalum(bench: Bench, { designator, value = "" }: SeedPlacement, rail: SeedRail): Told {
  const { random, hand, view } = bench;
  const ohms = random.between(0.3, 4.2);
  const others = random.some(
    [...view.rails.values()].filter((other) => other !== rail && other.regulated),
    1,
  );
  const burnt = random.chance(0.35);
  const lifted = random.chance(0.6);
  return {
    effect: random.pick(["dead", "dead", "hot"]),
    probes: [
      ...(burnt
        ? [
            {
              check: { kind: "visual", at: designator, power: "off", measured: "brown ring on the board round it" },
            } as const,
          ]
        : []),
      {
        check: {
          kind: "resistance",
          at: rail.name,
          to: "GND",
          power: "off",
          expected: "> 20 ohm",
          measured: hand.ohms(ohms),
        },
        cured: hand.ohms(random.between(120, 900)),
      },
      ...others.map((other) => railCheck(bench, other)),
      railFails(bench, rail, rail.nominal * random.between(0.01, 0.09), "Bench supply at 0.5 A limit."),
      ...(lifted ? [trial(bench, designator, "lift-pin", "changed", "The short is gone with one leg out.")] : []),
    ],
    at: designator,
    failure: "internal-short",
    cure: {
      action: "replaced",
      how: random.pick([
        `${value} replaced with one of twice the voltage.`,
        `Out, and an electrolytic of the same value in, the right way round.`,
        `New tantalum, 35 V. The others of its age on ${rail.name} went too.`,
      ]),
    },
    cause: random.pick([
      `${designator}, ${value}, is a piece of wire: ${hand.ohms(ohms)} from ${rail.name} to ground.`,
      `Tantalum ${designator} shorted ${rail.name}.`,
    ]),
    titles: [
      `${rail.name} shorted by ${designator}`,
      `${hand.ohms(ohms)} on ${rail.name}, and not a chip`,
      `A tantalum that gave up: ${designator}`,
      `Supply in current limit on ${rail.name}`,
      burnt ? `Brown ring round ${designator}` : `Nothing hot, nothing burnt, ${rail.name} gone`,
    ],
    lessons: [
      `Half an ohm on a rail is a tantalum until proved otherwise. Millivolts along the trace lead you there.`,
      `Do not cut chips for a short on ${rail.name}: lift the yellow drops first, they take a minute each.`,
      `Measure the rail to ground before the first power-on; then there is no smoke to follow, and none is needed.`,
      `A shorted capacitor draws so much that it stays cold under a current limit. The millivolt meter finds what the finger does not.`,
    ],
    tale: [
      `I fed ${rail.name} at half an ampere and followed the millivolts: they fell towards ${designator} and rose behind it.`,
      lifted ? `One leg out, and ${rail.name} was free.` : `With ${designator} out altogether, ${rail.name} was free.`,
      burnt ? `The brown ring I had taken for old flux.` : `It looked like new.`,
    ],
    word: "tantalum",
  };
}

export const electrolyticDry: FaultClass = {
  weight: FAULT_WEIGHTS.electrolyticDry,
  places: (view) =>
    onRail(view, (value) => Number(/^(\d+)u/.exec(value)?.[1] ?? 0) >= 47 && !/tantalum|film/.test(value)).map(
      ([part, rail]): Tell =>
        (bench) =>
          tellElectrolytic(bench, part, rail),
    ),
};

function tellElectrolytic(bench: Bench, { designator, value = "" }: SeedPlacement, rail: SeedRail): Told {
  const { random, hand } = bench;
  const microfarads = Number(/^\d+/.exec(value)?.[0] ?? 100);
  const [bad, limit] = rail.regulated ? [random.between(170, 640), 50] : [random.between(3100, 6400), 2500];
  const good = rail.regulated ? random.between(WELL.rippleFrom, WELL.rippleTo) : random.between(700, 1700);
  const left = microfarads * random.between(0.03, 0.35);
  const esr = random.between(2.4, 18);
  return {
    effect: random.pick(["hum", "hum", "intermittent"]),
    probes: [
      railCheck(bench, rail),
      {
        check: {
          kind: "ripple",
          at: rail.name,
          power: "on",
          expected: `≤ ${limit} mVpp`,
          measured: hand.millivolts(bad),
        },
        cured: hand.millivolts(good),
      },
      {
        check: {
          kind: "esr",
          at: designator,
          power: "off",
          expected: "< 0.5 ohm",
          measured: hand.ohms(esr),
          note: "Unplugged and discharged.",
        },
        cured: "0.1 ohm",
      },
      ...(random.chance(0.5)
        ? [
            {
              check: {
                kind: "capacitance",
                at: designator,
                power: "off",
                expected: `${microfarads} uF ±20 %`,
                measured: `${left.toFixed(left < 10 ? 1 : 0)} uF`,
                note: "One leg out.",
              },
              cured: `${Math.round(microfarads * random.between(0.92, 1.12))} uF`,
            } as const,
          ]
        : []),
    ],
    at: designator,
    failure: "out-of-value",
    cure: {
      action: "replaced",
      how: random.pick([
        `New ${value}, 105 °C type, polarity drawn on the board first.`,
        `Replaced, and its sisters of the same make measured: they were well and stayed.`,
        `${designator} replaced. The old one was light: dry.`,
      ]),
    },
    cause: random.pick([
      `${designator} has dried out: ${hand.ohms(esr)} of series resistance.`,
      `What is left of ${value} at ${designator} is ${left.toFixed(0)} µF.`,
    ]),
    titles: [
      `${Math.round(bad)} mV of ripple on ${rail.name}`,
      `${designator} dry, ${rail.name} on average well`,
      `The meter said ${rail.name} was right, the scope did not`,
      `Hum, ripple, ${designator}`,
    ],
    lessons: [
      `A d.c. meter shows the average. ${rail.name} was right to two digits and still the fault.`,
      `Ripple at twice the mains is a capacitor; at once the mains it is half a rectifier.`,
      `Measure ESR in place, unplugged and discharged, and change what is bad instead of all that is old.`,
    ],
    tale: [
      `${rail.name} measured well, and I nearly went on to the logic.`,
      `On the scope there was a saw-tooth of ${hand.millivolts(bad)} on it.`,
      `A good one held across it from outside, power off in between, made the difference plain.`,
    ],
    word: "ripple",
  };
}

/** A cell that has leaked and eaten what lies beside it. */
export const batteryLeak: FaultClass = {
  weight: FAULT_WEIGHTS.batteryLeak,
  places: (view) =>
    view.board.placements
      .filter(({ kind }) => kind === "battery")
      .flatMap(({ designator }) => {
        const net = view.board.nets.find(
          (one) => one.role === "power" && one.pins.some((pin) => pin.startsWith(`${designator}.`)),
        );
        const far = net?.pins.find((pin) => !pin.startsWith(`${designator}.`));
        const near = net?.pins.find((pin) => pin.startsWith(`${designator}.`));
        if (net === undefined || far === undefined || near === undefined) return [];
        return [(bench: Bench) => tellLeak(bench, designator, { name: net.name, near, far })];
      }),
};

function tellLeak(bench: Bench, designator: string, net: { name: string; near: string; far: string }): Told {
  const { random, hand } = bench;
  const eaten: Probe = {
    check: {
      kind: "continuity",
      at: net.near,
      to: net.far,
      power: "off",
      expected: "< 2 ohm",
      measured: random.chance(0.6) ? "OL" : hand.ohms(random.between(80, 4000)),
    },
    cured: hand.ohms(random.between(0.1, 0.5)),
  };
  const look: Probe = {
    check: {
      kind: "visual",
      at: designator,
      power: "off",
      measured: random.pick(["green crust on both legs", "white bloom, joints dull", "blue-green film under the mask"]),
      verdict: { chosen: "out-of-spec", reason: "No cell should have anything outside of it." },
    },
    cured: "clean",
  };
  return {
    effect: "settings",
    probes: [look, eaten],
    at: net.name,
    failure: "corrosion",
    cure: {
      action: "trace-repaired",
      how: random.pick([
        `Cell out, vinegar, water, alcohol, dried; trace scraped bright, wire laid over it. New cell on wires, away from the board.`,
        `Neutralised and washed twice, bodge wire from ${net.near} to ${net.far}, lacquer over it.`,
      ]),
    },
    cause: `The cell at ${designator} has leaked and eaten ${net.name}.`,
    titles: [
      `${designator} leaked: ${net.name} eaten`,
      `Forgets everything, and green under ${designator}`,
      `Battery out first, questions later`,
    ],
    lessons: [
      `The cell comes out on the day the machine comes in, working or not.`,
      `Corrosion goes under the mask further than you see. Beep every trace within two centimetres.`,
      `Write the settings down before the cell comes out, even if it is nearly flat.`,
    ],
    tale: [`The smell was there before the lid was off.`, `Under the microscope the trace was a line of green powder.`],
    word: "leak",
  };
}
