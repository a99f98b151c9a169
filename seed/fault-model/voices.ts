import type { Habit } from "./hand.ts";

/** How a member writes: numbers, how much, and sentences that only this one would say. */
export interface Voice {
  habit: Habit;
  /** Share of the tale that is told. */
  talk: number;
  openings: readonly string[];
  asides: readonly string[];
  closings: readonly string[];
  comments: readonly string[];
}

const VOICES: Record<string, Voice> = {
  ines: {
    habit: "spaced",
    talk: 0.7,
    openings: [
      "Readings in the order in which they were made.",
      "Nothing was swapped before something was measured.",
      "For the record, since the last entry on this board was mine as well.",
    ],
    asides: [
      "The first idea was wrong; it is in the list.",
      "I stopped for tea before the iron, which saved a chip.",
      "One reading I did not trust, so it is there twice.",
    ],
    closings: [
      "Label on the board, bag closed.",
      "Entered the same evening.",
      "The old part is in the drawer marked *dead, proved*.",
    ],
    comments: [
      "Please add the reading of the supply at the pin, if you still have it.",
      "Linked from the board's page. Thank you.",
      "Was that before or after the reseat? It matters for the next one.",
    ],
  },
  otto: {
    habit: "spaced",
    talk: 0.6,
    openings: [
      "In forty years I have seen this with every maker.",
      "Before the set went on I looked, and before I looked I unplugged.",
      "A classic. One hand in the pocket all the same.",
    ],
    asides: [
      "The young people wanted the logic analyser. A neon and a nose would have done.",
      "My old analogue meter saw the movement that the digital one averaged away.",
      "Half of it was somebody's solder.",
    ],
    closings: ["Cover on, screws counted.", "It will outlive me.", "Soaked over the football."],
    comments: [
      "Whoever repeats this: capacitors discharged through a resistor, not through a screwdriver.",
      "Same here in a television, thirty years ago. Same cure.",
      "Nice. And the neighbours of that part? They are as old.",
    ],
  },
  mirela: {
    habit: "spaced",
    talk: 0.8,
    openings: [
      "Sixteen probes on the group, trigger on the first that does not move.",
      "I compared the group before I compared it with any document.",
      "Two hypotheses, one reading that parts them.",
    ],
    asides: [
      "The wrong turn cost twenty minutes and taught me the enable logic.",
      "A captured second is worth ten opinions.",
      "The reading in the middle was taken to disprove myself.",
    ],
    closings: [
      "Captures are kept with the board.",
      "Repeated after an hour, same levels.",
      "Not a single contradiction left over, which is rare.",
    ],
    comments: [
      "Do you have the same pin on a good board? One number more and this is evidence.",
      "The order of your checks is exactly right, I would not change one.",
      "Then the code on that part wants a second sighting. I will look at mine.",
    ],
  },
  bram: {
    habit: "bare",
    talk: 0.35,
    openings: ["Swapped three things first. Yes, I know.", "Quick one.", "Thought it was the usual. It was not."],
    asides: ["Should have measured first.", "Bought a chip for nothing on the way.", "Ines looked at me. I measured."],
    closings: ["Works. Next.", "Done by ten.", "Ran all night while I slept."],
    comments: [
      "Did the same last month, different board.",
      "I have two of those parts, ask me.",
      "Ha. I would have swapped the processor.",
    ],
  },
  yusuf: {
    habit: "spaced",
    talk: 0.6,
    openings: [
      "Rails first. They are always first.",
      "Began at the supply and worked away from it.",
      "With a current limit nothing can go very wrong.",
    ],
    asides: [
      "The rail was right this time, I was almost disappointed.",
      "A lamp in series says more than a fuse.",
      "Ripple before volts, volts before logic.",
    ],
    closings: [
      "Current back to what the label says.",
      "Warm, not hot, after two hours.",
      "And a fuse of the right value.",
    ],
    comments: [
      "What did it draw before and after?",
      "Did you look at the ripple with the load on?",
      "Tantalums of that batch: I would take all of them out.",
    ],
  },
  kaisa: {
    habit: "spaced",
    talk: 0.6,
    openings: [
      "You could hear where it was before you could see it.",
      "I played every key first and wrote down which ones were wrong.",
      "Headphones, then meter.",
    ],
    asides: [
      "The neighbour voice was my reference: same card, same settings.",
      "It sounded like the filter and was not.",
      "I swapped the cards and the fault came along, which is half of the work.",
    ],
    closings: [
      "In tune after a warm-up of half an hour.",
      "Eight voices, and I cannot tell which one it was.",
      "Recorded before and after; the difference is in my ears only now.",
    ],
    comments: [
      "Does it drift afterwards? Mine did for a day.",
      "Lovely, and so little to replace.",
      "I hear that hum in my sleep.",
    ],
  },
  dolores: {
    habit: "tight",
    talk: 0.5,
    openings: [
      "Glass off, balls out, fuse out, then we talk.",
      "Coil supply off while I measured. I am fond of my coils.",
      "It was burning lamps in my own hall, so I was quick.",
    ],
    asides: [
      "The connector was brown, they always are.",
      "First the load, then the driver. I learnt that with a fire blanket.",
      "Somebody had fitted a fuse twice as big.",
    ],
    closings: [
      "Two hours of play, three of them mine.",
      "All coils in test, twice round.",
      "Sold a coffee for each game, soak test paid for.",
    ],
    comments: [
      "Check the connector on the other side too, please.",
      "Which fuse was in? The right one?",
      "Good. I have burnt that finger as well.",
    ],
  },
  pim: {
    habit: "spaced",
    talk: 0.9,
    openings: [
      "This was my first of this kind, so I wrote down everything.",
      "I asked on club night and was told where to begin.",
      "What I did not know before: the reading without the part tells more than the one with it.",
    ],
    asides: [
      "I measured it twice, because the first time I had the leads the wrong way round.",
      "Greta showed me how to hold the probe so that it does not slip.",
      "I had to look up what the pin is called.",
    ],
    closings: [
      "I hope that this helps the next beginner.",
      "It works, and I know why, which is new.",
      "Took me three evenings. The next one will take one.",
    ],
    comments: [
      "How do you know that it is that pin and not the trace?",
      "Thank you, this is exactly what I have on the bench.",
      "Can one do that with a plain multimeter?",
    ],
  },
  anouk: {
    habit: "tight",
    talk: 0.6,
    openings: [
      "Twenty minutes under the microscope before any meter.",
      "Photo first, then flux.",
      "The board had been repaired before, and not kindly.",
    ],
    asides: [
      "The pad held by its mask only.",
      "Somebody had used a very big iron.",
      "Low-melt alloy and patience; nothing came up that should stay down.",
    ],
    closings: [
      "Joints shine, photo taken.",
      "You have to know where to look to see it.",
      "Lacquered, and my initials are nowhere on it.",
    ],
    comments: [
      "Please clean the flux off, somebody will have to look at it in ten years.",
      "Beautiful job on the via.",
      "Is the pad whole on the other side? Look before you close.",
    ],
  },
  tomasz: {
    habit: "bare",
    talk: 0.45,
    openings: [
      "From a cellar, as usual. Washed, dried for two days, then looked at.",
      "One of a heap of six.",
      "Spiders out first.",
    ],
    asides: [
      "Cleaned all sockets while I was at it.",
      "Compared with the second board of the heap, which has another fault.",
      "One of the six is now a donor. Sorry.",
    ],
    closings: [
      "On test with a game running till Sunday.",
      "Back in the cabinet, coin box full of spiders too.",
      "Five to go.",
    ],
    comments: [
      "Same heap, same fault, different chip.",
      "Wash it. Really.",
      "I have a donor of this one, minus the edge connector.",
    ],
  },
  femi: {
    habit: "spaced",
    talk: 0.75,
    openings: [
      "Warmed up for half an hour before the first reading, so that the numbers mean something.",
      "Meter checked against the reference on the same day.",
      "The instrument told me itself where to look; one has to read its manual.",
    ],
    asides: [
      "Four digits were not needed here. I took them all the same.",
      "The difference between the two readings is ten times the error of my meter.",
      "A reading without its conditions is a rumour.",
    ],
    closings: [
      "Within its figures again over two hours.",
      "Calibration untouched, sticker still valid.",
      "Repeated cold and warm: the same to the last digit but one.",
    ],
    comments: [
      "At which temperature was that?",
      "With which meter? Mine loads that point by 2 %.",
      "Agreed, and reproduced here on another copy.",
    ],
  },
  greta: {
    habit: "spaced",
    talk: 0.65,
    openings: [
      "I drew that corner of the circuit again before I touched it.",
      "From the drawing there were three places where it could be.",
      "Otto stood behind me for the part with the tube.",
    ],
    asides: [
      "The drawing in the folder has two pins swapped; mine is in the documents now.",
      "Two of the three I could rule out with power off.",
      "It helps to say aloud what each reading should be, before.",
    ],
    closings: [
      "Drawing corrected, board back in its terminal.",
      "Ran a page of text for three hours, not a letter wrong.",
      "Discharged, closed, labelled.",
    ],
    comments: [
      "I have added that net to the drawing.",
      "Is your board the later issue? Then the designator differs.",
      "Otto says well done, and where is the bleeder.",
    ],
  },
};

const PLAIN: Voice = {
  habit: "spaced",
  talk: 0.5,
  openings: ["Measured in the usual order."],
  asides: ["One wrong turn on the way."],
  closings: ["Works again."],
  comments: ["Thank you, this helped."],
};

/** The member's way of writing; somebody without one of their own writes plainly. */
export function voiceOf(handle: string): Voice {
  return VOICES[handle] ?? PLAIN;
}
