// The closed sets of the trade, once: schemas, the database's CHECK constraints and the pages all follow these lists.

/** How a check is made. The order is the order in which a page offers them. */
export const CHECK_KINDS = [
  "visual",
  "self-test",
  "continuity",
  "resistance",
  "diode",
  "dc-voltage",
  "ac-voltage",
  "current",
  "ripple",
  "frequency",
  "level",
  "activity",
  "capacitance",
  "esr",
  "temperature",
  "waveform",
  "contents",
  "node-signature",
  "trial",
] as const;
export type CheckKind = (typeof CHECK_KINDS)[number];

/** What a check of kind `trial` tries. */
export const TRIALS = ["swap", "reseat", "piggy-back", "lift-pin", "cool", "heat", "press", "clean"] as const;
export type Trial = (typeof TRIALS)[number];

export const TRIAL_OUTCOMES = ["changed", "no-change", "cured"] as const;
export type TrialOutcome = (typeof TRIAL_OUTCOMES)[number];

export const VERDICTS = ["in-spec", "out-of-spec", "inconclusive", "noted", "not-taken"] as const;
export type Verdict = (typeof VERDICTS)[number];

export const POWER_STATES = ["off", "on"] as const;
export type PowerState = (typeof POWER_STATES)[number];

/** Which lead of the meter is on the place that `at` names. */
export const LEADS = ["red", "black"] as const;
export type Lead = (typeof LEADS)[number];

export const CASE_OUTCOMES = [
  "open",
  "waiting",
  "cured",
  "cured-cause-unknown",
  "works-not-proved",
  "no-fault-found",
  "given-up",
] as const;
export type CaseOutcome = (typeof CASE_OUTCOMES)[number];

export const BOARD_KINDS = [
  "home-computer",
  "terminal",
  "synthesizer-voice",
  "arcade",
  "pinball-driver",
  "bench-instrument",
  "other",
] as const;
export type BoardKind = (typeof BOARD_KINDS)[number];

/** What on a board can hurt somebody or be lost; decides which cautions are shown. */
export const HAZARDS = [
  "mains",
  "picture-tube",
  "high-voltage",
  "stored-charge",
  "hot-parts",
  "battery",
  "lithium-cell",
  "ultraviolet",
] as const;
export type Hazard = (typeof HAZARDS)[number];

export const PLACEMENT_KINDS = [
  "chip",
  "transistor",
  "diode",
  "resistor",
  "resistor-pack",
  "capacitor",
  "inductor",
  "crystal",
  "connector",
  "switch",
  "fuse",
  "relay",
  "transformer",
  "battery",
  "jumper",
  "test-point",
  "other",
] as const;
export type PlacementKind = (typeof PLACEMENT_KINDS)[number];

export const NET_ROLES = [
  "power",
  "ground",
  "clock",
  "reset",
  "select",
  "control",
  "address",
  "data",
  "signal",
  "unknown",
] as const;
export type NetRole = (typeof NET_ROLES)[number];

export const PACKAGE_STYLES = ["DIP", "PLCC", "SOIC", "QFP", "SIP", "TO", "other"] as const;
export type PackageStyle = (typeof PACKAGE_STYLES)[number];

/** Electrical type of a pin. `do-not-connect` is not `no-connect`: the first must be left alone, the second is free. */
export const PIN_TYPES = [
  "input",
  "output",
  "bidirectional",
  "three-state",
  "open-collector",
  "open-emitter",
  "passive",
  "power-in",
  "power-out",
  "no-connect",
  "do-not-connect",
  "unspecified",
] as const;
export type PinType = (typeof PIN_TYPES)[number];

/** What a pin is for. */
export const PIN_ROLES = [
  "supply",
  "ground",
  "clock",
  "reset",
  "select",
  "enable",
  "control",
  "interrupt",
  "address",
  "data",
  "input",
  "output",
  "oscillator",
  "analog",
  "unused",
  "unknown",
] as const;
export type PinRole = (typeof PIN_ROLES)[number];

export const TECHNOLOGIES = [
  "TTL",
  "LS",
  "ALS",
  "S",
  "F",
  "HC",
  "HCT",
  "CMOS-4000",
  "CMOS",
  "NMOS",
  "PMOS",
  "ECL",
  "bipolar",
  "analog",
  "unknown",
] as const;
export type Technology = (typeof TECHNOLOGIES)[number];

/** What a chip holds that cannot be seen from outside. */
export const CONTENTS_KINDS = [
  "none",
  "mask-rom",
  "prom",
  "eprom",
  "eeprom",
  "pal",
  "gate-array",
  "single-chip-processor",
  "unknown",
] as const;
export type ContentsKind = (typeof CONTENTS_KINDS)[number];

export const INTERCHANGE_GRADES = ["same-part", "drop-in", "conditional", "adapter", "not-a-fit"] as const;
export type InterchangeGrade = (typeof INTERCHANGE_GRADES)[number];

export const EVIDENCE_KINDS = [
  "data-sheet",
  "pin-table",
  "electrical",
  "fitted-worked",
  "fitted-failed",
  "told",
] as const;
export type EvidenceKind = (typeof EVIDENCE_KINDS)[number];

/** How a part failed, or what else was wrong. */
export const FAILURES = [
  "dead",
  "outputs-dead",
  "output-stuck-high",
  "output-stuck-low",
  "input-loading",
  "internal-short",
  "open",
  "leaky",
  "out-of-value",
  "contents-lost",
  "intermittent",
  "marginal-timing",
  "cold-joint",
  "broken-trace",
  "bad-socket",
  "dirty-contact",
  "shorted-trace",
  "corrosion",
  "wrong-part",
  "earlier-repair",
  "setting",
  "other",
] as const;
export type Failure = (typeof FAILURES)[number];

export const CURE_ACTIONS = [
  "replaced",
  "reseated",
  "resoldered",
  "trace-repaired",
  "cleaned",
  "adjusted",
  "reprogrammed",
  "removed",
  "undone",
  "other",
] as const;
export type CureAction = (typeof CURE_ACTIONS)[number];

export const PROOF_KINDS = ["checks-repeated", "soak"] as const;
export type ProofKind = (typeof PROOF_KINDS)[number];

export const ROLES = ["member", "reviewer", "steward"] as const;
export type Role = (typeof ROLES)[number];
