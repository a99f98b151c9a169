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
  PackageStyle,
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

// The demo club as plain data. Records name each other by slug, handle or code; `load.ts` turns them into records.

export interface SeedMember {
  handle: string;
  name: string;
  role: Role;
  /** A sentence or two in the member's own voice. */
  about: string;
  /** Years back from the newest case at which the member joined. */
  joinedYearsAgo: number;
}

export interface SeedPin {
  number: string;
  name: string;
  type: PinType;
  role: PinRole;
  activeLow?: boolean;
  /** Volts, for supply pins: 5, 12, -5. */
  supply?: number;
}

export interface SeedPackage {
  /** As people say it: `DIP-20`, `PLCC-32`, `SOIC-16`, `QFP-44`, `TO-220`. */
  name: string;
  style: PackageStyle;
  pins: SeedPin[];
}

export interface SeedChip {
  /** Lower case, as in the address: `74ls244`, `27c256`, `vq4-0061`. */
  slug: string;
  name: string;
  /** One line: "octal buffer, three-state, inverting enables". */
  function: string;
  technology: Technology;
  contents: ContentsKind;
  /** Markdown, a few sentences of bench knowledge. */
  notes?: string;
  packages: SeedPackage[];
}

export interface SeedHouse {
  slug: string;
  name: string;
  notes: string;
}

export interface SeedCode {
  /** As printed on the package. */
  code: string;
  house?: string;
  /** Slug of the chip it is known to be; left out while unknown. */
  chip?: string;
  notes?: string;
  sightings: { board: string; at: string; dateCode?: string; member: string; note?: string }[];
}

export interface SeedClaim {
  /** Codes as printed; the second can stand in for the first. */
  from: string;
  to: string;
  grade: InterchangeGrade;
  bothWays: boolean;
  conditions: string[];
  note?: string;
  evidence: {
    kind: EvidenceKind;
    member: string;
    note: string;
    /** Key of a hand-written case. */
    case?: string;
    /** For a part that was fitted and failed: was it proved good elsewhere? */
    provedElsewhere?: "yes" | "not-known" | "found-bad";
    yearsAgo: number;
  }[];
}

export interface SeedRail {
  name: string;
  /** Volts; a.c. rails are RMS. */
  nominal: number;
  ac?: boolean;
  tolerancePercent?: number;
  regulated: boolean;
  /** Designator of what makes it. */
  source?: string;
  notes?: string;
}

export interface SeedConnector {
  designator: string;
  name: string;
  kind: string;
  pins: { number: string; name: string; net?: string }[];
}

export interface SeedPlacement {
  designator: string;
  kind: PlacementKind;
  /** Slug of a chip record. */
  chip?: string;
  /** Value or type where there is no chip record: `100n`, `10k`, `1N4148`, `16 MHz`. */
  value?: string;
  /** Code printed on the fitted part where it is a house code. */
  code?: string;
  package?: string;
  socketed?: boolean;
  sheet?: string;
  /** Place on the drawing in millimetres from the board's upper left corner, component side. */
  x: number;
  y: number;
  notes?: string;
}

export interface SeedNet {
  name: string;
  role: NetRole;
  /** `U7.14`, `J3.5`. */
  pins: string[];
}

export interface SeedBoard {
  slug: string;
  name: string;
  kind: BoardKind;
  maker: string;
  machine: string;
  year: number;
  /** One or two sentences: what it does in the machine. */
  summary: string;
  /** Markdown: how it is built and how it fails. */
  notes: string;
  /** Size of the drawing in millimetres. */
  width: number;
  height: number;
  hazards: Hazard[];
  /** Highest voltage on the board, volts (peak for a.c.). */
  highestVoltage: number;
  revisions: { name: string; notes: string }[];
  rails: SeedRail[];
  connectors: SeedConnector[];
  placements: SeedPlacement[];
  nets: SeedNet[];
  selfTests: { form: "beeps" | "flashes" | "message"; signal: string; meaning: string; suspects: string[] }[];
  cautions: { at?: string; text: string }[];
  copies: {
    owner: string;
    tag: string;
    serial?: string;
    revision?: string;
    modifications?: string;
    jumpers?: string;
    contents?: string;
    works: boolean | null;
  }[];
}

export interface SeedCheck {
  kind: CheckKind;
  at: string;
  to?: string;
  lead?: Lead;
  when?: string;
  power: PowerState;
  /** As a person writes it; left out where the board and chip records give it. */
  expected?: string;
  measured: string;
  /** Only where the member chose another verdict than the computed one. */
  verdict?: { chosen: Verdict; reason: string };
  what?: Trial;
  outcome?: TrialOutcome;
  note?: string;
}

export interface SeedCause {
  /** Designator, or designator and pin; a net name for a trace. */
  at: string;
  chip?: string;
  failure: Failure;
  description: string;
  /** Numbers of the checks (from 0) that it explains. */
  explains: number[];
  cure?: { action: CureAction; description: string; fittedCode?: string; from?: string };
  proof?: {
    kind: ProofKind;
    minutes?: number;
    note: string;
    /** measured again, by number of the check */ repeats?: { check: number; measured: string }[];
  };
}

export interface SeedCase {
  /** A stable word of its own: other records name the case by it. */
  key: string;
  title: string;
  board: string;
  revision?: string;
  copyTag?: string;
  author: string;
  yearsAgo: number;
  /** Labels of the vocabulary. */
  symptoms: string[];
  /** Own words. */
  symptomText: string;
  reproduced: string;
  outcome: CaseOutcome;
  /** One line that the next member should read first. */
  lesson?: string;
  /** Markdown story; may use `:code[…]`, `:chip[…]`, `:board[slug]`. */
  story?: string;
  asksHelp?: string;
  draft?: boolean;
  checks: SeedCheck[];
  causes: SeedCause[];
  confirmations?: { member: string; helped: boolean; note: string }[];
  comments?: { member: string; body: string; yearsAgo: number }[];
}

export interface SeedSpare {
  member: string;
  direction: "offer" | "want";
  /** A code as printed, or a chip slug, or a board slug for a donor. */
  code?: string;
  chip?: string;
  board?: string;
  quantity: number;
  condition: string;
  note?: string;
}
