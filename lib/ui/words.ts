import type {
  BoardKind,
  CaseOutcome,
  CheckKind,
  ContentsKind,
  CureAction,
  EvidenceKind,
  Failure,
  Hazard,
  InterchangeGrade,
  Lead,
  NetRole,
  PinRole,
  PinType,
  PlacementKind,
  PowerState,
  ProofKind,
  Role,
  Technology,
  Trial,
  TrialOutcome,
  Verdict,
} from "#lib/core/shared/index.ts";

// The closed sets of the trade as the pages say them.

export const VERDICT_WORDS: Record<Verdict, string> = {
  "in-spec": "in spec",
  "out-of-spec": "out of spec",
  inconclusive: "inconclusive",
  noted: "noted",
  "not-taken": "not taken",
};

export const OUTCOME_WORDS: Record<CaseOutcome, string> = {
  open: "open",
  waiting: "waiting",
  cured: "cured",
  "cured-cause-unknown": "cured, cause unknown",
  "works-not-proved": "works, not proved",
  "no-fault-found": "no fault found",
  "given-up": "given up",
};

export const CHECK_KIND_WORDS: Record<CheckKind, string> = {
  visual: "look",
  "self-test": "self-test",
  continuity: "continuity",
  resistance: "resistance",
  diode: "diode test",
  "dc-voltage": "d.c. voltage",
  "ac-voltage": "a.c. voltage",
  current: "current",
  ripple: "ripple",
  frequency: "frequency",
  level: "level",
  activity: "activity",
  capacitance: "capacitance",
  esr: "ESR",
  temperature: "temperature",
  waveform: "waveform",
  contents: "contents",
  "node-signature": "node signature",
  trial: "trial",
};

export const TRIAL_WORDS: Record<Trial, string> = {
  swap: "swap",
  reseat: "reseat",
  "piggy-back": "piggy-back",
  "lift-pin": "lift the pin",
  cool: "cool",
  heat: "heat",
  press: "press",
  clean: "clean",
};

export const TRIAL_OUTCOME_WORDS: Record<TrialOutcome, string> = {
  changed: "changed",
  "no-change": "no change",
  cured: "cured",
};

export const POWER_WORDS: Record<PowerState, string> = { off: "power off, unplugged", on: "power on" };

export const LEAD_WORDS: Record<Lead, string> = { red: "red lead here", black: "black lead here" };

export const BOARD_KIND_WORDS: Record<BoardKind, string> = {
  "home-computer": "home computer",
  terminal: "terminal",
  "synthesizer-voice": "synthesizer voice board",
  arcade: "arcade board",
  "pinball-driver": "pinball driver board",
  "bench-instrument": "bench instrument",
  other: "other board",
};

export const HAZARD_WORDS: Record<Hazard, string> = {
  mains: "mains voltage",
  "picture-tube": "picture tube",
  "high-voltage": "high voltage",
  "stored-charge": "stored charge",
  "hot-parts": "hot parts",
  battery: "battery",
  "lithium-cell": "lithium cell",
  ultraviolet: "ultraviolet light",
};

export const PLACEMENT_KIND_WORDS: Record<PlacementKind, string> = {
  chip: "chip",
  transistor: "transistor",
  diode: "diode",
  resistor: "resistor",
  "resistor-pack": "resistor pack",
  capacitor: "capacitor",
  inductor: "inductor",
  crystal: "crystal",
  connector: "connector",
  switch: "switch",
  fuse: "fuse",
  relay: "relay",
  transformer: "transformer",
  battery: "battery",
  jumper: "jumper",
  "test-point": "test point",
  other: "other part",
};

export const NET_ROLE_WORDS: Record<NetRole, string> = {
  power: "supply",
  ground: "ground",
  clock: "clock",
  reset: "reset",
  select: "select",
  control: "control",
  address: "address",
  data: "data",
  signal: "signal",
  unknown: "not known",
};

export const PIN_TYPE_WORDS: Record<PinType, string> = {
  input: "input",
  output: "output",
  bidirectional: "both ways",
  "three-state": "three-state",
  "open-collector": "open collector",
  "open-emitter": "open emitter",
  passive: "passive",
  "power-in": "supply in",
  "power-out": "supply out",
  "no-connect": "not connected",
  "do-not-connect": "do not connect",
  unspecified: "not told",
};

export const PIN_ROLE_WORDS: Record<PinRole, string> = {
  supply: "supply",
  ground: "ground",
  clock: "clock",
  reset: "reset",
  select: "select",
  enable: "enable",
  control: "control",
  interrupt: "interrupt",
  address: "address",
  data: "data",
  input: "input",
  output: "output",
  oscillator: "oscillator",
  analog: "analog",
  unused: "unused",
  unknown: "not known",
};

export const TECHNOLOGY_WORDS: Record<Technology, string> = {
  TTL: "TTL",
  LS: "LS TTL",
  ALS: "ALS TTL",
  S: "S TTL",
  F: "F TTL",
  HC: "HC CMOS",
  HCT: "HCT CMOS",
  "CMOS-4000": "4000 CMOS",
  CMOS: "CMOS",
  NMOS: "NMOS",
  PMOS: "PMOS",
  ECL: "ECL",
  bipolar: "bipolar",
  analog: "analog",
  unknown: "not known",
};

export const CONTENTS_WORDS: Record<ContentsKind, string> = {
  none: "no contents",
  "mask-rom": "mask ROM",
  prom: "PROM",
  eprom: "EPROM",
  eeprom: "EEPROM",
  pal: "PAL",
  "gate-array": "gate array",
  "single-chip-processor": "single-chip processor",
  unknown: "contents not known",
};

export const GRADE_WORDS: Record<InterchangeGrade, string> = {
  "same-part": "same part",
  "drop-in": "drop-in",
  conditional: "fits under conditions",
  adapter: "fits on an adapter",
  "not-a-fit": "not a fit",
};

export const EVIDENCE_WORDS: Record<EvidenceKind, string> = {
  "data-sheet": "data sheet",
  "pin-table": "pin table",
  electrical: "readings",
  "fitted-worked": "fitted, worked",
  "fitted-failed": "fitted, failed",
  told: "told, not tried",
};

export const FAILURE_WORDS: Record<Failure, string> = {
  dead: "dead",
  "outputs-dead": "outputs dead",
  "output-stuck-high": "output stuck high",
  "output-stuck-low": "output stuck low",
  "input-loading": "input loads the line",
  "internal-short": "short inside",
  open: "open",
  leaky: "leaky",
  "out-of-value": "out of value",
  "contents-lost": "contents lost",
  intermittent: "intermittent",
  "marginal-timing": "marginal timing",
  "cold-joint": "cold joint",
  "broken-trace": "broken trace",
  "bad-socket": "bad socket",
  "dirty-contact": "dirty contact",
  "shorted-trace": "shorted trace",
  corrosion: "corrosion",
  "wrong-part": "wrong part fitted",
  "earlier-repair": "earlier repair",
  setting: "setting",
  other: "other",
};

export const CURE_WORDS: Record<CureAction, string> = {
  replaced: "replaced",
  reseated: "reseated",
  resoldered: "resoldered",
  "trace-repaired": "trace repaired",
  cleaned: "cleaned",
  adjusted: "adjusted",
  reprogrammed: "reprogrammed",
  removed: "removed",
  undone: "undone",
  other: "other",
};

export const PROOF_WORDS: Record<ProofKind, string> = {
  "checks-repeated": "failed checks repeated",
  soak: "soak test",
};

export const ROLE_WORDS: Record<Role, string> = { member: "member", reviewer: "reviewer", steward: "steward" };
