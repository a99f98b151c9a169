import { useId } from "react";
import { boardLayout, type DrawnConnector, type DrawnPlacement, type PlacedPart } from "./board-drawing-layout.ts";
import styles from "./board-drawing.module.css";

export type { DrawnConnector, DrawnPlacement } from "./board-drawing-layout.ts";

export interface BoardDrawingProps {
  /** Size of the board in millimetres. */
  width: number;
  height: number;
  placements: readonly DrawnPlacement[];
  connectors: readonly DrawnConnector[];
  /** Whose board it is, for those who do not see the drawing. */
  name?: string;
}

/** Id of a placement's row in the table that the drawing is an index to. */
export function placementId(designator: string): string {
  return `place-${designator}`;
}

/** The board as a line drawing: each part is a link to its row in the table of placements. */
export function BoardDrawing({ width, height, placements, connectors, name = "the board" }: BoardDrawingProps) {
  const id = useId();
  const parts = boardLayout(width, height, placements);
  const names = new Map(connectors.map((one) => [one.designator, one.name]));
  const placedNames = new Set(placements.map((one) => one.designator));
  const unplaced = connectors.filter((one) => !placedNames.has(one.designator));
  const marked = placements.filter((one) => one.marked !== undefined);
  const text = textSizes(width);
  const edge = text.headline * 2;
  const box = `${-MARGIN} ${-edge} ${width + 2 * MARGIN} ${height + edge + MARGIN}`;
  return (
    <figure className={styles.figure}>
      <a className={styles.skip} href={`#${id}-after`}>
        Skip the drawing
      </a>
      <div className={styles.frame}>
        <svg className={styles.drawing} viewBox={box} aria-labelledby={`${id}-title`} aria-describedby={`${id}-desc`}>
          <title id={`${id}-title`}>{`Parts of ${name}, component side`}</title>
          <desc id={`${id}-desc`}>
            {`${width} by ${height} mm, ${placements.length} parts; each is a link to its row in the table of placements.`}
          </desc>
          <Hatch id={`${id}-hatch`} />
          <text className={styles.side} x={0} y={-text.headline * 0.7} fontSize={text.headline}>
            component side
          </text>
          <rect className={styles.board} x={0} y={0} width={width} height={height} rx={2} />
          {parts.map((part) => (
            <Part
              key={part.placement.designator}
              part={part}
              more={names.get(part.placement.designator) ?? ""}
              hatch={`url(#${id}-hatch)`}
              textSize={part.placement.kind === "chip" || part.placement.kind === "connector" ? text.large : text.small}
            />
          ))}
          {/* After all parts, so that no neighbour covers a badge. */}
          <g aria-hidden="true">
            {parts.map((part) => (
              <MarkBadge key={part.placement.designator} part={part} size={text.small} />
            ))}
          </g>
        </svg>
      </div>
      <figcaption id={`${id}-after`} className={styles.caption}>
        Drawn from the recorded places, not measured.
        {marked.length > 0 && ` Hatched: ${marked.map(markText).join(", ")}.`}
        {unplaced.length > 0 && ` Place not recorded: ${unplaced.map(connectorText).join(", ")}.`}
      </figcaption>
    </figure>
  );
}

/** Millimetres around the board. */
const MARGIN = 3;

/** Letters in parts of the board's width, so that a large board can be read on the same screen as a small one. */
function textSizes(width: number): { large: number; small: number; headline: number } {
  return { large: width / 52, small: width / 68, headline: width / 45 };
}

function Part({ part, more, hatch, textSize }: { part: PlacedPart; more: string; hatch: string; textSize: number }) {
  const { placement, x, y, width, height } = part;
  const { designator, kind, marked } = placement;
  const middle = { x: x + width / 2, y: y + height / 2 };
  const upright = height > width * 1.3;
  const isLarge = Math.min(width, height) >= textSize * 1.6;
  const below = !isLarge && kind !== "chip" && kind !== "connector";
  const size = below ? textSize : fittingSize(designator, upright ? height : width, upright ? width : height, textSize);
  return (
    <a
      className={styles.part}
      href={`#${placementId(designator)}`}
      data-kind={kind}
      aria-label={partText(placement, more)}
    >
      <title>{partText(placement, more)}</title>
      <Shape part={part} />
      {marked !== undefined && (
        <rect className={styles.marked} x={x} y={y} width={width} height={height} fill={hatch} />
      )}
      <text
        transform={`translate(${middle.x} ${below ? y + height + textSize : middle.y})${upright && !below ? " rotate(-90)" : ""}`}
        y={below ? 0 : size * 0.36}
        textAnchor="middle"
        fontSize={size}
      >
        {designator}
      </text>
    </a>
  );
}

/** The usual size of letters, smaller where the part is smaller; a character is 0.62 of its size wide. */
function fittingSize(text: string, long: number, short: number, usual: number): number {
  return Math.min(usual, (long * 0.92) / (text.length * 0.62), short * 0.85);
}

function Shape({ part: { placement, x, y, width, height } }: { part: PlacedPart }) {
  const box = { x, y, width, height };
  switch (placement.kind) {
    case "chip":
      return <rect {...box} className={styles.chip} rx={0.8} />;
    case "connector":
      return <rect {...box} className={styles.connector} />;
    case "test-point":
      return <circle className={styles.small} cx={x + width / 2} cy={y + height / 2} r={width / 2} />;
    case "transistor":
    case "capacitor":
    case "battery":
      return <rect {...box} className={styles.small} rx={height / 2} />;
    case "resistor":
    case "diode":
    case "resistor-pack":
    case "inductor":
    case "crystal":
    case "switch":
    case "fuse":
    case "relay":
    case "transformer":
    case "jumper":
    case "other":
      return <rect {...box} className={styles.small} rx={0.5} />;
  }
}

function MarkBadge({ part, size }: { part: PlacedPart; size: number }) {
  const { marked } = part.placement;
  if (marked === undefined) return null;
  const text = typeof marked === "number" ? String(marked) : "!";
  const x = part.x + part.width;
  const { y } = part;
  const radius = size * 0.75;
  return (
    <g className={styles.badge}>
      <rect x={x - radius} y={y - radius} width={radius * 2} height={radius * 2} rx={radius * 0.3} />
      <text x={x} y={y + size * 0.34} textAnchor="middle" fontSize={size * 0.95}>
        {text}
      </text>
    </g>
  );
}

function Hatch({ id }: { id: string }) {
  return (
    <defs>
      <pattern id={id} width="2" height="2" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <path className={styles.hatch} d="M0 0V2" />
      </pattern>
    </defs>
  );
}

function partText(placement: DrawnPlacement, more: string): string {
  const told = [placement.label, placement.package ?? "", more, markWords(placement.marked)].filter(
    (one) => one !== "",
  );
  return told.length === 0 ? placement.designator : `${placement.designator}: ${told.join(", ")}`;
}

function markText(placement: DrawnPlacement): string {
  return `${placement.designator} (${markWords(placement.marked)})`;
}

function markWords(marked: DrawnPlacement["marked"]): string {
  if (marked === undefined) return "";
  if (typeof marked === "string") return marked;
  return marked === 1 ? "suspect in 1 case" : `suspect in ${marked} cases`;
}

function connectorText(connector: DrawnConnector): string {
  return `${connector.designator} ${connector.name}`;
}
