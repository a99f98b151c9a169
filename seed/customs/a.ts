import type { SeedChip, SeedClaim, SeedCode } from "#seed/shapes.ts";
import { packageOf } from "#seed/notation/pin-table.ts";

// Invented customs of the computers, the terminal and the counter. No silicon of these numbers was ever sold.

const HARROW_SEQUENCER = `
  1 CLK14 in clock
  2 CPUCLK out clock
  3 /RESET in reset
  4 /MREQ in control
  5 /RFSH in control
  6 /RD in control
  7 /WR in control
  8 /RAMCS in select
  9 /WAIT oc control
  10 /RAS out control
  11 /CAS out control
  12 MUX out control
  13 /RAMWE out control
  14 LATCH out control
  15-19 V0-4 3s address
  20 GND pwr ground
  21-22 V5-6 3s address
  23 /VGATE out enable
  24 /SHLD out control
  25 DOTCLK out clock
  26 /HSYNC out output
  27 /VSYNC out output
  28 /BLANK out output
  29 /INT oc interrupt
  30-37 D0-7 bi data
  38 /IOCS in select
  39 A0 in address
  40 VCC pwr supply 5
`;

const HARROW_KEYS = `
  1-8 D0-7 bi data
  9 A0 in address
  10 /CS in select
  11 /RD in control
  12 /WR in control
  13 /RESET in reset
  14 GND pwr ground
  15-19 K0-4 in input
  20 SOUND out analog
  21 TAPEIN in input
  22 TAPEOUT out output
  23-26 R0-3 oc output
  27 CLK in clock
  28 VCC pwr supply 5
`;

const MERLE_CONTROLLER = `
  1 GND pwr ground
  2 CLK16 in clock
  3 PHI0 out clock
  4 PHI2 in clock
  5 RW in control
  6 /RES in reset
  7-10 A12-15 in address
  11 /RAS out control
  12 GND pwr ground
  13 /CAS out control
  14 MUX out control
  15 /RAMWE out control
  16 /VGATE out enable
  17-22 VA0-5 out address
  23 VCC pwr supply 5
  24-25 VA6-7 out address
  26 /ROMEN out select
  27 /REGCS in select
  28-33 D0-5 bi data
  34 GND pwr ground
  35-36 D6-7 bi data
  37-39 L0-2 out output
  40 /IOEN out select
  41 /CSYNC out output
  42 /IRQ oc interrupt
  43 TEST dnc unused
  44 VCC pwr supply 5
`;

const MERLE_SOUND = `
  1-8 D0-7 bi data
  9-13 A0-4 in address
  14 GND pwr ground
  15 /CS in select
  16 RW in control
  17 PHI2 in clock
  18 /RES in reset
  19 OUTL out analog
  20 OUTR out analog
  21 EXTIN in analog
  22 CAP1A pas analog
  23 CAP1B pas analog
  24 CAP2A pas analog
  25 CAP2B pas analog
  26 VREF pas analog
  27 VDD pwr supply 12
  28 VCC pwr supply 5
`;

const MERLE_ROM = `
  1 NC nc unused
  2 A12 in address
  3-10 A7-0 in address
  11-13 D0-2 3s data
  14 GND pwr ground
  15-19 D3-7 3s data
  20 /CS in select
  21 A10 in address
  22 /OE in enable
  23 A11 in address
  24 A9 in address
  25 A8 in address
  26 A13 in address
  27 NC nc unused
  28 VCC pwr supply 5
`;

const VETCH_DISPLAY = `
  1 GND pwr ground
  2-9 D0-7 bi data
  10-12 A0-2 in address
  13 /CS in select
  14 /RD in control
  15 /WR in control
  16 /RESET in reset
  17 VCC pwr supply 5
  18 GND pwr ground
  19 /WAIT oc control
  20-30 SA0-10 out address
  31 /SOE out enable
  32 /SWE out control
  33 /SGATE out enable
  34 GND pwr ground
  35 VCC pwr supply 5
  36-39 L0-3 out address
  40 CCLK in clock
  41 /LOAD out control
  42 HS out output
  43 VS out output
  44 DE out output
  45 CUR out output
  46 REV out output
  47 UL out output
  48 BLINK out output
  49 HALF out output
  50 GND pwr ground
  51 VCC pwr supply 5
  52-62 CA0-10 in address
  63 TEST dnc unused
  64 NC nc unused
  65 NC nc unused
  66 /SREQ in select
  67 LPEN in input
  68 VCC pwr supply 5
`;

const VETCH_CHARACTERS = `
  1-8 A7-0 in address
  9-11 D0-2 3s data
  12 GND pwr ground
  13-17 D3-7 3s data
  18 /CS in select
  19 A10 in address
  20 /OE in enable
  21 A11 in address
  22 A9 in address
  23 A8 in address
  24 VCC pwr supply 5
`;

const SINGLE_CHIP = `
  1 XTAL1 in oscillator
  2 XTAL2 out oscillator
  3 /RESET in reset
  4 T0 in input
  5 T1 in input
  6 /INT in interrupt
  7 /RD bi control
  8 /WR bi control
  9 /PSEN out control
  10 ALE out control
  11-18 AD0-7 bi data
  19 NC nc unused
  20 GND pwr ground
  21-28 P20-27 bi output
  29-36 P10-17 bi output
  37 PROG out output
  38 /CS in select
  39 VDD pwr supply 5
  40 VCC pwr supply 5
`;

const DEFLECTION_PROCESSOR = `
  1 GND pwr ground
  2 SYNCIN in input
  3 HOSC pas oscillator
  4 HREF pas analog
  5 FLYBACK in input
  6 HDRIVE out output
  7 VSENSE in analog
  8 VOSC pas oscillator
  9 VHEIGHT in analog
  10 VDRIVE out output
  11 VFEED in analog
  12 BLANKOUT oc output
  13 XRAY in control
  14 VREF out analog
  15 NC nc unused
  16 VCC pwr supply 12
`;

const COUNTER_ARRAY = `
  1 VCC pwr supply 5
  2-9 D0-7 bi data
  10 GND pwr ground
  11-14 A0-3 in address
  15 /CS in select
  16 /RD in control
  17 /WR in control
  18 /RESET in reset
  19 /IRQ oc interrupt
  20 VCC pwr supply 5
  21 GND pwr ground
  22 INA in clock
  23 INB in clock
  24 REF10M in clock
  25 GATEIN in control
  26 GATEOUT out control
  27 ARM in control
  28 DONE out output
  29 OVF out output
  30 GND pwr ground
  31-38 P0-7 out output
  39 PSEL0 out select
  40 VCC pwr supply 5
  41 GND pwr ground
  42-49 T0-7 dnc unused
  50 VCC pwr supply 5
  51-58 Q0-7 out output
  59 QCLK out clock
  60 GND pwr ground
  61 VCC pwr supply 5
  62 INTERPA in analog
  63 INTERPB in analog
  64 CAL in control
  65 NC nc unused
  66 NC nc unused
  67 NC nc unused
  68 NC nc unused
  69 NC nc unused
  70 GND pwr ground
  71-75 M0-4 out control
  76 DIV2 out clock
  77 DIV10 out clock
  78 DIV100 out clock
  79 TEST dnc unused
  80 GND pwr ground
`;

const DISPLAY_DRIVER = `
  1 VCC pwr supply 5
  2-9 SEG0-7 out output
  10 GND pwr ground
  11 GND pwr ground
  12-19 DIG0-7 out output
  20 DIG8 out output
  21 BLANK in control
  22 VCC pwr supply 5
  23 GND pwr ground
  24 DIN in data
  25 CLK in clock
  26 /LOAD in control
  27 /CS in select
  28 SCAN pas oscillator
  29 BRIGHT in analog
  30 NC nc unused
  31 DOUT out data
  32 GND pwr ground
  33 VCC pwr supply 5
  34-38 K0-4 in input
  39 KINT oc interrupt
  40 /RESET in reset
  41 TEST dnc unused
  42 NC nc unused
  43 NC nc unused
  44 GND pwr ground
`;

export const chips: SeedChip[] = [
  {
    slug: "vq4-0061",
    name: "VQ4-0061",
    function: "video timing and dynamic RAM sequencer with processor clock",
    technology: "NMOS",
    contents: "none",
    notes:
      "Makes everything that ticks on a Harrow-80: the 3.5 MHz processor clock, /RAS and /CAS, the dot clock and the sync. Runs warm, about 45 °C on top, and that is well. A dead one takes the processor clock with it, so first look whether pin 2 moves. Diode reading from any V output to ground (black on the pin, red on ground) is 0.61 to 0.64 V; an open output reads OL.",
    packages: [packageOf("DIP-40", "DIP", HARROW_SEQUENCER)],
  },
  {
    slug: "vq4-0118",
    name: "VQ4-0118",
    function: "keyboard scanner with tape and sound port",
    technology: "CMOS",
    contents: "gate-array",
    notes:
      "A gate array. The K inputs have weak pull-ups inside: an open key column reads 4.6 to 4.9 V. Static through the keyboard tail kills K inputs one at a time, which shows as one dead column of keys and everything else well.",
    packages: [packageOf("DIP-28", "DIP", HARROW_KEYS)],
  },
  {
    slug: "or-27-041",
    name: "OR 27-041",
    function: "memory and video controller for a 2 MHz bus",
    technology: "CMOS",
    contents: "none",
    notes:
      "Lives in a PLCC socket whose corner contacts tire first: pins 1, 7, 17, 28 and 39. Press the chip before measuring anything. Pin 43 is a test pin, leave it alone; tying it to ground stops PHI0.",
    packages: [packageOf("PLCC-44", "PLCC", MERLE_CONTROLLER)],
  },
  {
    slug: "or-27-066",
    name: "OR 27-066",
    function: "three-voice sound generator with two analog filters",
    technology: "NMOS",
    contents: "none",
    notes:
      "Wants +5 V and +12 V together. With +12 V missing the digital side answers normally and there is no sound at all, so the rail comes before the chip. VREF (pin 26) sits at half of +12 V when all is well.",
    packages: [packageOf("SOIC-28", "SOIC", MERLE_SOUND)],
  },
  {
    slug: "kl-0231",
    name: "KL/0231",
    function: "mask ROM 16K × 8",
    technology: "NMOS",
    contents: "mask-rom",
    notes:
      "Pinned like a 128 Kbit EPROM except that pins 1 and 27 are not connected. The figure after the second stroke is the version of the contents, not of the silicon.",
    packages: [packageOf("DIP-28", "DIP", MERLE_ROM)],
  },
  {
    slug: "hdl-c03",
    name: "HDL-C03",
    function: "text display controller with attributes and arbitration of the screen RAM",
    technology: "HCT",
    contents: "gate-array",
    notes:
      "68 legs and five grounds; three of the grounds can be open and it still half works, with snow. Outputs drive 8 mA, so a load that pulls one to 1.9 V is outside and not in here. Pin 63 is a test input with a pull-down, leave it open.",
    packages: [packageOf("PLCC-68", "PLCC", VETCH_DISPLAY)],
  },
  {
    slug: "kl-0512",
    name: "KL/0512",
    function: "mask ROM 4K × 8 with a terminal's character shapes",
    technology: "NMOS",
    contents: "mask-rom",
    notes:
      "Two sets of 128 characters, chosen by A11. The version says which nation's letters are in the second set. A 2732-shaped EPROM with the same image does the same work.",
    packages: [packageOf("DIP-24", "DIP", VETCH_CHARACTERS)],
  },
  {
    slug: "sm0805",
    name: "SM0805",
    function: "8-bit single-chip processor, 2 KB mask ROM, 64 bytes RAM",
    technology: "NMOS",
    contents: "single-chip-processor",
    notes:
      "The same silicon scans a keyboard in one machine and runs a whole instrument in another. Pins 7 and 8 are inputs while /CS is used. The program is inside: what the number after SM says is the program. ALE (pin 10) at a fifteenth of the crystal means that the core runs, whatever the program does.",
    packages: [packageOf("DIP-40", "DIP", SINGLE_CHIP)],
  },
  {
    slug: "vq4-0344",
    name: "VQ4-0344",
    function: "horizontal and vertical deflection processor",
    technology: "analog",
    contents: "none",
    notes:
      "XRAY (pin 13) over 0.7 V latches the drive off until the supply has been away for five seconds. A set that starts, ticks once and stays dark is protecting itself: find out from what before anybody ties that pin down.",
    packages: [packageOf("DIP-16", "DIP", DEFLECTION_PROCESSOR)],
  },
  {
    slug: "bw-00452",
    name: "BW 00452",
    function: "dual 80 MHz counter array with time interpolator",
    technology: "CMOS",
    contents: "gate-array",
    notes:
      "QFP-80, 0.8 mm. All nine grounds must be soldered; a lifted ground at pin 30 makes the last digit dance. The letter is the silicon: B counts to 120 MHz and wants GATEIN one reference cycle later.",
    packages: [packageOf("QFP-80", "QFP", COUNTER_ARRAY)],
  },
  {
    slug: "or-27-088",
    name: "OR 27-088",
    function: "nine-digit display driver with key scanner, serial input",
    technology: "CMOS",
    contents: "none",
    notes:
      "SCAN (pin 28) is its own oscillator, 1.2 kHz with 470 pF. No oscillation, no display, and nothing else wrong.",
    packages: [packageOf("QFP-44", "QFP", DISPLAY_DRIVER)],
  },
];

export const codes: SeedCode[] = [
  {
    code: "VQ4-0061-03",
    house: "veltrax",
    chip: "vq4-0061",
    notes: "The last two figures are the version of the silicon. -03 has the longer row precharge.",
    sightings: [
      { board: "harrow-80", at: "U2", dateCode: "8341", member: "mirela" },
      { board: "harrow-80", at: "U2", dateCode: "8407", member: "anouk", note: "Ceramic body, gold lid." },
      { board: "harrow-80", at: "U2", dateCode: "8412", member: "bram" },
    ],
  },
  {
    code: "VQ4-0061-02",
    house: "veltrax",
    chip: "vq4-0061",
    notes: "Issue 1 boards only. Works with 150 ns RAM; with 200 ns parts single bits drop when warm.",
    sightings: [{ board: "harrow-80", at: "U2", dateCode: "8236", member: "otto", note: "Issue 1 board." }],
  },
  {
    code: "SM0612P",
    house: "sunmarsh",
    chip: "vq4-0061",
    notes: "Same silicon as VQ4-0061-03 by pin table, diode readings and two fittings.",
    sightings: [
      { board: "harrow-80", at: "U2", dateCode: "8522", member: "kaisa", note: "Late board, factory fitted." },
      { board: "harrow-80", at: "U2", dateCode: "8530", member: "tomasz" },
    ],
  },
  {
    code: "HDL-C07-22",
    house: "hadal",
    chip: "vq4-0061",
    notes: "Contested: one member's runs, another's does not. Read the evidence before you buy.",
    sightings: [
      { board: "harrow-80", at: "U2", dateCode: "8619", member: "femi", note: "Bought as a spare, came in foil." },
      { board: "harrow-80", at: "U2", dateCode: "8633", member: "bram", note: "From another seller." },
    ],
  },
  {
    code: "VQ4-0118-01",
    house: "veltrax",
    chip: "vq4-0118",
    sightings: [
      { board: "harrow-80", at: "U3", dateCode: "8339", member: "mirela" },
      { board: "harrow-80", at: "U3", dateCode: "8410", member: "pim" },
    ],
  },
  {
    code: "KL/0418/2",
    house: "kettering-lo",
    chip: "vq4-0118",
    notes: "A gate array made by another house from the same drawings, if the stamp on the bag is to be believed.",
    sightings: [{ board: "harrow-80", at: "U3", dateCode: "8515", member: "dolores", note: "Late board." }],
  },
  {
    code: "OR 27-041B",
    house: "orrin",
    chip: "or-27-041",
    sightings: [
      { board: "merle-mainboard", at: "U7", dateCode: "8544", member: "pim" },
      { board: "merle-mainboard", at: "U7", dateCode: "8602", member: "greta" },
    ],
  },
  {
    code: "OR 27-041C",
    house: "orrin",
    chip: "or-27-041",
    notes: "Later silicon, same pins. The raster interrupt comes one line earlier; two games notice.",
    sightings: [{ board: "merle-mainboard", at: "U7", dateCode: "8718", member: "anouk", note: "Issue C board." }],
  },
  {
    code: "BW 00713 C",
    house: "brightwater",
    chip: "or-27-041",
    notes: "Same silicon as OR 27-041C: same die picture, same pin readings.",
    sightings: [{ board: "merle-mainboard", at: "U7", dateCode: "8740", member: "ines" }],
  },
  {
    code: "OR 27-066A",
    house: "orrin",
    chip: "or-27-066",
    sightings: [{ board: "merle-mainboard", at: "U8", dateCode: "8540", member: "kaisa" }],
  },
  {
    code: "SM0266F",
    house: "sunmarsh",
    chip: "or-27-066",
    notes: "Same voice generator; the filters are brighter because the inside resistors differ. F is the flat package.",
    sightings: [{ board: "merle-mainboard", at: "U8", dateCode: "8709", member: "kaisa", note: "Issue C board." }],
  },
  {
    code: "KL/0231/1",
    house: "kettering-lo",
    chip: "kl-0231",
    notes: "System ROM version 1, checksum 3A51. Leaves the user port's second timer running after reset.",
    sightings: [{ board: "merle-mainboard", at: "U5", dateCode: "8537", member: "pim" }],
  },
  {
    code: "KL/0231/2",
    house: "kettering-lo",
    chip: "kl-0231",
    notes: "System ROM version 2, checksum 77C4.",
    sightings: [
      { board: "merle-mainboard", at: "U5", dateCode: "8606", member: "greta" },
      { board: "merle-mainboard", at: "U5", dateCode: "8715", member: "anouk" },
    ],
  },
  {
    code: "VQ4-0907-01",
    house: "veltrax",
    notes:
      "Unknown. DIP-16 between the video controller and the modulator of a Merle. Three inputs follow L0 to L2, four outputs are analog levels. Perhaps a colour encoder with its ladder inside. Nobody has found a second board with it.",
    sightings: [
      { board: "merle-mainboard", at: "U35", dateCode: "8541", member: "greta" },
      { board: "merle-mainboard", at: "U35", dateCode: "8711", member: "anouk" },
    ],
  },
  {
    code: "HDL-C03-11",
    house: "hadal",
    chip: "hdl-c03",
    notes: "Revision A boards. The cursor blinks at half speed on 60 Hz settings.",
    sightings: [{ board: "vetch-terminal-logic", at: "U8", dateCode: "8533", member: "greta" }],
  },
  {
    code: "HDL-C03-12",
    house: "hadal",
    chip: "hdl-c03",
    sightings: [
      { board: "vetch-terminal-logic", at: "U8", dateCode: "8612", member: "greta" },
      { board: "vetch-terminal-logic", at: "U8", dateCode: "8620", member: "mirela" },
    ],
  },
  {
    code: "BW 00309 A",
    house: "brightwater",
    chip: "hdl-c03",
    notes: "Same silicon as HDL-C03-12. Came on spares boards sold after the first maker had closed its line.",
    sightings: [{ board: "vetch-terminal-logic", at: "U8", dateCode: "8803", member: "ines", note: "Spares board." }],
  },
  {
    code: "KL/0512/3",
    house: "kettering-lo",
    chip: "kl-0512",
    notes: "Second set: northern letters. Checksum 1F08.",
    sightings: [
      { board: "vetch-terminal-logic", at: "U9", dateCode: "8534", member: "greta" },
      { board: "vetch-terminal-logic", at: "U9", dateCode: "8611", member: "mirela" },
    ],
  },
  {
    code: "KL/0512/5",
    house: "kettering-lo",
    chip: "kl-0512",
    notes: "Second set: line drawing. Checksum 8E62. Fits where /3 sat and writes boxes for letters.",
    sightings: [{ board: "vetch-terminal-logic", at: "U9", dateCode: "8803", member: "ines", note: "Spares board." }],
  },
  {
    code: "SM0805P",
    house: "sunmarsh",
    chip: "sm0805",
    notes: "Keyboard program of the Vetch terminal.",
    sightings: [
      { board: "vetch-terminal-logic", at: "U12", dateCode: "8535", member: "greta" },
      { board: "vetch-terminal-logic", at: "U12", dateCode: "8616", member: "pim" },
    ],
  },
  {
    code: "SM0806P",
    house: "sunmarsh",
    chip: "sm0805",
    notes: "Program of the Plover counter. Same silicon as SM0805P, other contents.",
    sightings: [
      { board: "plover-counter", at: "U1", dateCode: "8704", member: "femi" },
      { board: "plover-counter", at: "U1", dateCode: "8727", member: "yusuf" },
    ],
  },
  {
    code: "VQ4-0344-02",
    house: "veltrax",
    chip: "vq4-0344",
    sightings: [
      { board: "vetch-terminal-deflection", at: "U1", dateCode: "8530", member: "otto" },
      { board: "vetch-terminal-deflection", at: "U1", dateCode: "8608", member: "greta" },
    ],
  },
  {
    code: "OR 27-034D",
    house: "orrin",
    chip: "vq4-0344",
    notes: "Printed on the deflection processor of some late boards. The vertical ramp comes out a tenth taller.",
    sightings: [{ board: "vetch-terminal-deflection", at: "U1", dateCode: "8710", member: "otto" }],
  },
  {
    code: "BW 00452 A",
    house: "brightwater",
    chip: "bw-00452",
    sightings: [
      { board: "plover-counter", at: "U2", dateCode: "8650", member: "femi" },
      { board: "plover-counter", at: "U2", dateCode: "8709", member: "femi" },
    ],
  },
  {
    code: "BW 00452 B",
    house: "brightwater",
    chip: "bw-00452",
    notes: "Faster silicon. Contested as a stand-in for A: counts well, but one of two boards read 1 count high.",
    sightings: [{ board: "plover-counter", at: "U2", dateCode: "8839", member: "yusuf", note: "Issue 3 board." }],
  },
  {
    code: "OR 27-088A",
    house: "orrin",
    chip: "or-27-088",
    sightings: [{ board: "plover-counter", at: "U3", dateCode: "8646", member: "femi" }],
  },
  {
    code: "VQ4-0732-01",
    house: "veltrax",
    chip: "or-27-088",
    notes: "Display driver of a later run. Pin table read by ohmmeter agrees in every pin but 42.",
    sightings: [{ board: "plover-counter", at: "U3", dateCode: "8822", member: "yusuf", note: "Issue 3 board." }],
  },
  {
    code: "BW 00630 A",
    house: "brightwater",
    notes:
      "Unknown. A potted SIP-8 hybrid on the counter's supply board, between the unregulated rail and the gate of the crowbar. It warms when the fan is blocked. Pin 1 sits at 2.5 V. Help wanted.",
    sightings: [
      { board: "plover-supply", at: "U2", dateCode: "8648", member: "femi" },
      { board: "plover-supply", at: "U2", dateCode: "8705", member: "yusuf" },
    ],
  },
];

export const claims: SeedClaim[] = [
  {
    from: "VQ4-0061-03",
    to: "SM0612P",
    grade: "same-part",
    bothWays: true,
    conditions: [],
    note: "Factory fitted on late boards, and the pin readings agree within 10 mV.",
    evidence: [
      { kind: "pin-table", member: "mirela", note: "Forty of forty pins agree.", yearsAgo: 3.1 },
      {
        kind: "electrical",
        member: "anouk",
        note: "Diode readings of all pins side by side, same meter, same lead: largest difference 9 mV.",
        yearsAgo: 2.8,
      },
      {
        kind: "fitted-worked",
        member: "bram",
        note: "Sits in my Harrow since that evening.",
        case: "harrow-no-clock",
        yearsAgo: 1.4,
      },
    ],
  },
  {
    from: "VQ4-0061-03",
    to: "VQ4-0061-02",
    grade: "conditional",
    bothWays: false,
    conditions: ["RAM of 150 ns or faster in U14 to U21"],
    note: "The row precharge of -02 is one dot clock shorter.",
    evidence: [
      {
        kind: "fitted-worked",
        member: "otto",
        note: "With 150 ns parts, four evenings without a dropped bit.",
        yearsAgo: 2.2,
      },
      {
        kind: "fitted-failed",
        member: "pim",
        note: "With 200 ns parts letters changed by themselves after ten minutes.",
        provedElsewhere: "yes",
        yearsAgo: 1.9,
      },
    ],
  },
  {
    from: "VQ4-0061-03",
    to: "HDL-C07-22",
    grade: "drop-in",
    bothWays: false,
    conditions: [],
    note: "Contested. Perhaps two different parts were sold under this code.",
    evidence: [
      {
        kind: "fitted-worked",
        member: "femi",
        note: "Date code 8619. Runs, picture steady, soak of two hours.",
        yearsAgo: 1.7,
      },
      {
        kind: "fitted-failed",
        member: "bram",
        note: "Date code 8633. No CPUCLK at all. Mine stayed dead in a second board too, where femi's ran.",
        provedElsewhere: "found-bad",
        yearsAgo: 1.5,
      },
      { kind: "told", member: "tomasz", note: "A seller told me the 86xx batch was relabelled.", yearsAgo: 1.2 },
    ],
  },
  {
    from: "VQ4-0118-01",
    to: "KL/0418/2",
    grade: "drop-in",
    bothWays: true,
    conditions: [],
    evidence: [
      {
        kind: "fitted-worked",
        member: "dolores",
        note: "Factory fitted on my late board, and moved to an early one for an evening: all keys, tape loads.",
        yearsAgo: 2.4,
      },
    ],
  },
  {
    from: "OR 27-041B",
    to: "OR 27-041C",
    grade: "drop-in",
    bothWays: false,
    conditions: ["the raster interrupt comes one line earlier"],
    evidence: [
      { kind: "pin-table", member: "greta", note: "Same 44 pins.", yearsAgo: 3.3 },
      { kind: "fitted-worked", member: "pim", note: "Works. One game has a torn line at the top.", yearsAgo: 1.1 },
    ],
  },
  {
    from: "OR 27-041C",
    to: "BW 00713 C",
    grade: "same-part",
    bothWays: true,
    conditions: [],
    evidence: [
      {
        kind: "electrical",
        member: "ines",
        note: "Pin readings alike on 44 of 44, red lead on ground.",
        yearsAgo: 1.6,
      },
      { kind: "fitted-worked", member: "ines", note: "Swapped both ways between two boards.", yearsAgo: 1.6 },
    ],
  },
  {
    from: "OR 27-066A",
    to: "SM0266F",
    grade: "conditional",
    bothWays: true,
    conditions: ["filter capacitors C11 and C12 of 2n2 where the sound must stay as it was"],
    note: "Works anywhere; the filters are about a third brighter with the original capacitors.",
    evidence: [
      {
        kind: "fitted-worked",
        member: "kaisa",
        note: "Sounds brighter. With 2n2 I could not tell them apart.",
        yearsAgo: 0.9,
      },
    ],
  },
  {
    from: "KL/0231/1",
    to: "KL/0231/2",
    grade: "conditional",
    bothWays: false,
    conditions: ["programs that rely on the second timer running after reset"],
    note: "Same silicon, newer contents.",
    evidence: [
      {
        kind: "fitted-worked",
        member: "pim",
        note: "Fitted /2 in an early board, everything I own runs.",
        yearsAgo: 2.1,
      },
    ],
  },
  {
    from: "HDL-C03-12",
    to: "BW 00309 A",
    grade: "same-part",
    bothWays: true,
    conditions: [],
    evidence: [
      { kind: "electrical", member: "mirela", note: "All 68 pins within 12 mV on the diode range.", yearsAgo: 1.3 },
      {
        kind: "fitted-worked",
        member: "greta",
        note: "From the spares board, in daily use.",
        case: "vetch-snow",
        yearsAgo: 0.8,
      },
    ],
  },
  {
    from: "KL/0512/3",
    to: "KL/0512/5",
    grade: "not-a-fit",
    bothWays: true,
    conditions: [],
    note: "Looks and pins alike, contents differ: boxes where the letters should be.",
    evidence: [
      {
        kind: "fitted-failed",
        member: "ines",
        note: "Line drawing in the middle of names.",
        provedElsewhere: "yes",
        yearsAgo: 1.3,
      },
    ],
  },
  {
    from: "SM0805P",
    to: "SM0806P",
    grade: "not-a-fit",
    bothWays: true,
    conditions: [],
    note: "The silicon is the same and the program is not. A counter's processor does not read a keyboard.",
    evidence: [
      {
        kind: "fitted-failed",
        member: "pim",
        note: "ALE runs at 400 kHz as it should, and the keyboard is dead. It went back to femi unharmed.",
        provedElsewhere: "yes",
        yearsAgo: 1.0,
      },
      {
        kind: "electrical",
        member: "femi",
        note: "Same readings on every pin, which proves nothing about the program.",
        yearsAgo: 1.0,
      },
    ],
  },
  {
    from: "VQ4-0344-02",
    to: "OR 27-034D",
    grade: "conditional",
    bothWays: true,
    conditions: ["set the height again (RV1)"],
    evidence: [
      {
        kind: "fitted-worked",
        member: "otto",
        note: "Picture a tenth too tall until RV1 was turned back.",
        yearsAgo: 2.6,
      },
    ],
  },
  {
    from: "BW 00452 A",
    to: "BW 00452 B",
    grade: "drop-in",
    bothWays: false,
    conditions: [],
    note: "Contested: works on Issue 3, reads one count high on Issue 1.",
    evidence: [
      {
        kind: "fitted-worked",
        member: "yusuf",
        note: "Issue 3: agrees with the club's reference to the last digit.",
        yearsAgo: 1.9,
      },
      {
        kind: "fitted-failed",
        member: "femi",
        note: "Issue 1: always one count high at a 1 s gate. The same chip was well on Yusuf's board.",
        provedElsewhere: "yes",
        yearsAgo: 1.8,
      },
    ],
  },
  {
    from: "OR 27-088A",
    to: "VQ4-0732-01",
    grade: "drop-in",
    bothWays: true,
    conditions: [],
    evidence: [
      {
        kind: "pin-table",
        member: "yusuf",
        note: "Read by ohmmeter; pin 42 is open on one and a ground on the other.",
        yearsAgo: 1.5,
      },
      { kind: "told", member: "femi", note: "A calibration shop says that it fits them by turns.", yearsAgo: 1.4 },
    ],
  },
];
