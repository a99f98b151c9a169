import { around, box, disc, mm, path } from "./svg.ts";

/** Gold fingers from `top` to `bottom` around the middle of the connector, the outer end worn; `contacts` on this side. */
export function edgeFingers(width: number, { top, bottom }: { top: number; bottom: number }, contacts: number): string {
  const pitch = width / contacts;
  const fingers = Array.from({ length: contacts }, (_, index) =>
    box(-width / 2 + index * pitch + pitch * 0.16, top, pitch * 0.68, bottom - top, { fill: "url(#gold)" }),
  );
  const worn = box(-width / 2, bottom - 3.4, width, 1.1, { fill: "#fff4cc", opacity: 0.35 });
  return fingers.join("") + worn;
}

/** A pin header in its shroud: one row where the shroud is long enough for it, else two. */
export function header(width: number, height: number, pins: number): string {
  const rows = width > pins * 2.3 ? 1 : 2;
  const perRow = Math.ceil(pins / rows);
  const pitch = Math.min(2.54, (width - 3) / perRow);
  const posts = Array.from({ length: pins }, (_, index) => {
    const x = (Math.floor(index / rows) - (perRow - 1) / 2) * pitch;
    const y = rows === 1 ? 0 : (index % 2 === 0 ? 1 : -1) * (pitch / 2);
    return box(x - 0.4, y - 0.4, 0.8, 0.8, { fill: "#e2c46a" });
  });
  return (
    around(width, height, { fill: "#26282b", round: 0.4 }) +
    around(width - 2, height - 2, { fill: "#121315", round: 0.3 }) +
    box(-2.2, height / 2 - 1.1, 4.4, 1.2, { fill: "#1b1c1e" }) +
    posts.join("")
  );
}

/** A single row of pins with a locking back, cream coloured. */
export function lockHeader(width: number, height: number, pins: number): string {
  const pitch = (width - 2) / pins;
  const posts = Array.from({ length: pins }, (_, index) => {
    const x = (index - (pins - 1) / 2) * pitch;
    return box(x - 0.55, -0.55, 1.1, 1.1, { fill: "#c9cccb" });
  });
  return (
    around(width, height, { fill: "#e3dcc6", round: 0.5 }) +
    box(-width / 2, -height / 2, width, height * 0.28, { fill: "#c8c0a6", round: 0.5 }) +
    posts.join("")
  );
}

export function screwTerminal(width: number, height: number, ways: number): string {
  const pitch = width / ways;
  const screws = Array.from({ length: ways }, (_, index) => {
    const x = (index - (ways - 1) / 2) * pitch;
    const slot = `M${mm(x - 1.1)} ${mm(-0.6 + (index % 3) * 0.5)}L${mm(x + 1.1)} ${mm(0.6 - (index % 3) * 0.5)}`;
    return disc(x, 0, 1.7, { fill: "url(#metal)" }) + path(slot, { stroke: "#52585a", strokeWidth: 0.5 });
  });
  const walls = Array.from({ length: ways - 1 }, (_, index) =>
    box(-width / 2 + (index + 1) * pitch - 0.25, -height / 2, 0.5, height, { fill: "#1f5134" }),
  );
  return around(width, height, { fill: "#2f7a4c", round: 0.5 }) + walls.join("") + screws.join("");
}

/** A round or D-shaped socket, from above: a metal shell. */
export function socketShell(width: number, height: number): string {
  return (
    around(width, height, { fill: "url(#metal)", round: 1.5 }) +
    box(-width / 2 + 2, height / 2 - 3, width - 4, 3, { fill: "#2b2d30", round: 0.8 })
  );
}
