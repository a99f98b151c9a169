import type { CheckKind, Hazard } from "../shared/index.ts";
import type { BoardFacts } from "./facts.ts";

export interface Caution {
  /** Stable name: what a tick is kept under. */
  key: string;
  title: string;
  text: string;
  /** Must be ticked before work: mains, a picture tube, more than 60 V. */
  tick: boolean;
  /** Designator or place it concerns; empty: the whole board. */
  at: string;
}

/**
 * Above this a board counts as dangerous to touch. IEC 62368-1, ES1 limit for d.c. under normal conditions (60 V;
 * from memory); local rules and qualified people decide.
 */
export const DANGEROUS_VOLTS = 60;

const DEFER =
  "Work on such parts is for people qualified under your local rules. You can stop here and bring it to club night.";

const HAZARD_WORDS: Record<Hazard, { title: string; text: string; tick: boolean }> = {
  mains: {
    title: "Mains on this board",
    text: `Unplug before touching; a switched-off set is not unplugged. The set goes on an isolating transformer, never the oscilloscope: its ground clip is mains earth. ${DEFER}`,
    tick: true,
  },
  "picture-tube": {
    title: "Picture tube",
    text: `The anode holds its charge for days after unplugging, and the tube can implode. Discharge through a resistor, with one hand, and measure that it is gone. ${DEFER}`,
    tick: true,
  },
  "high-voltage": {
    title: "Dangerous voltage",
    text: `Set up the probe with the power off, then keep one hand away from the board. Check that meter and leads are rated for it. ${DEFER}`,
    tick: true,
  },
  "stored-charge": {
    title: "Charged capacitors",
    text: "Unplug, discharge through a resistor, and measure before you touch or connect an ohmmeter.",
    tick: false,
  },
  "hot-parts": {
    title: "Hot parts",
    text: "Regulators and power resistors burn skin for minutes after switching off.",
    tick: false,
  },
  battery: {
    title: "Battery",
    text: "A leaking cell is caustic: gloves, and vinegar or lemon juice for alkaline leaks. Before it comes out: does it keep calibration, settings or a key?",
    tick: false,
  },
  "lithium-cell": {
    title: "Lithium cell",
    text: "Never heat, charge or short it. Before it comes out: does it keep calibration, settings or a key?",
    tick: false,
  },
  ultraviolet: {
    title: "Ultraviolet lamp",
    text: "The eraser's light burns eyes and skin: closed lid, no looking.",
    tick: false,
  },
};

/** The cautions of a board, worst first, each once. A plain +5 V board has none. */
export function boardCautions(facts: Pick<BoardFacts, "hazards" | "highestVoltage" | "cautions">): Caution[] {
  const hazards = new Set<Hazard>(facts.hazards);
  if (facts.highestVoltage !== null && facts.highestVoltage > DANGEROUS_VOLTS) hazards.add("high-voltage");
  const general = [...hazards].map((hazard): Caution => ({ key: hazard, at: "", ...HAZARD_WORDS[hazard] }));
  const own = facts.cautions.map((caution): Caution => ({
    key: `board:${caution.at}:${caution.text.slice(0, 40)}`,
    title: caution.at === "" ? "This board" : caution.at,
    text: caution.text,
    tick: false,
    at: caution.at,
  }));
  return [...general, ...own].toSorted((a, b) => Number(b.tick) - Number(a.tick));
}

/** Kinds of check that send a current of their own through the board. */
const UNPOWERED_ONLY = new Set<CheckKind>(["continuity", "resistance", "diode", "capacitance", "esr"]);

/** The cautions that concern one check: the board's for its place, and what its kind demands. */
export function checkCautions(cautions: readonly Caution[], check: { kind: CheckKind; at: string }): Caution[] {
  const designator = check.at.split(".")[0] ?? "";
  const here = cautions.filter((caution) => caution.at !== "" && sameText(caution.at, check.at, designator));
  if (!UNPOWERED_ONLY.has(check.kind)) return here;
  const charged = cautions.some((caution) => caution.tick || caution.key === "stored-charge");
  if (!charged) return here;
  return [
    ...here,
    {
      key: "unpowered",
      title: "Power off, discharged",
      text: "This check sends a current of its own: unplug, discharge, and see that every rail is below 0.5 V first.",
      tick: false,
      at: check.at,
    },
  ];
}

function sameText(concerns: string, at: string, designator: string): boolean {
  const concerned = concerns.toUpperCase();
  return concerned === at.toUpperCase() || concerned === designator.toUpperCase();
}
