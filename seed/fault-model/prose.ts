/** Sentences of a case that depend on how it ended and not on the fault. */
export const ENDINGS = {
  waiting: {
    ask: [
      "Waiting for the part. Has anybody one to spare?",
      "Ordered, six weeks. If one lies in a drawer, please tell me.",
      "The donor board is promised for next club night.",
      "Nobody sells this one. Any board with it, in any state, would do.",
    ],
  },
  open: {
    ask: [
      "Where would you look next?",
      "Has anybody the same readings from a good board?",
      "I am out of ideas until somebody lends me a scope with two channels that work.",
      "What should that pin do? The drawing is no help.",
    ],
    lessons: [
      "Not finished. The readings so far clear the rails.",
      "Still open: what is listed is well, what is missing is not measured yet.",
    ],
  },
  "given-up": {
    lessons: [
      "Given up: more broken traces than whole ones. The good chips went into the spares.",
      "Not worth the third evening. Kept as a donor, with this list.",
      "The part does not exist any more. What else is on the board is now on offer.",
    ],
  },
  "no-fault-found": {
    titles: [
      "Nothing to find, so far",
      "Well on our bench",
      "Three evenings without a fault",
      "Could not be made to fail",
    ],
    lessons: [
      "No fault found in six hours. Ask the owner for the power strip and the cables too.",
      "Everything in spec, cold and warm. Given back with a note of what was measured.",
      "Ran without a fault. If it comes back, begin with the plug and not with the board.",
    ],
  },
  "cured-cause-unknown": {
    titles: ["Cured by handling", "Went away while we looked", "Reseated everything, and it was gone"],
    lessons: [
      "It works and nobody knows why. If it returns, note what was touched last.",
      "Cured, not understood. Every socket was reseated in one go, which was a mistake.",
    ],
  },
} as const;

export const SOURCES = [
  "spares drawer",
  "donor board",
  "new, from a shop",
  "club stock",
  "a member's tube",
  "flea market, tested",
] as const;

export const CONFIRMED = [
  "Same readings, same cure.",
  "This was it. Ten minutes instead of an evening.",
  "Yes, down to the pin.",
  "Same place, another make of part.",
  "Cured mine too, second of the two suspects here.",
  "Exactly this. I had begun at the other end of the board.",
  "Worked, and I measured before I cut.",
] as const;

export const NOT_CONFIRMED = [
  "Same symptom, but that part was well here.",
  "Did not help mine: the line was held by another chip.",
  "Looked the same for an hour. Mine was a joint.",
  "No. Readings agree up to the last one, which was fine on mine.",
] as const;

export const SOAK_NOTES = [
  "ran without a fault",
  "cold start, warm start, and left on in between",
  "lid on, towel over it",
  "through a whole club night",
  "self-test in a loop",
] as const;

export const REPEAT_NOTES = [
  "The checks that had failed, again, an hour later.",
  "Measured again cold and after half an hour.",
  "Same places, same leads, same meter.",
  "Repeated with the lid on.",
  "All that was wrong before, once more.",
] as const;
