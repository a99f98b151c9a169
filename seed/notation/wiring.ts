import type { NetRole } from "#lib/core/shared/index.ts";
import type { SeedChip, SeedConnector, SeedNet, SeedPlacement } from "#seed/shapes.ts";

// Pin numbers in bus order (bit 0 first), from the makers' data sheets of these generic parts.
const up = (from: number, to: number): number[] => Array.from({ length: to - from + 1 }, (_, i) => from + i);
const down = (from: number, to: number): number[] => up(to, from).reverse();

export const Z80 = { address: [...up(30, 40), ...up(1, 5)], data: [14, 15, 12, 8, 7, 9, 10, 13] };
export const CPU_6809 = { address: up(8, 23), data: down(31, 24) };
export const CPU_6502 = { address: [...up(9, 20), ...up(22, 25)], data: down(33, 26) };
export const VIA_6522 = { data: down(33, 26), select: down(38, 35), portA: up(2, 9), portB: up(10, 17) };
export const PPI_8255 = {
  data: down(34, 27),
  portA: [4, 3, 2, 1, 40, 39, 38, 37],
  portB: up(18, 25),
  portC: [14, 15, 16, 17, 13, 12, 11, 10],
};
export const ACIA_6551 = { data: up(18, 25) };
export const USART_8251 = { data: [27, 28, 1, 2, 5, 6, 7, 8] };
export const ROM_28 = {
  address: [10, 9, 8, 7, 6, 5, 4, 3, 25, 24, 21, 23, 2, 26, 27],
  data: [11, 12, 13, 15, 16, 17, 18, 19],
};
export const ROM_24 = { address: [8, 7, 6, 5, 4, 3, 2, 1, 23, 22, 19, 21], data: [9, 10, 11, 13, 14, 15, 16, 17] };
export const RAM_6116 = { address: [8, 7, 6, 5, 4, 3, 2, 1, 23, 22, 19], data: [9, 10, 11, 13, 14, 15, 16, 17] };
export const RAM_2114 = { address: [5, 6, 7, 4, 3, 2, 1, 17, 16, 15], data: [14, 13, 12, 11] };
/** The eighth address (pin 9) is there on the 4164 only; on a 4116 that pin is +5 V. */
export const DRAM = { address: [5, 7, 6, 12, 11, 10, 13, 9] };
export const LS244 = { inputs: [2, 4, 6, 8, 11, 13, 15, 17], outputs: [18, 16, 14, 12, 9, 7, 5, 3] };
export const LS245 = { a: up(2, 9), b: down(18, 11) };
export const LS157 = { a: [2, 5, 11, 14], b: [3, 6, 10, 13], y: [4, 7, 9, 12] };
export const LS373 = { d: [3, 4, 7, 8, 13, 14, 17, 18], q: [2, 5, 6, 9, 12, 15, 16, 19] };
export const LS166 = { parallel: [2, 3, 4, 5, 10, 11, 12, 14] };

/** Supply pins by rail, for the generic parts on these boards. */
const SUPPLY_PINS: Record<string, Record<string, number[]>> = {
  z80cpu: { "+5V": [11], GND: [29] },
  "6502": { "+5V": [8], GND: [1, 21] },
  "6522": { "+5V": [20], GND: [1] },
  "6809": { "+5V": [7], GND: [1] },
  "2716": { "+5V": [24, 21], GND: [12] },
  "6551": { "+5V": [15], GND: [1] },
  "8251": { "+5V": [26], GND: [4] },
  "8255": { "+5V": [26], GND: [7] },
  "2114": { "+5V": [18], GND: [9] },
  "6116": { "+5V": [24], GND: [12] },
  "2764": { "+5V": [28, 1, 27], GND: [14] },
  "27c256": { "+5V": [28, 1], GND: [14] },
  "4116": { "-5V": [1], "+12V": [8], "+5V": [9], GND: [16] },
  "4164": { "+5V": [8], GND: [16] },
  mc1488: { "-12V": [1], GND: [7], "+12V": [14] },
  mc1489: { "+5V": [14], GND: [7] },
  uln2003: { GND: [8] },
};

/** Corner supplies of a 14, 16 or 20 pin logic chip: last pin +5 V, last of the first row ground. */
const CORNER: Record<string, Record<string, number[]>> = {
  "DIP-14": { "+5V": [14], GND: [7] },
  "DIP-16": { "+5V": [16], GND: [8] },
  "DIP-20": { "+5V": [20], GND: [10] },
};

/** One net; `pins` is a list with spaces: `U1.6 U3.27`. */
export function net(role: NetRole, name: string, pins: string): SeedNet {
  return { name, role, pins: pins.split(/\s+/).filter((pin) => pin !== "") };
}

/**
 * The lines of a bus: each tap is a designator with its pins in bus order, from bit `first`; 0 leaves a bit out.
 */
export function bus(
  role: NetRole,
  name: string,
  taps: Record<string, readonly number[]>,
  first = 0,
  suffix = "",
): SeedNet[] {
  const width = Math.max(...Object.values(taps).map((pins) => pins.length));
  return Array.from({ length: width }, (_, bit) => ({
    name: `${name}${bit + first}${suffix}`,
    role,
    pins: Object.entries(taps).flatMap(([designator, pins]) => {
      const pin = pins[bit] ?? 0;
      return pin === 0 ? [] : [`${designator}.${pin}`];
    }),
  }));
}

/** Power and ground nets with the supply pins of every chip, except the designators that are fed another way. */
export function supplyNets(
  placements: readonly SeedPlacement[],
  customs: readonly SeedChip[],
  except: readonly string[] = [],
): SeedNet[] {
  const nets = new Map<string, SeedNet>();
  for (const placement of placements) {
    if (except.includes(placement.designator)) continue;
    for (const [rail, pin] of supplyPins(placement, customs)) {
      const known = nets.get(rail) ?? { name: rail, role: rail === "GND" ? "ground" : "power", pins: [] };
      known.pins.push(`${placement.designator}.${pin}`);
      nets.set(rail, known);
    }
  }
  return [...nets.values()];
}

function supplyPins(placement: SeedPlacement, customs: readonly SeedChip[]): [string, string][] {
  const slug = placement.chip;
  if (slug === undefined) return [];
  const custom = customs.find((chip) => chip.slug === slug)?.packages.find((one) => one.name === placement.package);
  if (custom !== undefined) {
    return custom.pins.flatMap((pin): [string, string][] => {
      if (pin.role === "ground") return [["GND", pin.number]];
      return pin.supply === undefined ? [] : [[railName(pin.supply), pin.number]];
    });
  }
  const known = SUPPLY_PINS[slug] ?? (slug.startsWith("74") ? CORNER[placement.package ?? ""] : undefined);
  return Object.entries(known ?? {}).flatMap(([rail, pins]) => pins.map((pin): [string, string] => [rail, `${pin}`]));
}

function railName(volts: number): string {
  return volts > 0 ? `+${volts}V` : `${volts}V`;
}

/** Two-legged parts between two nets: leg 1 on the first, leg 2 on the second. */
export function across(first: string, second: string, role: [NetRole, NetRole], designators: string): SeedNet[] {
  const list = designators.split(/\s+/);
  return [
    { name: first, role: role[0], pins: list.map((one) => `${one}.1`) },
    { name: second, role: role[1], pins: list.map((one) => `${one}.2`) },
  ];
}

/** Decoupling capacitors from a rail to ground. */
export function decoupling(rail: string, designators: string): SeedNet[] {
  return across(rail, "GND", ["power", "ground"], designators);
}

/** A connector whose pins are given as `1 +5V`, one a line; `7 -` is a pin without a net, `9 DTR = /DTR` names both. */
export function connector(designator: string, name: string, kind: string, table: string): SeedConnector {
  const pins = table
    .split("\n")
    .map((line) => line.trim())
    .filter((line) => line !== "")
    .map((line) => {
      const [number = "", label = "", , net] = line.split(/\s+/);
      if (label === "-") return { number, name: "not connected" };
      return { number, name: label, net: net ?? label };
    });
  return { designator, name, kind, pins };
}

/** All groups together with the pins of the connectors: nets of one name become one. Throws where roles differ. */
export function netlist(connectors: readonly SeedConnector[], ...groups: (readonly SeedNet[])[]): SeedNet[] {
  const nets = new Map<string, SeedNet>();
  for (const one of groups.flat()) {
    const known = nets.get(one.name);
    if (known === undefined) nets.set(one.name, { ...one, pins: [...one.pins] });
    else if (known.role !== one.role) throw new Error(`Net ${one.name} is ${known.role} and ${one.role}`);
    else known.pins.push(...one.pins);
  }
  for (const { designator, pins } of connectors) {
    for (const pin of pins) if (pin.net !== undefined) join(nets, pin.net, `${designator}.${pin.number}`);
  }
  return [...nets.values()];
}

function join(nets: Map<string, SeedNet>, name: string, pin: string): void {
  const known = nets.get(name);
  if (known === undefined) throw new Error(`Connector pin ${pin} names the unknown net ${name}`);
  known.pins.push(pin);
}
