import type { SeedCase } from "#seed/shapes.ts";

export const cases: SeedCase[] = [
  {
    key: "moth-coil-stuck",
    title: "Outhole coil pulls in at power-on and smokes",
    board: "moth-driver",
    revision: "Rev 2",
    copyTag: "MD-DOL-1",
    author: "dolores",
    yearsAgo: 2.2,
    symptoms: ["coil stuck on", "gets hot", "fuse blows"],
    symptomText:
      "Coil 4 pulls the moment the switch is thrown, F1 blows after three seconds. It has had a new Q5 before.",
    reproduced: "Twice, and that was once too often.",
    outcome: "cured",
    lesson: "A dead coil driver is a message from its diode: measure coil and diode before the new transistor goes in.",
    story: `Somebody had fitted a new Q5 last year and nobody had asked *why the old one died*. So this one died too, and it took
the wrapper of the coil with it.

My order, and I don't let anybody change it:

1. Switch off, plug out, wait, **measure C1**. It said 38 V after half a minute. R1 is not in a hurry.
2. J3 off. Now the coil is alone: 9.6 Ω. Good. A cooked coil reads under 3.
3. D5, one leg up: open both ways. There it is.
4. Q5: collector to emitter 0.4 Ω. Dead, of course.
5. Base and what feeds it. RN1 has 1 kΩ in the way, and that saved U5.

When a coil is let go it kicks, and D5 is there to lead the kick back to +43V. With D5 open the kick goes through the
transistor, at some hundred volts, each time the ball drains. A :chip[tip122] takes that for a season.

Why was D5 open? Look at the photograph: its leg is cut through by the edge of the heat sink bracket of the neighbour. All
eight diodes got a sleeve now.

Power first without J3 and without J2: LED1, LED2, LED3. Then J2: all eight BASE lines under 0.1 V. Only then J3. I did
two hundred pulses in the coil test with the back of my hand on Q5, and it got lukewarm.

The :code[OR 27-541A] never tripped, because the short was behind it. It guards the command, not the transistor.`,
    checks: [
      {
        kind: "dc-voltage",
        at: "C1",
        power: "off",
        expected: "< 2 V",
        measured: "0.6 V",
        note: "Second try, after 3 min.",
      },
      { kind: "visual", at: "Q5", power: "off", measured: "Cracked along the tab" },
      { kind: "resistance", at: "COIL4", to: "+43V", power: "off", expected: "8..12 ohm", measured: "9.6 ohm" },
      {
        kind: "diode",
        at: "D5.A",
        to: "D5.K",
        lead: "red",
        power: "off",
        expected: "0.5..0.7 V",
        measured: "OL",
        note: "One leg lifted.",
      },
      {
        kind: "diode",
        at: "D4.A",
        to: "D4.K",
        lead: "red",
        power: "off",
        expected: "0.5..0.7 V",
        measured: "0.561 V",
        note: "J3 off.",
      },
      { kind: "resistance", at: "Q5.2", to: "Q5.3", power: "off", expected: "> 1 kohm", measured: "0.4 ohm" },
      { kind: "resistance", at: "Q4.2", to: "Q4.3", power: "off", expected: "> 1 kohm", measured: "2.2M" },
      { kind: "resistance", at: "RN1.5", to: "RN1.12", power: "off", expected: "1k ±5 %", measured: "1.01k" },
      { kind: "dc-voltage", at: "+43V", power: "on", measured: "46.2 V", note: "J3 off, F1 new." },
      { kind: "dc-voltage", at: "+5V", power: "on", measured: "5.02 V" },
      { kind: "dc-voltage", at: "GATE4", power: "on", expected: "< 0.4 V", measured: "0.05 V" },
      { kind: "level", at: "/TRIP", power: "on", expected: "high", measured: "high" },
      { kind: "activity", at: "WDSTB", power: "on", expected: "pulsing", measured: "pulsing" },
    ],
    causes: [
      {
        at: "D5",
        failure: "open",
        description: "Leg of the flyback diode cut by the edge of a bracket.",
        explains: [3],
        cure: { action: "replaced", description: "1N4004 in a sleeve; sleeves on the other seven." },
        proof: {
          kind: "checks-repeated",
          note: "Before Q5 was fitted.",
          repeats: [{ check: 3, measured: "0.57 V" }],
        },
      },
      {
        at: "Q5",
        chip: "tip122",
        failure: "internal-short",
        description: "Collector to emitter shorted by the kick of the coil.",
        explains: [1, 5],
        cure: { action: "replaced", description: "New transistor, insulating washer looked at.", from: "own drawer" },
        proof: {
          kind: "checks-repeated",
          minutes: 60,
          note: "200 pulses in the coil test, then an hour of games.",
          repeats: [{ check: 5, measured: "2.1M" }],
        },
      },
    ],
    confirmations: [
      { member: "ines", helped: true, note: "Coil 6, D7 open. Diode first, as told." },
      { member: "greta", helped: true, note: "Checked all eight diodes on my board: D2 cracked, not yet open." },
    ],
    comments: [{ member: "bram", body: "I would have fitted the transistor.", yearsAgo: 2.19 }],
  },
  {
    key: "moth-resets-on-flips",
    title: "Machine restarts when both flippers are used",
    board: "moth-driver",
    revision: "Rev 2",
    copyTag: "MD-INE",
    author: "ines",
    yearsAgo: 1.5,
    symptoms: ["resets again and again", "intermittent", "rail drifts"],
    symptomText: "Restarts in the middle of a game, nearly always on a double flip, more often when warm.",
    reproduced: "Nine of ten double flips with all lamps on.",
    outcome: "cured",
    lesson:
      "Count the frequency of the ripple: mains frequency behind a bridge means that half the bridge is not there.",
    story: `The symptom names +5 V, so the question is only why. Three candidates stand in a row: VR1 with Q13, the capacitor C3, the
bridge BR3. It is customary to change all three. I preferred to know.

| +11V | reading | expected |
|---|---|---|
| d.c. | 9.0 V | 9.35 V or more |
| ripple | 2.4 V peak to peak | under 1.2 V |
| frequency of the ripple | **50 Hz** | 100 Hz |

Full-wave rectification of 50 Hz mains gives 100 Hz. One finds 50 Hz when every second half wave is missing. C3 of
15,000 µF at 1.5 A loses about 1 V in 10 ms and 2 V in 20 ms, so the arithmetic agrees with the screen.

Power off, C3 discharged, BR3 in place: from the first a.c. terminal to plus 0.52 V; from the second, OL. The diode itself is
well when measured on its own tab. The *tab* is loose in the board: a ring, as always with a bridge of 35 A held by its four
legs.

A wrong turn, for completeness. Before I looked at the frequency I bridged C3 with another 10,000 µF. The machine played
better, and I nearly believed it.

The reading of +5 V is one where I disagree with the program. 4.83 V lies within 4 %, and it does so only between flips.
I have marked it out of spec and said why.

After resoldering all four legs with fresh solder and a heavy tip: 100 Hz, 1.0 V, and two hundred double flips.`,
    checks: [
      { kind: "visual", at: "BR3", power: "off", measured: "Ring around the second a.c. leg, board brown" },
      { kind: "capacitance", at: "C3", power: "off", expected: "15000 µF ±20 %", measured: "14100 µF" },
      { kind: "esr", at: "C3", power: "off", expected: "< 0.1 ohm", measured: "0.03 ohm" },
      {
        kind: "diode",
        at: "AC9F",
        to: "+11V",
        lead: "red",
        power: "off",
        expected: "0.45..0.65 V",
        measured: "0.52 V",
      },
      {
        kind: "diode",
        at: "AC9B",
        to: "+11V",
        lead: "red",
        power: "off",
        expected: "0.45..0.65 V",
        measured: "OL",
      },
      { kind: "ac-voltage", at: "AC9F", to: "AC9B", power: "on", expected: "9 V ±10 %", measured: "9.3 V" },
      { kind: "dc-voltage", at: "+11V", power: "on", measured: "9.0 V" },
      { kind: "ripple", at: "+11V", power: "on", expected: "< 1.2 Vpp", measured: "2.4 Vpp" },
      {
        kind: "frequency",
        at: "+11V",
        power: "on",
        expected: "100 Hz ±2 %",
        measured: "50 Hz",
        note: "Of the ripple.",
      },
      {
        kind: "dc-voltage",
        at: "+5V",
        power: "on",
        measured: "4.83 V",
        verdict: {
          chosen: "out-of-spec",
          reason: "Read between flips; during a double flip the scope shows dips to 4.4 V that a meter averages away.",
        },
      },
      { kind: "dc-voltage", at: "+43V", power: "on", measured: "45.1 V" },
      {
        kind: "trial",
        at: "C3",
        power: "on",
        what: "piggy-back",
        outcome: "changed",
        measured: "changed",
        note: "Another 10,000 µF across it: restarts at every fifth double flip. Wrong turn.",
      },
      { kind: "temperature", at: "VR1", power: "on", when: "after 20 min", expected: "< 75 °C", measured: "58 °C" },
    ],
    causes: [
      {
        at: "BR3.2",
        failure: "cold-joint",
        description: "Second a.c. leg of the bridge loose: every other half wave missing behind it.",
        explains: [0, 4, 6, 7, 8, 9, 11],
        cure: { action: "resoldered", description: "All four legs of BR1, BR2 and BR3." },
        proof: {
          kind: "checks-repeated",
          minutes: 120,
          note: "Two hundred double flips with all lamps on, warm.",
          repeats: [
            { check: 4, measured: "0.53 V" },
            { check: 6, measured: "10.6 V" },
            { check: 7, measured: "1.0 Vpp" },
            { check: 8, measured: "100 Hz" },
            { check: 9, measured: "5.03 V" },
          ],
        },
      },
    ],
    confirmations: [
      { member: "dolores", helped: true, note: "BR3 again. 50 Hz on the scope, five minutes in all." },
      {
        member: "greta",
        helped: false,
        note: "100 Hz here and 3 V of ripple: C3 had dried out. The check was right all the same.",
      },
    ],
    comments: [{ member: "yusuf", body: "I shall print the table and hang it up.", yearsAgo: 1.49 }],
  },
  {
    key: "moth-guard-trips",
    title: "GUARD after long games, never on club night",
    board: "moth-driver",
    revision: "Rev 1",
    copyTag: "MD-GRE",
    author: "dolores",
    yearsAgo: 0.6,
    symptoms: ["self-test message", "intermittent", "coils dead"],
    symptomText:
      "At greta's house GUARD comes about once in an evening and all coils are dead until the machine is switched off.",
    reproduced: "Not once in three club nights and one Saturday.",
    outcome: "no-fault-found",
    lesson: "No fault found is a finding: write down what was well, so that next time nobody measures it again.",
    story: `/TRIP has three reasons, so there were three questions. All three got a good answer, four times over.

- *WDSTB stops?* Pulses every 4 ms for as long as I cared to look. Counter left on for a Saturday: no gap above 6 ms.
- *A coil on for too long?* RC at U5.21 gives 130 ms with R5 and C6, and C6 measures 0.98 µF.
- *SENSE too low?* 3.38 V at rest, 3.02 V in the worst double flip, and :code[OR 27-541A] trips at 2.4 V.

To get from 3.02 down to 2.4 V, +43V would have to fall to 31 V. Here it does not. At greta's it may: she has the machine, a
heater and a kettle on one extension lead. We compared her mains on the phone, 229 V and then, kettle on, 211 V. That's
eight per cent, and brings +43V to about 38 V in a double flip. Still not 31.

I also tapped every part with the handle of a screwdriver, froze U5, warmed U5, and bent the board at J2. Nothing.

It goes home with a sticker: **at the next GUARD, before switching off, measure SENSE at U5.23 and /TRIP at U5.11**. If
SENSE is under 2.4 V at that moment it is the supply; if it is 3.3 V it is U5 or the watchdog line through J2.

I have not changed a single part, and I am rather proud of it.`,
    checks: [
      { kind: "visual", at: "J2", power: "off", measured: "Contacts bright, no ring at any joint" },
      { kind: "capacitance", at: "C6", power: "off", expected: "1 µF ±10 %", measured: "0.98 µF" },
      { kind: "resistance", at: "R5", power: "off", expected: "150k ±5 %", measured: "151k", note: "One leg lifted." },
      { kind: "dc-voltage", at: "+43V", power: "on", measured: "45.8 V" },
      { kind: "dc-voltage", at: "U5.24", power: "on", measured: "5.01 V" },
      { kind: "dc-voltage", at: "SENSE", power: "on", expected: "> 2.8 V", measured: "3.38 V" },
      {
        kind: "dc-voltage",
        at: "SENSE",
        power: "on",
        expected: "> 2.8 V",
        measured: "3.02 V",
        note: "Lowest in 100 double flips, by scope.",
      },
      { kind: "activity", at: "WDSTB", power: "on", expected: "pulsing", measured: "pulsing" },
      { kind: "level", at: "/TRIP", power: "on", expected: "high", measured: "high", when: "after 180 min" },
      { kind: "trial", at: "U5", power: "on", what: "cool", outcome: "no-change", measured: "no change" },
      { kind: "trial", at: "U5", power: "on", what: "heat", outcome: "no-change", measured: "no change" },
      { kind: "trial", at: "J2", power: "on", what: "press", outcome: "no-change", measured: "no change" },
    ],
    causes: [],
    comments: [
      {
        member: "greta",
        body: "Sticker read. Heater has moved to another socket. List started: date, game, kettle.",
        yearsAgo: 0.58,
      },
      { member: "greta", body: "Two weeks, no GUARD, no conclusions.", yearsAgo: 0.54 },
    ],
  },
  {
    key: "moth-mpu-leak",
    title: "Dead controller, battery leaked as far as the matrix custom",
    board: "moth-mpu",
    revision: "Rev 1",
    copyTag: "MM-GRE",
    author: "greta",
    yearsAgo: 0.5,
    symptoms: ["dead at power-on", "corrosion", "settings lost"],
    symptomText: "LED1 lit without a flash. Bought as seen, in a bag with a white powder.",
    reproduced: "Always.",
    outcome: "given-up",
    lesson: "Count the broken traces before you mend the first one, and decide then.",
    story: `List first, as is my habit. What the leak has reached, clockwise from BT1:

| place | found |
|---|---|
| U4, pins 1 to 12 | black, two legs gone |
| U7 | all fourteen legs green |
| U12, pins 8 to 14 | /RESET trace open |
| U5, pins 1 to 3 | traces open |
| U3, pins 29 to 45 | **pads lifted under the chip** |

What I did: cells out, vinegar, water, alcohol, two days on the radiator. New U7, U12 and U5 in sockets, seven wires
of 0.3 mm. After that the processor ran. Reset came up once and stayed, /ROM moved, and LED1 gave one flash, two flashes,
three flashes, dark: the matrix custom.

Then U3 under the magnifier. Of the seventeen pads on its lower side five are there. The rest came away with the
lacquer. A :code[HDL-C52-08] lives in a QFP-80 of 0.8 mm; ines offered to lift it and lay a wire for each leg. We spoke about
it for the length of a cup of tea. The chip's own legs are eaten to half their width, the trace layer between goes on
crumbling, and the board would be a thing that works on Tuesdays.

So I give it up, *with* what is good on it written down: U1, U2, U14 (the unknown :code[VQ4-0899-01], paint dot yellow), U8,
U9, U10 and all connectors. They are in the spares list as a donor. My machine runs on dolores's second board meanwhile,
whose battery hangs in a holder at the door.`,
    checks: [
      { kind: "visual", at: "BT1", power: "off", measured: "Burst, crust as far as U3" },
      { kind: "visual", at: "U3", power: "off", measured: "Pads of pins 29 to 45 lifted, legs eaten thin" },
      { kind: "dc-voltage", at: "VBAT", power: "off", measured: "0.0 V", note: "No expectation left." },
      { kind: "continuity", at: "U12.8", to: "U1.37", power: "off", expected: "< 1 ohm", measured: "OL" },
      { kind: "continuity", at: "U12.4", to: "U7.1", power: "off", expected: "< 1 ohm", measured: "OL" },
      { kind: "continuity", at: "U5.1", to: "U1.21", power: "off", expected: "< 1 ohm", measured: "OL" },
      { kind: "continuity", at: "U3.29", to: "U8.2", power: "off", expected: "< 1 ohm", measured: "OL" },
      { kind: "resistance", at: "+5V", to: "GND", power: "off", expected: "> 50 ohm", measured: "160 ohm" },
      { kind: "dc-voltage", at: "+5V", power: "on", measured: "5.04 V", note: "After cleaning and seven wires." },
      { kind: "activity", at: "E", power: "on", expected: "clock 1 MHz", measured: "clock 1.000 MHz" },
      { kind: "level", at: "U1.37", power: "on", expected: "high", measured: "high" },
      { kind: "activity", at: "/ROM", power: "on", expected: "active", measured: "active" },
      { kind: "self-test", at: "LED1", power: "on", measured: "three flashes, then dark" },
      { kind: "activity", at: "U3.21", power: "on", expected: "active", measured: "no activity" },
    ],
    causes: [
      {
        at: "U3",
        chip: "hdl-c52",
        failure: "corrosion",
        description:
          "Pads and legs of the matrix custom eaten by the leaking BT1; traces at U4, U5, U7 and U12 as well.",
        explains: [0, 1, 2, 3, 4, 5, 6, 12, 13],
      },
    ],
    comments: [
      { member: "dolores", body: "My second board stays with you as long as you like.", yearsAgo: 0.49 },
      {
        member: "mirela",
        body: "May I have U14? I want to watch it with the analyser on a running board.",
        yearsAgo: 0.48,
      },
      { member: "greta", body: "Item 1 of the donor list is yours.", yearsAgo: 0.48 },
    ],
  },
];
