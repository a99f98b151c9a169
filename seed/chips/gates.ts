import type { Technology } from "#lib/core/shared/index.ts";
import type { SeedChip, SeedPackage } from "#seed/shapes.ts";
import { alsoAs, inOrder } from "./in-order.ts";

// Gates, inverters and open-collector buffers. Pins from the makers' data sheets of the 74 series.

const TWO_IN = "1A:i 1B:i 1Y:o 2A:i 2B:i 2Y:o GND=0 3Y:o 3A:i 3B:i 4Y:o 4A:i 4B:i VCC=5";
const OUTPUT_FIRST = "1Y:o 1A:i 1B:i 2Y:o 2A:i 2B:i GND=0 3A:i 3B:i 3Y:o 4A:i 4B:i 4Y:o VCC=5";
const SIX = "1A:i 1Y:o 2A:i 2Y:o 3A:i 3Y:o GND=0 4Y:o 4A:i 5Y:o 5A:i 6Y:o 6A:i VCC=5";
const openCollector = (list: string): string => list.replaceAll(":o ", ":oc ");

function gate(
  slug: string,
  technology: Technology,
  what: string,
  pins: string,
  notes: string,
  more: (dip: SeedPackage) => SeedPackage[] = () => [],
): SeedChip {
  const dip = inOrder("DIP-14", pins);
  return {
    slug,
    name: slug.toUpperCase(),
    function: what,
    technology,
    contents: "none",
    notes,
    packages: [dip, ...more(dip)],
  };
}

const withSoic = (dip: SeedPackage): SeedPackage[] => [alsoAs(dip, "SOIC-14")];

export const gates: SeedChip[] = [
  gate(
    "74ls00",
    "LS",
    "quad 2-input NAND",
    TWO_IN,
    "Both inputs high and the output high too: the gate is gone. Unused inputs should sit on +5 V; one that floats at 1.5 V is a broken trace more often than a broken chip.",
    withSoic,
  ),
  gate(
    "74ls02",
    "LS",
    "quad 2-input NOR",
    OUTPUT_FIRST,
    "Outputs come first here: pin 1 is an output. Fitted in place of a 74LS00 it ties outputs to outputs.",
  ),
  gate(
    "74ls03",
    "LS",
    "quad 2-input NAND, open collector",
    openCollector(TWO_IN),
    "Needs a pull-up. An output that never goes high is a missing resistor before it is a dead gate.",
  ),
  gate(
    "74ls04",
    "LS",
    "hex inverter",
    SIX,
    "Often the crystal oscillator. Measure the clock behind the last inverter: the probe can stop the crystal.",
    withSoic,
  ),
  gate(
    "74ls06",
    "LS",
    "hex inverting buffer, open collector, 30 V",
    openCollector(SIX),
    "Drives lamps and relays as well as logic, so outputs die by what hangs on them. Measure the load first.",
  ),
  gate(
    "74ls07",
    "LS",
    "hex buffer, open collector, 30 V",
    openCollector(SIX),
    "Not inverting, pull-up needed. Looks like a 74LS06 in every way but the sense.",
  ),
  gate(
    "74ls08",
    "LS",
    "quad 2-input AND",
    TWO_IN,
    "Same pins as 74LS00, 74LS32 and 74LS86. A wrong one fits, gets no hotter, and half works.",
    withSoic,
  ),
  gate(
    "74ls10",
    "LS",
    "triple 3-input NAND",
    "1A:i 1B:i 2A:i 2B:i 2C:i 2Y:o GND=0 3Y:o 3A:i 3B:i 3C:i 1Y:o 1C:i VCC=5",
    "Gate 1 is spread over both ends: inputs 1, 2 and 13, output 12.",
  ),
  gate(
    "74ls14",
    "LS",
    "hex inverter with Schmitt-trigger inputs",
    SIX,
    "Usual in reset circuits. A leaky timing capacitor holds its input at about 1 V: below the upper threshold for ever.",
    withSoic,
  ),
  gate(
    "74ls20",
    "LS",
    "dual 4-input NAND",
    "1A:i 1B:i NC:nc 1C:i 1D:i 1Y:o GND=0 2Y:o 2A:i 2B:i NC:nc 2C:i 2D:i VCC=5",
    "Pins 3 and 11 are free.",
  ),
  gate(
    "74ls30",
    "LS",
    "8-input NAND",
    "A:i B:i C:i D:i E:i F:i GND=0 Y:o NC:nc NC:nc G:i H:i NC:nc VCC=5",
    "Address decoders. Low only while all eight are high, so a meter reads nearly 5 V on a healthy one.",
  ),
  gate(
    "74ls32",
    "LS",
    "quad 2-input OR",
    TWO_IN,
    "Same pins as 74LS08. In a decoder a stuck output shows as one select that never comes.",
    withSoic,
  ),
  gate(
    "74ls86",
    "LS",
    "quad 2-input exclusive OR",
    TWO_IN,
    "With one input low it passes, with one input high it inverts: an open input makes an inverted picture.",
  ),
  gate(
    "74ls125",
    "LS",
    "quad buffer, three-state, active-low enables",
    "/1OE:en 1A:i 1Y:t /2OE:en 2A:i 2Y:t GND=0 3Y:t 3A:i /3OE:en 4Y:t 4A:i /4OE:en VCC=5",
    "Four enables of their own. An output that is not enabled looks dead and is well.",
  ),
  gate(
    "74hc00",
    "HC",
    "quad 2-input NAND",
    TWO_IN,
    "CMOS inputs want 3.15 V for a high at 4.5 V supply. Behind an LS output it needs a pull-up.",
    withSoic,
  ),
  gate(
    "74hc04",
    "HC",
    "hex inverter",
    SIX,
    "As an oscillator it starts with other resistors than the LS part: do not swap one for the other there.",
    withSoic,
  ),
  gate(
    "74hct04",
    "HCT",
    "hex inverter, TTL input levels",
    SIX,
    "Takes the place of an LS part behind LS outputs. Open inputs must not be left open.",
  ),
];
