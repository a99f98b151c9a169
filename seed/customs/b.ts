import type { SeedChip, SeedClaim, SeedCode } from "#seed/shapes.ts";
import { packageOf } from "#seed/notation/pin-table.ts";

// Invented customs of the synthesizer, the arcade machine and the pinball machine. No silicon of these numbers was ever sold.

const OSPREY_OSCILLATOR = `
  1 VCC pwr supply 15
  2 CVA in analog
  3 SCALEA pas analog
  4 CAPA pas oscillator
  5 HFA pas analog
  6 SAWA out output
  7 TRIA out output
  8 PULSEA out output
  9 PWA in analog
  10 SYNC in input
  11 REF out analog
  12 GND pwr ground
  13 VEE pwr supply -15
  14 PWB in analog
  15 PULSEB out output
  16 TRIB out output
  17 SAWB out output
  18 HFB pas analog
  19 CAPB pas oscillator
  20 SCALEB pas analog
  21 CVB in analog
  22 TEMP pas analog
  23 XMOD in analog
  24 AGND pwr ground
`;

const OSPREY_ENVELOPE_DIP = `
  1 CAPA pas analog
  2 ATKA in analog
  3 DECA in analog
  4 SUSA in analog
  5 RELA in analog
  6 OUTA out output
  7 GATEA in input
  8 GND pwr ground
  9 CAPB pas analog
  10 GATEB in input
  11 OUTB out output
  12 RELB in analog
  13 SUSB in analog
  14 DECB in analog
  15 ATKB in analog
  16 VCC pwr supply 15
`;

const OSPREY_ENVELOPE_SOIC = `
  1 VCC pwr supply 15
  2 ATKA in analog
  3 DECA in analog
  4 SUSA in analog
  5 RELA in analog
  6 CAPA pas analog
  7 OUTA out output
  8 GATEA in input
  9 GND pwr ground
  10 GATEB in input
  11 OUTB out output
  12 CAPB pas analog
  13 RELB in analog
  14 SUSB in analog
  15 DECB in analog
  16 ATKB in analog
`;

const OSPREY_SCANNER = `
  1-6 CNT0-5 in address
  7 KEYA in input
  8 KEYB in input
  9 CLK in clock
  10 /RES in reset
  11 TXD out output
  12 RXD in input
  13 /RTS out control
  14 SPLIT in control
  15-17 MUX0-2 out address
  18 MUXINH out enable
  19 COMP in input
  20 GND pwr ground
  21-28 RAMP0-7 out data
  29 LED out output
  30 /SUS in input
  31 /HOLD in input
  32-35 OPT0-3 in input
  36 SYNC out output
  37 CLR out control
  38 TEST dnc unused
  39 NC nc unused
  40 VCC pwr supply 5
`;

const TERN_SPRITES = `
  1 GND pwr ground
  2-9 D0-7 bi data
  10-19 A0-9 in address
  20 LBSTB out control
  21 /CS in select
  22 RW in control
  23 E in clock
  24 VCC pwr supply 5
  25-32 RA0-7 out address
  33 GND pwr ground
  34-40 RA8-14 out address
  41 /ROMOE out enable
  42 VCC pwr supply 5
  43-58 RD0-15 in data
  59 GND pwr ground
  60 CLK12 in clock
  61 /HSYNC in input
  62 /VSYNC in input
  63 /BUSY oc control
  64-67 PX0-3 out output
  68 VCC pwr supply 5
`;

const TERN_MIXER = `
  1 VCC pwr supply 5
  2-5 PX0-3 in input
  6 LBSTB in control
  7 GND pwr ground
  8-15 CD0-7 in data
  16 VCC pwr supply 5
  17-26 VA0-9 out address
  27 /VGATE out enable
  28 /VWE out control
  29 GND pwr ground
  30 /CS in select
  31 RW in control
  32 E in clock
  33 VCC pwr supply 5
  34-36 CL0-2 out address
  37-44 PA0-7 out address
  45 GND pwr ground
  46 CLK12 in clock
  47 CLK6 out clock
  48 /HSYNC out output
  49 VCC pwr supply 5
  50 /VSYNC out output
  51 /CSYNC out output
  52 /BLANK out output
  53 /VIRQ oc interrupt
  54 GND pwr ground
  55-60 NC1-6 nc unused
  61 FLIP in control
  62 /RESET in reset
  63 TEST dnc unused
  64 GND pwr ground
`;

const TERN_KEEPER = `
  1-8 D0-7 bi data
  9-16 A8-15 in address
  17 RW in control
  18 E in clock
  19 /RESIN in reset
  20 GND pwr ground
  21 /RESET out reset
  22 WDCLK in clock
  23 /ROM0 out select
  24 /ROM1 out select
  25-27 BK0-2 out address
  28 /RAM out select
  29 /VRAM out select
  30 /SPR out select
  31 /PAL out select
  32 /IN0 out select
  33 /IN1 out select
  34 /DIP out select
  35 /SND out select
  36 /COIN out select
  37 FLIP out control
  38 /BUFEN out enable
  39 TEST dnc unused
  40 VCC pwr supply 5
`;

const TERN_PROGRAM = `
  1 NC nc unused
  2 A12 in address
  3-10 A7-0 in address
  11-13 D0-2 3s data
  14 GND pwr ground
  15-19 D3-7 3s data
  20 /CE in select
  21 A10 in address
  22 /OE in enable
  23 A11 in address
  24 A9 in address
  25 A8 in address
  26-27 A13-14 in address
  28 VCC pwr supply 5
`;

const TERN_TONES = `
  1 GND pwr ground
  2-9 D0-7 bi data
  10-11 A0-1 in address
  12 /CS in select
  13 RW in control
  14 PHI2 in clock
  15 /RES in reset
  16 VCC pwr supply 5
  17 CLK in clock
  18 /IRQ oc interrupt
  19 CHA out analog
  20 CHB out analog
  21 CHC out analog
  22 AGND pwr ground
  23-30 P0-7 bi data
  31 NOISE out output
  32 VREF pas analog
  33 GND pwr ground
  34-37 NC1-4 nc unused
  38 SYNC out output
  39 TEST dnc unused
  40 AVCC pwr supply 5
  41-43 NC5-7 nc unused
  44 VCC pwr supply 5
`;

const TERN_SPEECH = `
  1 VBB pwr supply -5
  2-9 D0-7 in data
  10 /WR in control
  11 /CS in select
  12 /RDY oc interrupt
  13 CLK in clock
  14 GND pwr ground
  15 /RES in reset
  16 AUDIO out analog
  17 VDD pwr supply 12
  18-19 FILT0-1 pas analog
  20 BUSY out output
  21-26 NC1-6 nc unused
  27 TEST dnc unused
  28 VCC pwr supply 5
`;

const MOTH_GUARD = `
  1 WDSTB in input
  2-9 C0-7 in input
  10 ENABLE in enable
  11 /TRIP oc output
  12 GND pwr ground
  13-20 G7-0 out output
  21 RC pas oscillator
  22 /RESET in reset
  23 SENSE in analog
  24 VCC pwr supply 5
`;

const MOTH_MATRIX = `
  1 VCC pwr supply 5
  2-9 D0-7 bi data
  10-13 A0-3 in address
  14 /CS in select
  15 RW in control
  16 E in clock
  17 /RESET in reset
  18 /IRQ oc interrupt
  19 GND pwr ground
  20 VCC pwr supply 5
  21-28 SC0-7 out output
  29-36 SR0-7 in input
  37 GND pwr ground
  38-40 NC1-3 nc unused
  41 VCC pwr supply 5
  42-49 LC0-7 out output
  50-57 LR0-7 out output
  58 GND pwr ground
  59 ZC in input
  60 /BLANK out control
  61 WDSTB out output
  62-69 SD0-7 out data
  70 SSTB0 out control
  71 SSTB1 out control
  72 GND pwr ground
  73 TEST dnc unused
  74-78 NC4-8 nc unused
  79 GND pwr ground
  80 VCC pwr supply 5
`;

export const chips: SeedChip[] = [
  {
    slug: "hdl-c45",
    name: "HDL-C45",
    function: "two voltage-controlled oscillators, saw, triangle and pulse, 1 V per octave",
    technology: "analog",
    contents: "none",
    notes: `Runs on ±15 V. REF (pin 11) reads 5.00 V on a living part: look there first.

The timing capacitors hang on pins 4 and 19; a finger there drops the pitch by octaves. A part without VEE puts out a
steady 13 V on both saws and survives it for a while.`,
    packages: [packageOf("DIP-24", "DIP", OSPREY_OSCILLATOR)],
  },
  {
    slug: "kl-0702",
    name: "KL/0702",
    function: "two ADSR envelope generators with voltage-controlled times",
    technology: "analog",
    contents: "none",
    notes: `Inputs for the times are of very high resistance: a hold capacitor of 10 nF keeps its voltage for a second.
Flux under the chip leaks more than the chip does; wash before you judge.

The SOIC's pins are **not** in the DIP's order. Supply and capacitors move.`,
    packages: [packageOf("DIP-16", "DIP", OSPREY_ENVELOPE_DIP), packageOf("SOIC-16", "SOIC", OSPREY_ENVELOPE_SOIC)],
  },
  {
    slug: "sm6912",
    name: "SM6912",
    function: "keyboard scanner: velocity of 64 keys, wheels and pedals by ramp, serial out",
    technology: "CMOS",
    contents: "single-chip-processor",
    notes: `Times the two contacts of each key against the count on pins 1 to 6. SYNC (pin 36) pulses once a scan, about
every 4 ms. Switch inputs have pull-ups inside. No SYNC with a good CLK and /RES high: it is dead or its count never comes round.`,
    packages: [packageOf("DIP-40", "DIP", OSPREY_SCANNER)],
  },
  {
    slug: "vq4-0461",
    name: "VQ4-0461",
    function: "sprite engine: 64 objects, 16-bit picture data, four-bit pixels out",
    technology: "NMOS",
    contents: "none",
    notes: `Draws 450 mA and runs at 60 °C; a cold one is not working. /BUSY is open collector and stretches the
processor's cycle while it copies its table.

In a PLCC-68 socket: the corner contacts tire first, and those are D0, VCC and GND.`,
    packages: [packageOf("PLCC-68", "PLCC", TERN_SPRITES)],
  },
  {
    slug: "vq4-0475",
    name: "VQ4-0475",
    function: "video timing, character planes, line buffer and palette address",
    technology: "CMOS",
    contents: "gate-array",
    notes: `Makes the sync of the whole machine: no /CSYNC, look at CLK12 and /RESET here before anything else. QFP-64
with 1 mm pitch, friendly to the iron.`,
    packages: [packageOf("QFP-64", "QFP", TERN_MIXER)],
  },
  {
    slug: "or-27-514",
    name: "OR 27-514",
    function: "address decoder, ROM bank register and watchdog of eight frames",
    technology: "NMOS",
    contents: "gate-array",
    notes: `The watchdog counts WDCLK (vertical sync) and is fed by a write to /COIN's page. With TEST left open it works;
pulled low it never bites, but the selects stop too, so that is no way to debug.`,
    packages: [packageOf("DIP-40", "DIP", TERN_KEEPER)],
  },
  {
    slug: "or-27-561",
    name: "OR 27-561",
    function: "mask ROM 32 K × 8, program of the Tern Alley",
    technology: "NMOS",
    contents: "mask-rom",
    notes: `Pins as a 27C256 in reading, so an EPROM with the same contents fits. The letter is the version of the
contents: read it, twice, and compare checksums before you trust a label.`,
    packages: [packageOf("DIP-28", "DIP", TERN_PROGRAM)],
  },
  {
    slug: "bw-80513",
    name: "BW 80513",
    function: "three-channel tone generator with noise and an eight-bit port",
    technology: "NMOS",
    contents: "none",
    notes: `VREF (pin 32) sits at 2.5 V. All three channels silent and VREF right: look at CLK. One silent, two well: the
output stage, and there is no cure.`,
    packages: [packageOf("PLCC-44", "PLCC", TERN_TONES)],
  },
  {
    slug: "kl-0718",
    name: "KL/0718",
    function: "speech generator with its phrases in mask ROM",
    technology: "NMOS",
    contents: "mask-rom",
    notes: `Three supplies. **-5 V first**: with +12 V on VDD and nothing on VBB it gets hot in seconds and dies in minutes.
The figure behind the second slash is the set of phrases.`,
    packages: [packageOf("DIP-28", "DIP", TERN_SPEECH)],
  },
  {
    slug: "or-27-541",
    name: "OR 27-541",
    function: "solenoid guard: gates eight coil lines, watchdog, longest time on",
    technology: "CMOS",
    contents: "none",
    notes: `Opens all gates when WDSTB stops for 30 ms, when a coil is on for longer than RC allows, or when SENSE falls
under 2.4 V. /TRIP stays low until /RESET. A low /TRIP is a witness, not a culprit: ask why.`,
    packages: [packageOf("DIP-24", "DIP", MOTH_GUARD)],
  },
  {
    slug: "hdl-c52",
    name: "HDL-C52",
    function: "switch and lamp matrix controller with solenoid port and blanking",
    technology: "CMOS",
    contents: "gate-array",
    notes: `Scans 8 × 8 switches and 8 × 8 lamps by itself. WDSTB (pin 61) is toggled by the program: no pulses there and
the driver board keeps every coil off, which is what you want.`,
    packages: [packageOf("QFP-80", "QFP", MOTH_MATRIX)],
  },
];

export const codes: SeedCode[] = [
  {
    code: "HDL-C45-22",
    house: "hadal",
    chip: "hdl-c45",
    notes: "The last two figures are the drift class. 22 is what most cards carry.",
    sightings: [
      { board: "osprey-voice-card", at: "U1", dateCode: "8318", member: "kaisa" },
      { board: "osprey-voice-card", at: "U1", dateCode: "8318", member: "kaisa", note: "Voice 4 of the same machine." },
      { board: "osprey-voice-card", at: "U1", dateCode: "8404", member: "anouk", note: "Photograph on file." },
    ],
  },
  {
    code: "HDL-C45-14",
    house: "hadal",
    chip: "hdl-c45",
    notes: "Better drift class, same pins. Nobody has found a difference but the warm-up time.",
    sightings: [{ board: "osprey-voice-card", at: "U1", dateCode: "8447", member: "femi", note: "Rev C card." }],
  },
  {
    code: "SM6931",
    house: "sunmarsh",
    chip: "hdl-c45",
    notes: "Contested. One member's plays in tune over five octaves, another's goes flat above the third.",
    sightings: [
      { board: "osprey-voice-card", at: "U1", dateCode: "8526", member: "kaisa", note: "Bought as a spare." },
      { board: "osprey-voice-card", at: "U1", dateCode: "8526", member: "pim" },
    ],
  },
  {
    code: "KL/0702/7",
    house: "kettering-lo",
    chip: "kl-0702",
    sightings: [
      { board: "osprey-voice-card", at: "U8", dateCode: "8312", member: "kaisa" },
      { board: "osprey-voice-card", at: "U8", dateCode: "8351", member: "otto" },
    ],
  },
  {
    code: "KL/0702/7S",
    house: "kettering-lo",
    chip: "kl-0702",
    notes: "The SOIC. Turns up on adapters, never from the factory on this card.",
    sightings: [
      { board: "osprey-voice-card", at: "U8", dateCode: "8709", member: "kaisa", note: "On an adapter, see the case." },
    ],
  },
  {
    code: "BW 80502 A",
    house: "brightwater",
    chip: "kl-0702",
    notes: "Same silicon as KL/0702/7 by its pin readings.",
    sightings: [{ board: "osprey-voice-card", at: "U8", dateCode: "8441", member: "femi", note: "Rev C card." }],
  },
  {
    code: "SM6912P",
    house: "sunmarsh",
    chip: "sm6912",
    notes: "Program for 61 keys.",
    sightings: [
      { board: "osprey-keyer", at: "U1", dateCode: "8320", member: "kaisa" },
      { board: "osprey-keyer", at: "U1", dateCode: "8344", member: "pim" },
    ],
  },
  {
    code: "SM6912R",
    house: "sunmarsh",
    chip: "sm6912",
    notes: "Same silicon, program for 49 keys and no pedals. Reads the wheels at other counts.",
    sightings: [
      { board: "osprey-keyer", at: "U1", dateCode: "8402", member: "bram", note: "From a smaller sister keyboard." },
    ],
  },
  {
    code: "VQ4-0461-01",
    house: "veltrax",
    chip: "vq4-0461",
    notes: "First silicon: object 63 is never drawn, and the program knows it.",
    sightings: [
      { board: "tern-arcade-main", at: "2C", dateCode: "8514", member: "tomasz" },
      { board: "tern-arcade-main", at: "2C", dateCode: "8519", member: "mirela" },
      { board: "tern-arcade-main", at: "2C", dateCode: "8519", member: "bram" },
    ],
  },
  {
    code: "VQ4-0461-02",
    house: "veltrax",
    chip: "vq4-0461",
    sightings: [{ board: "tern-arcade-main", at: "2C", dateCode: "8622", member: "tomasz", note: "Issue 2 board." }],
  },
  {
    code: "BW 80561 A",
    house: "brightwater",
    chip: "vq4-0461",
    notes: "Second source of -02, by readings of all pins and one fitting.",
    sightings: [
      { board: "tern-arcade-main", at: "2C", dateCode: "8631", member: "tomasz", note: "Bag of three, all alive." },
    ],
  },
  {
    code: "VQ4-0475-01",
    house: "veltrax",
    chip: "vq4-0475",
    sightings: [
      { board: "tern-arcade-main", at: "5C", dateCode: "8516", member: "mirela" },
      { board: "tern-arcade-main", at: "5C", dateCode: "8520", member: "tomasz" },
    ],
  },
  {
    code: "HDL-C48-10",
    house: "hadal",
    chip: "vq4-0475",
    notes: "Contested: sync is right, but whether the flip bit works depends on whom you ask.",
    sightings: [
      { board: "tern-arcade-main", at: "5C", dateCode: "8640", member: "tomasz" },
      { board: "tern-arcade-main", at: "5C", dateCode: "8640", member: "bram", note: "From the same tube." },
    ],
  },
  {
    code: "OR 27-514B",
    house: "orrin",
    chip: "or-27-514",
    notes: "Watchdog of eight frames.",
    sightings: [
      { board: "tern-arcade-main", at: "4D", dateCode: "8511", member: "tomasz" },
      { board: "tern-arcade-main", at: "4D", dateCode: "8515", member: "mirela" },
    ],
  },
  {
    code: "OR 27-514D",
    house: "orrin",
    chip: "or-27-514",
    notes: "Watchdog of sixteen frames; a slow program needs it, a fast one does not mind.",
    sightings: [{ board: "tern-arcade-main", at: "4D", dateCode: "8618", member: "tomasz", note: "Issue 2 board." }],
  },
  {
    code: "OR 27-561B",
    house: "orrin",
    chip: "or-27-561",
    notes: "First program. Checksum 4C1E. Hangs after 255 credits.",
    sightings: [
      { board: "tern-arcade-main", at: "6F", dateCode: "8512", member: "tomasz" },
      { board: "tern-arcade-main", at: "6F", dateCode: "8517", member: "mirela" },
    ],
  },
  {
    code: "OR 27-561C",
    house: "orrin",
    chip: "or-27-561",
    notes: "Second program. Checksum 90B7. Wants phrases /4 on the sound board, or the wrong word is spoken.",
    sightings: [{ board: "tern-arcade-main", at: "6F", dateCode: "8620", member: "tomasz", note: "Issue 2 board." }],
  },
  {
    code: "BW 80513 A",
    house: "brightwater",
    chip: "bw-80513",
    sightings: [
      { board: "tern-arcade-sound", at: "U6", dateCode: "8510", member: "tomasz" },
      { board: "tern-arcade-sound", at: "U6", dateCode: "8524", member: "yusuf" },
    ],
  },
  {
    code: "KL/0731/2",
    house: "kettering-lo",
    chip: "bw-80513",
    notes: "Same silicon as BW 80513 A.",
    sightings: [{ board: "tern-arcade-sound", at: "U6", dateCode: "8609", member: "tomasz" }],
  },
  {
    code: "KL/0718/1",
    house: "kettering-lo",
    chip: "kl-0718",
    notes: "Phrases of the first program.",
    sightings: [
      { board: "tern-arcade-sound", at: "U7", dateCode: "8508", member: "tomasz" },
      { board: "tern-arcade-sound", at: "U7", dateCode: "8508", member: "otto", note: "Dead when found, no -5 V." },
    ],
  },
  {
    code: "KL/0718/4",
    house: "kettering-lo",
    chip: "kl-0718",
    notes: "Phrases of the second program. Two phrases have other numbers.",
    sightings: [{ board: "tern-arcade-sound", at: "U7", dateCode: "8615", member: "tomasz" }],
  },
  {
    code: "OR 27-541A",
    house: "orrin",
    chip: "or-27-541",
    sightings: [
      { board: "moth-driver", at: "U5", dateCode: "8731", member: "dolores" },
      { board: "moth-driver", at: "U5", dateCode: "8734", member: "ines" },
    ],
  },
  {
    code: "SM6955P",
    house: "sunmarsh",
    chip: "or-27-541",
    notes: "Second source. Its gates are push-pull of 8 mA where the other has 4; the drivers like it.",
    sightings: [{ board: "moth-driver", at: "U5", dateCode: "8812", member: "dolores", note: "Late board." }],
  },
  {
    code: "HDL-C52-08",
    house: "hadal",
    chip: "hdl-c52",
    sightings: [
      { board: "moth-mpu", at: "U3", dateCode: "8729", member: "dolores" },
      { board: "moth-mpu", at: "U3", dateCode: "8733", member: "greta" },
    ],
  },
  {
    code: "VQ4-0488-01",
    house: "veltrax",
    chip: "hdl-c52",
    notes: "Seen once, on a board that runs.",
    sightings: [{ board: "moth-mpu", at: "U3", dateCode: "8808", member: "dolores" }],
  },
  {
    code: "VQ4-0899-01",
    house: "veltrax",
    notes: `What is known: 44 pins, ground on 12 and 34, +5 V on 1 and 23; listens to A12 to A15, E and four data
lines; its one output is read as a bit of the option switches. Without it the machine shows its attract mode for ever.`,
    sightings: [
      { board: "moth-mpu", at: "U14", dateCode: "8730", member: "dolores" },
      { board: "moth-mpu", at: "U14", dateCode: "8732", member: "greta", note: "Paint dot on top, yellow." },
    ],
  },
  {
    code: "BW 80590 B",
    house: "brightwater",
    notes: `What is known: 16 pins, ground on 8, +5 V on 16, on the coin lines between J1 and the input buffers.
Perhaps a filter against static from the coin door. Nobody has opened one.`,
    sightings: [{ board: "tern-arcade-main", at: "9E", dateCode: "8518", member: "tomasz" }],
  },
];

export const claims: SeedClaim[] = [
  {
    from: "HDL-C45-22",
    to: "HDL-C45-14",
    grade: "drop-in",
    bothWays: true,
    conditions: [],
    note: "Tune the scale trimmer again, as after any change of U1.",
    evidence: [
      { kind: "pin-table", member: "femi", note: "Twenty-four of twenty-four.", yearsAgo: 2.6 },
      {
        kind: "fitted-worked",
        member: "kaisa",
        note: "In voice 2 since spring; tunes in half the time.",
        yearsAgo: 1.6,
      },
    ],
  },
  {
    from: "HDL-C45-22",
    to: "SM6931",
    grade: "drop-in",
    bothWays: false,
    conditions: [],
    note: "Contested: both parts are from week 26 of 1985.",
    evidence: [
      {
        kind: "fitted-worked",
        member: "kaisa",
        note: "Five octaves within 4 cents after trimming HF track.",
        yearsAgo: 2.1,
      },
      {
        kind: "fitted-failed",
        member: "pim",
        note: "Flat by a semitone above the third octave, whatever I turn.",
        case: "osprey-voice-flat",
        provedElsewhere: "not-known",
        yearsAgo: 0.9,
      },
      {
        kind: "electrical",
        member: "mirela",
        note: "REF is 5.00 V on both. HFA sinks 40 µA on pim's and 210 µA on kaisa's. One of the two is sick.",
        yearsAgo: 0.8,
      },
    ],
  },
  {
    from: "KL/0702/7",
    to: "BW 80502 A",
    grade: "same-part",
    bothWays: true,
    conditions: [],
    evidence: [
      {
        kind: "electrical",
        member: "femi",
        note: "Diode readings of all sixteen pins, black lead on ground: largest difference 7 mV.",
        yearsAgo: 2.2,
      },
      { kind: "fitted-worked", member: "kaisa", note: "Same attack at the same setting, by scope.", yearsAgo: 1.9 },
    ],
  },
  {
    from: "KL/0702/7",
    to: "KL/0702/7S",
    grade: "adapter",
    bothWays: false,
    conditions: ["wire the adapter from the two pin tables: supply and capacitors are elsewhere"],
    evidence: [
      {
        kind: "fitted-worked",
        member: "kaisa",
        note: "On a bought adapter with six wires crossed. Look twice at pins 1, 8, 9 and 16.",
        case: "osprey-voice-stuck-envelope",
        yearsAgo: 1.2,
      },
    ],
  },
  {
    from: "SM6912P",
    to: "SM6912R",
    grade: "not-a-fit",
    bothWays: true,
    conditions: [],
    note: "Same silicon, other contents: the top octave is silent and the wheels are read as pedals.",
    evidence: [
      {
        kind: "fitted-failed",
        member: "bram",
        note: "Twelve keys silent. The same part works in the small keyboard it came from.",
        provedElsewhere: "yes",
        yearsAgo: 1.8,
      },
    ],
  },
  {
    from: "VQ4-0461-01",
    to: "VQ4-0461-02",
    grade: "drop-in",
    bothWays: false,
    conditions: [],
    note: "The other way round object 63 goes missing, and on the second program that is the ball.",
    evidence: [
      { kind: "fitted-worked", member: "tomasz", note: "In my Issue 1 board for a year.", yearsAgo: 1.7 },
      { kind: "told", member: "mirela", note: "A service note in a cabinet says the same.", yearsAgo: 2.9 },
    ],
  },
  {
    from: "VQ4-0461-02",
    to: "BW 80561 A",
    grade: "same-part",
    bothWays: true,
    conditions: [],
    evidence: [
      { kind: "electrical", member: "mirela", note: "68 of 68 pins within 12 mV, out of the socket.", yearsAgo: 1.5 },
      {
        kind: "fitted-worked",
        member: "tomasz",
        note: "Cured the striped sprites.",
        case: "tern-striped-sprites",
        yearsAgo: 1.4,
      },
    ],
  },
  {
    from: "VQ4-0475-01",
    to: "HDL-C48-10",
    grade: "drop-in",
    bothWays: false,
    conditions: [],
    note: "Contested: try it in a cabinet that uses the flipped picture before you say yes.",
    evidence: [
      { kind: "fitted-worked", member: "tomasz", note: "Picture right, upright cabinet, eight hours.", yearsAgo: 1.3 },
      {
        kind: "fitted-failed",
        member: "bram",
        note: "Table cabinet: the second player's picture is not flipped, only torn.",
        provedElsewhere: "yes",
        yearsAgo: 1.1,
      },
    ],
  },
  {
    from: "OR 27-514B",
    to: "OR 27-514D",
    grade: "drop-in",
    bothWays: false,
    conditions: ["a hang takes twice as long to be noticed: about 270 ms"],
    evidence: [
      { kind: "pin-table", member: "tomasz", note: "All forty.", yearsAgo: 2.4 },
      { kind: "fitted-worked", member: "mirela", note: "Issue 1 board, first program.", yearsAgo: 2.0 },
    ],
  },
  {
    from: "OR 27-561B",
    to: "OR 27-561C",
    grade: "conditional",
    bothWays: true,
    conditions: ["the sound board carries KL/0718/4 with C and KL/0718/1 with B"],
    note: "Two versions of the program. Pins alike, contents not.",
    evidence: [
      {
        kind: "fitted-worked",
        member: "tomasz",
        note: "Both versions on both boards, with the right phrases.",
        yearsAgo: 2.2,
      },
    ],
  },
  {
    from: "KL/0718/1",
    to: "KL/0718/4",
    grade: "not-a-fit",
    bothWays: true,
    conditions: [],
    note: "Other phrases. It speaks, but it says GAME OVER for a free ball.",
    evidence: [
      {
        kind: "fitted-failed",
        member: "tomasz",
        note: "Good part from my Issue 2 set, wrong words on the first program.",
        provedElsewhere: "yes",
        yearsAgo: 2.2,
      },
    ],
  },
  {
    from: "BW 80513 A",
    to: "KL/0731/2",
    grade: "same-part",
    bothWays: true,
    conditions: [],
    evidence: [
      { kind: "pin-table", member: "tomasz", note: "All forty-four.", yearsAgo: 1.9 },
      { kind: "fitted-worked", member: "yusuf", note: "Swapped between two boards, no ear can tell.", yearsAgo: 1.8 },
    ],
  },
  {
    from: "OR 27-541A",
    to: "SM6955P",
    grade: "drop-in",
    bothWays: true,
    conditions: [],
    evidence: [
      {
        kind: "fitted-worked",
        member: "dolores",
        note: "Both ways between an early and a late driver board.",
        yearsAgo: 2.0,
      },
    ],
  },
  {
    from: "HDL-C52-08",
    to: "VQ4-0488-01",
    grade: "same-part",
    bothWays: true,
    conditions: [],
    note: "On one good board each, never moved between them.",
    evidence: [
      { kind: "pin-table", member: "greta", note: "Traced 52 of the 80 pins, and those agree.", yearsAgo: 1.0 },
      { kind: "told", member: "dolores", note: "An old operator swore by it.", yearsAgo: 1.0 },
    ],
  },
];
