import type { BoardKind } from "#lib/core/shared/index.ts";
import type { SeedBoard } from "#seed/shapes.ts";
import type { Effect } from "./fault.ts";

/** A symptom of the vocabulary, and how owners put it. */
export interface Symptom {
  label: string;
  said: readonly string[];
}

const symptom = (label: string, ...said: string[]): Symptom => ({ label, said });

const DEAD = symptom(
  "dead at power-on",
  "Lamp on, nothing else.",
  "Nothing happens at all when it is switched on.",
  "Was well on Sunday, dead on Monday.",
);
const FREEZES = symptom(
  "freezes",
  "Runs for some minutes, then stands still until it is switched off.",
  "Hangs at a different place each time.",
);
const INTERMITTENT = symptom(
  "intermittent",
  "Comes and goes. A knock on the bench is enough.",
  "Well when cold, wrong after a quarter of an hour.",
  "Works on the bench with the lid off, not at home with the lid on.",
);
const HOT = symptom("gets hot", "One corner of the board gets too hot to touch.", "Smells warm after two minutes.");
const SETTINGS = symptom(
  "settings lost",
  "Forgets everything overnight.",
  "Settings are back at the maker's each morning.",
);
const FUSE = symptom("fuse blows", "Second fuse went like the first.", "Blows its fuse at every start.");

/** Symptoms by what the machine is and what the fault does. */
const SYMPTOMS: Record<BoardKind, Partial<Record<Effect, readonly Symptom[]>>> = {
  "home-computer": {
    dead: [
      symptom(
        "no picture",
        "Black screen, no beep.",
        "Screen stays black; the set finds a signal, but an empty one.",
        "No picture since it was moved.",
      ),
      DEAD,
    ],
    garbage: [
      symptom(
        "random characters",
        "Screen full of letters that nobody typed.",
        "A chequerboard of characters, the same at each start.",
      ),
      symptom(
        "wrong picture",
        "Picture is there, every second column is wrong.",
        "Colours of the border in the letters.",
      ),
      symptom("stripes", "Upright stripes, four dots wide."),
    ],
    partial: [
      symptom("keys dead", "One row of keys does nothing.", "Keyboard dead, picture well."),
      symptom("serial port dead", "Prints nothing and receives nothing."),
      symptom("tape does not load", "Saves, but does not load what it saved."),
    ],
    sound: [symptom("no sound", "Picture well, not a sound.", "Sound so faint that one must put an ear to it.")],
    hum: [symptom("hum bars", "A dark bar climbs through the picture."), FREEZES],
  },
  terminal: {
    dead: [symptom("dark screen", "Dark, no glow, no tick.", "Fan runs, tube dark."), DEAD],
    garbage: [
      symptom("random characters", "Fills the screen with question marks.", "Every eighth character is another."),
      symptom("doubled text", "Everything stands there twice.", "Lower half repeats the upper."),
    ],
    partial: [
      symptom("serial port dead", "Local works, line does not.", "Sends, but does not receive."),
      symptom("keys dead", "Beeps for each key and shows none."),
    ],
    sound: [symptom("no bell", "The bell is silent, all else is well.")],
    hum: [symptom("picture sways", "The edges of the picture sway slowly, like weed in water.")],
    coil: [
      symptom("no field scan", "One bright line across the middle."),
      symptom("no bell", "Every key, and no bell at the margin.", "Bell rings once at power-on, then never."),
    ],
  },
  "synthesizer-voice": {
    coil: [
      symptom("wrong pitch", "An octave off, and it drifts away from there."),
      symptom("no modulation", "Filter stays shut."),
    ],
    dead: [symptom("voice dead", "Silent in every patch.", "No answer to any key."), DEAD],
    garbage: [
      symptom("wrong pitch", "A fifth too low, on some keys.", "Plays, but never the note that was asked."),
      symptom("stuck note", "One note hangs until power off."),
    ],
    partial: [
      symptom("keys dead", "Every eighth key is dead."),
      symptom("no modulation", "Wheel and envelope do nothing to the filter."),
    ],
    sound: [
      symptom("no sound", "One voice of eight is silent.", "A click at each key and nothing after it."),
      symptom("distorted sound", "Sounds as through a torn loudspeaker.", "The lower half of the wave is missing."),
    ],
    hum: [
      symptom("hum", "Hum an octave above the mains, under everything."),
      symptom("noise", "Hiss that comes with warmth."),
    ],
  },
  arcade: {
    coil: [
      symptom(
        "coin counter dead",
        "Takes coins and does not count them.",
        "Counter clicks once at power-on and stays pulled in.",
      ),
    ],
    dead: [
      symptom("no picture", "Black, attract music too is missing.", "Black with a thin grey frame."),
      symptom("resets by itself", "Starts, counts to three, starts again."),
    ],
    garbage: [
      symptom("wrong picture", "Background well, figures in pieces.", "Figures wear each other's heads."),
      symptom("wrong colours", "No red anywhere.", "All that is green is black."),
      symptom("stripes", "Every figure has stripes through it."),
    ],
    partial: [
      symptom("controls dead", "Player two cannot go left.", "Coin switch does nothing."),
      symptom("no sound", "Plays well and silently."),
    ],
    sound: [
      symptom("no sound", "Music well, no speech.", "Only noise, loud."),
      symptom("distorted sound", "Rough sound, worse when loud."),
    ],
    hum: [
      symptom("hum", "Hums through the loudspeaker, even between games."),
      symptom("resets by itself", "Resets when many lamps light."),
    ],
  },
  "pinball-driver": {
    dead: [
      symptom(
        "dead at power-on",
        "General lighting on, displays dark.",
        "The lamp on the board flashes once and stays on.",
      ),
      symptom("does not start", "Start button does nothing, attract is dark."),
    ],
    garbage: [
      symptom("wrong lamps", "Two lamps light where one should.", "A whole row follows its neighbour."),
      symptom("switches wrong", "The left sling counts as the tilt."),
    ],
    partial: [
      symptom("lamps dead", "One column of lamps is dark.", "Nothing lights on the right side."),
      symptom("coil dead", "One coil never fires, in test neither."),
    ],
    coil: [
      symptom(
        "coil always on",
        "Pulls in at power-on and stays. Switched off at once.",
        "The coil was too hot to touch.",
      ),
      symptom("coil dead", "The flipper on the left never pulls."),
      symptom("lamps dead", "One row of lamps never lights."),
    ],
    hum: [
      symptom("resets by itself", "Starts again whenever both flippers are used."),
      symptom("hum", "A buzz from the cabinet and displays that shiver."),
    ],
  },
  "bench-instrument": {
    coil: [symptom("relays dead", "No click when the range is changed.", "One relay is pulled in from the start.")],
    dead: [symptom("dead at power-on", "Standby lamp only.", "Display dark, fan runs.")],
    garbage: [
      symptom("wrong reading", "Shows twice what goes in.", "The third digit counts in its own way."),
      symptom("error on display", "Comes up with an error number and stops."),
    ],
    partial: [
      symptom("range dead", "One range shows zeros whatever goes in."),
      symptom("no trigger", "Display well, gate lamp never lights."),
    ],
    sound: [
      symptom("unstable reading", "The last two digits never rest."),
      symptom("offset", "Shows a value with the input shorted."),
    ],
    hum: [
      symptom("unstable reading", "Readings swim by a few counts, slowly."),
      symptom("rail drifts", "Readings wander with the mains."),
    ],
  },
  other: { dead: [DEAD] },
};

const COMMON: Record<Effect, readonly Symptom[]> = {
  dead: [DEAD, FUSE],
  garbage: [FREEZES],
  partial: [INTERMITTENT],
  intermittent: [INTERMITTENT, FREEZES],
  hot: [HOT, FUSE],
  sound: [symptom("no sound", "Silent.")],
  settings: [SETTINGS, symptom("corrosion", "Green where nothing should be green.")],
  coil: [symptom("output always on", "One output is on from the start, whatever the program does.")],
  hum: [FREEZES],
};

/** Symptoms that only a board with such a thing on it can have, by what its record must mention. */
const NEEDS: Record<string, RegExp> = {
  "serial port dead": /serial/i,
  "keys dead": /key/i,
  "tape does not load": /tape/i,
  "no bell": /bell|beep/i,
  "no picture": /video|picture|screen|tube/i,
  "resets by itself": /machine|6809/i,
  "wrong reading": /counts/i,
  "error on display": /counts/i,
  "range dead": /counts/i,
  "relays dead": /counts/i,
  "no sound": /sound|audio|voice|speech|oscillator/i,
  "distorted sound": /sound|audio|voice|speech|oscillator/i,
  "wrong colours": /palette|colour|sprite/i,
  "controls dead": /control|player|coin|switch/i,
  "wrong picture": /video|picture|sprite/i,
  "random characters": /character|video/i,
  "doubled text": /character|video/i,
  stripes: /video|picture|sprite/i,
  "no trigger": /gate|trigger/i,
  "no field scan": /field/i,
  "hum bars": /video|picture/i,
  "wrong pitch": /oscillator|key/i,
  "stuck note": /key|envelope/i,
  "no modulation": /filter|wheel|modulation/i,
  "switches wrong": /switch/i,
  "lamps dead": /lamp/i,
  "wrong lamps": /lamp/i,
  "coil dead": /coil|solenoid/i,
  "coil always on": /coil|solenoid/i,
};

/** What can be noticed on this board when a fault has this effect; never empty. */
export function symptomsOf(board: SeedBoard, effect: Effect): readonly Symptom[] {
  const words = wordsOf(board);
  const fits = ({ label }: Symptom): boolean => NEEDS[label]?.test(words) ?? true;
  const fitting = (SYMPTOMS[board.kind][effect] ?? []).filter(fits);
  if (fitting.length > 0) return fitting;
  // A sound board that is dead has no picture to lose: its owner misses the sound.
  const lost = effect === "dead" || effect === "garbage" ? (SYMPTOMS[board.kind].sound ?? []).filter(fits) : [];
  return lost.length > 0 ? lost : COMMON[effect];
}

const boardWords = new WeakMap<SeedBoard, string>();

function wordsOf(board: SeedBoard): string {
  const known = boardWords.get(board);
  if (known !== undefined) return known;
  const words = [board.name, board.summary, ...board.connectors.map(({ name }) => name)].join(" ");
  boardWords.set(board, words);
  return words;
}

/** How the fault was seen again before anything was touched. */
export const REPRODUCED: Record<"always" | "sometimes", readonly string[]> = {
  always: [
    "At every power-on.",
    "Always, cold and warm.",
    "Three times out of three on the bench supply.",
    "With everything unplugged that can be unplugged.",
    "At once, and the same each time.",
    "Here as at the owner's home.",
  ],
  sometimes: [
    "After about ten minutes, sooner with a towel over it.",
    "When the board is bent a little, front edge down.",
    "Two starts of five.",
    "Only with the cable moved.",
    "Not on the first evening; on the second at once.",
    "With a warm board, and by knocking.",
  ],
};
