import type { SeedChip } from "#seed/shapes.ts";
import { inOrder } from "./in-order.ts";

// The 4000 series. Pins from the makers' data sheets; the board decides the supply, 3 to 15 V.

const QUAD = "1A:i 1B:i 1Y:o 2Y:o 2A:i 2B:i VSS=0 3A:i 3B:i 3Y:o 4Y:o 4A:i 4B:i VDD=?";
const SWITCH = "AX:an AY:an BY:an BX:an BC:c CC:c VSS=0 CX:an CY:an DY:an DX:an DC:c AC:c VDD=?";

function chip(slug: string, what: string, pins: string, notes: string): SeedChip {
  const legs = pins.trim().split(/\s+/).length;
  const packages = [inOrder(`DIP-${legs}`, pins)];
  return { slug, name: slug, function: what, technology: "CMOS-4000", contents: "none", notes, packages };
}

export const cmos4000: SeedChip[] = [
  chip("4001", "quad 2-input NOR", QUAD, "Pins as 4011, not as 74LS02: outputs are 3, 4, 10 and 11."),
  chip(
    "4011",
    "quad 2-input NAND",
    QUAD,
    "Pins differ from 74LS00. An open input drifts and takes the output with it.",
  ),
  chip(
    "4013",
    "dual D flip-flop with set and reset",
    "1Q:o /1Q:o 1CLK:clk 1R:rst 1D:i 1S:c VSS=0 2S:c 2D:i 2R:rst 2CLK:clk /2Q:o 2Q:o VDD=?",
    "Set and reset are active high. The divider behind many an octave.",
  ),
  chip("4016", "quad analog switch", SWITCH, "About 300 ohm closed. A 4066 has less and mostly does for it."),
  chip(
    "4040",
    "12-stage binary counter",
    "Q12:o Q6:o Q5:o Q7:o Q4:o Q3:o Q2:o VSS=0 Q1:o CLK:clk RESET:rst Q9:o Q8:o Q10:o Q11:o VDD=?",
    "Counts on the falling edge. One stage dead and all behind it stand still.",
  ),
  chip(
    "4051",
    "8-to-1 analog selector",
    "X4:an X6:an X:an X7:an X5:an INH:en VEE=? VSS=0 C:c B:c A:c X3:an X0:an X1:an X2:an VDD=?",
    "VEE (pin 7) is the negative end of the signal: with -5 V missing there, one half of the wave is gone. A dead channel leaks into its neighbours.",
  ),
  chip(
    "4053",
    "triple 2-to-1 analog selector",
    "Y1:an Y0:an Z1:an Z:an Z0:an INH:en VEE=? VSS=0 C:c B:c A:c X0:an X1:an X:an Y:an VDD=?",
    "Each third has its own select line. See the 4051 about VEE.",
  ),
  chip(
    "4066",
    "quad analog switch",
    SWITCH,
    "About 80 ohm closed at 10 V. Signals beyond the supply latch it up, and then it gets hot.",
  ),
  chip(
    "4069",
    "hex inverter, unbuffered",
    "1A:i 1Y:o 2A:i 2Y:o 3A:i 3Y:o VSS=0 4Y:o 4A:i 5Y:o 5A:i 6Y:o 6A:i VDD=?",
    "Unbuffered, so it makes oscillators and amplifiers. A buffered part in its place does not start.",
  ),
  chip(
    "4094",
    "8-bit shift register with latch, three-state",
    "STR:c D:d CLK:clk Q1:t Q2:t Q3:t Q4:t VSS=0 QS:o QS2:o Q8:t Q7:t Q6:t Q5:t OE:en VDD=?",
    "Pin 10 is the serial output half a clock later than pin 9, for the next in the chain.",
  ),
];
