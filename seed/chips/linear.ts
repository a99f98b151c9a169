import type { SeedChip, SeedPackage } from "#seed/shapes.ts";
import { alsoAs, inOrder } from "./in-order.ts";

// Regulators, amplifiers, comparators, timers and converters. Pins from the makers' data sheets.

const DUAL_AMP = "1OUT:ax 1IN-:ai 1IN+:ai V-=? 2IN+:ai 2IN-:ai 2OUT:ax V+=?";
const QUAD_AMP =
  "1OUT:ax 1IN-:ai 1IN+:ai V+=? 2IN+:ai 2IN-:ai 2OUT:ax 3OUT:ax 3IN-:ai 3IN+:ai V-=? 4IN+:ai 4IN-:ai 4OUT:ax";

function chip(slug: string, what: string, packages: SeedPackage[], notes: string): SeedChip {
  return { slug, name: slug.toUpperCase(), function: what, technology: "analog", contents: "none", notes, packages };
}

const positive = (slug: string, volts: number, notes: string): SeedChip =>
  chip(slug, `+${volts} V regulator, 1 A`, [inOrder("TO-220", `IN=? GND=0 OUT>${volts}`)], notes);
const negative = (slug: string, volts: number, notes: string): SeedChip =>
  chip(slug, `-${volts} V regulator, 1 A`, [inOrder("TO-220", `GND=0 IN=? OUT>-${volts}`)], notes);

export const linears: SeedChip[] = [
  positive(
    "7805",
    5,
    "Needs 2 V more in than out, in the valleys of the ripple too. 5 V with the load off and 3 V with it on is the capacitor in front.",
  ),
  positive("7808", 8, "Tab is ground, as on the whole positive series."),
  positive("7812", 12, "Below 14.5 V at the input it only follows."),
  positive("7815", 15, "Half of a ±15 V pair: look at the other half too, one drags the other."),
  negative("7905", 5, "Pins in another order than 7805: ground is 1, and the tab is the input."),
  negative("7912", 12, "Tab is the input, so it must not touch the heat sink of its neighbour."),
  negative("7915", 15, "Oscillates without its capacitor close by: ripple of some hundred kHz on -15 V."),
  chip(
    "78l05",
    "+5 V regulator, 100 mA",
    [inOrder("TO-92", "OUT>5 GND=0 IN=?")],
    "Pin 1 is the output here: the other way round than a 7805.",
  ),
  chip(
    "lm317",
    "adjustable regulator, 1.5 A",
    [inOrder("TO-220", "ADJ:an OUT>? IN=?")],
    "1.25 V between output and adjust, whatever the rest does.",
  ),
  chip(
    "lm723",
    "adjustable regulator with current limit",
    [inOrder("DIP-14", "NC:nc CL:ai CS:ai IN-:ai IN+:ai VREF:ax V-=0 NC:nc VZ:ax OUT:ax VC=? V+=? COMP:an NC:nc")],
    "About 7.15 V at VREF, or there is nothing to regulate to.",
  ),
  chip(
    "lm324",
    "quad operational amplifier",
    [inOrder("DIP-14", QUAD_AMP), alsoAs(inOrder("DIP-14", QUAD_AMP), "SOIC-14")],
    "Inputs go down to the negative supply. As a follower all three pins of one amplifier read the same.",
  ),
  chip(
    "lm339",
    "quad comparator, open collector",
    [
      inOrder(
        "DIP-14",
        "2OUT:ac 1OUT:ac V+=? 1IN-:ai 1IN+:ai 2IN-:ai 2IN+:ai 3IN-:ai 3IN+:ai 4IN-:ai 4IN+:ai V-=? 4OUT:ac 3OUT:ac",
      ),
    ],
    "Outputs want a pull-up. Supply is pin 3, ground pin 12.",
  ),
  chip(
    "lm358",
    "dual operational amplifier",
    [inOrder("DIP-8", DUAL_AMP), alsoAs(inOrder("DIP-8", DUAL_AMP), "SOIC-8")],
    "Pins of all dual amplifiers of the time, but not their speed.",
  ),
  chip(
    "lm311",
    "comparator with strobe",
    [inOrder("DIP-8", "GND:an IN+:ai IN-:ai V-=? BAL:an STRB:an OUT:ac V+=?")],
    "Pin 1 is the emitter of the output and need not be on ground.",
  ),
  chip(
    "tl072",
    "dual operational amplifier, FET inputs",
    [inOrder("DIP-8", DUAL_AMP), alsoAs(inOrder("DIP-8", DUAL_AMP), "SOIC-8")],
    "Output stuck near a rail with both inputs near zero: dead. First make sure that both rails are there.",
  ),
  chip(
    "tl074",
    "quad operational amplifier, FET inputs",
    [inOrder("DIP-14", QUAD_AMP)],
    "V+ on 4, V- on 11. One dead amplifier of four is usual.",
  ),
  chip(
    "ca3080",
    "transconductance amplifier",
    [inOrder("DIP-8", "NC:nc IN-:ai IN+:ai V-=? IABC:an OUT:ax V+=? NC:nc")],
    "IABC (pin 5) sits one diode above V-. More than 2 mA into it and it is gone.",
  ),
  chip(
    "dac0800",
    "8-bit converter, current outputs",
    [
      inOrder(
        "DIP-16",
        "VLC:an /IOUT:ax V-=? IOUT:ax B1:d B2:d B3:d B4:d B5:d B6:d B7:d B8:d V+=? VREF+:an VREF-:an COMP:an",
      ),
    ],
    "B1 is the highest bit. The two outputs add up to the same current always: where the sum changes the chip is gone.",
  ),
  chip(
    "ne555",
    "timer",
    [inOrder("DIP-8", "GND=0 TRIG:ai OUT:o /RESET:rst CV:an THR:ai DIS:ac VCC=5")],
    "Runs from 4.5 to 16 V. Two thirds of the supply at CV, or the chip is gone.",
  ),
  chip(
    "ne556",
    "dual timer",
    [
      inOrder(
        "DIP-14",
        "1DIS:ac 1THR:ai 1CV:an /1RESET:rst 1OUT:o 1TRIG:ai GND=0 2TRIG:ai 2OUT:o /2RESET:rst 2CV:an 2THR:ai 2DIS:ac VCC=5",
      ),
    ],
    "Two 555 in one, with other pins.",
  ),
];
