import { useId, type ReactNode } from "react";
import { comparePinNumbers } from "#lib/core/pinout/index.ts";
import { PIN_ROLES, type PackageStyle, type PinRole } from "#lib/core/shared/index.ts";
import {
  DRAWING,
  nameLength,
  packageLayout,
  shortName,
  textWidth,
  UNIT_PIXELS,
  type BoardSide,
  type DrawnPin,
  type PackageLayout,
  type PlacedPin,
} from "./package-drawing-layout.ts";
import styles from "./package-drawing.module.css";

export type { BoardSide, DrawnPin } from "./package-drawing-layout.ts";

export interface PackageDrawingProps {
  style: PackageStyle;
  /** As people say it: `DIP-20`. */
  name: string;
  pins: readonly DrawnPin[];
  /** Written on the body, as on the part. */
  chip?: string;
  side?: BoardSide;
  /** Numbers of the pins to point at. */
  highlight?: readonly string[];
}

/** A letter on each lead tells the role in black and white; the tint only helps. */
const ROLE_LETTERS: Readonly<Record<PinRole, string>> = {
  supply: "V",
  ground: "G",
  clock: "C",
  reset: "R",
  select: "S",
  enable: "E",
  control: "K",
  interrupt: "I",
  address: "A",
  data: "D",
  input: "i",
  output: "o",
  oscillator: "X",
  analog: "~",
  unused: "–",
  unknown: "",
};

/** A package with its pins, seen from one side of the board; the pin table follows as text. */
export function PackageDrawing({ style, name, pins, chip, side = "component", highlight = [] }: PackageDrawingProps) {
  const layout = packageLayout(style, name, pins, side);
  const marked = new Set(highlight);
  if (!layout.ok)
    return (
      <figure className={styles.figure}>
        <p className={styles.none}>
          No drawing of {name}: {layout.problem}.
        </p>
        <PinList pins={pins} marked={marked} />
      </figure>
    );
  return (
    <figure className={styles.figure}>
      <Picture layout={layout.value} name={name} chip={chip ?? ""} marked={marked} />
      <Legend roles={pins.map((pin) => pin.role)} />
      {layout.value.left.length > 0 && (
        <p className={styles.none}>
          Not drawn: {layout.value.left.map((pin) => `${pin.number} ${pin.name}`).join(", ")}.
        </p>
      )}
      <details className={styles.text}>
        <summary>Pins as text</summary>
        <PinList pins={pins} marked={marked} />
      </details>
    </figure>
  );
}

interface PictureProps {
  layout: PackageLayout;
  name: string;
  chip: string;
  marked: ReadonlySet<string>;
}

function Picture({ layout, name, chip, marked }: PictureProps) {
  const id = useId();
  const { width, height, body, pins, side } = layout;
  const size = { maxWidth: Math.round(width * UNIT_PIXELS.usual), minWidth: Math.round(width * UNIT_PIXELS.smallest) };
  const title = `${chip === "" ? name : `${chip} in ${name}`}, ${side} side`;
  return (
    <Frame scrolls={size.minWidth > SMALLEST_SCREEN} label={title}>
      <svg
        className={styles.drawing}
        data-side={side}
        viewBox={`0 0 ${width} ${height}`}
        style={size}
        role="img"
        aria-labelledby={`${id}-title`}
        aria-describedby={`${id}-desc`}
      >
        <title id={`${id}-title`}>{title}</title>
        <desc id={`${id}-desc`}>{description(layout, marked)}</desc>
        <Hatch id={`${id}-hatch`} />
        <Headline side={side} at={body.x + body.width / 2} width={width} />
        <Body layout={layout} name={name} chip={chip} />
        {pins.map((pin) => (
          <Pin
            key={pin.number}
            placed={pin}
            side={side}
            marked={marked.has(pin.number)}
            hatch={`url(#${id}-hatch)`}
            length={nameLength(pins.length)}
          />
        ))}
      </svg>
    </Frame>
  );
}

/** CSS pixels that a drawing may need before its frame has to scroll on a narrow phone. */
const SMALLEST_SCREEN = 320;

/** A frame that scrolls must be reachable by keyboard; one that does not is no stop on the way. */
function Frame({ scrolls, label, children }: { scrolls: boolean; label: string; children: ReactNode }) {
  if (!scrolls) return <div className={styles.frame}>{children}</div>;
  return (
    // oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- scrolled by the arrow keys
    <section className={styles.frame} aria-label={label} tabIndex={0}>
      {children}
    </section>
  );
}

function description(layout: PackageLayout, marked: ReadonlySet<string>): string {
  const first = layout.pins.find((pin) => pin.number === "1");
  const where = first === undefined ? "" : ` Pin 1 is at the ${pinOnePlace(first, layout)}.`;
  const seen = layout.side === "component" ? "Seen from the component side." : "Seen from the solder side: mirrored.";
  const pointed = marked.size === 0 ? "" : ` Marked: ${[...marked].map((number) => `pin ${number}`).join(", ")}.`;
  return `${seen} ${layout.pins.length} pins.${where}${pointed} The pins follow as text.`;
}

function pinOnePlace(pin: PlacedPin, { body }: PackageLayout): string {
  const across = pin.x < body.x + body.width * 0.4 ? "left" : pin.x > body.x + body.width * 0.6 ? "right" : "middle";
  const down = pin.y < body.y + body.height / 2 ? "upper" : "lower";
  return `${down} ${across}`;
}

function Hatch({ id }: { id: string }) {
  return (
    <defs>
      <pattern id={id} width="4" height="4" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <path className={styles.hatch} d="M0 0V4" />
      </pattern>
    </defs>
  );
}

function Headline({ side, at, width }: { side: BoardSide; at: number; width: number }) {
  const words = side === "component" ? "component side" : "solder side, mirrored";
  const half = textWidth(words.length, DRAWING.nameSize) / 2 + 8;
  const middle = Math.min(Math.max(at, half + 1), width - half - 1);
  return (
    <g className={side === "component" ? styles.fromAbove : styles.fromBelow}>
      <rect x={middle - half} y={DRAWING.margin} width={half * 2} height={20} rx={side === "component" ? 3 : 10} />
      <text x={middle} y={DRAWING.margin + 14.5} textAnchor="middle" fontSize={DRAWING.nameSize}>
        {words}
      </text>
    </g>
  );
}

function Body({ layout, name, chip }: { layout: PackageLayout; name: string; chip: string }) {
  const { body, side } = layout;
  const upright = body.height > body.width * 1.3;
  const length = (upright ? body.height : body.width) - 2 * NUMBER_ROOM;
  const oneRow = layout.pins.every((pin) => pin.edge === "bottom");
  const middle = { x: body.x + body.width / 2, y: body.y + body.height / 2 - (oneRow ? 6 : 0) };
  const main = chip === "" ? name : chip;
  const size = Math.min(15, length / (main.length * DRAWING.character));
  return (
    <g>
      <path className={side === "component" ? styles.body : styles.bodyBelow} d={bodyPath(layout)} />
      <Mark layout={layout} />
      <g transform={`translate(${middle.x} ${middle.y})${upright ? " rotate(-90)" : ""}`}>
        <text className={styles.main} y={chip === "" ? size * 0.35 : -1} textAnchor="middle" fontSize={size}>
          {main}
        </text>
        {chip !== "" && (
          <text className={styles.small} y={11} textAnchor="middle" fontSize={DRAWING.numberSize}>
            {name}
          </text>
        )}
      </g>
    </g>
  );
}
const NUMBER_ROOM = 24;

/** A rectangle; with a bevelled corner where the package has one. */
function bodyPath({ body, mark, side }: PackageLayout): string {
  const { x, y, width, height } = body;
  if (mark.kind !== "bevel") return `M${x} ${y}h${width}v${height}h${-width}z`;
  const cut = 14;
  return side === "component"
    ? `M${x + cut} ${y}h${width - cut}v${height}h${-width}v${cut - height}z`
    : `M${x} ${y}h${width - cut}l${cut} ${cut}v${height - cut}h${-width}z`;
}

function Mark({ layout: { mark, body } }: { layout: PackageLayout }) {
  switch (mark.kind) {
    case "notch":
      return <path className={styles.mark} d={`M${mark.x - 9} ${mark.y}a9 9 0 0 0 18 0`} />;
    case "tab":
      return <path className={styles.mark} d={`M${body.x} ${body.y + 14}h${body.width}`} />;
    // The bevel is part of the body, and the disc behind the number of pin 1 is the dot.
    case "bevel":
    case "dot":
      return null;
  }
}

const LETTER_CLASS: Readonly<Partial<Record<PinRole, string | undefined>>> = {
  supply: styles.onInk,
  ground: styles.overHatch,
};

interface PinProps {
  placed: PlacedPin;
  side: BoardSide;
  marked: boolean;
  /** Fill of ground pins. */
  hatch: string;
  length: number;
}

function Pin({ placed, side, marked, hatch, length }: PinProps) {
  const { number, edge, x, y, pin } = placed;
  const role = pin?.role ?? "unknown";
  const upright = edge === "top" || edge === "bottom";
  const { lead } = DRAWING;
  const across = upright ? lead.width : lead.length;
  const down = upright ? lead.length : lead.width;
  // Seen from below, a lead is a solder joint: round, but for pin 1, as pads are laid out.
  const corner = side === "solder" && number !== "1" ? 7 : 1.5;
  const box = { x: x - across / 2, y: y - down / 2, width: across, height: down, rx: corner };
  return (
    <g data-pin={number} data-edge={edge} data-x={x} className={marked ? styles.marked : undefined}>
      <title>{pin === undefined ? `pin ${number}: not in the pin table` : `pin ${number}: ${pinText(pin)}`}</title>
      <rect {...box} className={pin === undefined ? styles.untold : `${styles.lead} ${styles[role] ?? ""}`} />
      {role === "ground" && <rect {...box} fill={hatch} />}
      <text
        className={`${styles.letter} ${LETTER_CLASS[role] ?? ""}`}
        x={x}
        y={y + 3.6}
        textAnchor="middle"
        fontSize={10}
      >
        {ROLE_LETTERS[role]}
      </text>
      <NumberText placed={placed} />
      {pin !== undefined && <NameText placed={placed} pin={pin} marked={marked} length={length} />}
    </g>
  );
}

function NumberText({ placed }: { placed: PlacedPin }) {
  const { number } = placed;
  const { x, y, anchor } = numberPlace(placed);
  const isFirst = number === "1";
  const middle = anchor === "middle" ? x : anchor === "start" ? x + 3 : x - 3;
  return (
    <>
      {isFirst && <circle className={styles.pinOneDisc} cx={middle} cy={y - 3.4} r={6.5} />}
      <text
        className={isFirst ? styles.pinOne : styles.number}
        x={x}
        y={y}
        textAnchor={anchor}
        fontSize={DRAWING.numberSize}
      >
        {number}
      </text>
    </>
  );
}

/** Inside the body, next to the lead. */
function numberPlace({ edge, x, y }: PlacedPin): { x: number; y: number; anchor: "start" | "middle" | "end" } {
  const inward = DRAWING.lead.length / 2 + 5;
  switch (edge) {
    case "left":
      return { x: x + inward, y: y + 3.4, anchor: "start" };
    case "right":
      return { x: x - inward, y: y + 3.4, anchor: "end" };
    case "top":
      return { x, y: y + inward + 7, anchor: "middle" };
    case "bottom":
      return { x, y: y - inward, anchor: "middle" };
  }
}

interface NameTextProps {
  placed: PlacedPin;
  pin: DrawnPin;
  marked: boolean;
  /** Characters that are drawn. */
  length: number;
}

function NameText({ placed: { edge, x, y }, pin, marked, length }: NameTextProps) {
  const outward = DRAWING.lead.length / 2 + DRAWING.gap;
  const turned = edge === "top" || edge === "bottom";
  const away = edge === "left" || edge === "bottom" ? -outward : outward;
  const middle = DRAWING.nameSize * 0.35;
  const name = shortName(pin.name, length);
  const width = textWidth(Math.max(name.length, 1), DRAWING.nameSize) + 6;
  return (
    <g transform={`translate(${x} ${y})${turned ? " rotate(-90)" : ""}`}>
      {marked && (
        <rect
          className={styles.pointer}
          x={away < 0 ? away - width + 3 : away - 3}
          y={-8.5}
          width={width}
          height={17}
          rx={3}
        />
      )}
      <text
        className={styles.name}
        x={away}
        y={middle}
        textAnchor={away < 0 ? "end" : "start"}
        fontSize={DRAWING.nameSize}
        textDecoration={pin.activeLow === true ? "overline" : undefined}
      >
        {name}
      </text>
    </g>
  );
}

function Legend({ roles }: { roles: readonly PinRole[] }) {
  const used = PIN_ROLES.filter((role) => role !== "unknown" && roles.includes(role));
  return (
    <ul className={styles.legend} aria-label="Letters on the pins">
      {used.map((role) => (
        <li key={role}>
          <span className={`${styles.key} ${styles[`${role}Key`] ?? ""}`}>{ROLE_LETTERS[role]}</span> {role}
        </li>
      ))}
    </ul>
  );
}

function PinList({ pins, marked }: { pins: readonly DrawnPin[]; marked: ReadonlySet<string> }) {
  const sorted = pins.toSorted((a, b) => comparePinNumbers(a.number, b.number));
  return (
    <ul className={styles.list}>
      {sorted.map((pin) => (
        <li key={pin.number}>
          <b>{pin.number}</b> {pinText(pin)}
          {marked.has(pin.number) && " (marked)"}
        </li>
      ))}
    </ul>
  );
}

function pinText(pin: DrawnPin): string {
  const told = [pin.role === "unknown" ? "" : pin.role, pin.type ?? "", pin.activeLow === true ? "active low" : ""];
  const name = pin.name === "" ? "no name" : pin.name;
  return [name, ...told.filter((one) => one !== "")].join(", ");
}
