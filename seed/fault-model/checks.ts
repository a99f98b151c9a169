import type { NetRole, Trial, TrialOutcome } from "#lib/core/shared/index.ts";
import type { SeedCheck, SeedRail } from "#seed/shapes.ts";
import { isBusy, isReceiving, type BoardView, type ChipView, type Leg } from "./board-view.ts";
import type { Hand } from "./hand.ts";
import { WELL } from "./parameters.ts";
import type { Random } from "./random.ts";

/** A check as it was made and, where it failed, what the same check reads on the cured board. */
export interface Probe {
  check: SeedCheck;
  cured?: string;
}

/** Who measures on what. */
export interface Bench {
  view: BoardView;
  random: Random;
  hand: Hand;
}

const MOVING = ["toggling", "active", "pulsing", "moving", "busy", "toggling", "active"];
const STANDING = ["no activity", "dead", "flat", "nothing", "no activity"];

export function moving({ random }: Bench): string {
  return random.pick(MOVING);
}

export function standing({ random }: Bench): string {
  return random.pick(STANDING);
}

/** `5 V ±5 %` */
export function nearVolts(nominal: number, percent: number): string {
  return `${nominal} V ±${percent} %`;
}

/** What a healthy rail reads here, in volts. */
export function goodRail({ random }: Bench, rail: SeedRail): number {
  if (!rail.regulated) return rail.nominal * (1 + random.between(0, WELL.rawSurplus));
  const share = (rail.tolerancePercent ?? 5) / 100;
  return rail.nominal * (1 + Math.max(-share / 2, Math.min(share / 2, random.noise(WELL.railSpread))));
}

/** The rail at its usual place; the board's record says what is expected. */
export function railCheck(bench: Bench, rail: SeedRail): Probe {
  const measured = bench.hand.volts(goodRail(bench, rail));
  return { check: { kind: "dc-voltage", at: rail.name, power: "on", measured } };
}

/** The same, failed: the reading given, and a good one for the proof. */
export function railFails(bench: Bench, rail: SeedRail, volts: number, note?: string): Probe {
  const { check } = railCheck(bench, rail);
  return {
    check: { ...check, measured: bench.hand.volts(volts), ...(note === undefined ? {} : { note }) },
    cured: check.measured,
  };
}

/** The rail that a leg is on, where it is one that can be measured. */
export function railOf({ rails }: BoardView, leg: Leg): SeedRail | undefined {
  return rails.get(leg.net?.name ?? "");
}

/** The supply at the chip's own pin: a good rail at the connector does not prove it. */
export function supplyCheck(bench: Bench, leg: Leg): Probe[] {
  const rail = railOf(bench.view, leg);
  if (rail === undefined || !rail.regulated) return [];
  const volts = goodRail(bench, rail) - Math.sign(rail.nominal) * bench.random.between(0, WELL.pinDrop);
  const check: SeedCheck = { kind: "dc-voltage", at: leg.place, power: "on", measured: bench.hand.volts(volts) };
  return [{ check }];
}

export function activityCheck(bench: Bench, leg: Leg, word = moving(bench)): Probe {
  return { check: { kind: "activity", at: leg.place, power: "on", expected: "active", measured: word } };
}

export function activityFails(bench: Bench, leg: Leg, word: string, note?: string): Probe {
  const { check } = activityCheck(bench, leg, word);
  return { check: note === undefined ? check : { ...check, note }, cured: moving(bench) };
}

export function trial(bench: Bench, at: string, what: Trial, outcome: TrialOutcome, note?: string): Probe {
  const measured = outcome === "no-change" ? "no change" : outcome;
  const when = what === "press" ? "pressed" : what === "cool" ? "cooled" : what === "heat" ? "warm" : undefined;
  return {
    check: {
      kind: "trial",
      at,
      power: "on",
      what,
      outcome,
      measured,
      ...(when === undefined ? {} : { when }),
      ...(note === undefined ? {} : { note }),
    },
  };
}

/** The rails that this chip lives on, then its supply pins, clock, reset, selects and one or two inputs: trade order. */
export function beforeOutputs(bench: Bench, view: ChipView): Probe[] {
  const { random } = bench;
  const supplies = view.legs.filter(({ pin }) => pin.role === "supply" && pin.type === "power-in");
  const rails = new Set(supplies.map((leg) => railOf(bench.view, leg)).filter((rail) => rail !== undefined));
  const busy = (role: NetRole): Leg[] =>
    view.legs.filter((leg) => leg.net?.role === role && isReceiving(leg) && isBusy(leg));
  const inputs = [...busy("address"), ...busy("data")];
  return [
    ...[...rails].map((rail) => railCheck(bench, rail)),
    ...supplies.flatMap((leg) => supplyCheck(bench, leg)),
    ...random
      .some(busy("clock"), 1)
      .map((leg) => activityCheck(bench, leg, random.pick(["clock", "active", "toggling"]))),
    ...view.legs
      .filter((leg) => leg.pin.role === "reset" && isReceiving(leg))
      .slice(0, 1)
      .map((leg) => resetReleased(leg)),
    ...enabled(bench, view),
    ...random.some(busy("select"), random.whole(0, 1)).map((leg) => activityCheck(bench, leg, "pulsing")),
    ...random.some(inputs, random.whole(1, 2)).map((leg) => activityCheck(bench, leg)),
  ];
}

function resetReleased({ place, pin }: Leg): Probe {
  const released = pin.activeLow === true ? "high" : "low";
  return { check: { kind: "level", at: place, power: "on", expected: released, measured: released } };
}

/** An enable that is tied to ground or to the supply: whether it really is. */
function enabled(bench: Bench, view: ChipView): Probe[] {
  const tied = view.legs.filter(
    ({ pin, net }) => pin.role === "enable" && (net?.role === "ground") === (pin.activeLow === true) && net !== null,
  );
  return bench.random
    .some(
      tied.filter(({ net }) => net?.role === "ground" || net?.role === "power"),
      1,
    )
    .map(({ place, pin }) => {
      const level = pin.activeLow === true ? "low" : "high";
      return { check: { kind: "level", at: place, power: "on", expected: level, measured: level } };
    });
}

/** Diode reading of a pin, red on ground, and of one like it beside: compare only like with like. */
export function diodeCheck(bench: Bench, leg: Leg, volts?: number): Probe {
  const { random, hand } = bench;
  const well = hand.diode(WELL.diodeDrop + random.noise(WELL.diodeSpread));
  const check: SeedCheck = {
    kind: "diode",
    at: leg.place,
    to: "GND",
    lead: "black",
    power: "off",
    expected: "0.62 V ±5 %",
    measured: volts === undefined ? well : hand.diode(volts),
  };
  return volts === undefined ? { check } : { check, cured: well };
}

/** From one point to another with power off; `ohms` is null where nothing is connected. */
export function connectionFails(bench: Bench, from: string, to: string, ohms: number | null, note?: string): Probe {
  return {
    check: {
      kind: "continuity",
      at: from,
      to,
      power: "off",
      expected: "< 2 ohm",
      measured: ohms === null ? "OL" : bench.hand.ohms(ohms),
      ...(note === undefined ? {} : { note }),
    },
    cured: bench.hand.ohms(bench.random.between(0.1, 0.6)),
  };
}

/** What somebody saw, with the verdict that only eyes can give. */
export function seen(at: string, what: string, reason: string, cured: string): Probe {
  return {
    check: { kind: "visual", at, power: "off", measured: what, verdict: { chosen: "out-of-spec", reason } },
    cured,
  };
}
