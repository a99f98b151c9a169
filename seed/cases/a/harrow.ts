import type { SeedCase } from "#seed/shapes.ts";

export const cases: SeedCase[] = [
  {
    key: "harrow-no-clock",
    title: "No picture and no beep, processor clock missing",
    board: "harrow-80",
    revision: "Issue 2",
    copyTag: "HF-BRAM-1",
    author: "bram",
    yearsAgo: 1.4,
    symptoms: ["no picture", "no sound", "dead at power-on"],
    symptomText: "Black screen, not even grey. No beep. Regulators get their usual warmth.",
    reproduced: "Ten times out of ten, cold and warm, with nothing on the expansion edge.",
    outcome: "cured",
    lesson: "CLK at TP1 and CPUCLK at U2.2 are two measurements: take both before ordering anything.",
    story: `I will write down the order in which I did things, so that nobody else does them in it.

No picture, no beep. I measured TP1, found no clock, and was sure of U23, because it is the clock chip and costs nothing.
I changed it. **No change.** Then I changed Y1. No change. Only then did I ask Mirela, who put the probe on U2.1, saw
14 MHz standing there, put it on U2.2, saw nothing, and went to make tea.

| pin | what | read |
|---|---|---|
| U2.1 | 14 MHz in | full swing |
| U2.2 | 3.5 MHz out | flat at 0.1 V |
| U2.25 | dot clock out | flat |
| U2.40 | supply | 4.93 V |

Clock in, supply in, reset released, nothing out. Cooling did nothing. With U2 out of its socket pin 2 of the socket is
not shorted to anything, so nobody was holding the line down.

My first spare was a :code[HDL-C07-22]. It gave no clock either, here and in Otto's board, and I still think that half
of those are something else with new paint. The second was a :code[SM0612P] from Kaisa. Picture at once.

Diode readings of the dead one are in the checks: pin 2 reads 0.031 V where the good one reads 0.622. That could have
been done with power off, in a minute, at the very start. For the neighbours on the bus see :chip[vq4-0061].`,
    checks: [
      { kind: "visual", at: "U2", power: "off", measured: "Nothing burnt, date codes all of 1984" },
      { kind: "trial", at: "U2", power: "off", what: "reseat", outcome: "no-change", measured: "no change" },
      { kind: "dc-voltage", at: "+5V", power: "on", measured: "4.96 V" },
      { kind: "dc-voltage", at: "TP2", power: "on", expected: "-5 V ±5 %", measured: "-4.98 V" },
      { kind: "dc-voltage", at: "+12V", power: "on", measured: "11.9 V" },
      { kind: "dc-voltage", at: "U1.11", power: "on", measured: "4.94 V" },
      { kind: "frequency", at: "TP1", power: "on", expected: "3.5 MHz ±1 %", measured: "0 Hz" },
      {
        kind: "trial",
        at: "U23",
        power: "off",
        what: "swap",
        outcome: "no-change",
        measured: "no change",
        note: "Wrong turn.",
      },
      {
        kind: "trial",
        at: "Y1",
        power: "off",
        what: "swap",
        outcome: "no-change",
        measured: "no change",
        note: "Wrong turn.",
      },
      { kind: "frequency", at: "U2.1", power: "on", expected: "14 MHz ±1 %", measured: "14.00 MHz" },
      { kind: "dc-voltage", at: "U2.40", power: "on", measured: "4.93 V" },
      { kind: "level", at: "U2.3", power: "on", expected: "high", measured: "high" },
      { kind: "activity", at: "U2.2", power: "on", expected: "clock 3.5 MHz", measured: "stuck low" },
      { kind: "activity", at: "U2.25", power: "on", expected: "active", measured: "stuck low" },
      { kind: "trial", at: "U2", power: "on", what: "cool", outcome: "no-change", measured: "no change" },
      {
        kind: "diode",
        at: "U2.2",
        to: "GND",
        lead: "black",
        power: "off",
        expected: "0.62 V ±8 %",
        measured: "0.031 V",
        note: "Chip out of its socket.",
      },
    ],
    causes: [
      {
        at: "U2",
        chip: "vq4-0061",
        failure: "outputs-dead",
        description: "Clock outputs shorted to ground inside; the 14 MHz input is alive.",
        explains: [6, 12, 13, 15],
        cure: {
          action: "replaced",
          description: "Fitted in the old socket after its wipers had been cleaned.",
          fittedCode: "SM0612P",
          from: "Kaisa's spares box",
        },
        proof: {
          kind: "checks-repeated",
          note: "All that failed repeated, then two hours of a looping program.",
          repeats: [
            { check: 6, measured: "3.50 MHz" },
            { check: 12, measured: "clock 3.5 MHz" },
            { check: 13, measured: "active" },
            { check: 15, measured: "0.622 V" },
          ],
        },
      },
    ],
    confirmations: [
      { member: "anouk", helped: true, note: "Same board, same flat pin 2. Saved me the crystal." },
      {
        member: "pim",
        helped: false,
        note: "Mine had the clock at U2.2 and not at TP1: R3 was open. Own case follows.",
      },
    ],
    comments: [
      {
        member: "otto",
        body: "You changed a crystal while 14 MHz stood at its load. In my workshop that cost a round.",
        yearsAgo: 1.39,
      },
      { member: "mirela", body: "It was good tea.", yearsAgo: 1.39 },
      {
        member: "femi",
        body: "My HDL-C07-22 runs. Mine is dated 8619, yours 8633. Photographs of both under the code, please.",
        yearsAgo: 1.3,
      },
    ],
  },
  {
    key: "harrow-ram-minus5",
    title: "Three beeps after a recap, -5 V at a third of itself",
    board: "harrow-80",
    revision: "Issue 1",
    copyTag: "HF-OTTO",
    author: "otto",
    yearsAgo: 4.2,
    symptoms: ["random characters", "self-test beeps", "gets hot"],
    symptomText: "Three short beeps, picture of steady rubbish. Came with the words: all capacitors are new.",
    reproduced: "At every power-on. Switched off after five seconds each time.",
    outcome: "cured",
    lesson: "All capacitors new is a symptom. Look at each tantalum's plus before the first power-on.",
    story: `A board with new capacitors is a board on which somebody has soldered twenty times. I looked at every one of them
before the plug, and at C3 I stopped: its plus was away from ground. On this board the plus belongs **on** ground, it is
the negative rail, and the print under it shows the plus where a tired eye does not look for it.

So far so easy. But -5 V had been gone for as long as the owner had "tried it once more", and :chip[4116] do not forgive
that. After a new C3 the rail stood at -4.97 V and there were still three beeps.

What I did then, in order:

1. felt the eight RAM chips after five seconds: U16 and U19 hot, the others hand-warm;
2. diode range with the power off, +12 V pin to ground on each: six alike, two near nothing;
3. out with both, sockets in, two good ones from the drawer, **the -5 V measured at pin 1 of both empty places first**.

One short beep now and BASIC. Soak overnight with a program that fills and reads all of it.

The wrong turn was mine: I suspected VR3 before C3, because a :chip[7905] that gets hot looks guilty. It was only
feeding a shorted tantalum, and it has been feeding it ever since without complaint.`,
    checks: [
      { kind: "visual", at: "C3", power: "off", measured: "Plus end away from ground, body darkened" },
      { kind: "resistance", at: "-5V", to: "GND", power: "off", expected: "> 500 ohm", measured: "14 ohm" },
      { kind: "resistance", at: "+5V", to: "GND", power: "off", expected: "> 100 ohm", measured: "182 ohm" },
      {
        kind: "trial",
        at: "VR3",
        power: "off",
        what: "swap",
        outcome: "no-change",
        measured: "no change",
        note: "Wrong turn.",
      },
      { kind: "dc-voltage", at: "-5V", power: "on", measured: "-1.62 V", note: "RAM still in; off again at once." },
      { kind: "dc-voltage", at: "+12V", power: "on", measured: "11.8 V" },
      { kind: "dc-voltage", at: "+5V", power: "on", measured: "4.97 V" },
      {
        kind: "self-test",
        at: "U1",
        power: "on",
        measured: "3 short beeps",
        verdict: { chosen: "out-of-spec", reason: "Three beeps mean that no RAM answers." },
      },
      { kind: "temperature", at: "U16", power: "on", expected: "< 50 °C", measured: "71 °C" },
      { kind: "temperature", at: "U19", power: "on", expected: "< 50 °C", measured: "68 °C" },
      { kind: "temperature", at: "U15", power: "on", expected: "< 50 °C", measured: "36 °C" },
      {
        kind: "diode",
        at: "U16.8",
        to: "GND",
        lead: "black",
        power: "off",
        expected: "0.52 V ±10 %",
        measured: "0.018 V",
        note: "Out of the board.",
      },
      {
        kind: "diode",
        at: "U19.8",
        to: "GND",
        lead: "black",
        power: "off",
        expected: "0.52 V ±10 %",
        measured: "0.022 V",
        note: "Out of the board.",
      },
      {
        kind: "diode",
        at: "U14.8",
        to: "GND",
        lead: "black",
        power: "off",
        expected: "0.52 V ±10 %",
        measured: "0.517 V",
      },
      { kind: "activity", at: "U14.4", power: "on", expected: "active", measured: "active" },
      { kind: "activity", at: "U14.15", power: "on", expected: "active", measured: "active" },
    ],
    causes: [
      {
        at: "C3",
        failure: "earlier-repair",
        description: "Tantalum fitted the wrong way round in a recap; shorted and pulled -5 V down.",
        explains: [0, 1, 4],
        cure: { action: "replaced", description: "New 10 µF tantalum, plus on ground.", from: "drawer" },
        proof: {
          kind: "checks-repeated",
          note: "Measured at VR3 and at pin 1 of every RAM place.",
          repeats: [
            { check: 1, measured: "1.9k" },
            { check: 4, measured: "-4.97 V" },
          ],
        },
      },
      {
        at: "U16",
        chip: "4116",
        failure: "internal-short",
        description: "U16 and U19 shorted between +12 V and ground after running without their bias.",
        explains: [7, 8, 9, 11, 12],
        cure: { action: "replaced", description: "Both changed, on sockets.", from: "drawer, 150 ns" },
        proof: {
          kind: "soak",
          minutes: 600,
          note: "Fill and compare overnight, no error.",
          repeats: [
            { check: 8, measured: "37 °C" },
            { check: 9, measured: "36 °C" },
            { check: 11, measured: "0.521 V" },
            { check: 12, measured: "0.524 V" },
          ],
        },
      },
    ],
    confirmations: [
      { member: "ines", helped: true, note: "C3 reversed on a board bought as restored. The same hand, I fear." },
    ],
    comments: [
      { member: "pim", body: "How do you see which RAM is hot without burning the finger?", yearsAgo: 4.1 },
      {
        member: "otto",
        body: "With the lip of a wet cotton bud. It hisses over eighty. And with five seconds, not with a minute.",
        yearsAgo: 4.1,
      },
    ],
  },
  {
    key: "harrow-mux-shadow",
    title: "BASIC starts, every letter has a shadow sixteen places on",
    board: "harrow-80",
    revision: "Issue 2",
    copyTag: "HF-MIR",
    author: "mirela",
    yearsAgo: 2.7,
    symptoms: ["wrong picture", "random characters", "gets hot"],
    symptomText:
      "Machine runs, beeps, takes commands. The picture shows each character twice and vertical bars in the border.",
    reproduced: "Always. A little better when cooled.",
    outcome: "cured",
    lesson:
      "A 74LS157 fits where a 74LS257 belongs and never lets go. Read the markings of the muxes, not the positions.",
    story: `The program runs, so processor, ROM, RAM and the CPU's side of the multiplexers are well. Only the picture is wrong,
and only U2 reads RAM for the picture. So: who else drives the RAM's address lines while U2 does?

With the analyser on MA0 to MA6 and /VGATE as trigger the answer is on one screen. MA4 to MA6 are clean. MA0 to MA3 sit
at **1.9 to 2.2 V** whenever U2 drives them against a high. Two outputs that fight sit between the levels.

MA0 to MA3 is U12. I lifted its pin 15, no change, and that is the point: on a :chip[74ls157] pin 15 high means
*all outputs low*, on a :chip[74ls257] it means *let go*. The marking under a smear of varnish said 157. Its date code is
four years later than its neighbours'.

The chip was good. It was the wrong chip, and somebody had been quite happy with a machine that "works but for the
picture". U2 had been fighting it for years at 74 °C and took no harm, which speaks for :code[VQ4-0061-03].

- Trigger on the enable, not on the data.
- Compare the four lines of one chip with the three of the other: the odd group is the clue.
- See :board[harrow-80] for the two pin 15s.`,
    checks: [
      {
        kind: "visual",
        at: "U12",
        power: "off",
        measured: "Date code 8806, neighbours 84xx; varnish over the marking",
      },
      { kind: "dc-voltage", at: "+5V", power: "on", measured: "4.95 V" },
      { kind: "dc-voltage", at: "U2.40", power: "on", measured: "4.93 V" },
      { kind: "frequency", at: "TP1", power: "on", expected: "3.5 MHz ±1 %", measured: "3.500 MHz" },
      { kind: "activity", at: "/RAS", power: "on", expected: "active", measured: "active" },
      { kind: "activity", at: "/VGATE", power: "on", expected: "active", measured: "active" },
      { kind: "trial", at: "U2", power: "off", what: "reseat", outcome: "no-change", measured: "no change" },
      { kind: "temperature", at: "U2", power: "on", expected: "< 55 °C", measured: "74 °C" },
      { kind: "temperature", at: "U12", power: "on", expected: "< 55 °C", measured: "66 °C" },
      { kind: "temperature", at: "U13", power: "on", expected: "< 55 °C", measured: "38 °C" },
      { kind: "waveform", at: "MA0", power: "on", measured: "1.9 to 2.2 V plateau while /VGATE is high", when: "warm" },
      { kind: "waveform", at: "MA4", power: "on", measured: "clean levels all through", when: "warm" },
      {
        kind: "level",
        at: "MA1",
        power: "on",
        expected: "> 2.4 V",
        measured: "2.05 V",
        note: "At the sample where U2 drives high.",
      },
      { kind: "trial", at: "U12.15", power: "on", what: "lift-pin", outcome: "no-change", measured: "no change" },
    ],
    causes: [
      {
        at: "U12",
        chip: "74ls257",
        failure: "earlier-repair",
        description: "A 74LS157 fitted where a 74LS257 belongs: it drives low instead of letting go.",
        explains: [7, 8, 10, 12],
        cure: { action: "replaced", description: "74LS257 in a socket.", from: "new" },
        proof: {
          kind: "checks-repeated",
          note: "Same capture again, no plateau; picture right.",
          repeats: [
            { check: 7, measured: "44 °C" },
            { check: 8, measured: "39 °C" },
            { check: 12, measured: "3.4 V" },
          ],
        },
      },
    ],
    confirmations: [
      { member: "tomasz", helped: true, note: "Other board, same sin: a 157 in a 257's place. Hot is hot." },
    ],
    comments: [
      { member: "bram", body: "And it ran like that for four years? I want such a custom.", yearsAgo: 2.6 },
      { member: "anouk", body: "Picture of the shadow added; it looks like a double-exposed film.", yearsAgo: 2.6 },
    ],
  },
  {
    key: "harrow-dead-column",
    title: "Five keys of one column dead after a winter of wool",
    board: "harrow-80",
    revision: "Issue 2",
    author: "pim",
    yearsAgo: 0.7,
    symptoms: ["keys dead"],
    symptomText: "Q, A, Z, shift and 1 do nothing, all other keys are well.",
    reproduced: "Always, also with another keyboard.",
    outcome: "cured",
    lesson: "One dead column with two keyboards is U3, and static is how it died: earth yourself at the tail.",
    story: `Four lines, because it was quick. I had swapped the keyboard with Bram's first, and the same five keys were dead, so it
could only be the tail's connector or U3. The connector's five wipers all beeped through to U3. Dolores had a
:code[KL/0418/2] and said to try it, because her late board came with one, and it works like the old
:code[VQ4-0118-01]: all keys there, tape loads too.

What I learnt afterwards from Ines, who asked what I was wearing: the tail of the membrane goes straight to the K inputs
with nothing in between. A woollen jumper in January is enough. I now touch the plate of the regulators before I touch
the tail. There is a :chip[vq4-0118] in the club's drawer again, because I bought two.

I did not measure anything with a meter, so if you have the same fault please write your readings under this: pin 17 to
ground on a diode range would be nice, good and bad, with the lead that was on it.`,
    checks: [],
    causes: [
      {
        at: "U3",
        chip: "vq4-0118",
        failure: "input-loading",
        description: "Input K2 dead, most likely from static.",
        explains: [],
        cure: { action: "replaced", description: "Fitted in the socket.", fittedCode: "KL/0418/2", from: "Dolores" },
        proof: {
          kind: "soak",
          minutes: 90,
          note: "Typed a whole adventure, all keys tried twice, one tape saved and loaded.",
        },
      },
    ],
    confirmations: [
      { member: "kaisa", helped: true, note: "K4 on mine. Pin 19 read 0.09 V, its neighbours 0.58, black on the pin." },
    ],
    comments: [
      { member: "ines", body: "I asked because you crackled.", yearsAgo: 0.7 },
      {
        member: "mirela",
        body: "Readings of a good one, black lead on the pin: K0 to K4 0.58, 0.58, 0.57, 0.58, 0.58 V.",
        yearsAgo: 0.69,
      },
    ],
  },
];
