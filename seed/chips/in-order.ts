import type { PackageStyle, PinRole, PinType } from "#lib/core/shared/index.ts";
import type { SeedPackage, SeedPin } from "#seed/shapes.ts";

/** What stands behind the colon in a pin list: electrical type and what the pin is for. */
const KINDS: Record<string, readonly [PinType, PinRole]> = {
  i: ["input", "input"],
  o: ["output", "output"],
  t: ["three-state", "output"],
  oc: ["open-collector", "output"],
  a: ["input", "address"],
  ao: ["output", "address"],
  at: ["three-state", "address"],
  d: ["input", "data"],
  dt: ["three-state", "data"],
  b: ["bidirectional", "data"],
  io: ["bidirectional", "output"],
  clk: ["input", "clock"],
  clko: ["output", "clock"],
  rst: ["input", "reset"],
  cs: ["input", "select"],
  en: ["input", "enable"],
  c: ["input", "control"],
  co: ["output", "control"],
  ct: ["three-state", "control"],
  irq: ["input", "interrupt"],
  irqo: ["open-collector", "interrupt"],
  xi: ["input", "oscillator"],
  xo: ["output", "oscillator"],
  ai: ["input", "analog"],
  ax: ["output", "analog"],
  ac: ["open-collector", "analog"],
  an: ["passive", "analog"],
  nc: ["no-connect", "unused"],
  dnc: ["do-not-connect", "unused"],
};

/** A supply of which the board decides the voltage (operational amplifiers, 4000 series). */
const BY_BOARD = "?";

/**
 * A package from its pins in the order of their numbers, from 1 on: `1A:i /OE:en VCC=5 GND=0 V+=?`. A slash before the
 * name means active low, `=` a supply pin with its volts, `>` a pin that supplies. Throws where the list cannot be read
 * or its length is not what the package's name says.
 */
export function inOrder(name: string, list: string): SeedPackage {
  const pins = list
    .trim()
    .split(/\s+/)
    .map((word, index) => pinOf(word, `${index + 1}`));
  const count = Number(/\d+$/.exec(name)?.[0] ?? pins.length);
  if (!name.startsWith("TO-") && pins.length !== count) throw new Error(`${name} has ${pins.length} pins: ${list}`);
  return { name, style: styleOf(name), pins };
}

/** The same pins in another package: its own number for each pin of the first, and what is on the numbers left over. */
export function rearranged(
  from: SeedPackage,
  name: string,
  numberOf: (number: number) => number,
  left: Record<number, SeedPin["type"]> = {},
): SeedPackage {
  const moved = from.pins.map((pin) => ({ ...pin, number: `${numberOf(Number(pin.number))}` }));
  const added = Object.entries(left).map(([number, type]): SeedPin => ({
    number,
    name: type === "do-not-connect" ? "DU" : "NC",
    type,
    role: "unused",
  }));
  const pins = [...moved, ...added].sort((a, b) => Number(a.number) - Number(b.number));
  return { name, style: styleOf(name), pins };
}

/** The same pins in the same order in a package of another shape: a DIP and an SOIC of one part. */
export function alsoAs(from: SeedPackage, name: string): SeedPackage {
  return rearranged(from, name, (number) => number);
}

function pinOf(word: string, number: string): SeedPin {
  const read = /^(.+?)([:=>])([^:=>]+)$/.exec(word);
  const [, label = "", mark = "", value = ""] = read ?? [];
  const activeLow = label.startsWith("/");
  const pin = { number, name: activeLow ? label.slice(1) : label, ...(activeLow ? { activeLow } : {}) };
  if (mark === "=") return supplyPin(pin, value);
  if (mark === ">") return { ...pin, type: "power-out", role: "supply", ...volts(value) };
  const kind = KINDS[value];
  if (kind === undefined) throw new Error(`Pin ${number} cannot be read: ${word}`);
  return { ...pin, type: kind[0], role: kind[1] };
}

function supplyPin(pin: { number: string; name: string }, value: string): SeedPin {
  if (value === "0") return { ...pin, type: "power-in", role: "ground" };
  return { ...pin, type: "power-in", role: "supply", ...volts(value) };
}

function volts(value: string): { supply?: number } {
  return value === BY_BOARD ? {} : { supply: Number(value) };
}

function styleOf(name: string): PackageStyle {
  const style = (["DIP", "PLCC", "SOIC", "QFP", "SIP", "TO"] as const).find((one) => name.startsWith(`${one}-`));
  return style ?? "other";
}
