import type { Technology } from "#lib/core/shared/index.ts";
import type { SeedChip, SeedPackage } from "#seed/shapes.ts";
import { alsoAs, inOrder } from "./in-order.ts";

// Decoders, selectors, buffers, latches and registers of the 74 series. Pins from the makers' data sheets.

const DECODER = "A:a B:a C:a /G2A:en /G2B:en G1:en /Y7:o GND=0 /Y6:o /Y5:o /Y4:o /Y3:o /Y2:o /Y1:o /Y0:o VCC=5";
const BUFFER =
  "/1G:en 1A1:i 2Y4:t 1A2:i 2Y3:t 1A3:i 2Y2:t 1A4:i 2Y1:t GND=0 2A1:i 1Y4:t 2A2:i 1Y3:t 2A3:i 1Y2:t 2A4:i 1Y1:t /2G:en VCC=5";
const TRANSCEIVER =
  "DIR:c A1:b A2:b A3:b A4:b A5:b A6:b A7:b A8:b GND=0 B8:b B7:b B6:b B5:b B4:b B3:b B2:b B1:b /OE:en VCC=5";
const selector = (gate: string, output: string): string =>
  `S:c 1A:i 1B:i 1Y:${output} 2A:i 2B:i 2Y:${output} GND=0 3Y:${output} 3B:i 3A:i 4Y:${output} 4B:i 4A:i /${gate}:en VCC=5`;
const octal = (first: string, clock: string, output: string): string =>
  `${first} 1Q:${output} 1D:d 2D:d 2Q:${output} 3Q:${output} 3D:d 4D:d 4Q:${output} GND=0 ${clock} 5Q:${output} 5D:d 6D:d 6Q:${output} 7Q:${output} 7D:d 8D:d 8Q:${output} VCC=5`;

function chip(
  slug: string,
  technology: Technology,
  what: string,
  pins: string,
  notes: string,
  soic?: "with SOIC",
): SeedChip {
  const legs = pins.trim().split(/\s+/).length;
  const dip = inOrder(`DIP-${legs}`, pins);
  const packages: SeedPackage[] = soic === undefined ? [dip] : [dip, alsoAs(dip, `SOIC-${legs}`)];
  return { slug, name: slug.toUpperCase(), function: what, technology, contents: "none", notes, packages };
}

export const busLogic: SeedChip[] = [
  chip(
    "74ls138",
    "LS",
    "3-to-8 decoder, active-low outputs",
    DECODER,
    "At most one output is low at a time. Two low together is a short between traces or a dead decoder. G1 high, both G2 low, or all outputs stay high and the chip is well.",
    "with SOIC",
  ),
  chip(
    "74ls139",
    "LS",
    "dual 2-to-4 decoder, active-low outputs",
    "/1G:en 1A:a 1B:a /1Y0:o /1Y1:o /1Y2:o /1Y3:o GND=0 /2Y3:o /2Y2:o /2Y1:o /2Y0:o 2B:a 2A:a /2G:en VCC=5",
    "Two decoders in one: when one half is dead the other mostly lives.",
  ),
  chip(
    "74ls151",
    "LS",
    "8-to-1 selector with both outputs",
    "D3:i D2:i D1:i D0:i Y:o /W:o /G:en GND=0 C:c B:c A:c D7:i D6:i D5:i D4:i VCC=5",
    "Pins 5 and 6 are opposites whenever the chip is well.",
  ),
  chip(
    "74ls153",
    "LS",
    "dual 4-to-1 selector",
    "/1G:en B:c 1C3:i 1C2:i 1C1:i 1C0:i 1Y:o GND=0 2Y:o 2C0:i 2C1:i 2C2:i 2C3:i A:c /2G:en VCC=5",
    "Select lines are common to both halves.",
  ),
  chip(
    "74ls157",
    "LS",
    "quad 2-to-1 selector",
    selector("G", "o"),
    "Row and column addresses of dynamic RAM pass through two of these. One dead output shows as every cell doubled.",
  ),
  chip(
    "74ls240",
    "LS",
    "octal buffer, three-state, inverting",
    BUFFER.replaceAll(/(\dY\d):/g, "/$1:"),
    "Same pins as 74LS244, opposite sense. The most usual wrong part of an earlier repair.",
  ),
  chip(
    "74ls244",
    "LS",
    "octal buffer, three-state",
    BUFFER,
    "First in line behind a connector, so the first to die of it. With an enable high its outputs look dead and are well: read pins 1 and 19 first.",
    "with SOIC",
  ),
  chip(
    "74ls245",
    "LS",
    "octal bus transceiver, three-state",
    TRANSCEIVER,
    "DIR high passes A to B. When it gets hot two sides fight: look at DIR and OE before the chip.",
    "with SOIC",
  ),
  chip(
    "74ls257",
    "LS",
    "quad 2-to-1 selector, three-state",
    selector("OE", "t"),
    "As 74LS157, but a high on pin 15 floats the outputs instead of pulling them low.",
  ),
  chip(
    "74ls273",
    "LS",
    "octal D register with clear",
    octal("/CLR:rst", "CLK:clk", "o"),
    "Output ports of driver boards. All outputs low is a clear that never rises.",
  ),
  chip(
    "74ls367",
    "LS",
    "hex buffer, three-state, four and two",
    "/1G:en 1A1:i 1Y1:t 1A2:i 1Y2:t 1A3:i 1Y3:t GND=0 1Y4:t 1A4:i 2Y1:t 2A1:i 2Y2:t 2A2:i /2G:en VCC=5",
    "Four buffers on pin 1, two on pin 15.",
  ),
  chip(
    "74ls373",
    "LS",
    "octal transparent latch, three-state",
    octal("/OE:en", "LE:c", "t"),
    "Follows while LE is high. A 74LS374 in its place takes data only at the edge, and mostly the wrong one.",
    "with SOIC",
  ),
  chip(
    "74ls374",
    "LS",
    "octal D register, three-state",
    octal("/OE:en", "CLK:clk", "t"),
    "Takes data at the rising edge of pin 11.",
    "with SOIC",
  ),
  chip(
    "74hc138",
    "HC",
    "3-to-8 decoder, active-low outputs",
    DECODER,
    "Runs cold; LS outputs in front of it need pull-ups.",
  ),
  chip(
    "74hc244",
    "HC",
    "octal buffer, three-state",
    BUFFER,
    "High level in from 3.15 V at 4.5 V supply. Sinks 6 mA where the LS part sinks 24.",
    "with SOIC",
  ),
  chip(
    "74hct244",
    "HCT",
    "octal buffer, three-state, TTL input levels",
    BUFFER,
    "Fits for 74LS244 on levels; look at the load before using it on a terminated line.",
    "with SOIC",
  ),
  chip(
    "74hc245",
    "HC",
    "octal bus transceiver, three-state",
    TRANSCEIVER,
    "Needs a bus that is never left floating.",
    "with SOIC",
  ),
  chip(
    "74hct245",
    "HCT",
    "octal bus transceiver, three-state, TTL input levels",
    TRANSCEIVER,
    "The usual replacement of a 74LS245 that drives nothing longer than its own board.",
    "with SOIC",
  ),
  chip(
    "74hct373",
    "HCT",
    "octal transparent latch, three-state, TTL input levels",
    octal("/OE:en", "LE:c", "t"),
    "Fits for 74LS373 within its drive.",
    "with SOIC",
  ),
  chip(
    "74hct374",
    "HCT",
    "octal D register, three-state, TTL input levels",
    octal("/OE:en", "CLK:clk", "t"),
    "Fits for 74LS374 within its drive.",
  ),
];
