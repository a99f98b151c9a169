import {
  mirrored,
  packageOutline,
  readPackageName,
  type Outline,
  type OutlinePin,
  type PinSide,
} from "#lib/core/pinout/index.ts";
import { done, failed, type PackageStyle, type PinRole, type Result } from "#lib/core/shared/index.ts";

export interface DrawnPin {
  number: string;
  name: string;
  role: PinRole;
  activeLow?: boolean;
  /** Electrical type, told in the text beside the drawing. */
  type?: string;
}

export type BoardSide = "component" | "solder";

/** Lengths in drawing units. One pitch is always 20, whatever it measures, so that names of all packages fit alike. */
export const DRAWING = {
  pitch: 20,
  lead: { length: 20, width: 15 },
  /** Between lead and name. */
  gap: 6,
  nameSize: 12,
  numberSize: 9.5,
  /** Characters of a pin's name that are drawn, fewer on packages with many pins; the text has the name whole. */
  nameLength: 12,
  nameLengthOfMany: 8,
  manyPins: 64,
  /** Width of a character of a monospaced face, in parts of its size. */
  character: 0.62,
  /** A body of two rows is at least this wide, for two numbers and the name of the part between them. */
  twoRowBody: 84,
  /** A body with one row is at least this high, for the numbers and two lines of text above them. */
  oneRowBody: 58,
  /** Line on top that says from which side one looks. */
  headline: 26,
  margin: 6,
} as const;

/** Shown in the text size of the page, one unit is this many CSS pixels; and never less than `smallest`. */
export const UNIT_PIXELS = { usual: 1.25, smallest: 0.72 } as const;

export interface PlacedPin {
  number: string;
  edge: PinSide;
  /** Middle of the lead. */
  x: number;
  y: number;
  /** Undefined where the pin table says nothing about this pin. */
  pin: DrawnPin | undefined;
}

export interface PackageLayout {
  width: number;
  height: number;
  side: BoardSide;
  body: { x: number; y: number; width: number; height: number };
  mark: Outline["mark"];
  pins: PlacedPin[];
  /** Pins of the table that the package does not have, an exposed pad for instance. */
  left: DrawnPin[];
}

/** Where everything stands in the drawing, or why there is none. */
export function packageLayout(
  style: PackageStyle,
  name: string,
  pins: readonly DrawnPin[],
  side: BoardSide,
): Result<PackageLayout, string> {
  const outline = packageOutline(style, pinCountOf(name, pins));
  if (!outline.ok) return outline;
  const table = new Map(pins.map((pin) => [pin.number, pin]));
  const left = pins.filter((pin) => !outline.value.pins.some((place) => place.number === pin.number));
  if (left.length > pins.length / 2) return failed("the pins are not numbered 1, 2, 3…");
  const seen = side === "component" ? outline.value : mirrored(outline.value);
  return done({ ...place(seen, table), side, left });
}

/** Pins of the package: what its name says, else the highest number in the table. */
function pinCountOf(name: string, pins: readonly DrawnPin[]): number {
  const said = readPackageName(name)?.pinCount ?? null;
  if (said !== null) return said;
  return Math.max(0, ...pins.map((pin) => (/^\d{1,3}$/.test(pin.number) ? Number(pin.number) : 0)));
}

function place(outline: Outline, table: ReadonlyMap<string, DrawnPin>): Omit<PackageLayout, "side" | "left"> {
  const scale = DRAWING.pitch / outline.pitch;
  const twoRows = !outline.pins.some((pin) => pin.side === "top" || pin.side === "bottom");
  const bodyWidth = twoRows ? Math.max(outline.body.width * scale, DRAWING.twoRowBody) : outline.body.width * scale;
  const oneRow = outline.pins.every((pin) => pin.side === "bottom");
  const bodyHeight = oneRow ? Math.max(outline.body.height * scale, DRAWING.oneRowBody) : outline.body.height * scale;
  const length = nameLength(outline.pinCount);
  const room = (side: PinSide) => roomBeside(outline.pins, side, table, length);
  const needed = room("left") + bodyWidth + room("right") + 2 * DRAWING.margin;
  const body = {
    x: round(DRAWING.margin + room("left") + Math.max(0, MINIMUM_WIDTH - needed) / 2),
    y: round(DRAWING.margin + DRAWING.headline + room("top")),
    width: round(bodyWidth),
    height: round(bodyHeight),
  };
  const stretch = bodyWidth / outline.body.width;
  const rise = bodyHeight / outline.body.height;
  const intoBody = (x: number, y: number) => ({
    x: round(body.x + (x - outline.body.x) * stretch),
    y: round(body.y + (y - outline.body.y) * rise),
  });
  return {
    width: round(Math.max(needed, MINIMUM_WIDTH)),
    height: round(body.y + body.height + room("bottom") + DRAWING.margin),
    body,
    mark: { ...outline.mark, ...intoBody(outline.mark.x, outline.mark.y) },
    pins: outline.pins.map((pin) => ({
      number: pin.number,
      edge: pin.side,
      ...besideBody(pin.side, intoBody(pin.x, pin.y), body),
      pin: table.get(pin.number),
    })),
  };
}

/** Wide enough for the words "solder side, mirrored". */
const MINIMUM_WIDTH = 190;

function besideBody(
  side: PinSide,
  at: { x: number; y: number },
  body: PackageLayout["body"],
): { x: number; y: number } {
  const out = DRAWING.lead.length / 2;
  switch (side) {
    case "left":
      return { x: body.x - out, y: at.y };
    case "right":
      return { x: body.x + body.width + out, y: at.y };
    case "top":
      return { x: at.x, y: body.y - out };
    case "bottom":
      return { x: at.x, y: body.y + body.height + out };
  }
}

/** What leads and names need beside the body: nothing where no pin is. */
function roomBeside(
  pins: readonly OutlinePin[],
  side: PinSide,
  table: ReadonlyMap<string, DrawnPin>,
  length: number,
): number {
  const names = pins
    .filter((pin) => pin.side === side)
    .map((pin) => shortName(table.get(pin.number)?.name ?? "", length).length);
  if (names.length === 0) return DRAWING.margin;
  return DRAWING.lead.length + DRAWING.gap * 2 + textWidth(Math.max(3, ...names), DRAWING.nameSize);
}

export function textWidth(characters: number, size: number): number {
  return characters * size * DRAWING.character;
}

/** The name as far as the drawing has room for it. */
export function shortName(name: string, length: number): string {
  return name.length <= length ? name : `${name.slice(0, length - 1)}…`;
}

export function nameLength(pinCount: number): number {
  return pinCount > DRAWING.manyPins ? DRAWING.nameLengthOfMany : DRAWING.nameLength;
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}
