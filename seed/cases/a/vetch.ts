import type { SeedCase } from "#seed/shapes.ts";

export const cases: SeedCase[] = [
  {
    key: "vetch-snow",
    title: "Snow while scrolling, then the text shows twice",
    board: "vetch-terminal-logic",
    revision: "Rev B",
    copyTag: "VT-GRE-1",
    author: "greta",
    yearsAgo: 0.8,
    symptoms: ["snow", "wrong picture", "doubled text"],
    symptomText:
      "At first white specks while text scrolls. After ten minutes everything shows twice, the second time 6 lines and 32 columns on.",
    reproduced: "Specks at once, doubled text after 8 to 12 minutes. Host and cable make no difference.",
    outcome: "cured",
    lesson:
      "Right letters in wrong places are address lines: compare SA0 to SA10 with each other before reaching for the RAM.",
    story: `What the picture says, in a list, before any probe:

- letters are right → SD lines, U17, U9, U10 are well
- places are wrong by 6 lines and 32 columns → 6 × 80 + 32 = 512, and that is one address line: SA9
- it needs ten minutes → something warms

The board's own notes say *snow while scrolling: a ground of U8's socket*. So I took U8 out, cleaned its 68 contacts and
measured all five grounds to J1.3: none over 0.2 Ω. Back in: no change. It was worth doing and it was not it.

Then, arithmetic or not, all eleven SA lines one after another at the RAM, cold and warm:

| line | cold | after 12 min |
|---|---|---|
| SA0 to SA8, SA10 | active | active |
| SA9 | active, 3.3 V high | 1.4 V, hardly moves |

SA9 goes from U8.29 to pin 15 of the four :chip[2114]. Any of the five could be the sinner. With U4 to U7 lifted one at a
time by that leg nothing changed, so none of the RAM pulls it down. U8's output was tired. Cooling spray on U8 alone
put the lines right for half a minute, on U4 nothing.

The replacement is a :code[BW 00309 A] from the Rev C spares board of Ines, said to be the same silicon as
:code[HDL-C03-12]. It is, as far as a terminal in daily use can tell. I left the character ROM where it was; the spares
board's own would have drawn boxes for letters.`,
    checks: [
      { kind: "visual", at: "U8", power: "off", measured: "Nothing to see; socket contacts dull" },
      { kind: "continuity", at: "U8.34", to: "J1.3", power: "off", expected: "< 1 ohm", measured: "0.2 ohm" },
      { kind: "continuity", at: "U8.50", to: "J1.3", power: "off", expected: "< 1 ohm", measured: "0.2 ohm" },
      { kind: "trial", at: "U8", power: "off", what: "clean", outcome: "no-change", measured: "no change" },
      { kind: "dc-voltage", at: "+5V", power: "on", measured: "4.98 V" },
      { kind: "dc-voltage", at: "U8.35", power: "on", measured: "4.96 V" },
      { kind: "dc-voltage", at: "U4.18", power: "on", measured: "4.96 V" },
      { kind: "self-test", at: "LED1", power: "on", when: "cold", measured: "1 short beep, all lamps off" },
      {
        kind: "self-test",
        at: "LED1",
        power: "on",
        when: "after 12 min",
        measured: "LED1 and LED2 stay on",
        verdict: { chosen: "out-of-spec", reason: "This pattern means screen RAM." },
      },
      { kind: "activity", at: "SA8", power: "on", when: "after 12 min", expected: "active", measured: "active" },
      { kind: "activity", at: "SA9", power: "on", when: "after 12 min", expected: "active", measured: "floating" },
      { kind: "activity", at: "SA10", power: "on", when: "after 12 min", expected: "active", measured: "active" },
      {
        kind: "trial",
        at: "U4.15",
        power: "on",
        what: "lift-pin",
        outcome: "no-change",
        measured: "no change",
        note: "And the same leg of U5, U6, U7, by turns.",
      },
      { kind: "trial", at: "U4", power: "on", what: "cool", outcome: "no-change", measured: "no change", when: "warm" },
      { kind: "trial", at: "U8", power: "on", what: "cool", outcome: "changed", measured: "changed", when: "cooled" },
      {
        kind: "diode",
        at: "U8.29",
        to: "GND",
        lead: "black",
        power: "off",
        expected: "0.6 V ±8 %",
        measured: "0.871 V",
        note: "U8 out of its socket.",
      },
      {
        kind: "diode",
        at: "U8.28",
        to: "GND",
        lead: "black",
        power: "off",
        expected: "0.6 V ±8 %",
        measured: "0.604 V",
        note: "U8 out of its socket.",
      },
    ],
    causes: [
      {
        at: "U8.29",
        chip: "hdl-c03",
        failure: "intermittent",
        description: "Output SA9 opens inside when warm.",
        explains: [8, 10, 14, 15],
        cure: {
          action: "replaced",
          description: "Fitted in the cleaned socket.",
          fittedCode: "BW 00309 A",
          from: "Rev C spares board of Ines",
        },
        proof: {
          kind: "checks-repeated",
          minutes: 480,
          note: "Eight hours of scrolling text, then the checks that failed.",
          repeats: [
            { check: 8, measured: "1 short beep, all lamps off" },
            { check: 10, measured: "active" },
            { check: 15, measured: "0.598 V" },
          ],
        },
      },
    ],
    confirmations: [
      {
        member: "mirela",
        helped: true,
        note: "SA4 here, columns instead of lines. The table of lines found it in five minutes.",
      },
    ],
    comments: [
      { member: "pim", body: "Why is 1.4 V written as floating?", yearsAgo: 0.79 },
      {
        member: "mirela",
        body: "Because nobody drives it: an open TTL input sets itself there, and four RAM inputs do as well.",
        yearsAgo: 0.79,
      },
    ],
  },
  {
    key: "vetch-no-host",
    title: "Types locally, sends nothing to the host since the storm",
    board: "vetch-terminal-logic",
    revision: "Rev B",
    copyTag: "VT-MIR",
    author: "mirela",
    yearsAgo: 3.4,
    symptoms: ["serial port dead", "gets hot"],
    symptomText: "Local mode is perfect. On line nothing goes out, and characters from the host arrive now and then.",
    reproduced: "Always. VR1 too hot to touch after a minute, with J2 unplugged as well.",
    outcome: "cured",
    lesson:
      "Hot VR1 is not a bad VR1: a shorted line driver holds -12 V down. Lift the load before changing the regulator.",
    story: `Thunder on Sunday, terminal deaf and dumb on Monday. The line drivers are what everybody would change first, and it
would have been right, and I still wanted to see it.

-12 V measures **-3.1 V**, at VR1 and at U24.1 alike, so the rail is held down rather than broken. VR1 has its -19 V at
the input and is at 96 °C. A regulator that is too hot either gives too much or is robbed. I lifted U24's pin 1: the
rail jumps to -12.02 V. So :chip[7912] is well, and :chip[mc1488] is the thief.

Wrong turn, a short one: C2. A tantalum on a negative rail is my favourite suspect since Otto's Harrow, and I had it out
and measured before I lifted a single pin. 21.6 µF, ESR 0.9 Ω, back in it went.

What about the other side? A surge that kills a driver often visits the receiver as well. With -12 V back and a new U24
in a socket the terminal sent, and still lost every tenth character. RXD at U25.3 showed slow edges: input resistor
inside :chip[mc1489] cooked to 900 Ω where a good one has 3 to 7 kΩ. That one was found by ohmmeter with the power off,
pin 1 to ground, against pins 4 and 10 of the same chip: the odd one out.

I count both under one cause, since one lightning did both, and list the second as well so that it can be found.`,
    checks: [
      { kind: "visual", at: "U24", power: "off", measured: "Hairline crack across the body" },
      {
        kind: "capacitance",
        at: "C2",
        power: "off",
        expected: "22 µF ±20 %",
        measured: "21.6 µF",
        note: "Out of the board. Wrong turn.",
      },
      { kind: "esr", at: "C2", power: "off", expected: "< 3 ohm", measured: "0.9 ohm" },
      { kind: "resistance", at: "U25.1", to: "GND", power: "off", expected: "3..7 kohm", measured: "0.9 kohm" },
      { kind: "resistance", at: "U25.4", to: "GND", power: "off", expected: "3..7 kohm", measured: "4.6 kohm" },
      { kind: "resistance", at: "U25.10", to: "GND", power: "off", expected: "3..7 kohm", measured: "4.7 kohm" },
      { kind: "dc-voltage", at: "+5V", power: "on", measured: "5.01 V" },
      { kind: "dc-voltage", at: "+12V", power: "on", measured: "11.9 V" },
      { kind: "dc-voltage", at: "-12V", power: "on", measured: "-3.1 V" },
      { kind: "dc-voltage", at: "VR1.2", power: "on", measured: "-19.2 V" },
      { kind: "temperature", at: "VR1", power: "on", expected: "< 60 °C", measured: "96 °C" },
      { kind: "activity", at: "U11.19", power: "on", expected: "active", measured: "active", note: "Key held down." },
      { kind: "activity", at: "U24.3", power: "on", expected: "active", measured: "stuck high" },
      {
        kind: "trial",
        at: "U24.1",
        power: "on",
        what: "lift-pin",
        outcome: "changed",
        measured: "changed",
        note: "-12 V goes to -12.02 V at once.",
      },
      { kind: "waveform", at: "U25.3", power: "on", measured: "edges of 8 µs, every tenth bit short" },
    ],
    causes: [
      {
        at: "U24",
        chip: "mc1488",
        failure: "internal-short",
        description: "Negative supply shorted to the outputs by a surge on the line; pulled -12 V down.",
        explains: [0, 8, 10, 12, 13],
        cure: { action: "replaced", description: "Socket fitted, new driver.", from: "club drawer" },
        proof: {
          kind: "checks-repeated",
          note: "Two hours of file transfer after both changes, no lost character.",
          repeats: [
            { check: 8, measured: "-12.01 V" },
            { check: 10, measured: "41 °C" },
            { check: 12, measured: "active" },
          ],
        },
      },
      {
        at: "U25.1",
        chip: "mc1489",
        failure: "input-loading",
        description: "Input resistor of the RXD receiver cooked by the same surge.",
        explains: [3, 14],
        cure: { action: "replaced", description: "Socket fitted, new receiver.", from: "club drawer" },
        proof: { kind: "checks-repeated", note: "Edges clean.", repeats: [{ check: 3, measured: "4.6 kohm" }] },
      },
    ],
    confirmations: [
      { member: "greta", helped: true, note: "Same storm, same chip, other street." },
      {
        member: "otto",
        helped: true,
        note: "On quite another machine, but -12 V at -3 V and a cracked driver all the same.",
      },
    ],
    comments: [
      {
        member: "yusuf",
        body: "Lift the load before you change the source. I would print that on the mugs.",
        yearsAgo: 3.4,
      },
    ],
  },
  {
    key: "vetch-keyboard-lost",
    title: "Keyboard processor without a program",
    board: "vetch-terminal-logic",
    revision: "Rev B",
    copyTag: "VT-PIM",
    author: "pim",
    yearsAgo: 1.0,
    symptoms: ["keys dead", "self-test lamp"],
    symptomText: "Lamp LELED3 stays on. Text from the host shows, no key does anything.",
    reproduced: "Always, with two keyboards.",
    outcome: "given-up",
    lesson:
      "A single-chip processor of the same number with another program is another part. Read the code's last figures.",
    story: `LED3 stays on means that the keyboard processor does not answer. I wanted to be thorough this time.

Supply at pin 40 is good, crystal swings at 6 MHz, reset is high. ALE should be at a fifteenth of the crystal and is
flat. /CS comes when the host processor asks. So it is fed and clocked and let go, and it does nothing.

Femi has a counter with the same chip, :code[SM0806P], and mine is :code[SM0805P], which looks like the next one. With
his chip in my terminal **ALE runs at 400 kHz** and I shouted. But LED3 stayed on and no key worked. Femi came over and
explained it kindly: same silicon, other program. It tried to count frequencies with my keyboard.

| fitted | ALE | LED3 |
|---|---|---|
| mine, SM0805P | flat | on |
| femi's, SM0806P | 400 kHz | on |
| greta's, SM0805P, for five minutes | 400 kHz | off, keys work |

So greta's proves that the rest is well, and she needs hers. I asked around and nobody sells a :chip[sm0805] with this
program. The inside cannot be read out with what we have.

I give up, but not for ever: the board is dry in a bag, with a label. Mirela thinks that a small modern processor on an
adapter could talk like it, if somebody records what the good one says on /CS, /RD and /WR. If you have a dead terminal
with a living U12, I have a living terminal with a dead one.`,
    checks: [
      {
        kind: "self-test",
        at: "LED3",
        power: "on",
        measured: "LED3 stays on",
        verdict: { chosen: "out-of-spec", reason: "The lamp names the keyboard processor." },
      },
      { kind: "trial", at: "U12", power: "off", what: "reseat", outcome: "no-change", measured: "no change" },
      { kind: "continuity", at: "J3.1", to: "U12.4", power: "off", expected: "< 1 ohm", measured: "0.3 ohm" },
      { kind: "continuity", at: "J3.2", to: "U12.5", power: "off", expected: "< 1 ohm", measured: "0.3 ohm" },
      { kind: "dc-voltage", at: "U12.40", power: "on", measured: "4.95 V" },
      { kind: "dc-voltage", at: "U12.39", power: "on", measured: "4.95 V" },
      { kind: "frequency", at: "U12.2", power: "on", expected: "6 MHz ±1 %", measured: "6.00 MHz" },
      { kind: "level", at: "U12.3", power: "on", expected: "high", measured: "high" },
      { kind: "activity", at: "U12.38", power: "on", expected: "active", measured: "active" },
      { kind: "activity", at: "U12.10", power: "on", expected: "clock 400 kHz", measured: "no activity" },
      {
        kind: "trial",
        at: "U12",
        power: "off",
        what: "swap",
        outcome: "no-change",
        measured: "no change",
        note: "Femi's SM0806P: ALE runs, no keys.",
      },
      {
        kind: "trial",
        at: "U12",
        power: "off",
        what: "swap",
        outcome: "cured",
        measured: "cured",
        note: "Greta's SM0805P, lent for five minutes.",
      },
    ],
    causes: [
      {
        at: "U12",
        chip: "sm0805",
        failure: "dead",
        description:
          "Core does not run: no ALE with supply, crystal and reset in order. No part with this program to be had.",
        explains: [0, 9, 11],
      },
    ],
    confirmations: [],
    comments: [
      {
        member: "femi",
        body: "You asked first, measured, and put it back unharmed. Lend me your next board.",
        yearsAgo: 1.0,
      },
      {
        member: "mirela",
        body: "I will bring the analyser on the second Thursday and record greta's.",
        yearsAgo: 0.98,
      },
      { member: "greta", body: "Only with a list of what is clipped where.", yearsAgo: 0.98 },
    ],
  },
  {
    key: "vetch-bright-line",
    title: "One bright horizontal line, text squeezed into it",
    board: "vetch-terminal-deflection",
    revision: "Rev A",
    copyTag: "VD-OTTO",
    author: "otto",
    yearsAgo: 5.1,
    symptoms: ["bright line", "no field scan"],
    symptomText: "A line across the middle, very bright, all the writing in it. High voltage whistles as it should.",
    reproduced: "At once and always. Brightness turned down before anything else.",
    outcome: "cured",
    lesson:
      "Line and high voltage there, field gone: the coupling capacitor before the transistors, an ESR meter before an iron.",
    story: `Turn the brightness down first. A line of that brightness writes itself into the phosphor while you look for your
screwdriver, and then you have a terminal that remembers you.

The line scan works, or there would be no high voltage and no light at all. So the supply is well, T3 is well, and only
the field is away. There are five things between U1.10 and the coil: R6, Q5, Q6, C13, the coil. U1 gave its ramp at
pin 8, as a child's drawing of a saw, and drove pin 10. At the emitters of Q5 and Q6 stood 6.1 V, half of the rail as
it should be, with the ramp on it. **After C13: nothing.**

Unplugged, anode discharged through the stick, twice, C1 measured at 0.1 V. Then C13 out: 1000 µF says the can; the
meter says 31 µF and an ESR of 44 Ω. It had no bulge and no wet foot. They do not always.

Somebody before me had changed Q5 and Q6: bright solder, other mica. They were good, and the old ones surely too. I left
them in.

The one number I was not happy with is the raw rail, 24.9 V. The limit in the record says 22 V and 12 percent, and that
is for 230 V in the wall. My wall had 241 that night, so it is well, and I have said so. See also :chip[vq4-0344].

New C13 at 105 °C and 35 V, height touched up with RV1, a hundred lines of H, straight to the edge.`,
    checks: [
      { kind: "visual", at: "Q5", power: "off", measured: "Q5 and Q6 renewed at some time, neatly" },
      { kind: "resistance", at: "+12V", to: "GND", power: "off", expected: "> 50 ohm", measured: "118 ohm" },
      {
        kind: "resistance",
        at: "J4.3",
        to: "J4.4",
        power: "off",
        expected: "5..15 ohm",
        measured: "8.4 ohm",
        note: "Field coil.",
      },
      {
        kind: "diode",
        at: "Q5.B",
        to: "Q5.E",
        lead: "red",
        power: "off",
        expected: "0.6 V ±10 %",
        measured: "0.588 V",
      },
      {
        kind: "dc-voltage",
        at: "VRAW",
        power: "on",
        expected: "22 V ±12 %",
        measured: "24.9 V",
        verdict: { chosen: "in-spec", reason: "Mains was 241 V that evening; 24.9 V is the raw rail's share of it." },
      },
      { kind: "dc-voltage", at: "TP1", power: "on", expected: "12 V ±5 %", measured: "12.1 V" },
      { kind: "dc-voltage", at: "U1.16", power: "on", measured: "12.1 V" },
      { kind: "activity", at: "U1.6", power: "on", expected: "active", measured: "active" },
      { kind: "waveform", at: "U1.8", power: "on", measured: "clean ramp, 60 Hz" },
      { kind: "activity", at: "U1.10", power: "on", expected: "active", measured: "active" },
      { kind: "dc-voltage", at: "Q5.E", power: "on", expected: "6 V ±10 %", measured: "6.1 V" },
      { kind: "activity", at: "J4.3", power: "on", expected: "active", measured: "no activity" },
      { kind: "esr", at: "C13", power: "off", expected: "< 0.5 ohm", measured: "44 ohm" },
      { kind: "capacitance", at: "C13", power: "off", expected: "1000 µF ±20 %", measured: "31 µF" },
    ],
    causes: [
      {
        at: "C13",
        failure: "out-of-value",
        description: "Dried out: no coupling to the field coil.",
        explains: [11, 12, 13],
        cure: { action: "replaced", description: "1000 µF 35 V 105 °C; height set with RV1.", from: "new" },
        proof: {
          kind: "checks-repeated",
          minutes: 180,
          note: "Three hours with a full page; height does not move.",
          repeats: [
            { check: 11, measured: "active" },
            { check: 12, measured: "0.05 ohm" },
            { check: 13, measured: "1040 µF" },
          ],
        },
      },
    ],
    confirmations: [
      {
        member: "greta",
        helped: true,
        note: "VD-GRE-2, ESR 31 ohm. Brightness was down within a second, I had read this.",
      },
      {
        member: "tomasz",
        helped: true,
        note: "A monitor in a cabinet, other maker, same capacitor in the same place.",
      },
    ],
    comments: [
      {
        member: "ines",
        body: "For qualified hands only. Bring such a set to club night and let Otto put his hand in his pocket.",
        yearsAgo: 5.0,
      },
    ],
  },
  {
    key: "vetch-one-tick",
    title: "One tick from the line output transformer, then dark",
    board: "vetch-terminal-deflection",
    revision: "Rev B",
    copyTag: "VD-GRE-1",
    author: "otto",
    yearsAgo: 1.8,
    symptoms: ["dark screen", "one tick", "intermittent"],
    symptomText:
      "Heater glows, one tick, dark. After ten seconds off it ticks once more. Every fifth start it runs for good.",
    reproduced: "Four starts in five, cold. Warm never.",
    outcome: "cured-cause-unknown",
    lesson:
      "XRAY latched without too much EHT: look for a bad joint in the sense path, and say so if you only soldered and never saw it.",
    story: `One tick is the latch. :chip[vq4-0344] sees more than 0.7 V at its pin 13 and takes the drive away until the supply has
been gone for five seconds. People tie that pin down to see a picture. They then have a picture, X-rays, and an arc. I do
not do it and I do not show how.

There are two honest ways to get the latch: EHT really too high, or a sense path that lies. So I measured the first with
the high-voltage probe at a start that ran: 11.9 kV, as it should be. C10 on the bridge: 12.1 nF, right. The rail: 12.05 V.

Then the path: T3.7, D5, R4. D5 is 11.1 V on the tester, R4 is 9.97 k. Pin 13 in a running start: 0.05 V. In a start that
latched the storage scope has one spike of 2 V, shorter than a line. From where, I could not see.

I then did what one does at eleven at night:

1. all eight pins of T3 resoldered (two had grey rings, none was loose)
2. D5 and R4 resoldered
3. U1 reseated

and it has started forty times out of forty since, cold, from the fridge even. **Which of the three it was I do not
know**, because I did all three without a start between them, like an apprentice. It is cured and the cause is unknown,
and that is what the box says.`,
    checks: [
      { kind: "visual", at: "T3", power: "off", measured: "Grey rings at two pins, none loose to the finger" },
      { kind: "capacitance", at: "C10", power: "off", expected: "12 nF ±5 %", measured: "12.1 nF" },
      { kind: "resistance", at: "R4", power: "off", expected: "10 kohm ±5 %", measured: "9.97 kohm" },
      { kind: "dc-voltage", at: "+12V", power: "on", measured: "12.05 V" },
      {
        kind: "dc-voltage",
        at: "EHT",
        power: "on",
        measured: "11.9 kV",
        note: "High-voltage probe, at a start that ran.",
      },
      { kind: "dc-voltage", at: "+420V", power: "on", measured: "428 V" },
      {
        kind: "dc-voltage",
        at: "U1.13",
        power: "on",
        expected: "< 0.4 V",
        measured: "0.05 V",
        note: "At a start that ran.",
      },
      {
        kind: "waveform",
        at: "U1.13",
        power: "on",
        when: "cold",
        measured: "one spike of 2 V, under 60 µs, then the drive is gone",
      },
      { kind: "activity", at: "U1.6", power: "on", when: "cold", expected: "active", measured: "no activity" },
      {
        kind: "trial",
        at: "U1",
        power: "on",
        what: "cool",
        outcome: "changed",
        measured: "changed",
        when: "cooled",
        note: "A warm set that started cold-latched again after spray.",
      },
      { kind: "trial", at: "D5", power: "off", what: "swap", outcome: "no-change", measured: "no change" },
    ],
    causes: [
      {
        at: "XRAY",
        failure: "cold-joint",
        description: "Somewhere between T3.7, D5, R4 and U1's socket. Which, is not known.",
        explains: [7, 8],
        cure: { action: "resoldered", description: "T3, D5 and R4 resoldered, U1 reseated, in one go." },
        proof: {
          kind: "checks-repeated",
          note: "Forty cold starts, ten of them from the fridge.",
          repeats: [{ check: 8, measured: "active" }],
        },
      },
    ],
    confirmations: [
      {
        member: "pim",
        helped: true,
        note: "Otto did it with me watching from two metres. Mine was T3 alone: he started it in between.",
      },
    ],
    comments: [
      { member: "bram", body: "If even Otto does three things at once I feel better.", yearsAgo: 1.8 },
      { member: "otto", body: "You should feel worse.", yearsAgo: 1.8 },
    ],
  },
];
