import type { Technology } from "#lib/core/shared/index.ts";
import type { SeedChip } from "#seed/shapes.ts";
import { inOrder } from "./in-order.ts";

// Processors and their peripherals. Pins from the makers' data sheets.

const PORTS =
  "PA0:io PA1:io PA2:io PA3:io PA4:io PA5:io PA6:io PA7:io PB0:io PB1:io PB2:io PB3:io PB4:io PB5:io PB6:io PB7:io";
const DATA_DOWN = "D7:b D6:b D5:b D4:b D3:b D2:b D1:b D0:b";
const DATA_UP = "D0:b D1:b D2:b D3:b D4:b D5:b D6:b D7:b";
const ADDRESS_6809 =
  "A0:at A1:at A2:at A3:at A4:at A5:at A6:at A7:at A8:at A9:at A10:at A11:at A12:at A13:at A14:at A15:at";

function chip(slug: string, name: string, technology: Technology, what: string, pins: string, notes: string): SeedChip {
  const legs = pins.trim().split(/\s+/).length;
  return { slug, name, function: what, technology, contents: "none", notes, packages: [inOrder(`DIP-${legs}`, pins)] };
}

export const processors: SeedChip[] = [
  chip(
    "z80cpu",
    "Z80 CPU",
    "NMOS",
    "8-bit processor",
    `A11:at A12:at A13:at A14:at A15:at CLK:clk D4:b D3:b D5:b D6:b VCC=5 D2:b D7:b D0:b D1:b /INT:irq /NMI:irq /HALT:co
     /MREQ:ct /IORQ:ct /RD:ct /WR:ct /BUSACK:co /WAIT:c /BUSRQ:c /RESET:rst /M1:co /RFSH:co GND=0 A0:at A1:at A2:at
     A3:at A4:at A5:at A6:at A7:at A8:at A9:at A10:at`,
    "Wants a clock that reaches nearly +5 V. M1 moving means that it fetches; WAIT or BUSRQ low means that somebody else holds it.",
  ),
  chip(
    "6502",
    "6502",
    "NMOS",
    "8-bit processor with its own clock driver",
    `VSS=0 RDY:c PHI1:clko /IRQ:irq NC:nc /NMI:irq SYNC:co VCC=5 A0:ao A1:ao A2:ao A3:ao A4:ao A5:ao A6:ao A7:ao A8:ao A9:ao
     A10:ao A11:ao VSS=0 A12:ao A13:ao A14:ao A15:ao ${DATA_DOWN} R/W:co NC:nc NC:nc PHI0:clk SO:c PHI2:clko /RES:rst`,
    "SYNC (pin 7) pulses once an instruction. No SYNC with clock and reset well: look at RDY before the chip.",
  ),
  chip(
    "6809",
    "6809",
    "NMOS",
    "8-bit processor, clock inside",
    `VSS=0 /NMI:irq /IRQ:irq /FIRQ:irq BS:co BA:co VCC=5 ${ADDRESS_6809} ${DATA_DOWN} R/W:ct /DMA:c E:clko Q:clko MRDY:c
     /RESET:rst EXTAL:xi XTAL:xo /HALT:c`,
    "A quarter of the crystal comes out at E. A 6809E wants E and Q as inputs and is another part.",
  ),
  chip(
    "6809e",
    "6809E",
    "NMOS",
    "8-bit processor, clock from outside",
    `VSS=0 /NMI:irq /IRQ:irq /FIRQ:irq BS:co BA:co VCC=5 ${ADDRESS_6809} ${DATA_DOWN} R/W:ct BUSY:co E:clk Q:clk AVMA:co
     /RESET:rst LIC:co TSC:c /HALT:c`,
    "E and Q come from the board. Pins 33 to 36, 38 and 39 differ from the 6809.",
  ),
  chip(
    "6821",
    "6821",
    "NMOS",
    "two 8-bit ports",
    `VSS=0 ${PORTS} CB1:c CB2:io VCC=5 R/W:c CS0:cs /CS2:cs CS1:cs E:clk ${DATA_DOWN} /RESET:rst RS1:a RS0:a /IRQB:irqo
     /IRQA:irqo CA2:io CA1:c`,
    "Port A has pull-ups inside, port B has none: diode readings of the two sides differ on a good one.",
  ),
  chip(
    "6522",
    "6522",
    "NMOS",
    "two 8-bit ports, two timers, shift register",
    `VSS=0 ${PORTS} CB1:c CB2:io VCC=5 /IRQ:irqo R/W:c /CS2:cs CS1:cs PHI2:clk ${DATA_DOWN} /RES:rst RS3:a RS2:a RS1:a RS0:a
     CA2:io CA1:c`,
    "Looks like a 6821 and is none: from pin 21 on the pins differ.",
  ),
  chip(
    "6551",
    "6551",
    "NMOS",
    "serial interface with baud rate generator",
    `GND=0 CS0:cs /CS1:cs /RES:rst RXC:io XTAL1:xi XTAL2:xo /RTS:o /CTS:i TXD:o /DTR:o RXD:i RS0:a RS1:a VCC=5 /DCD:i /DSR:i
     ${DATA_UP} /IRQ:irqo PHI2:clk R/W:c`,
    "Needs its 1.8432 MHz even with an outside receive clock. CTS high stops the transmitter and nothing else.",
  ),
  chip(
    "6850",
    "6850",
    "NMOS",
    "serial interface",
    `VSS=0 RXD:i RXCLK:clk TXCLK:clk /RTS:o TXD:o /IRQ:irqo CS0:cs /CS2:cs CS1:cs RS:a VCC=5 R/W:c E:clk ${DATA_DOWN}
     /DCD:i /CTS:i`,
    "No reset pin: it is the program that resets it.",
  ),
  chip(
    "8251",
    "8251",
    "NMOS",
    "serial interface",
    `D2:b D3:b RXD:i GND=0 D4:b D5:b D6:b D7:b /TXC:clk /WR:c /CS:cs C/D:a /RD:c RXRDY:o TXRDY:o SYNDET:io /CTS:i TXEMPTY:o
     TXD:o CLK:clk RESET:rst /DSR:i /RTS:o /DTR:o /RXC:clk VCC=5 D0:b D1:b`,
    "Reset is active high. Needs CLK as well as the baud clocks.",
  ),
  chip(
    "8255",
    "8255",
    "NMOS",
    "three 8-bit ports",
    `PA3:io PA2:io PA1:io PA0:io /RD:c /CS:cs GND=0 A1:a A0:a PC7:io PC6:io PC5:io PC4:io PC0:io PC1:io PC2:io PC3:io PB0:io
     PB1:io PB2:io PB3:io PB4:io PB5:io PB6:io PB7:io VCC=5 D7:b D6:b D5:b D4:b D3:b D2:b D1:b D0:b RESET:rst /WR:c PA7:io
     PA6:io PA5:io PA4:io`,
    "Supply on 26, ground on 7. After reset all ports are inputs, so nothing moves until the program has set it up.",
  ),
];
