/** A length as it stands in a drawing: two decimals are hundredths of a millimetre. */
export function mm(value: number): string {
  return String(Math.round(value * 100) / 100);
}

/** Text that may stand in an SVG, between tags or in an attribute. */
export function escaped(text: string): string {
  return text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;").replaceAll('"', "&quot;");
}

interface Look {
  fill?: string;
  stroke?: string;
  strokeWidth?: number;
  opacity?: number;
  /** Radius of the corners. */
  round?: number;
}

function look({ fill, stroke, strokeWidth, opacity }: Look): string {
  const parts = [`fill="${fill ?? "none"}"`];
  if (stroke !== undefined) parts.push(`stroke="${stroke}" stroke-width="${mm(strokeWidth ?? 0.2)}"`);
  if (opacity !== undefined) parts.push(`opacity="${opacity}"`);
  return parts.join(" ");
}

/** A rectangle from its upper left corner. */
export function box(x: number, y: number, width: number, height: number, style: Look): string {
  const corners = style.round === undefined ? "" : ` rx="${mm(style.round)}"`;
  return `<rect x="${mm(x)}" y="${mm(y)}" width="${mm(width)}" height="${mm(height)}"${corners} ${look(style)}/>`;
}

/** A rectangle around its middle, where the origin is the middle. */
export function around(width: number, height: number, style: Look): string {
  return box(-width / 2, -height / 2, width, height, style);
}

export function disc(x: number, y: number, radius: number, style: Look): string {
  return `<circle cx="${mm(x)}" cy="${mm(y)}" r="${mm(radius)}" ${look(style)}/>`;
}

/** A drawn line or area, by SVG path data. */
export function path(data: string, style: Look): string {
  return `<path d="${data}" ${look(style)}/>`;
}

/** A letter of a sans-serif typeface is about this share of its height wide. By eye. */
const LETTER_WIDTH = 0.62;

/** Printed letters around their middle, made narrower where they would be wider than `room`. */
export function print(
  text: string,
  at: { x: number; y: number },
  { size, fill, room, bold }: { size: number; fill: string; room?: number; bold?: boolean },
): string {
  const wanted = text.length * size * LETTER_WIDTH;
  // Not every rasteriser knows `textLength`; all know how to scale.
  const narrow = room !== undefined && wanted > room ? ` scale(${mm(Math.max(room / wanted, 0.1))} 1)` : "";
  const weight = bold === true ? ` font-weight="bold"` : "";
  const place = `transform="translate(${mm(at.x)} ${mm(at.y + size * 0.36)})${narrow}" font-size="${mm(size)}"`;
  return `<text ${place} fill="${fill}"${weight}>${escaped(text)}</text>`;
}

/** Things drawn around an origin, put where they belong and turned by `turn` degrees. */
export function placedAt(x: number, y: number, turn: number, content: string): string {
  const turned = turn === 0 ? "" : ` rotate(${mm(turn)})`;
  return `<g transform="translate(${mm(x)} ${mm(y)})${turned}">${content}</g>`;
}
