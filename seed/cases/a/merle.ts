import type { SeedCase } from "#seed/shapes.ts";

export const cases: SeedCase[] = [
  {
    key: "merle-battery-leak",
    title: "Settings lost at every start, serial port deaf",
    board: "merle-mainboard",
    revision: "Issue A",
    copyTag: "MT-PIM",
    author: "anouk",
    yearsAgo: 2.3,
    symptoms: ["settings lost", "serial port dead", "corrosion"],
    symptomText: "Says CLOCK SETTINGS LOST each time, even without being switched off. Serial receives nothing.",
    reproduced: "Every start, with three different cables.",
    outcome: "cured",
    lesson:
      "Green under the battery goes further than it looks: beep the ground from chip to chip, not from chip to plug.",
    story: `Forty photographs exist; three are enough. The first shows BT1, swollen, with its crystals. The second is the board
under U24 after the battery came out: the ground trace there is green in one stretch and **gone** in another, a gap of
2 mm under the edge of the chip. The third is the same place with the wire.

What made it confusing is that everything still had a ground, only not the same one. U32 had its through the decoupling
of +5 V and a resistor or two, so it read 0.41 V on its ground pin, and its data was right on some evenings.

| point to ground at J1.2 | before | after |
|---|---|---|
| U32.12 | 38 Ω | 0.2 Ω |
| U27.7 | 41 Ω | 0.2 Ω |
| U24.7 | OL | 0.2 Ω |
| U23.7 | 0.1 Ω | 0.1 Ω |

I first changed :chip[mc1489], because a deaf serial port is always that. It was not. Its ground was.

How it was cleaned: battery off, vinegar with a brush, water, alcohol, two hours at 50 °C, then scraped to bare copper
until the copper shone, tinned, wire laid along the old trace and fixed with lacquer. The new battery hangs on two
wires, away from the board, in a bag. Pim's settings were gone; greta had them on a list, of course.`,
    checks: [
      { kind: "visual", at: "BT1", power: "off", measured: "Leaking, green crust to U24 and U32" },
      { kind: "dc-voltage", at: "VBAT", power: "off", measured: "0.2 V" },
      { kind: "continuity", at: "U32.12", to: "J1.2", power: "off", expected: "< 1 ohm", measured: "38 ohm" },
      { kind: "continuity", at: "U27.7", to: "J1.2", power: "off", expected: "< 1 ohm", measured: "41 ohm" },
      { kind: "continuity", at: "U24.7", to: "J1.2", power: "off", expected: "< 1 ohm", measured: "OL" },
      { kind: "continuity", at: "U23.7", to: "J1.2", power: "off", expected: "< 1 ohm", measured: "0.1 ohm" },
      {
        kind: "trial",
        at: "U27",
        power: "off",
        what: "swap",
        outcome: "no-change",
        measured: "no change",
        note: "Wrong turn, done before the beeping.",
      },
      { kind: "dc-voltage", at: "+5V", power: "on", measured: "5.02 V" },
      { kind: "dc-voltage", at: "U32.12", power: "on", expected: "0 V ±50 mV", measured: "0.41 V" },
      { kind: "dc-voltage", at: "VRAM", power: "on", measured: "4.72 V" },
      { kind: "activity", at: "U24.5", power: "on", expected: "clock 8 MHz", measured: "no activity" },
      {
        kind: "activity",
        at: "U27.1",
        power: "on",
        expected: "active",
        measured: "active",
        note: "Far end sends a file.",
      },
      { kind: "activity", at: "U27.3", power: "on", expected: "active", measured: "stuck high" },
      {
        kind: "self-test",
        at: "U1",
        power: "on",
        measured: "CLOCK SETTINGS LOST",
        verdict: { chosen: "out-of-spec", reason: "The message names the fault." },
      },
    ],
    causes: [
      {
        at: "GND",
        failure: "corrosion",
        description: "Ground trace under U24 eaten through by the leaking BT1; U24, U27 and U32 without a good ground.",
        explains: [0, 2, 3, 4, 8, 10, 12, 13],
        cure: {
          action: "trace-repaired",
          description: "Cleaned, tinned, 0.6 mm wire along the trace from U24.7 to U32.12; BT1 on wires.",
        },
        proof: {
          kind: "checks-repeated",
          note: "Everything that failed, and settings kept over one week unplugged.",
          repeats: [
            { check: 2, measured: "0.2 ohm" },
            { check: 3, measured: "0.2 ohm" },
            { check: 4, measured: "0.2 ohm" },
            { check: 8, measured: "2 mV" },
            { check: 10, measured: "clock 8 MHz" },
            { check: 12, measured: "active" },
          ],
        },
      },
    ],
    confirmations: [
      { member: "ines", helped: true, note: "Donor board looked clean from above. U24.7 was open there too." },
      { member: "greta", helped: false, note: "Mine lost its settings because CR1 was open. No green at all." },
    ],
    comments: [{ member: "pim", body: "I had it for two years next to my pillow.", yearsAgo: 2.3 }],
  },
  {
    key: "merle-silent",
    title: "Picture and keys well, no sound at all, +12 V good at the plug",
    board: "merle-mainboard",
    revision: "Issue C",
    copyTag: "MT-KAI",
    author: "kaisa",
    yearsAgo: 1.1,
    symptoms: ["no sound"],
    symptomText: "Silent left and right. EXTSND through the expansion is silent too.",
    reproduced: "Always; once it crackled when the board was bent.",
    outcome: "cured",
    lesson: "A good rail at the connector does not prove the pin. Measure at U8.27 before you blame U8.",
    story: `Sound chips are my weakness, so I wanted it to be the sound chip. It was not.

The digital side of :chip[or-27-066] answered: I could write registers and read the noise register back. VREF at pin 26
should sit at 6 V and sat at 0.3. A reference of half of nothing is nothing, so I went to pin 27, and there was
**0.62 V** where J1.3 had 12.1.

Between them is one thin trace past the mounting hole, one via, and C21. On the far side of the via: 12.1 V. On this
side: 0.6. The board has been screwed down hard on a washer with teeth; under the magnifier the via has a ring like a
coffee stain around it.

- pushed with a wooden stick: crackle, and for one second a chord
- soldered a wire through the via, both sides: sound

The reading at U8.28 is one I argued with the judge about. 4.74 V is a hair out at 5 %, and I say it is in: it was
taken with the meter whose battery lamp was on, and the other meter said 4.81. So that is my own verdict with my reason.

The chip in there is a :code[SM0266F], so mine sounds brighter than yours anyway. C11 and C12 are 2n2 now, and I can tell
them apart no longer.`,
    checks: [
      {
        kind: "visual",
        at: "U8",
        power: "off",
        measured: "All joints shine; ring around the via at the mounting hole",
      },
      { kind: "resistance", at: "+12V", to: "GND", power: "off", expected: "> 500 ohm", measured: "2.8k" },
      { kind: "dc-voltage", at: "J1.1", power: "on", measured: "5.04 V" },
      { kind: "dc-voltage", at: "J1.3", power: "on", measured: "12.1 V" },
      {
        kind: "dc-voltage",
        at: "U8.28",
        power: "on",
        measured: "4.74 V",
        verdict: {
          chosen: "in-spec",
          reason: "Meter with a low battery; the other meter read 4.81 V at the same pin.",
        },
      },
      { kind: "dc-voltage", at: "U8.27", power: "on", measured: "0.62 V" },
      { kind: "dc-voltage", at: "U8.26", power: "on", expected: "6 V ±5 %", measured: "0.31 V" },
      { kind: "dc-voltage", at: "U28.4", power: "on", measured: "0.62 V" },
      { kind: "activity", at: "U8.17", power: "on", expected: "clock 2 MHz", measured: "clock 2.00 MHz" },
      { kind: "level", at: "U8.18", power: "on", expected: "high", measured: "high" },
      {
        kind: "activity",
        at: "U8.15",
        power: "on",
        expected: "active",
        measured: "active",
        note: "While a tune plays.",
      },
      { kind: "activity", at: "U8.19", power: "on", expected: "active", measured: "no activity" },
      {
        kind: "trial",
        at: "U8",
        power: "on",
        what: "press",
        outcome: "changed",
        measured: "changed",
        when: "pressed",
        note: "Crackle at the via, not at U8.",
      },
      { kind: "continuity", at: "U8.27", to: "J1.3", power: "off", expected: "< 1 ohm", measured: "OL" },
    ],
    causes: [
      {
        at: "+12V",
        failure: "broken-trace",
        description: "Via beside the mounting hole cracked through by a toothed washer.",
        explains: [5, 6, 7, 11, 12, 13],
        cure: {
          action: "trace-repaired",
          description: "Wire through the via, soldered on both sides; plastic washer.",
        },
        proof: {
          kind: "checks-repeated",
          note: "Plus one evening of music.",
          repeats: [
            { check: 5, measured: "12.05 V" },
            { check: 6, measured: "6.01 V" },
            { check: 7, measured: "12.05 V" },
            { check: 11, measured: "active" },
            { check: 13, measured: "0.1 ohm" },
          ],
        },
      },
    ],
    confirmations: [{ member: "bram", helped: true, note: "I had the SM0266F in the shopping basket already." }],
    comments: [
      {
        member: "yusuf",
        body: "0.62 V on a dead rail is somebody's diode feeding it backwards. It nearly always is.",
        yearsAgo: 1.1,
      },
      { member: "dolores", body: "Toothed washers: the devil's own flower.", yearsAgo: 1.0 },
    ],
  },
  {
    key: "merle-freezes",
    title: "Freezes once or twice an evening, stripes in the picture until pressed",
    board: "merle-mainboard",
    revision: "Issue B",
    copyTag: "MT-GRE",
    author: "greta",
    yearsAgo: 0.5,
    symptoms: ["freezes", "intermittent", "stripes"],
    symptomText:
      "Runs for one to three hours, then stops with vertical stripes. Reset does not help, pressing on U7 does.",
    reproduced: "1. Warm room, 2. long listing, 3. wait. Five freezes in four evenings.",
    outcome: "works-not-proved",
    lesson: "A fault that comes twice in an evening needs more than two evenings without it. I say works, not cured.",
    story: `List of what was done, in order.

1. Wrote down each freeze with the time since power-on: 74, 131, 62, 180, 95 minutes.
2. At the fourth freeze did not switch off, but measured.
3. At the fifth pressed on chips one at a time, from U1 to U35.

At a freeze PHI0 stands still, and U7 has its supply at pin 23 and at pin 44, but its second ground, pin 12, is **0.28 V**
above the board's ground. Pressing on the corner by pin 7 brings it to 3 mV and the machine goes on as if nothing had
been. The socket's wipers at pins 7, 12 and 17 were wider than the others by eye.

What I changed: took U7 out with a proper puller, cleaned wipers and legs, bent the wipers of three contacts inward by a
hair with a bent needle, put it back. I first swapped :code[OR 27-041B] for the club's :code[BW 00713 C], with no
change in how often it froze, so the chip is not it.

Since then 22 hours without a freeze, and that is not enough. Five freezes in about nine hours of running give one in
108 minutes; 22 hours without would be luck of a very small size, *if* it always was so regular. It was not. The winter
is dry and the room is cold. I will say cured in summer.

- spare PLCC-44 socket: in the bag, in case
- :chip[or-27-041] itself: goes back to the drawer as good`,
    checks: [
      { kind: "visual", at: "U7", power: "off", measured: "Socket contacts 7, 12 and 17 wider than the rest" },
      { kind: "dc-voltage", at: "+5V", power: "on", measured: "5.01 V" },
      { kind: "ripple", at: "+5V", power: "on", expected: "≤ 50 mVpp", measured: "18 mVpp" },
      { kind: "dc-voltage", at: "U7.23", power: "on", when: "after 95 min", measured: "4.98 V" },
      { kind: "dc-voltage", at: "U7.44", power: "on", when: "after 95 min", measured: "4.98 V" },
      {
        kind: "dc-voltage",
        at: "U7.12",
        power: "on",
        when: "after 95 min",
        expected: "0 V ±50 mV",
        measured: "0.28 V",
      },
      {
        kind: "activity",
        at: "U7.3",
        power: "on",
        when: "after 95 min",
        expected: "clock 2 MHz",
        measured: "stuck high",
      },
      {
        kind: "frequency",
        at: "U7.2",
        power: "on",
        when: "after 95 min",
        expected: "16 MHz ±1 %",
        measured: "16.00 MHz",
      },
      { kind: "level", at: "U1.40", power: "on", when: "after 95 min", expected: "high", measured: "high" },
      {
        kind: "trial",
        at: "U1",
        power: "on",
        what: "press",
        outcome: "no-change",
        measured: "no change",
        when: "pressed",
      },
      { kind: "trial", at: "U7", power: "on", what: "press", outcome: "changed", measured: "changed", when: "pressed" },
      {
        kind: "trial",
        at: "U7",
        power: "off",
        what: "swap",
        outcome: "no-change",
        measured: "no change",
        note: "BW 00713 C, freezes too.",
      },
      {
        kind: "continuity",
        at: "U7.12",
        to: "GND",
        power: "off",
        expected: "< 1 ohm",
        measured: "0.3 ohm",
        note: "Cold it is well, of course.",
      },
    ],
    causes: [
      {
        at: "U7.12",
        chip: "or-27-041",
        failure: "bad-socket",
        description: "Socket contact of the second ground lets go when warm. Probable, not proved.",
        explains: [5, 6, 10],
        cure: { action: "cleaned", description: "Contacts 7, 12 and 17 cleaned and bent inward." },
      },
    ],
    confirmations: [],
    comments: [
      { member: "ines", body: "Works, not proved. I wish more cases ended on those words.", yearsAgo: 0.48 },
      { member: "bram", body: "Just fit a new socket!", yearsAgo: 0.47 },
      { member: "greta", body: "Then I would never know. The new one is in the bag.", yearsAgo: 0.47 },
    ],
  },
];
