import type { SeedMember } from "#seed/shapes.ts";

/** Name of the demo club. */
export const clubName = "The Tinwhistle Repair Circle";

export const members: SeedMember[] = [
  {
    handle: "ines",
    name: "Ines Valdemarin",
    role: "steward",
    about:
      "I keep the key, the kettle and the records. Measure first, write it down, then have an opinion. Home computers for choice.",
    joinedYearsAgo: 7.8,
  },
  {
    handle: "otto",
    name: "Otto Brackwede",
    role: "reviewer",
    about:
      "Thirty-one years of television sets, then retired, then bored, then this. Anything over 60 volts comes to my bench, please, and with its cover on.",
    joinedYearsAgo: 7.8,
  },
  {
    handle: "mirela",
    name: "Mirela Costandache",
    role: "reviewer",
    about:
      "Sixteen channels and patience. I read pin tables for pleasure and will believe a house code when I have seen two boards.",
    joinedYearsAgo: 6.9,
  },
  {
    handle: "bram",
    name: "Bram Hoeksma-Vliet",
    role: "member",
    about: "Impatient. Swaps first, measures after, and pays for it. Owns too many Harrows.",
    joinedYearsAgo: 6.2,
  },
  {
    handle: "yusuf",
    name: "Yusuf Terzibaşlar",
    role: "member",
    about: "Power supplies. If the rail is right I lose interest; it is seldom right.",
    joinedYearsAgo: 6.4,
  },
  {
    handle: "kaisa",
    name: "Kaisa Lehtovirran",
    role: "member",
    about: "Synthesizers, mostly voice cards. I listen before I measure, and then I measure what I heard.",
    joinedYearsAgo: 5.7,
  },
  {
    handle: "dolores",
    name: "Dolores Pintado Quer",
    role: "member",
    about:
      "Pinball since 1979, from the other side of the glass. Coils, lamps, connectors. I have burnt all ten fingers and know which transistor did each.",
    joinedYearsAgo: 6.6,
  },
  {
    handle: "pim",
    name: "Pim Oosterlaken",
    role: "member",
    about: "Newest here but two. I ask everything twice and write down the answers, so the next one need not ask.",
    joinedYearsAgo: 2.4,
  },
  {
    handle: "anouk",
    name: "Anouk Delacroze",
    role: "member",
    about: "Microscope, fine tip, flux. Send me your broken traces and lifted pads. I photograph everything.",
    joinedYearsAgo: 4.9,
  },
  {
    handle: "tomasz",
    name: "Tomasz Wierzchlas",
    role: "member",
    about: "Arcade boards, in heaps, from cellars. Wash first. Half of them only want clean sockets.",
    joinedYearsAgo: 5.3,
  },
  {
    handle: "femi",
    name: "Femi Adekunbi-Holt",
    role: "member",
    about:
      "Instruments: counters, generators, things with a calibration sticker. Four digits where others use two; it is a weakness.",
    joinedYearsAgo: 4.1,
  },
  {
    handle: "greta",
    name: "Greta Sundgaard",
    role: "member",
    about:
      "Terminals and their tubes, with Otto looking over my shoulder. I draw the circuit again until I understand it.",
    joinedYearsAgo: 3.6,
  },
];
