import type { SeedCase } from "#seed/shapes.ts";

export const cases: SeedCase[] = [
  {
    key: "osprey-voice-stuck-envelope",
    title: "Voice 2 silent, its filter still sweeps",
    board: "osprey-voice-card",
    revision: "Rev B",
    copyTag: "OS-KAI-V2",
    author: "kaisa",
    yearsAgo: 1.2,
    symptoms: ["no sound", "voice dead"],
    symptomText: "Every sixth note is missing. With the loudness set to drone it is there, and the filter moves.",
    reproduced: "Always, cold and warm; goes along with the card when it changes slots.",
    outcome: "cured",
    lesson:
      "With six equal cards, listen to what still moves: the half that works tells you which half of U8 does not.",
    story: `Six voices mean five good references, so I did not start with the meter, I started with the slot. Voice 2's card in
slot 4: the hole moves to every fourth note. So it is the card, and the bus is well.

Drone makes sound, so oscillators, filter and the loudness cell U17 are alive and only **nobody opens it**. The opening
is ENVB, pin 11 of :chip[kl-0702]. Flat. GATE2 comes, the four times sit where they sit on card 4:

| at | card 2 | card 4 |
|---|---|---|
| EATKB | 2.08 V | 2.11 V |
| EDECB | 3.02 V | 3.01 V |
| ESUSB | 3.97 V | 4.00 V |
| ENVB, key held | **0.03 V** | 4.91 V |

Wrong turn: I wanted it to be C20. A shorted timing capacitor looks just the same and costs ten cents. It measured 38.7 nF
and went back.

Card 4's :code[KL/0702/7] put into card 2: sound. And the sick one reads 31 mV from pin 11 to ground where pin 6 reads
0.65 V. That is an output with a hole in it.

Nobody sells the DIP. I had one :code[KL/0702/7S], the SOIC, and a bought adapter. **The pins are not in the same
order.** I drew both tables side by side, cut six tracks on the adapter and crossed them with wire; supply on 1, ground
on 9, and the capacitors on 6 and 12. Washed it twice. The attack at its shortest is 2.1 ms on both, by oscilloscope.`,
    checks: [
      {
        kind: "trial",
        at: "J1",
        power: "off",
        what: "swap",
        outcome: "changed",
        measured: "changed",
        note: "The missing note went along to slot 4.",
      },
      { kind: "visual", at: "U8", power: "off", measured: "Socket clean, no flux" },
      { kind: "resistance", at: "+15V", to: "GND", power: "off", expected: "> 500 ohm", measured: "3k4" },
      {
        kind: "capacitance",
        at: "C20",
        power: "off",
        expected: "39 nF ±10 %",
        measured: "38.7 nF",
        note: "One leg lifted. Wrong turn.",
      },
      {
        kind: "diode",
        at: "U8.6",
        to: "GND",
        lead: "black",
        power: "off",
        expected: "0.65 V ±8 %",
        measured: "0.648 V",
        note: "U8 out of its socket.",
      },
      {
        kind: "diode",
        at: "U8.11",
        to: "GND",
        lead: "black",
        power: "off",
        expected: "0.65 V ±8 %",
        measured: "0.031 V",
        note: "U8 out of its socket.",
      },
      { kind: "dc-voltage", at: "+15V", power: "on", measured: "15.02 V" },
      { kind: "dc-voltage", at: "-15V", power: "on", measured: "-14.97 V" },
      { kind: "dc-voltage", at: "U8.16", power: "on", measured: "15.01 V" },
      { kind: "waveform", at: "MIX", power: "on", measured: "saw and pulse, 8 V peak to peak" },
      { kind: "activity", at: "GATE2", power: "on", expected: "active", measured: "active", note: "Repeating a key." },
      { kind: "dc-voltage", at: "EATKB", power: "on", expected: "2.11 V ±5 %", measured: "2.08 V" },
      { kind: "dc-voltage", at: "ESUSB", power: "on", expected: "4.00 V ±5 %", measured: "3.97 V" },
      { kind: "waveform", at: "ENVCB", power: "on", measured: "rises to 4.9 V and falls as it should" },
      { kind: "dc-voltage", at: "ENVA", power: "on", expected: "> 4 V", measured: "4.86 V", note: "Key held." },
      { kind: "dc-voltage", at: "ENVB", power: "on", expected: "> 4 V", measured: "0.03 V", note: "Key held." },
      {
        kind: "trial",
        at: "U8",
        power: "on",
        what: "swap",
        outcome: "cured",
        measured: "cured",
        note: "Card 4's U8, for two minutes.",
      },
    ],
    causes: [
      {
        at: "U8",
        chip: "kl-0702",
        failure: "outputs-dead",
        description: "Output buffer of the second envelope shorted to ground; its capacitor still charges.",
        explains: [5, 15, 16],
        cure: {
          action: "replaced",
          description: "SOIC on an adapter, wired from the two pin tables.",
          fittedCode: "KL/0702/7S",
          from: "own drawer",
        },
        proof: {
          kind: "checks-repeated",
          minutes: 180,
          note: "Three hours of playing, and shortest attack compared with card 4.",
          repeats: [
            { check: 5, measured: "0.652 V" },
            { check: 15, measured: "4.93 V" },
          ],
        },
      },
    ],
    confirmations: [{ member: "femi", helped: true, note: "Voice 5 here. BW 80502 A went straight in, no adapter." }],
    comments: [
      { member: "pim", body: "Could you photograph the adapter before you close it?", yearsAgo: 1.2 },
      { member: "anouk", body: "Done. Eleven photographs, both sides.", yearsAgo: 1.19 },
    ],
  },
  {
    key: "osprey-voice-flat",
    title: "Voice 1 flat above the third octave after a new oscillator chip",
    board: "osprey-voice-card",
    revision: "Rev B",
    copyTag: "OS-PIM-V1",
    author: "pim",
    yearsAgo: 0.9,
    symptoms: ["out of tune", "self-test message"],
    symptomText:
      "Autotune says VOICE 1 HI. In tune up to the third octave, then flatter and flatter, a semitone at the top.",
    reproduced: "Every autotune, also after an hour of warming up. Oscillator A and B alike.",
    outcome: "open",
    lesson: "A trimmer at its end is a reading: it says that something wants more than the circuit was built to give.",
    asksHelp: `Who has a working card and a meter for microamperes? Please lift the wiper of RV3 and tell me the current into
U1.5 at the highest note, the d.c. voltage at CVHF, and which code your U1 carries.`,
    story: `My first own chip swap. The old U1 was dead for certain (REF 0.0 V), so I bought a :code[SM6931], which
claims here say can stand in for :code[HDL-C45-22]. It oscillates! And it is flat at the top.

What I did so far:

1. Rails. All well.
2. REF at U1.11: 5.00 V, so the chip lives.
3. The control voltages PITCHA and PITCHB against kaisa's voice 4: the same within a few millivolts.
4. RV3 and RV4 turned to their ends. The error got smaller by a third and there the trimmer stops.
5. Timing capacitors. They are polystyrene, they measure 1.00 nF, and I warmed one too much with the iron. It still
   measures 1.00 nF.

So I think HFA is not doing its work. Mirela measured the current at that pin: 40 µA in mine, 210 µA in kaisa's. Kaisa's
is a :code[SM6931] as well, from the *same week*.

What I do not know is if mine is sick or if two different parts carry one number. I would rather not buy a third one
to find out. Otto says that a chip which is wrong in the same way on both halves is not broken, it is different. Bram says
throw it away. If somebody with a :code[HDL-C45-14] could measure the same three points, that would be a fourth opinion
with a number in it.`,
    checks: [
      { kind: "visual", at: "C17", power: "off", measured: "One end a little melted; capacitor still clear" },
      { kind: "capacitance", at: "C17", power: "off", expected: "1 nF ±2 %", measured: "1.00 nF" },
      { kind: "capacitance", at: "C18", power: "off", expected: "1 nF ±2 %", measured: "1.00 nF" },
      { kind: "resistance", at: "RV3.2", to: "RV3.1", power: "off", measured: "0.9 ohm", note: "Turned to its end." },
      { kind: "dc-voltage", at: "+15V", power: "on", measured: "15.05 V" },
      { kind: "dc-voltage", at: "-15V", power: "on", measured: "-15.02 V" },
      { kind: "dc-voltage", at: "U1.1", power: "on", measured: "15.04 V" },
      { kind: "dc-voltage", at: "U1.13", power: "on", measured: "-15.01 V" },
      { kind: "dc-voltage", at: "U1.11", power: "on", expected: "5.00 V ±1 %", measured: "5.00 V" },
      { kind: "dc-voltage", at: "CVPA", power: "on", expected: "4.87 V ±0.5 %", measured: "4.87 V" },
      { kind: "dc-voltage", at: "CVHF", power: "on", expected: "5.0 V ±5 %", measured: "4.98 V" },
      {
        kind: "frequency",
        at: "SAWA",
        power: "on",
        expected: "261.6 Hz ±0.5 %",
        measured: "261.8 Hz",
        note: "Middle C.",
      },
      {
        kind: "frequency",
        at: "SAWA",
        power: "on",
        expected: "2093 Hz ±0.5 %",
        measured: "1976 Hz",
        note: "Three octaves up.",
      },
      {
        kind: "current",
        at: "U1.5",
        power: "on",
        expected: "210 µA ±20 %",
        measured: "40 µA",
        note: "Expectation is kaisa's part, measured by mirela.",
      },
    ],
    causes: [],
    comments: [
      { member: "kaisa", body: "Mine needed RV3 nearly at the end too. I took that for normal.", yearsAgo: 0.88 },
      { member: "otto", body: "Wrong alike on both halves is different, not broken.", yearsAgo: 0.87 },
      { member: "femi", body: "Card 3 is packed for a concert. After the eleventh I can measure.", yearsAgo: 0.85 },
    ],
  },
  {
    key: "osprey-voice-drift",
    title: "Held notes sink by a third within ten seconds",
    board: "osprey-voice-card",
    revision: "Rev A",
    copyTag: "OS-OTT-V6",
    author: "otto",
    yearsAgo: 2.4,
    symptoms: ["out of tune", "drifts"],
    symptomText:
      "In tune when struck, then it sinks while autotune is not running. Oscillator A only; B wobbles when the weather is damp.",
    reproduced: "Ten seconds with refresh stopped in the service menu. Worse on wet evenings.",
    outcome: "cured",
    lesson:
      "When a repair comes back, ask what the last one left behind: the wrong capacitor and its flux are two faults.",
    story: `In televisions we called this *sagging*, and there too it was a capacitor that could not hold its water.

The card is refreshed every 6 ms, so a little leak is not heard. The service menu stops the refresh, and then one can sit
beside it with a meter of 10 GΩ (a TL072 on a matchbox) and a watch:

| hold capacitor | after 10 s | verdict |
|---|---|---|
| C1, pitch A | −410 mV | bad |
| C2, pitch B | −65 mV | not good |
| C3 to C8 | −3 to −6 mV | as they should be |

C1 is not the part that left the factory. Somebody has put in a ceramic disc of 10 nF, which sings when you knock it and
loses charge into itself, and soldered it with plumber's flux: a brown lake around C1, C2 and pin 13 of U2. I took the disc
out and washed. C1's place now sank by 290 mV instead of 410, and C2 by 4. So the lake was C2's trouble and *part* of
C1's, and I was too quick with the champagne.

A new polystyrene in C1: 240 mV. What else hangs there? The follower's input and channel X0 of :chip[4051]. The TL074
I exchanged first, as it was me who had once preached that they leak. No change. A new U2 from the drawer: 5 mV.

Two causes then, and I list them so. The first is the last repair, the second may have been the reason for it.`,
    checks: [
      { kind: "visual", at: "C1", power: "off", measured: "Ceramic disc instead of polystyrene, brown flux around it" },
      { kind: "resistance", at: "+15V", to: "-15V", power: "off", expected: "> 1 kohm", measured: "7.1k" },
      { kind: "dc-voltage", at: "+15V", power: "on", measured: "14.98 V" },
      { kind: "dc-voltage", at: "-15V", power: "on", measured: "-15.04 V" },
      { kind: "dc-voltage", at: "U2.16", power: "on", measured: "5.02 V" },
      { kind: "dc-voltage", at: "-7.5V", power: "on", measured: "-7.44 V" },
      { kind: "activity", at: "/CVSEL1", power: "on", expected: "active", measured: "active" },
      {
        kind: "dc-voltage",
        at: "CVPB",
        power: "on",
        when: "after 10 s",
        expected: "3.000 V ±10 mV",
        measured: "2.935 V",
        note: "Refresh stopped, 3.000 V at the start.",
      },
      {
        kind: "dc-voltage",
        at: "CVPA",
        power: "on",
        when: "after 10 s",
        expected: "3.000 V ±10 mV",
        measured: "2.590 V",
        note: "Refresh stopped.",
      },
      {
        kind: "dc-voltage",
        at: "CVPW",
        power: "on",
        when: "after 10 s",
        expected: "3.000 V ±10 mV",
        measured: "2.996 V",
      },
      {
        kind: "trial",
        at: "C1",
        power: "off",
        what: "clean",
        outcome: "changed",
        measured: "changed",
        note: "Disc out, flux off. C2 holds now, C1 better and not good.",
      },
      { kind: "trial", at: "U3", power: "on", what: "swap", outcome: "no-change", measured: "no change" },
      {
        kind: "current",
        at: "U2.13",
        power: "on",
        expected: "< 100 pA",
        measured: "0.24 nA",
        note: "From 240 mV in 10 s on 10 nF, C1 new.",
      },
    ],
    causes: [
      {
        at: "C1",
        failure: "earlier-repair",
        description: "Ceramic disc fitted for polystyrene, and its flux left on the board around C1, C2 and U2.13.",
        explains: [0, 7, 10],
        cure: { action: "undone", description: "Polystyrene 10 n fitted, washed with alcohol twice and dried." },
        proof: {
          kind: "checks-repeated",
          note: "On a wet evening, on purpose.",
          repeats: [{ check: 7, measured: "2.996 V" }],
        },
      },
      {
        at: "U2",
        chip: "4051",
        failure: "leaky",
        description: "Channel X0 leaks 0.24 nA while off.",
        explains: [8, 12],
        cure: { action: "replaced", description: "Socket and new part.", from: "club drawer" },
        proof: {
          kind: "checks-repeated",
          minutes: 60,
          note: "All eight channels read again; the worst sinks by 6 mV.",
          repeats: [
            { check: 8, measured: "2.995 V" },
            { check: 12, measured: "5 pA" },
          ],
        },
      },
    ],
    confirmations: [
      {
        member: "kaisa",
        helped: true,
        note: "Flux under C6 on mine: the filter closed by itself. Alcohol, nothing else.",
      },
      { member: "femi", helped: false, note: "Mine sank on all eight. It was -7.5V: D1 leaky, -5.1 V instead." },
    ],
  },
  {
    key: "osprey-keyer-ghosts",
    title: "Keys play by themselves, whole chords at once",
    board: "osprey-keyer",
    revision: "Rev B",
    copyTag: "OK-BRA",
    author: "bram",
    yearsAgo: 1.8,
    symptoms: ["keys play by themselves", "intermittent"],
    symptomText: "Chords nobody plays, more of them when a hand comes near the ribbon. All real keys work.",
    reproduced: "Within a minute. Also with J2 unplugged, which I noticed only on the second evening.",
    outcome: "cured",
    lesson: "Unplug J2 first: ghosts that stay without the keybed are on the board, and then it takes ten minutes.",
    story: `I had a spare scanner, so I fitted the spare scanner. That is how I work, as you know.

The spare is a :code[SM6912R] from the small sister keyboard. Ghosts still there, **and** the top twelve keys silent, so
now I had two faults and one of them was mine. Back with the :code[SM6912P]. Cost: one evening, and a claim in the parts
list which says *not a fit* in my name.

Second evening, with mirela looking over my shoulder. She pulled J2 out. I said that now there can be no keys. The thing
went on playing.

1. KEYA at U1.7 moves with nothing plugged in, so the rows are high by themselves.
2. Rows should be pulled down by RN1. With a 10 MΩ probe they stand at 1 to 3 V and follow my hand.
3. RN1 pin 1 to ground: **OL**. Pin 1 is the common end of all eight resistors, and its joint had a ring.

That is it. One joint, eight open CMOS inputs, and a radio concert. ROWB was fine because RN2 was soldered by somebody
who was awake.

Diode readings did not help me, by the way: rows read the same on both sides, because a meter puts its own current in.
Ohms against ground told it at once: 100k on ROWB, OL on ROWA. Eight in a row being wrong alike means the thing they share.`,
    checks: [
      {
        kind: "trial",
        at: "U1",
        power: "off",
        what: "swap",
        outcome: "no-change",
        measured: "no change",
        note: "Wrong turn: SM6912R, ghosts stay, top octave silent besides.",
      },
      { kind: "dc-voltage", at: "+5V", power: "on", measured: "5.04 V" },
      { kind: "dc-voltage", at: "U1.40", power: "on", measured: "5.03 V" },
      { kind: "frequency", at: "CLK250", power: "on", expected: "250 kHz ±2 %", measured: "250.6 kHz" },
      { kind: "level", at: "/KRES", power: "on", expected: "high", measured: "high" },
      { kind: "activity", at: "SYNC", power: "on", expected: "pulsing", measured: "pulsing" },
      {
        kind: "activity",
        at: "KEYB",
        power: "on",
        expected: "no activity",
        measured: "no activity",
        note: "J2 unplugged.",
      },
      { kind: "activity", at: "KEYA", power: "on", expected: "no activity", measured: "active", note: "J2 unplugged." },
      {
        kind: "dc-voltage",
        at: "ROWA3",
        power: "on",
        expected: "< 0.3 V",
        measured: "1.9 V",
        note: "Follows my hand.",
      },
      { kind: "resistance", at: "ROWB3", to: "GND", power: "off", expected: "100k ±5 %", measured: "99.6k" },
      { kind: "resistance", at: "ROWA3", to: "GND", power: "off", expected: "100k ±5 %", measured: "OL" },
      { kind: "continuity", at: "RN1.1", to: "GND", power: "off", expected: "< 1 ohm", measured: "OL" },
      { kind: "visual", at: "RN1", power: "off", measured: "Ring in the joint of pin 1" },
    ],
    causes: [
      {
        at: "RN1.1",
        failure: "cold-joint",
        description: "The common end of RN1 had no ground, so all eight rows of first contacts floated.",
        explains: [7, 8, 10, 11, 12],
        cure: { action: "resoldered", description: "RN1 and RN2, all pins, both rows." },
        proof: {
          kind: "checks-repeated",
          minutes: 120,
          note: "Two hours with the lid on and the hand near it.",
          repeats: [
            { check: 7, measured: "no activity" },
            { check: 8, measured: "0.01 V" },
            { check: 10, measured: "99.9k" },
            { check: 11, measured: "0.2 ohm" },
          ],
        },
      },
    ],
    confirmations: [{ member: "pim", helped: true, note: "Same joint! Mine played only F sharp, four of them." }],
    comments: [
      { member: "mirela", body: "For the record: eight minutes from pulling J2 to the joint.", yearsAgo: 1.8 },
    ],
  },
  {
    key: "osprey-keyer-wheel",
    title: "Bender dead, modulation wheel bends instead",
    board: "osprey-keyer",
    revision: "Rev B",
    copyTag: "OK-KAI",
    author: "kaisa",
    yearsAgo: 3.1,
    symptoms: ["wheel dead"],
    symptomText: "The modulation wheel bends the pitch, the bender does nothing.",
    reproduced: "Always. JP1 in or out makes no difference.",
    outcome: "cured",
    lesson: "Two things that changed places are a switch that stands on the wrong side, not two faults.",
    story: `Written down in four lines, between two rehearsals.

- **What it did:** bender dead, modulation wheel bends the pitch. As if the keyboard were split, but JP1 was out.
- **What was wrong:** R5, the pull-up of SPLIT, open. SPLIT floats, all three switches of :chip[4053] follow whatever is
  in the air, and U1 reads a split that is not there. The wheels change places in U13, just as they are meant to.
- **What cured it:** a new 100k. The old one had a crack under its paint, found by bending it with a fingernail.
- **How it was proved:** an hour with both wheels in use, then a week on stage.

No readings were kept. If I had to do it again I would put a meter on SPLIT (U13.11) first. It must read 5 V with JP1 out
and 0 V with JP1 in, and takes as long to check as to say. What I did instead was to open the wheel assembly, clean two
potentiometers that were well, and lose a spring. The spring is still missing. Should anybody find one of 14 mm with a
hook on each end on the club's floor, it is mine and I would like it back.`,
    checks: [],
    causes: [
      {
        at: "R5",
        failure: "open",
        description: "Pull-up of SPLIT open, so SPLIT floated and U13 swapped the wheels.",
        explains: [],
        cure: { action: "replaced", description: "100k, metal film." },
        proof: { kind: "soak", minutes: 60, note: "Both wheels in use for an hour; a week on stage since." },
      },
    ],
    confirmations: [{ member: "otto", helped: true, note: "SPLIT at 2.2 V. Took me one minute, thanks to this." }],
  },
];
