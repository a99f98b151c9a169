import type { SeedNet } from "#seed/shapes.ts";
import {
  isBusy,
  isDriving,
  isLogic,
  isReceiving,
  partOf,
  type BoardView,
  type ChipView,
  type Leg,
} from "../board-view.ts";
import {
  activityCheck,
  activityFails,
  beforeOutputs,
  connectionFails,
  railCheck,
  seen,
  trial,
  type Bench,
} from "../checks.ts";
import type { FaultClass, Tell, Told } from "../fault.ts";
import { FAULT_WEIGHTS } from "../parameters.ts";

// What connects and no longer does: sockets, edge connectors, joints, traces. They fail more often than chips.

/** Another pin on the same net, on another part. */
function farEnd(net: SeedNet, place: string): string | undefined {
  return net.pins.find((pin) => partOf(pin) !== partOf(place));
}

function contactLegs(view: ChipView): { leg: Leg; far: string }[] {
  return view.legs.flatMap((leg) => {
    const far = leg.net === null ? undefined : farEnd(leg.net, leg.place);
    const isSignal = leg.net !== null && leg.net.role !== "power" && leg.net.role !== "ground";
    return far !== undefined && isSignal && isBusy(leg) ? [{ leg, far }] : [];
  });
}

export const socketContact: FaultClass = {
  weight: FAULT_WEIGHTS.socketContact,
  places: (board) =>
    board.chips
      .filter((view) => view.placement.socketed === true && isLogic(view) && contactLegs(view).length > 0)
      .map(
        (view): Tell =>
          (bench) =>
            tellSocket(bench, view),
      ),
};

function tellSocket(bench: Bench, view: ChipView): Told {
  const { random } = bench;
  const { designator, chip } = view;
  const { leg, far } = random.pick(contactLegs(view));
  const ohms = random.chance(0.4) ? null : random.between(28, 900);
  return {
    effect: "intermittent",
    probes: [
      ...beforeOutputs(bench, view),
      activityFails(
        bench,
        leg,
        random.pick(["noise", "floating"]),
        "On the chip's own leg; at the solder side it moves.",
      ),
      trial(bench, designator, "press", "changed"),
      connectionFails(bench, leg.place, far, ohms, "From the chip's leg. Unplugged again for this."),
      trial(bench, designator, "reseat", random.pick(["changed", "no-change"])),
    ],
    at: leg.place,
    chip: chip.slug,
    failure: "bad-socket",
    cure: {
      action: "replaced",
      how: random.pick([
        `New turned-pin socket at ${designator}, the same chip back in.`,
        `Socket out, holes cleared, new one in. The chip was never the fault.`,
        `Old socket cut apart row by row so that the plating stayed; new socket.`,
      ]),
    },
    cause: random.pick([
      `Contact ${leg.pin.number} of the socket at ${designator} does not grip any more.`,
      `The socket under ${designator} has lost its spring at pin ${leg.pin.number}.`,
    ]),
    titles: [
      `Works while you press ${designator}`,
      `Socket of ${designator}, pin ${leg.pin.number}`,
      `${chip.name} accused, socket guilty`,
      `Comes and goes with a finger on ${designator}`,
      `Reseating helped, for one evening`,
    ],
    lessons: [
      `Reseating cures for an evening. If it helps at all, the socket goes.`,
      `Measure on the leg of the chip, not on the solder side: between the two is the socket.`,
      `Single-wipe sockets of these years are all tired. Keep ten good ones in the drawer.`,
      `Press, note which way it changes, then measure that pin. Do not press twice and call it proved.`,
    ],
    tale: [
      `On the solder side everything moved. On the leg itself, noise.`,
      `A finger on ${designator} brought it back, which is a clue and no cure.`,
      `I had the ${chip.name} in another machine before I believed it: there it ran.`,
    ],
    word: "socket",
  };
}

export const dirtyContact: FaultClass = {
  weight: FAULT_WEIGHTS.dirtyContact,
  places: (view) =>
    view.board.connectors
      .filter(({ kind }) => /edge|header|DIN|plug/i.test(kind))
      .flatMap(({ designator, pins }) => {
        const wired = pins.flatMap(({ number, net }) => {
          const found = view.board.nets.find((one) => one.name === net);
          const far = found === undefined ? undefined : chipEnd(view, found, designator);
          return found !== undefined && far !== undefined
            ? [{ place: `${designator}.${number}`, net: found, far }]
            : [];
        });
        return wired.length < 3 ? [] : [(bench: Bench) => tellDirty(bench, designator, wired)];
      }),
};

/** A chip's pin on this net, as the far end of a connector's pin. */
function chipEnd(view: BoardView, net: SeedNet, connector: string): string | undefined {
  if (net.role === "ground") return undefined;
  return net.pins.find((pin) => partOf(pin) !== connector && view.legAt.has(pin));
}

interface Way {
  place: string;
  net: SeedNet;
  far: string;
}

function tellDirty(bench: Bench, designator: string, wired: readonly Way[]): Told {
  const { random, view } = bench;
  const bad = random.some(wired, random.whole(1, 3));
  const first = bad[0];
  const rail = random.some(
    [...view.rails.values()].filter((one) => one.regulated),
    1,
  );
  const net = first?.net.name ?? designator;
  return {
    effect: random.pick(["intermittent", "partial"]),
    probes: [
      ...bad.map(({ place, far }) => connectionFails(bench, place, far, random.between(6, 90))),
      ...rail.map((one) => railCheck(bench, one)),
      trial(bench, designator, "clean", random.pick(["changed", "cured"])),
    ],
    at: designator,
    failure: "dirty-contact",
    cure: {
      action: "cleaned",
      how: random.pick([
        `Contacts of ${designator} cleaned with alcohol and a strip of card, not with a rubber: the gold is thin.`,
        `Cleaned both halves, plugged ten times, measured again.`,
        `Contact cleaner, a soft brush, dried; no grease.`,
      ]),
    },
    cause: random.pick([
      `Tarnish on ${designator}: ${bad.map(({ place }) => place).join(", ")} had several ohms.`,
      `${designator} was dirty and nothing else was wrong.`,
    ]),
    titles: [
      `Nothing but dirt on ${designator}`,
      `${designator} cleaned, and that was all`,
      `Ohms where there should be none: ${designator}`,
      `${net} through thirty years of nicotine`,
    ],
    lessons: [
      `Clean ${designator} before the scope is even warm. It costs five minutes and cures one in six.`,
      `Resistance of a contact is measured through it, from board to board, not on each half.`,
      `It will come back in two years. The label on the machine says when it was cleaned.`,
    ],
    tale: [
      `I should have begun with ${designator}, as it says on the wall.`,
      `After cleaning every way of it read under half an ohm.`,
      `The cloth was black.`,
    ],
    word: "dirt",
  };
}

export const coldJoint: FaultClass = {
  weight: FAULT_WEIGHTS.coldJoint,
  places: (view) =>
    view.board.connectors.flatMap(({ designator, pins }) =>
      pins.flatMap(({ number, net }): Tell[] => {
        const found = view.board.nets.find((one) => one.name === net);
        const far = found === undefined ? undefined : chipEnd(view, found, designator);
        if (found === undefined || far === undefined) return [];
        return [(bench) => tellJoint(bench, designator, { place: `${designator}.${number}`, net: found, far })];
      }),
    ),
};

function tellJoint(bench: Bench, designator: string, { place, net, far }: Way): Told {
  const { random, hand } = bench;
  const bad = connectionFails(bench, place, far, random.chance(0.5) ? null : random.between(14, 300));
  const pressed = {
    check: { ...bad.check, when: "pressed", measured: hand.ohms(random.between(0.2, 0.7)) },
  };
  return {
    effect: random.pick(["intermittent", "partial", "dead"]),
    probes: [
      ...(random.chance(0.6)
        ? [
            seen(
              place,
              random.pick(["cracked ring round the pin", "dull, with a hair crack", "pin stands in a grey crater"]),
              "A joint should shine and have no ring.",
              "joint bright and whole",
            ),
          ]
        : []),
      bad,
      pressed,
      trial(bench, place, "press", "changed"),
    ],
    at: place,
    failure: "cold-joint",
    cure: {
      action: "resoldered",
      how: random.pick([
        `All pins of ${designator} resoldered with fresh tin and flux.`,
        `Old solder off, new on, the whole row.`,
        `Resoldered ${place} and its neighbours; the plug now has a strain relief.`,
      ]),
    },
    cause: random.pick([
      `Cracked joint at ${place}: ${net.name} came and went with the cable.`,
      `${place} was held by friction only.`,
    ]),
    titles: [
      `Ring crack at ${place}`,
      `Do not move the cable: ${designator}`,
      `${net.name} lost between plug and board`,
      `${designator} wanted solder, nothing more`,
      `A joint that looked well from two metres`,
    ],
    lessons: [
      `Joints at connectors crack first. Magnifier and a side light, before any power.`,
      `Beep while you wiggle: ${place} was perfect when left in peace.`,
      `Solder the whole row. The next pin is as old as this one.`,
    ],
    tale: [
      `Left alone it beeped. With a finger on ${designator} it did not.`,
      `Under side light there was the ring, as fine as a hair.`,
      `I did the whole row, since the iron was hot.`,
    ],
    word: "joint",
  };
}

export const brokenTrace: FaultClass = {
  weight: FAULT_WEIGHTS.brokenTrace,
  places: (view) =>
    view.board.nets
      .filter(({ role }) => role === "address" || role === "data" || role === "select" || role === "clock")
      .flatMap((net): Tell[] => {
        const legs = net.pins.flatMap((pin) => view.legAt.get(pin) ?? []).filter(isBusy);
        const from = legs.find(isDriving);
        const to = legs.find((leg) => isReceiving(leg) && partOf(leg.place) !== partOf(from?.place ?? leg.place));
        if (from === undefined || to === undefined) return [];
        return [(bench) => tellTrace(bench, net, from, to)];
      }),
};

function tellTrace(bench: Bench, net: SeedNet, from: Leg, to: Leg): Told {
  const { random, view } = bench;
  const receiver = view.chipAt.get(partOf(to.place));
  const before =
    receiver === undefined ? [] : beforeOutputs(bench, receiver).filter(({ check }) => check.at !== to.place);
  const why = random.pick([
    "a scratch",
    "a lifted pad",
    "a via that is no more",
    "a slip of somebody's screwdriver",
    "corrosion under the mask",
  ]);
  return {
    effect: random.pick(["garbage", "partial", "intermittent"]),
    probes: [
      ...before,
      activityCheck(bench, from),
      activityFails(bench, to, random.pick(["floating", "noise", "no activity"])),
      connectionFails(
        bench,
        from.place,
        to.place,
        random.chance(0.85) ? null : random.between(400, 9000),
        "Unplugged for this.",
      ),
    ],
    at: net.name,
    failure: "broken-trace",
    cure: {
      action: "trace-repaired",
      how: random.pick([
        `Bodge wire from ${from.place} to ${to.place}, 0.1 mm enamelled, fixed with lacquer.`,
        `Scraped bright on both sides of the break, a strand of wire soldered along it.`,
        `Wire on the solder side from ${from.place} to ${to.place}.`,
      ]),
    },
    cause: random.pick([
      `${net.name} is interrupted between ${from.place} and ${to.place} by ${why}.`,
      `${why.charAt(0).toUpperCase()}${why.slice(1)} parts ${net.name} on its way to ${partOf(to.place)}.`,
    ]),
    titles: [
      `${net.name} leaves ${partOf(from.place)} and never arrives`,
      `Broken trace between ${partOf(from.place)} and ${partOf(to.place)}`,
      `${to.place} floats, ${from.place} does not`,
      `Two chips, both well, one wire less`,
      `${net.name} parted by ${why}`,
    ],
    lessons: [
      `Measure a line at both ends. ${from.place} moving proves nothing for ${to.place}.`,
      `A floating TTL input near 1.5 V is a wire before it is a chip.`,
      `Do not stop at the first beep: the beeper is happy with 50 ohm, the line is not.`,
      `Look along the edge and under the clamps. Most broken traces are somebody's fault, and recent.`,
    ],
    tale: [
      `Moving at ${from.place}, dead at ${to.place}. Between them twelve centimetres of trace.`,
      `Against the light one could see it: ${why}.`,
      `I had the chip half out in my mind before I thought of beeping.`,
    ],
    word: "trace",
  };
}
