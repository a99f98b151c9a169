import type { Technology } from "#lib/core/shared/index.ts";
import type { SeedChip, SeedPackage } from "#seed/shapes.ts";
import { inOrder } from "./in-order.ts";

// Line drivers, coil drivers and power transistors. Pins from the makers' data sheets.

function chip(slug: string, technology: Technology, what: string, packages: SeedPackage[], notes: string): SeedChip {
  return { slug, name: slug.toUpperCase(), function: what, technology, contents: "none", notes, packages };
}

export const drivers: SeedChip[] = [
  chip(
    "uln2003",
    "bipolar",
    "seven Darlington drivers, 50 V, 500 mA",
    [inOrder("DIP-16", "1B:i 2B:i 3B:i 4B:i 5B:i 6B:i 7B:i GND=0 COM:an 7C:oc 6C:oc 5C:oc 4C:oc 3C:oc 2C:oc 1C:oc")],
    "No supply pin. COM (9) goes to the coil supply: with it open the first coil that is let go kills its driver.",
  ),
  chip(
    "uln2803",
    "bipolar",
    "eight Darlington drivers, 50 V, 500 mA",
    [
      inOrder(
        "DIP-18",
        "1B:i 2B:i 3B:i 4B:i 5B:i 6B:i 7B:i 8B:i GND=0 COM:an 8C:oc 7C:oc 6C:oc 5C:oc 4C:oc 3C:oc 2C:oc 1C:oc",
      ),
    ],
    "As ULN2003 with one more.",
  ),
  chip(
    "mc1488",
    "bipolar",
    "quad RS-232 driver",
    [inOrder("DIP-14", "VEE=-12 1A:i 1Y:o 2A:i 2B:i 2Y:o GND=0 3Y:o 3A:i 3B:i 4Y:o 4A:i 4B:i VCC=12")],
    "-12 V on pin 1, +12 V on pin 14, no +5 V at all. An idle line reads -9 to -11 V.",
  ),
  chip(
    "mc1489",
    "bipolar",
    "quad RS-232 receiver",
    [inOrder("DIP-14", "1A:i 1RC:an 1Y:o 2A:i 2RC:an 2Y:o GND=0 3Y:o 3RC:an 3A:i 4Y:o 4RC:an 4A:i VCC=5")],
    "Dies at the cable end first. Sockets pay: it will die again.",
  ),
  chip(
    "max232",
    "CMOS",
    "two RS-232 drivers and receivers, +5 V only",
    [
      inOrder(
        "DIP-16",
        "C1+:an V+>10 C1-:an C2+:an C2-:an V->-10 T2OUT:o R2IN:i R2OUT:o T2IN:i T1IN:i R1OUT:o R1IN:i T1OUT:o GND=0 VCC=5",
      ),
    ],
    "Makes its own ±10 V with four capacitors. Less than 8 V at pin 2: the capacitors first.",
  ),
  chip(
    "tip122",
    "bipolar",
    "NPN Darlington transistor, 100 V, 5 A",
    [inOrder("TO-220", "B:i C:an E:an")],
    "Shorts from collector to emitter, so the coil stays pulled in and burns. Measure the coil and its diode before fitting a new one.",
  ),
  chip(
    "tip127",
    "bipolar",
    "PNP Darlington transistor, 100 V, 5 A",
    [inOrder("TO-220", "B:i C:an E:an")],
    "High side of lamp matrices. Collector is the tab.",
  ),
  chip(
    "tip42",
    "bipolar",
    "PNP transistor, 6 A",
    [inOrder("TO-220", "B:i C:an E:an")],
    "Base drive comes from a driver below it: when it dies look at both.",
  ),
];
