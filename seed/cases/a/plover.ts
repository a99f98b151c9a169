import type { SeedCase } from "#seed/shapes.ts";

export const cases: SeedCase[] = [
  {
    key: "plover-last-digits",
    title: "Last two digits dance, reference is good",
    board: "plover-counter",
    revision: "Issue 1",
    copyTag: "PL-FEMI-1",
    author: "femi",
    yearsAgo: 0.1,
    symptoms: ["unstable reading", "last digits dance"],
    symptomText:
      "Counts a 1 MHz house standard to within 30 counts either way in the last two digits. Before the summer it was 1.",
    reproduced: "Always, both inputs, from cold and after two hours.",
    outcome: "open",
    lesson: "Not finished. The readings so far clear the reference, the rails and the input.",
    asksHelp:
      "Has anybody pins 62 and 63 of a good U2 on a scope, gate 1 s, input A at 1 MHz? Mine sit at 1.31 V and 2.46 V. And is 3.02 V at VCAL on the battery usual after this many years?",
    story: `I set out what I have, in the hope that somebody sees what I do not.

The reference at TP1 agrees with the house standard to 0.02 ppm and has no jitter that my scope can show. GATE at TP2 is
one second to the microsecond. With the same signal on A and B the ratio reads 1.000000 without a flicker, so counting is
exact; what is uncertain is **the rest between the last count and the end of the gate**, which is the interpolator's work.

| point | mine | in the notes of PL-FEMI-2 |
|---|---|---|
| U2.62, INTERPA | 1.31 V | 2.44 V |
| U2.63, INTERPB | 2.46 V | 2.45 V |
| U2.64, CAL | low | low |
| VCAL, power off | 3.02 V | 3.05 V |

Sixty-two is the odd one out. It would be easy to say that U2 is ill, and it is the one part of which I have no second.
But a lifted ground at pin 30 is said to do the same, and my eyes are not what they were. Under the club's microscope
pins 28 to 33 look sound and beep to ground from the leg, not only from the pad.

What I have not done: hot air anywhere near it. Constants of the calibration are read out and printed, and Err 1 does
not show, so U4 is not the reason. :code[BW 00452 B] would fit the place, and on Issue 1 it reads one count high;
I would take that for thirty, but I should like to know first. Anybody with a good :chip[bw-00452] and a quiet evening?`,
    checks: [
      { kind: "visual", at: "U2", power: "off", measured: "Pins 28 to 33 sound under the microscope" },
      {
        kind: "continuity",
        at: "U2.30",
        to: "GND",
        power: "off",
        expected: "< 1 ohm",
        measured: "0.2 ohm",
        note: "From the leg, not from the pad.",
      },
      { kind: "dc-voltage", at: "VBAT", power: "off", measured: "3.04 V" },
      { kind: "dc-voltage", at: "+5V", power: "on", measured: "5.02 V" },
      { kind: "ripple", at: "+5V", power: "on", expected: "≤ 20 mVpp", measured: "9 mVpp" },
      { kind: "dc-voltage", at: "-5.2V", power: "on", measured: "-5.18 V" },
      { kind: "frequency", at: "TP1", power: "on", expected: "10 MHz ±1 ppm", measured: "10.0000002 MHz" },
      { kind: "activity", at: "TP2", power: "on", expected: "pulsing", measured: "pulsing" },
      { kind: "activity", at: "U2.22", power: "on", expected: "clock 1 MHz", measured: "clock 1.000 MHz" },
      { kind: "dc-voltage", at: "U2.62", power: "on", expected: "2.45 V ±5 %", measured: "1.31 V" },
      { kind: "dc-voltage", at: "U2.63", power: "on", expected: "2.45 V ±5 %", measured: "2.46 V" },
      { kind: "level", at: "U2.64", power: "on", expected: "low", measured: "low" },
      { kind: "self-test", at: "U1", power: "on", measured: "no error shown" },
      {
        kind: "trial",
        at: "U2",
        power: "on",
        what: "press",
        outcome: "no-change",
        measured: "no change",
        when: "pressed",
      },
      {
        kind: "trial",
        at: "U2",
        power: "on",
        what: "cool",
        outcome: "no-change",
        measured: "no change",
        when: "cooled",
      },
    ],
    causes: [],
    comments: [
      {
        member: "yusuf",
        body: "Issue 3 here, so the B part: 62 and 63 read 2.41 and 2.43 V. I will bring it on Thursday.",
        yearsAgo: 0.08,
      },
      {
        member: "mirela",
        body: "Does 62 change when you terminate input A? If the hybrid inside leaks it should follow the temperature, and yours does not.",
        yearsAgo: 0.07,
      },
      { member: "pim", body: "What is an interpolator? I mean, what does it interpolate between?", yearsAgo: 0.07 },
      {
        member: "femi",
        body: "Between two ticks of the clock. It stretches the last bit of time a thousandfold, as a capacitor that is charged fast and emptied slowly.",
        yearsAgo: 0.06,
      },
    ],
  },
  {
    key: "plover-crowbar",
    title: "F2 blows at every start, +5 V is not too high",
    board: "plover-supply",
    revision: "Issue 2",
    copyTag: "PS-MIR",
    author: "yusuf",
    yearsAgo: 0.3,
    symptoms: ["fuse blows", "dead at power-on"],
    symptomText: "Standby lamp on, all else dark. F2 open. A second F2 went the same way within a second.",
    reproduced: "Twice with a fuse, then with a lamp in its place: it lights and stays lit.",
    outcome: "waiting",
    lesson: "Two things can fire the crowbar. Lift R5 to see which: the zener or the hybrid.",
    story: `A blown F2 says that Q2 fired. It does not say why. Two fuses are enough for science; from there on a **12 V 21 W lamp**
sits in the clips and glows when the crowbar is shut.

With the counter unplugged it glows too, so no load is to blame. Does +5 V really overshoot? I took Q2's gate off (R5 and
the hybrid's pin 5 are on the same pad, so the gate leg was lifted), and ran on the lamp: +5 V comes up to 5.03 V with no
overshoot that a storage scope can see. The regulator, Q1 and :chip[7805], is innocent.

So the gate is fired without need. With the lead of R5 lifted and the gate back in, it still fires. D1 is therefore out
of it. What is left is U2, the potted hybrid, :code[BW 00630 A]:

- pin 1, reference: 2.49 V, right
- pin 3, TEMP: 3.9 V, that is a cold heat sink
- pin 5, to the gate: **0.92 V**, where Femi's board has 0.02 V
- pin 8, raw: 10.8 V

It believes in a heat that is not there, or its output leaks. Warmed with my breath the 0.92 goes to 1.04.

Nobody knows what is in it. Femi offers to lend his for comparison, not for keeps, and a member of another club has a
scrap supply that he will look into. Until then the board waits, with its parts in the bag: gate leg lifted, R5 lifted,
lamp out. **Not safe to run like that: the crowbar is off.** There is a red label on it.`,
    checks: [
      { kind: "visual", at: "F2", power: "off", measured: "Blown with a mirror on the glass: a hard short" },
      {
        kind: "resistance",
        at: "+5V",
        to: "GND",
        power: "off",
        expected: "> 20 ohm",
        measured: "86 ohm",
        note: "J2 unplugged.",
      },
      { kind: "diode", at: "Q2.A", to: "Q2.K", lead: "red", power: "off", expected: "open", measured: "OL" },
      {
        kind: "diode",
        at: "D1.A",
        to: "D1.K",
        lead: "red",
        power: "off",
        expected: "0.7 V ±10 %",
        measured: "0.694 V",
      },
      { kind: "dc-voltage", at: "V8RAW", power: "on", measured: "10.8 V", note: "Lamp in place of F2." },
      { kind: "ripple", at: "V8RAW", power: "on", expected: "≤ 2 Vpp", measured: "0.3 Vpp" },
      { kind: "dc-voltage", at: "+12SB", power: "on", measured: "12.0 V" },
      { kind: "dc-voltage", at: "+5V", power: "on", measured: "0.9 V", note: "Crowbar shut, lamp bright." },
      {
        kind: "trial",
        at: "Q2.G",
        power: "off",
        what: "lift-pin",
        outcome: "changed",
        measured: "changed",
        note: "+5 V stands at 5.03 V on the lamp.",
      },
      {
        kind: "trial",
        at: "R5",
        power: "off",
        what: "lift-pin",
        outcome: "no-change",
        measured: "no change",
        note: "Gate back in: still fires, so D1 is out of it.",
      },
      { kind: "dc-voltage", at: "U2.1", power: "on", expected: "2.5 V ±5 %", measured: "2.49 V" },
      { kind: "dc-voltage", at: "U2.3", power: "on", measured: "3.9 V" },
      {
        kind: "dc-voltage",
        at: "U2.5",
        power: "on",
        expected: "< 0.2 V",
        measured: "0.92 V",
        note: "Gate leg lifted.",
      },
      {
        kind: "trial",
        at: "U2",
        power: "on",
        what: "heat",
        outcome: "changed",
        measured: "changed",
        when: "warm",
        note: "1.04 V after breathing on it.",
      },
    ],
    causes: [
      {
        at: "U2",
        failure: "leaky",
        description: "Output to the crowbar's gate leaks; the hybrid is unknown and no second is at hand.",
        explains: [0, 7, 8, 12, 13],
      },
    ],
    confirmations: [],
    comments: [
      {
        member: "femi",
        body: "Mine on Thursday, for readings of all eight pins, cold and warm. It goes home with me.",
        yearsAgo: 0.29,
      },
      { member: "ines", body: "The red label is the best part of this repair.", yearsAgo: 0.28 },
      {
        member: "otto",
        body: "Eight pins, a reference, a thermistor and a gate: I would draw it with a comparator and two transistors before I bought one.",
        yearsAgo: 0.26,
      },
    ],
  },
  {
    key: "plover-no-trigger",
    title: "Neither input triggers, everything else is well",
    board: "plover-supply",
    revision: "Issue 1",
    copyTag: "PS-FEMI-1",
    author: "femi",
    yearsAgo: 2.0,
    symptoms: ["no trigger", "rail drifts"],
    symptomText: "Counter starts, shows zeros, gate lamp flashes. No signal on A or B is counted.",
    reproduced: "Since it was moved. Knocking on the case brings it back for seconds.",
    outcome: "cured",
    lesson:
      "-5.2 V is the rail that nobody measures. A trimmer that lifts a regulator's ground leg is a part that wears out.",
    story: `Zeros on both inputs and no error: the processor, the array and the reference are content, and both channels cannot die
on one day. What both share is U18, and what U18 has that nothing else has is **-5.2 V**. I should have gone there at once.

In fact I went to Q1 of the counter board first, since an input FET dies of curiosity, and measured a perfectly good one.
Twenty minutes. The relay clicked, too.

At J2.7 stood -2.3 V. At -2.3 V an ECL receiver is no receiver. Now, -5.2 V is made by VR4, a :chip[7905] standing on the
wiper of RV1, and a wiper is a contact:

1. with a finger on RV1 the rail moved between -2 and -7.4 V. *Minus seven is not good for anybody*: U18 unplugged from
   its rail at once, by taking J2 off;
2. RV1 out, measured end to end: 103 Ω, right; wiper to one end while turning: jumps, gaps, OL at one third;
3. new one, cermet, set to -5.20 V on a 39 Ω resistor as dummy load, left for an hour, -5.20 V;
4. J2 on again. It counts.

I then measured the ripple, since the lid was off, 3 mV. On :board[plover-counter] the same rail at U18.8 is -5.19 V.

On the old trimmer I could have turned to and fro twice and had another year. I should also have had another -7.4 V.`,
    checks: [
      { kind: "visual", at: "RV1", power: "off", measured: "Open trimmer, brown lacquer under the wiper" },
      { kind: "dc-voltage", at: "+5V", power: "on", measured: "5.02 V" },
      { kind: "dc-voltage", at: "+12V", power: "on", measured: "12.1 V" },
      { kind: "dc-voltage", at: "-12V", power: "on", measured: "-11.9 V" },
      { kind: "dc-voltage", at: "J2.7", power: "on", measured: "-2.3 V" },
      { kind: "dc-voltage", at: "VR4.2", power: "on", measured: "-20.4 V" },
      {
        kind: "trial",
        at: "RV1",
        power: "on",
        what: "press",
        outcome: "changed",
        measured: "changed",
        when: "pressed",
        note: "-2 to -7.4 V; J2 off at once.",
      },
      {
        kind: "dc-voltage",
        at: "VR4.1",
        power: "on",
        expected: "-0.2 V ±50 mV",
        measured: "-1.1 V",
        note: "Wanders while one looks at it.",
      },
      {
        kind: "resistance",
        at: "RV1.1",
        to: "RV1.3",
        power: "off",
        expected: "100 ohm ±10 %",
        measured: "103 ohm",
        note: "Out of the board.",
      },
      {
        kind: "resistance",
        at: "RV1.1",
        to: "RV1.2",
        power: "off",
        expected: "< 105 ohm",
        measured: "OL",
        note: "At a third of the turn.",
      },
    ],
    causes: [
      {
        at: "RV1",
        failure: "dirty-contact",
        description: "Wiper of the -5.2 V trimmer loses contact, the regulator's ground leg floats.",
        explains: [4, 6, 7, 9],
        cure: { action: "replaced", description: "Sealed cermet trimmer, set on a dummy load.", from: "new" },
        proof: {
          kind: "checks-repeated",
          minutes: 60,
          note: "On the dummy load, then with the counter, knocked on from all sides.",
          repeats: [
            { check: 4, measured: "-5.20 V" },
            { check: 7, measured: "-0.21 V" },
            { check: 9, measured: "48 ohm" },
          ],
        },
      },
    ],
    confirmations: [
      { member: "yusuf", helped: true, note: "Changed mine before it asked. The old one had a gap at half." },
    ],
    comments: [{ member: "bram", body: "Nobody told me there are counters with minus five point two.", yearsAgo: 1.9 }],
  },
];
