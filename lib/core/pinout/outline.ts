import { done, failed, type PackageStyle, type Result } from "../shared/index.ts";

export const PIN_SIDES = ["left", "bottom", "right", "top"] as const;
export type PinSide = (typeof PIN_SIDES)[number];

export interface OutlinePin {
  number: string;
  /** Middle of the pin in millimetres; x to the right, y downwards, from the upper left corner of the outline. */
  x: number;
  y: number;
  side: PinSide;
}

/** A package as it is drawn: lengths in millimetres, pins included in `width` and `height`. */
export interface Outline {
  style: PackageStyle;
  pinCount: number;
  /** From where one looks. From the solder side everything is mirrored. */
  side: "component" | "solder";
  width: number;
  height: number;
  /** Distance of neighbouring pins. */
  pitch: number;
  body: { x: number; y: number; width: number; height: number };
  pins: OutlinePin[];
  /** How the package itself shows where pin 1 is. `at` is the middle of the mark. */
  mark: { kind: "notch" | "bevel" | "dot" | "tab"; x: number; y: number };
}

/** Millimetres. DIP: JEDEC MS-001 and MS-011; PLCC: MS-018, PLCC-32 MO-052; SOIC: MS-012, MS-013 (from memory). */
const SIZES = {
  dip: { pitch: 2.54, narrowRow: 7.62, wideRow: 15.24, extraWideRow: 22.86, bodyInset: 1.3, bodyOver: 1.3 },
  soic: { pitch: 1.27, narrowBody: 3.9, wideBody: 7.5, lead: 1.05, bodyOver: 0.6 },
  plcc: { pitch: 1.27, lead: 0.6, bodyOver: 2.1 },
  qfp: { lead: 1, bodyOver: 1.2 },
  sip: { pitch: 2.54, depth: 3, lead: 1.3, bodyOver: 1.3 },
  to: { pitch: 2.54, height: 9, lead: 3, bodyOver: 2.5 },
} as const;

const PLCC_COUNTS: readonly number[] = [20, 28, 32, 44, 52, 68, 84, 100, 124];

/** Quad flat packages with bumpers carry pin 1 in the middle of a side: JEDEC MO-069 (from memory). */
const BUMPERED_QFP_COUNTS: readonly number[] = [132];

/**
 * The outline of a package seen from the component side. Pins are numbered 1 to `pinCount`, counter-clockwise.
 * Fails with the reason when such a package is not made or is not drawn here.
 */
export function packageOutline(style: PackageStyle, pinCount: number): Result<Outline, string> {
  if (!Number.isInteger(pinCount) || pinCount < 1) return failed("the number of pins must be a whole number from 1");
  switch (style) {
    case "DIP":
      return dip(pinCount);
    case "SOIC":
      return soic(pinCount);
    case "PLCC":
      return plcc(pinCount);
    case "QFP":
      return qfp(pinCount);
    case "SIP":
      return sip(pinCount);
    case "TO":
      return to(pinCount);
    case "other":
      return failed("packages of this style are not drawn");
  }
}

/** The same package seen from the other side of the board: left and right change places, pin numbers stay. */
export function mirrored(outline: Outline): Outline {
  const { width, body, mark } = outline;
  return {
    ...outline,
    side: outline.side === "component" ? "solder" : "component",
    body: { ...body, x: mm(width - body.x - body.width) },
    pins: outline.pins.map((pin) => ({ ...pin, x: mm(width - pin.x), side: MIRRORED_SIDE[pin.side] })),
    mark: { ...mark, x: mm(width - mark.x) },
  };
}

const MIRRORED_SIDE: Readonly<Record<PinSide, PinSide>> = {
  left: "right",
  right: "left",
  top: "top",
  bottom: "bottom",
};

function dip(pinCount: number): Result<Outline, string> {
  if (pinCount % 2 === 1 || pinCount < 4 || pinCount > 64)
    return failed(`a DIP has an even number of pins from 4 to 64, not ${pinCount}`);
  const { pitch, bodyInset, bodyOver } = SIZES.dip;
  const row = pinCount <= 20 ? SIZES.dip.narrowRow : pinCount <= 48 ? SIZES.dip.wideRow : SIZES.dip.extraWideRow;
  const lead = 1;
  return done(
    quad({
      style: "DIP",
      counts: { left: pinCount / 2, bottom: 0, right: pinCount / 2, top: 0 },
      first: 1,
      pitch,
      lead: lead + bodyInset,
      across: row - 2 * bodyInset,
      down: (pinCount / 2 - 1) * pitch + 2 * bodyOver,
      mark: "notch",
    }),
  );
}

function soic(pinCount: number): Result<Outline, string> {
  if (pinCount % 2 === 1 || pinCount < 4 || pinCount > 64)
    return failed(`a SOIC has an even number of pins from 4 to 64, not ${pinCount}`);
  const { pitch, lead, bodyOver } = SIZES.soic;
  return done(
    quad({
      style: "SOIC",
      counts: { left: pinCount / 2, bottom: 0, right: pinCount / 2, top: 0 },
      first: 1,
      pitch,
      lead,
      across: pinCount <= 16 ? SIZES.soic.narrowBody : SIZES.soic.wideBody,
      down: (pinCount / 2 - 1) * pitch + 2 * bodyOver,
      mark: "dot",
    }),
  );
}

function plcc(pinCount: number): Result<Outline, string> {
  if (!PLCC_COUNTS.includes(pinCount)) return failed(`a PLCC has ${PLCC_COUNTS.join(", ")} pins, not ${pinCount}`);
  const { pitch, lead, bodyOver } = SIZES.plcc;
  const across = pinCount === 32 ? 7 : pinCount / 4;
  const down = pinCount === 32 ? 9 : pinCount / 4;
  return done(
    quad({
      style: "PLCC",
      counts: { left: down, bottom: across, right: down, top: across },
      // The walk begins at the upper left; pin 1 is half a side before it, in the middle of the top.
      first: (across + 1) / 2 + 1,
      pitch,
      lead,
      across: (across - 1) * pitch + 2 * bodyOver,
      down: (down - 1) * pitch + 2 * bodyOver,
      mark: "bevel",
    }),
  );
}

function qfp(pinCount: number): Result<Outline, string> {
  if (pinCount % 4 !== 0 || pinCount < 32 || pinCount > 304)
    return failed(`a QFP has a number of pins from 32 to 304 that divides by four, not ${pinCount}`);
  const side = pinCount / 4;
  const pitch = pinCount <= 64 ? 0.8 : pinCount <= 144 ? 0.65 : 0.5;
  const { lead, bodyOver } = SIZES.qfp;
  const bumpered = BUMPERED_QFP_COUNTS.includes(pinCount);
  return done(
    quad({
      style: "QFP",
      counts: { left: side, bottom: side, right: side, top: side },
      first: bumpered ? (side + 1) / 2 + 1 : 1,
      pitch,
      lead,
      across: (side - 1) * pitch + 2 * bodyOver,
      down: (side - 1) * pitch + 2 * bodyOver,
      mark: bumpered ? "bevel" : "dot",
    }),
  );
}

function sip(pinCount: number): Result<Outline, string> {
  if (pinCount < 2 || pinCount > 40) return failed(`a SIP has 2 to 40 pins, not ${pinCount}`);
  const { pitch, depth, lead, bodyOver } = SIZES.sip;
  return done(row("SIP", pinCount, { pitch, lead, height: depth, bodyOver, mark: "dot" }));
}

function to(pinCount: number): Result<Outline, string> {
  if (pinCount < 2 || pinCount > 7) return failed(`a TO package is drawn with 2 to 7 leads in a row, not ${pinCount}`);
  const { pitch, height, lead, bodyOver } = SIZES.to;
  return done(row("TO", pinCount, { pitch, lead, height, bodyOver, mark: "tab" }));
}

interface QuadPlan {
  style: PackageStyle;
  counts: Readonly<Record<PinSide, number>>;
  /** Number of the pin at which the counter-clockwise walk from the upper left corner begins. */
  first: number;
  pitch: number;
  /** How far pins stand out of the body. */
  lead: number;
  /** Size of the body. */
  across: number;
  down: number;
  mark: "notch" | "bevel" | "dot";
}

/** Pins around a body, walked counter-clockwise from the upper left corner: down, right, up, back to the left. */
function quad(plan: QuadPlan): Outline {
  const { counts, pitch, lead, across, down } = plan;
  const pinCount = counts.left + counts.bottom + counts.right + counts.top;
  const leadAbove = counts.top > 0 ? lead : 0;
  const body = { x: lead, y: leadAbove, width: across, height: down };
  const width = across + 2 * lead;
  const height = down + 2 * leadAbove;
  const along = (i: number, count: number, start: number, length: number) =>
    start + length / 2 + (i - (count - 1) / 2) * pitch;
  const place = (side: PinSide, i: number): { x: number; y: number } => {
    switch (side) {
      case "left":
        return { x: lead / 2, y: along(i, counts.left, body.y, down) };
      case "right":
        return { x: width - lead / 2, y: along(counts.right - 1 - i, counts.right, body.y, down) };
      case "bottom":
        return { x: along(i, counts.bottom, body.x, across), y: height - lead / 2 };
      case "top":
        return { x: along(counts.top - 1 - i, counts.top, body.x, across), y: lead / 2 };
    }
  };
  const walk = PIN_SIDES.flatMap((side) =>
    Array.from({ length: counts[side] }, (_, i) => ({ side, ...place(side, i) })),
  );
  const pins = walk
    .map(({ side, x, y }, i) => ({ number: ((plan.first - 1 + i) % pinCount) + 1, x: mm(x), y: mm(y), side }))
    .sort((a, b) => a.number - b.number)
    .map((pin) => ({ ...pin, number: String(pin.number) }));
  const { style } = plan;
  return {
    style,
    pinCount,
    side: "component",
    width: mm(width),
    height: mm(height),
    pitch,
    body: roundedBody(body),
    pins,
    mark: markOf(plan.mark, body, pitch),
  };
}

function markOf(kind: "notch" | "bevel" | "dot", body: Outline["body"], pitch: number): Outline["mark"] {
  switch (kind) {
    case "notch":
      return { kind, x: mm(body.x + body.width / 2), y: mm(body.y) };
    case "bevel":
      return { kind, x: mm(body.x), y: mm(body.y) };
    case "dot":
      return { kind, x: mm(body.x + pitch), y: mm(body.y + pitch * 0.9) };
  }
}

/** Pins in one row below the body, pin 1 at the left, the marked face towards the reader. */
function row(
  style: PackageStyle,
  pinCount: number,
  plan: { pitch: number; lead: number; height: number; bodyOver: number; mark: "dot" | "tab" },
): Outline {
  const { pitch, lead, height, bodyOver } = plan;
  const width = (pinCount - 1) * pitch + 2 * bodyOver;
  const body = { x: 0, y: 0, width, height };
  const pins = Array.from({ length: pinCount }, (_, i) => ({
    number: String(i + 1),
    x: mm(bodyOver + i * pitch),
    y: mm(height + lead / 2),
    side: "bottom" as const,
  }));
  const mark = plan.mark === "dot" ? { x: mm(bodyOver), y: mm(height / 2) } : { x: mm(width / 2), y: 0 };
  return {
    style,
    pinCount,
    side: "component",
    width: mm(width),
    height: mm(height + lead),
    pitch,
    body: roundedBody(body),
    pins,
    mark: { kind: plan.mark, ...mark },
  };
}

function roundedBody(body: Outline["body"]): Outline["body"] {
  return { x: mm(body.x), y: mm(body.y), width: mm(body.width), height: mm(body.height) };
}

/** Rounds to a hundred-thousandth of a millimetre, so that mirroring twice gives the same numbers again. */
function mm(value: number): number {
  return Math.round(value * 1e5) / 1e5;
}
