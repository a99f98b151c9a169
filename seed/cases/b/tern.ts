import type { SeedCase } from "#seed/shapes.ts";

export const cases: SeedCase[] = [
  {
    key: "tern-striped-sprites",
    title: "All moving objects have vertical stripes, background well",
    board: "tern-arcade-main",
    revision: "Issue 1",
    copyTag: "TA-TOM-1",
    author: "tomasz",
    yearsAgo: 1.4,
    symptoms: ["stripes", "wrong picture"],
    symptomText: "Every bird and ball has one dark stripe in four columns. Letters and background are right.",
    reproduced: "From the first frame, cold and warm, in test mode too.",
    outcome: "cured",
    lesson:
      "A stripe in every object is a data line; ask the ROMs, then the socket, then the engine, and in that order.",
    story: `Stripes in the objects and none in the letters: that is RD0 to RD15, from 2A and 3A into the engine at 2C. Letters come
another way. One stripe in four columns is **one line of sixteen**, and I bet on a socket, because on this board one always
bets on a socket.

Lost the bet. Reseated 2A and 3A, read both on the programmer, twice each, checksums as on mirela's. Then with the
oscilloscope along the sixteen legs, and all sixteen move, 2C.48 (RD5) included. So the ROM speaks and the engine does
not listen, or the contact lies. I took 2C out and went over its socket with the thinnest brush anouk owns. No change.

What decided it was the meter. The chip on foam, red lead on its ground, black along the pins:

| pin | line | drop |
|---|---|---|
| 2C.46 | RD3 | 0.702 V |
| 2C.47 | RD4 | 0.699 V |
| 2C.48 | RD5 | **OL** |
| 2C.49 | RD6 | 0.704 V |

No protection diode on one leg of sixteen is a bond wire that has let go. It may have been cracked for years.

My bag of :code[BW 80561 A] is said to be the second :code[VQ4-0461-02], and mirela had compared all its legs. It goes
in as :code[VQ4-0461-01] came out: 2C is socketed, two minutes. Object 63 works now too, which on the first program
nobody will ever see. The old part lies in the drawer of dead customs, marked, for its lead frame.`,
    checks: [
      { kind: "trial", at: "2A", power: "off", what: "reseat", outcome: "no-change", measured: "no change" },
      { kind: "trial", at: "3A", power: "off", what: "reseat", outcome: "no-change", measured: "no change" },
      { kind: "contents", at: "2A", power: "off", expected: "7A30", measured: "7A30" },
      { kind: "contents", at: "3A", power: "off", expected: "C4F1", measured: "C4F1" },
      { kind: "continuity", at: "2C.48", to: "2A.16", power: "off", expected: "< 1 ohm", measured: "0.3 ohm" },
      {
        kind: "diode",
        at: "2C.47",
        to: "GND",
        lead: "black",
        power: "off",
        expected: "0.7 V ±5 %",
        measured: "0.699 V",
        note: "2C on foam.",
      },
      {
        kind: "diode",
        at: "2C.48",
        to: "GND",
        lead: "black",
        power: "off",
        expected: "0.7 V ±5 %",
        measured: "OL",
        note: "2C on foam.",
      },
      { kind: "trial", at: "2C", power: "off", what: "clean", outcome: "no-change", measured: "no change" },
      { kind: "dc-voltage", at: "+5V", power: "on", measured: "5.03 V" },
      { kind: "dc-voltage", at: "2C.24", power: "on", measured: "4.97 V" },
      { kind: "dc-voltage", at: "2C.68", power: "on", measured: "4.96 V" },
      { kind: "frequency", at: "2C.60", power: "on", expected: "12 MHz ±0.1 %", measured: "12.001 MHz" },
      { kind: "activity", at: "/ROMOE", power: "on", expected: "active", measured: "active" },
      { kind: "activity", at: "2C.48", power: "on", expected: "active", measured: "active" },
      { kind: "self-test", at: "4F", power: "on", measured: "all lines OK, stripes in the object page" },
    ],
    causes: [
      {
        at: "2C.48",
        chip: "vq4-0461",
        failure: "open",
        description: "Input RD5 of the sprite engine open inside the package.",
        explains: [6, 14],
        cure: {
          action: "replaced",
          description: "Other code of the second silicon, straight into the cleaned socket.",
          fittedCode: "BW 80561 A",
          from: "bag of three",
        },
        proof: {
          kind: "checks-repeated",
          minutes: 240,
          note: "Four hours of attract mode, object page looked at every hour.",
          repeats: [{ check: 6, measured: "0.707 V" }],
        },
      },
    ],
    confirmations: [
      {
        member: "bram",
        helped: false,
        note: "Stripes here were pin 1 of 3A bent under the socket. Look before you measure.",
      },
    ],
    comments: [{ member: "anouk", body: "I want that brush back.", yearsAgo: 1.39 }],
  },
  {
    key: "tern-watchdog-loop",
    title: "Restarts seven times a second, screen of one letter",
    board: "tern-arcade-main",
    revision: "Issue 1",
    copyTag: "TA-MIR",
    author: "mirela",
    yearsAgo: 2.0,
    symptoms: ["freezes", "resets again and again", "wrong picture"],
    symptomText: "Sync steady, whole screen the letter U in red, flickers at about 7 Hz. No coin lamp.",
    reproduced: "Always. The same with every ROM from a working board.",
    outcome: "cured",
    lesson: "A reset that comes again is the witness. Trigger on its release and look at the first two bytes fetched.",
    story: `/RESET at the processor pulses every 133 ms, which is eight frames of the watchdog in :chip[or-27-514]. So reset works;
the **program** does not. I say this first because two people before me had exchanged the parts around 4D.19.

Analyser on PD0 to PD7, the four upper addresses and E; trigger on the release of /RESET. A 6809 begins with two reads at
FFFE and FFFF. There was a good address and the wrong answer:

| read at | in 6F | on PD lines |
|---|---|---|
| FFFE | 80 | A0 |
| FFFF | 12 | 32 |
| next | – | A032, which is nothing |

Twice the same bit: 20 too much, PD5. On the board's side of the buffer, D5 at 4G.13, the bit is right. On the processor's
side, 4G.7, it stands at 4.4 V and never falls under 3.1.

Buffer or processor? Both can hold that line. 4F is socketed, so out with it: 4G.7 still high. With the power off it reads
38 Ω to +5 V, its neighbour 4G.6 reads 4.6 kΩ. So it is :chip[74ls245] at 4G and not the processor, and I left the
processor alone.

I counted afterwards: twelve checks, of which the analyser needed one. *Without* an analyser the same answer falls out
of comparing eight data lines with a probe, since pins of one role read alike and this one did not.`,
    checks: [
      { kind: "resistance", at: "+5V", to: "GND", power: "off", expected: "> 50 ohm", measured: "210 ohm" },
      { kind: "contents", at: "6F", power: "off", expected: "4C1E", measured: "4C1E" },
      { kind: "dc-voltage", at: "+5V", power: "on", measured: "5.01 V" },
      { kind: "dc-voltage", at: "4F.7", power: "on", measured: "4.96 V" },
      { kind: "ripple", at: "4F.7", power: "on", expected: "< 100 mVpp", measured: "35 mVpp" },
      { kind: "frequency", at: "E", power: "on", expected: "1.5 MHz ±0.5 %", measured: "1.500 MHz" },
      { kind: "activity", at: "4F.37", power: "on", expected: "steady", measured: "pulsing", note: "Every 133 ms." },
      { kind: "level", at: "4D.19", power: "on", expected: "high", measured: "high" },
      { kind: "level", at: "/HALT", power: "on", expected: "high", measured: "4.8 V" },
      { kind: "activity", at: "/ROM0", power: "on", expected: "active", measured: "active" },
      { kind: "activity", at: "4G.13", power: "on", expected: "active", measured: "active" },
      { kind: "activity", at: "4G.6", power: "on", expected: "active", measured: "active" },
      { kind: "activity", at: "4G.7", power: "on", expected: "active", measured: "stuck high" },
      {
        kind: "trial",
        at: "4F",
        power: "on",
        what: "lift-pin",
        outcome: "no-change",
        measured: "no change",
        note: "Processor out of its socket; 4G.7 stays high.",
      },
      { kind: "resistance", at: "4G.6", to: "+5V", power: "off", expected: "> 2 kohm", measured: "4.6k" },
      { kind: "resistance", at: "4G.7", to: "+5V", power: "off", expected: "> 2 kohm", measured: "38 ohm" },
    ],
    causes: [
      {
        at: "4G.7",
        chip: "74ls245",
        failure: "output-stuck-high",
        description: "PD5 side of the data buffer shorted to +5 V inside.",
        explains: [6, 12, 13, 15],
        cure: { action: "replaced", description: "Cut off, stubs lifted, socket fitted.", from: "club drawer" },
        proof: {
          kind: "checks-repeated",
          minutes: 60,
          note: "Runs; all ROM and RAM tests pass ten times.",
          repeats: [
            { check: 6, measured: "steady" },
            { check: 12, measured: "active" },
            { check: 15, measured: "4.5k" },
          ],
        },
      },
    ],
    confirmations: [
      { member: "tomasz", helped: true, note: "Bit 2 on mine, 4G again. That makes three." },
      { member: "pim", helped: true, note: "Found it with a logic probe only, comparing the eight." },
    ],
    comments: [{ member: "otto", body: "The two people before were one person, and he was tired.", yearsAgo: 1.99 }],
  },
  {
    key: "tern-no-sync",
    title: "No picture, no sync, and 5C exchanged for nothing",
    board: "tern-arcade-main",
    revision: "Issue 1",
    copyTag: "TA-BRA",
    author: "bram",
    yearsAgo: 1.1,
    symptoms: ["no picture", "dead at power-on"],
    symptomText: "Monitor searches, coin lamps dark, no sound commands.",
    reproduced: "Always. It died between two evenings, in a shelf.",
    outcome: "cured",
    lesson: "No clock, no verdict: a custom without CLK12 looks exactly like a dead custom.",
    story: `The list on the board's page says: *none, no sync: CLK12 at 5C.46, then /RESET*. I read the first three words.

No sync comes from 5C, 5C is a :code[VQ4-0475-01], and I had one :code[HDL-C48-10]. Sixty-four legs, hot air, new part
in, twenty-five minutes. I was proud of the joints. **No change.** Then I read the rest of the line.

- 5C.46, CLK12: nothing
- 1E.6, the buffer's output: nothing
- 1E.1 and 1E.2, the first inverter, oscillating or not: 1.4 V and 0.2 V

An inverter with 1.4 V in gives something in between or swings, since R1 holds it in the middle. This one says 0.2 V
whatever one does to it. With R1 lifted and pin 1 tied low it should say high: 0.2 V. That's a dead gate in
:chip[74ls04], for fifty cents.

I still changed the crystal first. Don't ask.

After 1E: 12.000 MHz, sync, picture, birds. In a table cabinet though player two's picture came out torn instead of
flipped, and that was the :code[HDL-C48-10]. So the old 5C went back in the week after, another twenty-five minutes, and
it is fine. It had been fine all the time.

Cost of not reading five words: two hot-air sessions on a QFP-64. Tomasz says his HDL works. His cabinet does not flip.`,
    checks: [
      {
        kind: "trial",
        at: "5C",
        power: "off",
        what: "swap",
        outcome: "no-change",
        measured: "no change",
        note: "Wrong turn, before any measurement.",
      },
      { kind: "dc-voltage", at: "+5V", power: "on", measured: "5.06 V" },
      { kind: "dc-voltage", at: "5C.1", power: "on", measured: "5.02 V" },
      { kind: "activity", at: "5C.46", power: "on", expected: "clock 12 MHz", measured: "no activity" },
      { kind: "activity", at: "/CSYNC", power: "on", expected: "active", measured: "stuck high" },
      { kind: "level", at: "/RESET", power: "on", expected: "high", measured: "low", note: "4D waits for frames." },
      { kind: "dc-voltage", at: "1E.14", power: "on", measured: "5.02 V" },
      { kind: "activity", at: "1E.6", power: "on", expected: "clock 12 MHz", measured: "no activity" },
      { kind: "dc-voltage", at: "1E.1", power: "on", measured: "1.4 V" },
      { kind: "trial", at: "1F", power: "off", what: "swap", outcome: "no-change", measured: "no change" },
      {
        kind: "level",
        at: "1E.2",
        power: "on",
        expected: "high",
        measured: "0.2 V",
        note: "R1 lifted, 1E.1 tied to ground.",
      },
    ],
    causes: [
      {
        at: "1E",
        chip: "74ls04",
        failure: "output-stuck-low",
        description: "First inverter of the 12 MHz oscillator stuck low.",
        explains: [3, 4, 5, 7, 10],
        cure: { action: "replaced", description: "Socketed; original 5C put back a week later." },
        proof: {
          kind: "checks-repeated",
          minutes: 90,
          note: "With the original 5C, upright and flipped picture.",
          repeats: [
            { check: 3, measured: "clock 12.0 MHz" },
            { check: 4, measured: "active" },
            { check: 5, measured: "high" },
            { check: 7, measured: "clock 12.0 MHz" },
          ],
        },
      },
    ],
    confirmations: [
      { member: "tomasz", helped: true, note: "Crystal here, but I would have unsoldered 5C without this." },
    ],
    comments: [
      { member: "ines", body: "The line is now in bold on the board's page.", yearsAgo: 1.09 },
      { member: "bram", body: "I read bold.", yearsAgo: 1.09 },
    ],
  },
  {
    key: "tern-colours-frozen",
    title: "Colours random at each start, RAM 3 BAD",
    board: "tern-arcade-main",
    revision: "Issue 1",
    author: "anouk",
    yearsAgo: 0.3,
    symptoms: ["wrong colours", "self-test message"],
    symptomText:
      "Shapes right, colours different at every power-on and the same until power-off. Self-test: RAM 3 BAD.",
    reproduced: "Fourteen starts, fourteen palettes, all photographed.",
    outcome: "waiting",
    lesson: "Colours that are random but steady were never written: look at who writes before you look at the RAM.",
    story: `Fourteen starts and fourteen palettes. Some were beautiful. They do not change while it runs, so the colour RAM *keeps* what
it has; it is only never told. That makes the two :chip[2114] innocent, although the self-test names them first.

Who tells them? The processor, through 9C and with the help of three things: the address multiplexers 6C and 6D turned by
/PAL, the buffer 9C opened by /PAL, the write pulse made in 8D from /PAL and /WR. Three times the same name.

| select at 4D | moves? |
|---|---|
| /RAM, pin 28 | yes |
| /VRAM, pin 29 | yes |
| /SPR, pin 30 | yes |
| **/PAL, pin 31** | no, 4.1 V |
| /IN0, pin 32 | yes |
| /COIN, pin 36 | yes |

I lifted 4D's leg out of the socket so that nothing else could hold it up: still 4.1 V on the bare pin, with the program
running its RAM test on that very page. The other nine selects work, so address, E and supply are right.

Tomasz lent me his :code[OR 27-514D] for an evening. All colours, all tests OK. He wanted it back, which is fair.

So it waits for an :code[OR 27-514B] or D. I have put myself on the wanted list and left the board complete in its box,
with the sick part in place and a red thread around it.`,
    checks: [
      { kind: "self-test", at: "7A", power: "on", measured: "RAM 3 BAD" },
      { kind: "dc-voltage", at: "+5V", power: "on", measured: "4.99 V" },
      { kind: "dc-voltage", at: "4D.40", power: "on", measured: "4.95 V" },
      { kind: "dc-voltage", at: "7A.18", power: "on", measured: "4.97 V" },
      { kind: "activity", at: "4D.18", power: "on", expected: "clock 1.5 MHz", measured: "clock 1.50 MHz" },
      { kind: "activity", at: "/WR", power: "on", expected: "active", measured: "active" },
      { kind: "activity", at: "/SPR", power: "on", expected: "active", measured: "active" },
      { kind: "activity", at: "/PAL", power: "on", expected: "active", measured: "stuck high" },
      { kind: "activity", at: "/PALWE", power: "on", expected: "active", measured: "stuck high" },
      {
        kind: "activity",
        at: "4D.31",
        power: "on",
        expected: "active",
        measured: "stuck high",
        note: "Leg bent out of the socket.",
      },
      {
        kind: "trial",
        at: "4D",
        power: "on",
        what: "swap",
        outcome: "cured",
        measured: "cured",
        note: "Tomasz's OR 27-514D, borrowed for one evening.",
      },
    ],
    causes: [
      {
        at: "4D.31",
        chip: "or-27-514",
        failure: "output-stuck-high",
        description: "Select of the colour RAM never goes low; the other nine selects work.",
        explains: [0, 7, 8, 9, 10],
      },
    ],
    comments: [
      { member: "greta", body: "Added to the wanted list, item 31.", yearsAgo: 0.29 },
      { member: "pim", body: "Can I have start number nine as a poster?", yearsAgo: 0.28 },
    ],
  },
  {
    key: "tern-sound-no-speech",
    title: "Tones well, no speech, three low beeps",
    board: "tern-arcade-sound",
    revision: "Issue 1",
    copyTag: "TS-OTT",
    author: "otto",
    yearsAgo: 1.6,
    symptoms: ["no speech", "self-test beeps"],
    symptomText: "Plays its tunes a little thin, says nothing. Three low beeps at power-on.",
    reproduced: "Always. Pressed at VR1 it crackles.",
    outcome: "cured",
    lesson: "The speech chip stays out of its socket until -5 V has been read at U7.1, not at the regulator.",
    story: `The board notes ask for U7 to come out first. I took it out, and that is the only clever thing I did, because it was dead
already.

Then rails, in the order that the old three-supply memories taught us: −5 V before all else. At VR1's own leg there is
−5.02 V, very nice, and at U7.1 there is −0.31 V. Between the two are 9 cm of track and *one joint*, and the joint has a
ring that one can read a newspaper through. VR1 stands up without a screw on Issue 1 and nods whenever the cabinet is
kicked.

The thin sound had the same reason. :chip[lm324] and :chip[tl072] got their minus from nowhere and clipped every lower
half wave.

| where | before | joint pressed | resoldered |
|---|---|---|---|
| VR1.3 | −5.02 V | −5.01 V | −5.01 V |
| U7.1 | −0.31 V | −4.96 V | −5.00 V |
| U13.11 | −0.30 V | −4.95 V | −5.00 V |

With −5 V back the tunes sounded full. The speech chip I put back for ten seconds with a finger on it: warm at once, three
beeps, out again. From pin 1 to ground it has 0.09 V both ways, so what the missing −5 V begins it also ends.

Yusuf had a :code[KL/0718/1] from a board whose main half is gone. The other phrases, :code[KL/0718/4], would have
said the wrong words. READY, it says now. VR1 has a screw, a washer and a drop of lacquer.`,
    checks: [
      { kind: "visual", at: "VR1", power: "off", measured: "Ring around pin 3" },
      {
        kind: "diode",
        at: "U7.1",
        to: "GND",
        lead: "black",
        power: "off",
        expected: "0.6..0.8 V",
        measured: "0.09 V",
        note: "U7 out, on foam; the same with the leads changed.",
      },
      {
        kind: "resistance",
        at: "-5V",
        to: "GND",
        power: "off",
        expected: "> 200 ohm",
        measured: "1.3k",
        note: "U7 out.",
      },
      { kind: "continuity", at: "VR1.3", to: "U7.1", power: "off", expected: "< 1 ohm", measured: "240 ohm" },
      { kind: "dc-voltage", at: "-12V", power: "on", measured: "-12.1 V" },
      { kind: "dc-voltage", at: "VR1.3", power: "on", measured: "-5.02 V", note: "On the leg itself." },
      { kind: "dc-voltage", at: "U7.1", power: "on", measured: "-0.31 V", note: "Socket empty." },
      { kind: "dc-voltage", at: "U13.11", power: "on", measured: "-0.30 V" },
      { kind: "trial", at: "VR1", power: "on", what: "press", outcome: "changed", measured: "changed" },
      { kind: "dc-voltage", at: "+12V", power: "on", measured: "11.9 V" },
      { kind: "dc-voltage", at: "U7.28", power: "on", measured: "4.98 V" },
      { kind: "frequency", at: "SPCLK", power: "on", expected: "112 kHz ±1 %", measured: "111.9 kHz" },
      { kind: "activity", at: "/SPEECH", power: "on", expected: "pulsing", measured: "pulsing" },
      {
        kind: "self-test",
        at: "U7",
        power: "on",
        measured: "3 low beeps",
        note: "VR1 resoldered, old U7 back for 10 s.",
      },
    ],
    causes: [
      {
        at: "VR1.3",
        failure: "cold-joint",
        description: "Output of the -5 V regulator cracked off its track by vibration.",
        explains: [0, 3, 6, 7, 8],
        cure: { action: "resoldered", description: "All three legs; VR1 screwed to the heat sink." },
        proof: {
          kind: "checks-repeated",
          note: "Before the new U7 went in.",
          repeats: [
            { check: 3, measured: "0.1 ohm" },
            { check: 6, measured: "-5.00 V" },
            { check: 7, measured: "-5.00 V" },
          ],
        },
      },
      {
        at: "U7",
        chip: "kl-0718",
        failure: "internal-short",
        description: "Substrate pin shorted to ground after running without -5 V.",
        explains: [1, 13],
        cure: {
          action: "replaced",
          description: "Same phrases, as the first program needs them.",
          fittedCode: "KL/0718/1",
          from: "yusuf's half board",
        },
        proof: {
          kind: "checks-repeated",
          minutes: 180,
          note: "Says READY at 20 of 20 starts, then three hours of attract mode.",
          repeats: [{ check: 1, measured: "0.71 V" }],
        },
      },
    ],
    confirmations: [
      {
        member: "tomasz",
        helped: true,
        note: "VR1 on both of my boards resoldered before anything happened. One had the ring.",
      },
    ],
    comments: [{ member: "yusuf", body: "A regulator without a screw is a bell.", yearsAgo: 1.59 }],
  },
  {
    key: "tern-sound-hum",
    title: "Loud hum, sounds faint behind it",
    board: "tern-arcade-sound",
    revision: "Issue 1",
    copyTag: "TS-YUS",
    author: "yusuf",
    yearsAgo: 0.7,
    symptoms: ["hum", "sound too quiet"],
    symptomText: "Hum that gets louder with every lamp in the cabinet. Speech and tones are right but far away.",
    reproduced: "In the cabinet always. On the bench supply never.",
    outcome: "works-not-proved",
    lesson: "A fault that exists only in the cabinet lives in the wiring: measure the ground of the board, under load.",
    story: `A supply man hears hum and reaches for the big capacitor. I reached, measured, and put my hand back into my pocket: C2,
C4 and C12 are well.

On the bench the board is silent as snow. In the cabinet it hums, and it hums *louder when lamps light*. A hum that
follows somebody else's current comes in by a shared ground.

| from J1.3 to the supply's own ground screw | reading |
|---|---|
| lamps off | 0.09 V |
| all lamps | 0.31 V |
| plug worked to and fro | jumps 0.02 to 0.4 V |
| contacts exchanged | 0.012 V |

Three ground pins, J1.3, J1.4 and J1.7, and all three crimps black. The loudspeaker's return, the lamps' return (somebody
tied them to the same bolt) and the amplifier's reference meet there.

I exchanged the three crimps, cleaned the header's pins with a glass brush and gave the lamps a wire of their own to the
bolt. Hum gone, sounds are loud.

Why not *cured*? Because it ran for five minutes. The cabinet left the same evening with its owner, and I don't call a contact
cured that nobody has warmed for an hour. If it stays quiet until the summer party he will tell me, and I will change
the outcome.

My own verdict at check 3: +5 V at 4.76 is in tolerance by the book, and I call it out, since the bench shows 5.04 with the
same load.`,
    checks: [
      { kind: "visual", at: "J1", power: "off", measured: "Three ground crimps black" },
      { kind: "esr", at: "C12", power: "off", expected: "< 0.3 ohm", measured: "0.08 ohm" },
      { kind: "capacitance", at: "C2", power: "off", expected: "100 µF ±20 %", measured: "97 µF" },
      {
        kind: "dc-voltage",
        at: "+5V",
        power: "on",
        measured: "4.76 V",
        verdict: {
          chosen: "out-of-spec",
          reason: "On the bench supply the same board reads 5.04 V at the same current.",
        },
      },
      { kind: "dc-voltage", at: "+12V", power: "on", measured: "11.6 V" },
      { kind: "dc-voltage", at: "-5V", power: "on", measured: "-5.01 V" },
      { kind: "ripple", at: "+12V", power: "on", expected: "< 100 mVpp", measured: "40 mVpp" },
      {
        kind: "dc-voltage",
        at: "J1.3",
        power: "on",
        expected: "0 V ±50 mV",
        measured: "0.31 V",
        note: "Against the supply's ground screw, all lamps on.",
      },
      { kind: "dc-voltage", at: "U16.3", to: "J1.3", power: "on", expected: "0 V ±20 mV", measured: "4 mV" },
      { kind: "trial", at: "J1", power: "on", what: "press", outcome: "changed", measured: "changed" },
    ],
    causes: [
      {
        at: "J1",
        failure: "dirty-contact",
        description: "Ground crimps of the power plug oxidised; lamp current shared what was left of them.",
        explains: [0, 3, 7, 9],
        cure: { action: "cleaned", description: "Three new crimps, pins brushed, lamps on a wire of their own." },
      },
    ],
    comments: [
      { member: "dolores", body: "It is always the bolt.", yearsAgo: 0.69 },
      { member: "ines", body: "Thank you for not calling it cured.", yearsAgo: 0.68 },
    ],
  },
];
