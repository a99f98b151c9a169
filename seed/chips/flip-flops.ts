import type { Technology } from "#lib/core/shared/index.ts";
import type { SeedChip } from "#seed/shapes.ts";
import { inOrder } from "./in-order.ts";

// Flip-flops, counters, shift registers and timers of the 74 series. Pins from the makers' data sheets.

const DUAL_D = "/1CLR:rst 1D:i 1CLK:clk /1PRE:c 1Q:o /1Q:o GND=0 /2Q:o 2Q:o /2PRE:c 2CLK:clk 2D:i /2CLR:rst VCC=5";
const COUNTER = "/CLR:rst CLK:clk A:i B:i C:i D:i ENP:en GND=0 /LOAD:c ENT:en QD:o QC:o QB:o QA:o RCO:o VCC=5";

function chip(slug: string, technology: Technology, what: string, pins: string, notes: string): SeedChip {
  const legs = pins.trim().split(/\s+/).length;
  const packages = [inOrder(`DIP-${legs}`, pins)];
  return { slug, name: slug.toUpperCase(), function: what, technology, contents: "none", notes, packages };
}

export const flipFlops: SeedChip[] = [
  chip(
    "74ls74",
    "LS",
    "dual D flip-flop with preset and clear",
    DUAL_D,
    "Q and /Q must never read the same. If they do, look at preset and clear: both low makes both outputs high.",
  ),
  chip(
    "74ls75",
    "LS",
    "quad transparent latch",
    "/1Q:o 1D:i 2D:i 3C4C:en VCC=5 3D:i 4D:i /4Q:o 4Q:o 3Q:o /3Q:o GND=0 1C2C:en /2Q:o 2Q:o 1Q:o",
    "Supply on pin 5 and ground on pin 12, not on the corners.",
  ),
  chip(
    "7490",
    "TTL",
    "decade counter, by two and by five",
    "CKB:clk R01:rst R02:rst NC:nc VCC=5 R91:c R92:c QC:o QB:o GND=0 QD:o QA:o NC:nc CKA:clk",
    "Supply on pin 5 and ground on pin 10. A corner habit with the meter finds 0 V and proves nothing.",
  ),
  chip(
    "74ls93",
    "LS",
    "4-bit binary counter, by two and by eight",
    "CKB:clk R01:rst R02:rst NC:nc VCC=5 NC:nc NC:nc QC:o QB:o GND=0 QD:o QA:o NC:nc CKA:clk",
    "Supply on pin 5 and ground on pin 10, as with the 7490.",
  ),
  chip(
    "74ls123",
    "LS",
    "dual retriggerable one-shot",
    "1A:i 1B:i /1CLR:rst /1Q:o 2Q:o 2CEXT:an 2REXT:an GND=0 2A:i 2B:i /2CLR:rst /2Q:o 1Q:o 1CEXT:an 1REXT:an VCC=5",
    "Wrong pulse length is the capacitor in nine of ten. Makers differ a little in the constant.",
  ),
  chip(
    "74ls161",
    "LS",
    "4-bit binary counter, clear at once",
    COUNTER,
    "Clears at once; the 74LS163 waits for the clock. In a line counter that is one dot of difference.",
  ),
  chip(
    "74ls163",
    "LS",
    "4-bit binary counter, clear with the clock",
    COUNTER,
    "Each output runs at half of the one before it: a scope on pins 14, 13, 12 and 11 tells at once which bit died.",
  ),
  chip(
    "74ls164",
    "LS",
    "8-bit shift register, serial in, parallel out",
    "A:i B:i QA:o QB:o QC:o QD:o GND=0 CLK:clk /CLR:rst QE:o QF:o QG:o QH:o VCC=5",
    "Data is the AND of pins 1 and 2.",
  ),
  chip(
    "74ls165",
    "LS",
    "8-bit shift register, parallel in, serial out",
    "SH/LD:c CLK:clk E:i F:i G:i H:i /QH:o GND=0 QH:o SER:i A:i B:i C:i D:i INH:en VCC=5",
    "Loads while pin 1 is low, whatever the clock does.",
  ),
  chip(
    "74ls166",
    "LS",
    "8-bit shift register, parallel in, serial out, with clear",
    "SER:i A:d B:d C:d D:d INH:en CLK:clk GND=0 /CLR:rst E:d F:d G:d QH:o H:d SH/LD:c VCC=5",
    "The dot shifter of many pictures. Solid bars where letters should be: see whether SH/LD moves.",
  ),
  chip(
    "74ls174",
    "LS",
    "hex D register with clear",
    "/CLR:rst 1Q:o 1D:d 2D:d 2Q:o 3D:d 3Q:o GND=0 CLK:clk 4Q:o 4D:d 5Q:o 5D:d 6D:d 6Q:o VCC=5",
    "One clock for all six. Pins of one role read alike: the odd one out is the clue.",
  ),
  chip(
    "74ls175",
    "LS",
    "quad D register with clear, both outputs",
    "/CLR:rst 1Q:o /1Q:o 1D:d 2D:d /2Q:o 2Q:o GND=0 CLK:clk 3Q:o /3Q:o 3D:d 4D:d /4Q:o 4Q:o VCC=5",
    "Both senses of every bit are there: a bit whose two outputs agree is dead.",
  ),
  chip(
    "74ls393",
    "LS",
    "dual 4-bit binary counter",
    "1A:clk 1CLR:rst 1QA:o 1QB:o 1QC:o 1QD:o GND=0 2QD:o 2QC:o 2QB:o 2QA:o 2CLR:rst 2A:clk VCC=5",
    "Clear is active high. Counts on the falling edge.",
  ),
  chip(
    "74hc74",
    "HC",
    "dual D flip-flop with preset and clear",
    DUAL_D,
    "Clock input at CMOS level: an LS output drives it only with a pull-up.",
  ),
];
