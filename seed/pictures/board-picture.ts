import { footprint } from "#seed/notation/placing.ts";
import type { SeedBoard, SeedPlacement } from "#seed/shapes.ts";
import { chance, chosen } from "./chance.ts";
import { dip, dipLeg, metalCan, quad, soic, tabbed, type ChipLook } from "./chips.ts";
import { edgeFingers, header, lockHeader, screwTerminal, socketShell } from "./connectors.ts";
import * as discretes from "./discretes.ts";
import { box, disc, mm, path, placedAt, print } from "./svg.ts";

/** Colours of a bare board: the mask, the copper under it, the printed letters. */
interface BoardColours {
  mask: string;
  copper: string;
  silk: string;
  table: string;
}

const GREEN: BoardColours = { mask: "#1f5a3c", copper: "#2f7550", silk: "#dfe8dc", table: "#cfc6b4" };
const COLOURS: readonly [BoardColours, ...BoardColours[]] = [
  GREEN,
  { mask: "#2c5b34", copper: "#437a45", silk: "#e6ead9", table: "#c9c7c1" },
  { mask: "#7d6a33", copper: "#9a8646", silk: "#f2ead2", table: "#b9bfc2" },
  { mask: "#234f74", copper: "#34699a", silk: "#e2e8ee", table: "#d3c9b8" },
];

/** How the drawing is made; common practice of such boards, by eye. */
const DRAWING = {
  /** Millimetres of table around the board. */
  margin: 9,
  /** A signal trace, millimetres. */
  trace: 0.55,
  /** A supply trace, millimetres. */
  wideTrace: 1.5,
  /** Parts of one supply net that are joined; more would only hide the board. */
  supplyJoins: 14,
  /** Parts stand up to this many degrees askew: hands put them in. */
  askew: 0.5,
} as const;

/**
 * A board drawn by hand as it would lie on the bench: an SVG with one unit a millimetre, the same for the same record.
 * Chips carry their markings; no maker's sign is drawn.
 */
export function boardPicture(board: SeedBoard): string {
  const colours = coloursOf(board);
  const { margin } = DRAWING;
  const [width, height] = [board.width + 2 * margin, board.height + 2 * margin];
  const inner = [
    ground(board, colours),
    traces(board, colours),
    ...board.placements.map((part) => shadow(part)),
    ...board.placements.map((part) => drawn(part, board)),
    ...board.placements.map((part) => silkscreen(part, board, colours)),
    title(board, colours),
  ].join("");
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${mm(width)} ${mm(height)}" width="${Math.round(width * 5)}" height="${Math.round(height * 5)}" font-family="'DejaVu Sans', Arial, sans-serif" text-anchor="middle"><defs>${DEFINITIONS}</defs><rect width="100%" height="100%" fill="${colours.table}"/><rect width="100%" height="100%" fill="url(#light)"/>${placedAt(margin, margin, 0, inner)}</svg>\n`;
}

const DEFINITIONS =
  `<linearGradient id="metal" x1="0" y1="0" x2="0" y2="1"><stop offset="0" stop-color="#d9dcdb"/><stop offset=".5" stop-color="#aeb3b3"/><stop offset="1" stop-color="#868b8c"/></linearGradient>` +
  `<linearGradient id="gold" x1="0" y1="0" x2="0" y2="1"><stop offset="0" stop-color="#e6c766"/><stop offset="1" stop-color="#b78f35"/></linearGradient>` +
  `<radialGradient id="can" cx=".35" cy=".3" r=".9"><stop offset="0" stop-color="#eef0ef"/><stop offset="1" stop-color="#969c9d"/></radialGradient>` +
  `<radialGradient id="light" cx=".3" cy=".2" r="1.1"><stop offset="0" stop-color="#ffffff" stop-opacity=".35"/><stop offset="1" stop-color="#20180c" stop-opacity=".3"/></radialGradient>`;

function coloursOf(board: SeedBoard): BoardColours {
  switch (board.kind) {
    case "synthesizer-voice":
      return COLOURS[1] ?? GREEN;
    case "pinball-driver":
      return COLOURS[2] ?? GREEN;
    case "bench-instrument":
      return COLOURS[3] ?? GREEN;
    case "home-computer":
    case "terminal":
    case "arcade":
    case "other":
      return chosen(COLOURS, board.slug);
  }
}

/** The bare board: its shadow on the table, mask, edge, ground plane, mounting holes and a coat of light. */
function ground(board: SeedBoard, { mask, copper }: BoardColours): string {
  const { width, height } = board;
  const holes = [
    [5, 5],
    [width - 5, 5],
    [5, height - 5],
    [width - 5, height - 5],
  ] as const;
  const free = holes.filter(([x, y]) => !board.placements.some((part) => covers(part, x, y)));
  const mountings = free.map(([x, y]) => disc(x, y, 3.4, { fill: "#c3b27a" }) + disc(x, y, 1.7, { fill: "#3a352c" }));
  return (
    box(1.6, 2.2, width, height, { fill: "#000000", opacity: 0.35, round: 1.5 }) +
    box(0, 0, width, height, { fill: mask, round: 1.5 }) +
    box(1.6, 1.6, width - 3.2, height - 3.2, { stroke: copper, strokeWidth: 1.6, opacity: 0.8, round: 1 }) +
    box(0, 0, width, height, { stroke: "#cdbf95", strokeWidth: 0.5, round: 1.5 }) +
    mountings.join("") +
    box(0, 0, width, height, { fill: "url(#light)", opacity: 0.5, round: 1.5 })
  );
}

/** Whether a screw at this place would go through the part. */
function covers(part: SeedPlacement, x: number, y: number): boolean {
  const { width, height } = footprint(part);
  return Math.abs(part.x - x) < width / 2 + 3.5 && Math.abs(part.y - y) < height / 2 + 3.5;
}

type Point = { x: number; y: number };

/** Copper under the mask: neighbours of each net joined by lines of right and half right angles. */
function traces(board: SeedBoard, { copper }: BoardColours): string {
  const parts = new Map(board.placements.map((part) => [part.designator, part]));
  return board.nets
    .map((net) => {
      const points = net.pins.flatMap((pin) => legPlace(parts, pin) ?? []).toSorted((a, b) => a.x - b.x || a.y - b.y);
      const wide = net.role === "power" || net.role === "ground";
      const joined = wide ? points.slice(0, DRAWING.supplyJoins) : points;
      const lines = joined.slice(1).flatMap((to, index) => {
        const from = joined[index];
        return from === undefined ? [] : [route(from, to, chance(board.slug, net.name, String(index)) > 0.5)];
      });
      const strokeWidth = wide ? DRAWING.wideTrace : DRAWING.trace;
      const vias = wide
        ? ""
        : joined
            .slice(1)
            .map(({ x, y }) => disc(x, y + 2.1, 0.55, { fill: copper }))
            .join("");
      return path(lines.join(""), { stroke: copper, strokeWidth, opacity: wide ? 0.6 : 0.9 }) + vias;
    })
    .join("");
}

function legPlace(parts: ReadonlyMap<string, SeedPlacement>, pin: string): Point | undefined {
  const [designator = "", leg = ""] = pin.split(".");
  const part = parts.get(designator);
  if (part === undefined) return undefined;
  const legs = legsOf(part);
  const size = footprint(part);
  if (part.package?.startsWith("DIP-") === true && legs !== null && Number(leg) >= 1) {
    const at = dipLeg(legs, Number(leg));
    return { x: part.x + at.x, y: part.y + at.y };
  }
  const spread = chance(pin, "leg") - 0.5;
  return { x: part.x + spread * size.width * 0.8, y: part.y };
}

/** Along, half right over the corner, and down; or the other way round. */
function route(from: Point, to: Point, alongFirst: boolean): string {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const cut = Math.min(Math.abs(dx), Math.abs(dy), 2.5);
  const [sx, sy] = [Math.sign(dx) * cut, Math.sign(dy) * cut];
  const bend = alongFirst
    ? `L${mm(to.x - sx)} ${mm(from.y)}L${mm(to.x)} ${mm(from.y + sy)}`
    : `L${mm(from.x)} ${mm(to.y - sy)}L${mm(from.x + sx)} ${mm(to.y)}`;
  return `M${mm(from.x)} ${mm(from.y)}${bend}L${mm(to.x)} ${mm(to.y)}`;
}

function legsOf(part: SeedPlacement): number | null {
  const count = /-(\d+)$/.exec(part.package ?? "")?.[1];
  return count === undefined ? null : Number(count);
}

function shadow(part: SeedPlacement): string {
  const flat = part.kind === "test-point" || part.package?.startsWith("edge-") === true;
  if (flat || part.package?.startsWith("radial-") === true) return "";
  const { width, height } = footprint(part);
  return box(part.x - width / 2 + 0.9, part.y - height / 2 + 1.1, width, height, {
    fill: "#000000",
    opacity: 0.22,
    round: 1,
  });
}

/** The part itself, a little askew. */
function drawn(part: SeedPlacement, board: SeedBoard): string {
  const fixed = part.kind === "connector" || part.kind === "test-point";
  const turn = fixed ? 0 : (chance(board.slug, part.designator, "turn") - 0.5) * 2 * DRAWING.askew;
  return placedAt(part.x, part.y, turn, portrait(part, board));
}

function portrait(part: SeedPlacement, board: SeedBoard): string {
  const size = footprint(part);
  const value = part.value ?? "";
  switch (part.kind) {
    case "chip":
      return chipPortrait(part, board);
    case "transistor":
      if (part.package === "TO-3") return metalCan(lookOf(part, board), size);
      return part.package === "TO-220" ? tabbed(lookOf(part, board), 3) : discretes.smallTransistor(part.designator);
    case "resistor":
      return value.includes("trimmer") ? discretes.trimmer() : discretes.resistor(value);
    case "resistor-pack":
      return part.package?.startsWith("DIP-") === true
        ? chipPortrait(part, board)
        : discretes.resistorPack(value, size.width);
    case "capacitor":
      return part.package?.startsWith("SIP-") === true
        ? discretes.resistorPack(value, size.width)
        : discretes.capacitor(value, part.designator, size.width);
    case "diode":
      return value.includes("bridge") ? discretes.bridge(value, size) : discretes.diode(value);
    case "crystal":
      return part.package === "oven" ? discretes.plainBox(value, size.width, size.height) : discretes.crystal(value);
    case "fuse":
      return discretes.fuse(value, size.width);
    case "battery":
      return discretes.battery(value);
    case "switch":
      return value.includes("DIP") ? discretes.dipSwitch(8) : discretes.plainBox(value, size.width, size.height);
    case "test-point":
      return discretes.testPoint();
    case "jumper":
      return discretes.jumper();
    case "connector":
      return connectorPortrait(part, board);
    case "inductor":
    case "relay":
    case "transformer":
    case "other":
      return discretes.plainBox(value, size.width, size.height);
  }
}

function lookOf(part: SeedPlacement, board: SeedBoard): ChipLook {
  const chance1 = chance(board.slug, part.designator, "week");
  const year = board.year - (chance1 > 0.6 ? 1 : 0);
  const week = 1 + Math.floor(chance(board.slug, part.designator, "week of") * 52);
  const erasable = /^(?:27|2716)/.test(part.chip ?? "");
  const marking = part.code ?? part.chip?.toUpperCase() ?? part.value ?? "";
  return {
    designator: part.designator,
    marking,
    dateCode: `${String(year).slice(2)}${String(week).padStart(2, "0")}`,
    socketed: part.socketed === true,
    ...(erasable ? { label: `${board.machine.split(" ")[0] ?? ""} ${part.designator}` } : {}),
  };
}

function chipPortrait(part: SeedPlacement, board: SeedBoard): string {
  const look = lookOf(part, board);
  const legs = legsOf(part) ?? 14;
  const style = part.package?.split("-")[0];
  if (style === "PLCC" || style === "QFP") return quad(style, legs, look);
  if (style === "SOIC") return soic(legs, look);
  if (style === "TO") return tabbed(look, part.package === "TO-220" ? 3 : 5);
  if (part.value?.includes("switch") === true) return discretes.dipSwitch(legs / 2);
  return dip(legs, look);
}

function connectorPortrait(part: SeedPlacement, board: SeedBoard): string {
  const { width, height } = footprint(part);
  const legs = legsOf(part) ?? 4;
  const style = part.package?.split("-")[0];
  if (style === "edge") return edgeFingers(width, fingerEnds(part, board), legs / 2);
  if (style === "screw") return screwTerminal(width, height, legs);
  if (style === "header") return legs <= 10 ? lockHeader(width, height, legs) : header(width, height, legs);
  return socketShell(width, height);
}

/** Fingers end where the board ends, if that is near; measured from the connector's middle. */
function fingerEnds(part: SeedPlacement, board: SeedBoard): { top: number; bottom: number } {
  const { height } = footprint(part);
  const below = board.height - part.y;
  if (below > height * 2.3) return { top: -height / 2, bottom: height / 2 };
  return { top: below - height - 3.4, bottom: below - 0.4 };
}

/** How far the drawn part reaches above its middle: what lies on its back or stands in a drop is higher than its holes. */
function reachAbove(part: SeedPlacement): number {
  if (part.package?.startsWith("TO-220") === true) return 6;
  if (part.value?.includes("tantalum") === true) return 2.8;
  if (part.kind === "diode" && part.value?.includes("LED") === true) return 2.8;
  return footprint(part).height / 2;
}

/** The printed designator beside the part, and a faint outline around what is neither chip nor connector. */
function silkscreen(part: SeedPlacement, board: SeedBoard, { silk }: BoardColours): string {
  const { width, height } = footprint(part);
  const size = width > 14 ? 2.2 : 1.7;
  const above = part.y - reachAbove(part) - size * 0.75;
  const below = part.y + height / 2 + size * 0.8;
  const x = Math.min(Math.max(part.x - width / 2 + part.designator.length * size * 0.32, 3), board.width - 3);
  const letters = print(part.designator, { x, y: above > size ? above : below }, { size, fill: silk, bold: true });
  if (part.kind === "chip" || part.kind === "connector" || reachAbove(part) !== height / 2) return letters;
  const frame = { stroke: silk, strokeWidth: 0.18, opacity: 0.35, round: 0.6 };
  return box(part.x - width / 2 - 0.3, part.y - height / 2 - 0.3, width + 0.6, height + 0.6, frame) + letters;
}

/** The board's number, printed where there is room: along the lower edge. */
function title(board: SeedBoard, { silk }: BoardColours): string {
  const text = `${board.machine.toUpperCase()}  ${board.revisions.at(-1)?.name.toUpperCase() ?? ""}  ${board.year}`;
  const room = text.length * 1.5;
  const taken = board.placements.some(
    (part) => part.y > board.height - 22 && part.x - footprint(part).width / 2 < 14 + room && part.kind === "connector",
  );
  const x = taken ? board.width - 14 - room / 2 : 14 + room / 2;
  return print(text, { x, y: board.height - 3.4 }, { size: 2.4, fill: silk });
}
