import { chance, chosen } from "./chance.ts";
import { around, box, disc, mm, path, print } from "./svg.ts";

/** What stands on a chip, and what it looks like. */
export interface ChipLook {
  designator: string;
  /** First line on the package. */
  marking: string;
  /** Second line. */
  dateCode: string;
  socketed: boolean;
  /** A labelled window instead of bare plastic: EPROMs. */
  label?: string;
}

const PLASTIC = ["#26272a", "#2b2a2c", "#222528", "#302e2f"] as const;
const TIN = "#b9bcbd";
const INK = "#c9c7bf";
const SOCKET = "#3b3330";

/** Distance of neighbouring legs of a dual in-line package, millimetres. */
const PITCH = 2.54;

/** Body height and distance of the rows (mm) by the number of legs; JEDEC's narrow and wide families, from memory. */
function dipRows(legs: number): { body: number; rows: number } {
  return legs >= 24 ? { body: 13.4, rows: 15.24 } : { body: 6.3, rows: 7.62 };
}

/** Where the leg of a dual in-line package lies, from the middle of the package: leg 1 is at the lower left. */
export function dipLeg(legs: number, leg: number): { x: number; y: number } {
  const half = legs / 2;
  const { rows } = dipRows(legs);
  const lower = leg <= half;
  const step = lower ? leg - 1 : legs - leg;
  return { x: (step - (half - 1) / 2) * PITCH, y: lower ? rows / 2 : -rows / 2 };
}

/** A dual in-line package, notch to the left. */
export function dip(legs: number, look: ChipLook): string {
  const { body, rows } = dipRows(legs);
  const length = (legs / 2) * PITCH - 0.3;
  const places = Array.from({ length: legs }, (_, index) => dipLeg(legs, index + 1));
  const feet = places.map(({ x, y }) => disc(x, y, 0.85, { fill: TIN })).join("");
  const shoulders = places
    .map(({ x, y }) =>
      box(x - 0.55, Math.min(y, Math.sign(y) * (body / 2)), 1.1, Math.abs(Math.abs(y) - body / 2), { fill: "#8f9394" }),
    )
    .join("");
  const socket = look.socketed
    ? around(length + 2, rows + 2.6, { fill: SOCKET, round: 0.5 }) +
      around(length - 4, Math.max(rows - 5, 1), { fill: "#1f1b19", round: 0.3 })
    : "";
  const fill = chosen(PLASTIC, look.designator, "plastic");
  const plastic =
    around(length, body, { fill, round: 0.5 }) +
    box(-length / 2, -body / 2, length, body * 0.16, { fill: "#ffffff", opacity: 0.09, round: 0.5 });
  const notch = path(`M${mm(-length / 2)} -1.3a1.3 1.3 0 0 1 0 2.6z`, { fill: "#101113" });
  return socket + feet + shoulders + plastic + notch + faceOf(look, length - 6, body);
}

function faceOf(look: ChipLook, room: number, body: number): string {
  if (look.label !== undefined) return sticker(look.label, Math.min(room, 22), body);
  const size = body > 8 ? 2.7 : 2;
  const shift = size * 0.62;
  return (
    print(look.marking, { x: 0.8, y: -shift }, { size, fill: INK, room }) +
    print(look.dateCode, { x: 0.8, y: shift }, { size: size * 0.85, fill: INK, room })
  );
}

/** A paper label, yellowed and not quite straight, as on EPROMs. */
function sticker(text: string, width: number, body: number): string {
  const paper = around(width, body * 0.62, { fill: chosen(["#e9e2c8", "#f1ecdc", "#dfe3dd"], text), round: 0.4 });
  const words = print(text, { x: 0, y: 0 }, { size: 2.6, fill: "#3a3a48", room: width - 2 });
  return `<g transform="rotate(${mm(chance(text, "tilt") * 4 - 2)})">${paper}${words}</g>`;
}

/** A package with legs on all four sides: quad flat, or a leaded carrier in its socket. */
export function quad(kind: "PLCC" | "QFP", legs: number, look: ChipLook): string {
  const perSide = legs / 4;
  const pitch = kind === "PLCC" ? 1.27 : legs > 70 ? 0.8 : 1;
  const side = perSide * pitch + (kind === "PLCC" ? 2.1 : 2);
  const foot = kind === "PLCC" ? 0.7 : 0.42;
  const reach = side / 2 + (kind === "PLCC" ? 0.7 : 1.3);
  const row = Array.from({ length: perSide }, (_, index) => {
    const along = (index - (perSide - 1) / 2) * pitch;
    return box(along - foot / 2, -reach, foot, reach * 2, { fill: TIN });
  }).join("");
  const socket = look.socketed
    ? around(side + 6, side + 6, { fill: "#4b3b2c", round: 1 }) +
      around(side + 2.6, side + 2.6, { fill: "#241c16", round: 0.8 })
    : "";
  const half = side / 2;
  const bevel = kind === "PLCC" ? 1.6 : 0.6;
  const body = path(`M${mm(-half + bevel)} ${mm(-half)}H${mm(half)}V${mm(half)}H${mm(-half)}V${mm(-half + bevel)}z`, {
    fill: chosen(PLASTIC, look.designator, "plastic"),
  });
  const dot =
    kind === "PLCC"
      ? disc(0, -half + 2, 0.7, { fill: "#141518" })
      : disc(-half + 1.7, half - 1.7, 0.7, { fill: "#141518" });
  const size = Math.min(2.4, side / 7);
  return (
    socket +
    row +
    `<g transform="rotate(90)">${row}</g>` +
    body +
    dot +
    print(look.marking, { x: 0, y: -size * 0.7 }, { size, fill: INK, room: side - 3 }) +
    print(look.dateCode, { x: 0, y: size * 0.8 }, { size: size * 0.85, fill: INK, room: side - 3 })
  );
}

/** A small flat package with two rows of legs. */
export function soic(legs: number, look: ChipLook): string {
  const length = (legs / 2) * 1.27;
  const body = legs > 20 ? 7.5 : 3.9;
  const feet = Array.from({ length: legs / 2 }, (_, index) =>
    box((index - (legs / 2 - 1) / 2) * 1.27 - 0.22, -body / 2 - 1.1, 0.44, body + 2.2, { fill: TIN }),
  ).join("");
  return (
    feet +
    around(length, body, { fill: chosen(PLASTIC, look.designator, "plastic"), round: 0.2 }) +
    disc(-length / 2 + 0.9, body / 2 - 0.9, 0.4, { fill: "#141518" }) +
    print(look.marking, { x: 0, y: 0 }, { size: 1.5, fill: INK, room: length - 2 })
  );
}

/** A power package lying on its back: plastic, and a metal tab with a hole. */
export function tabbed(look: ChipLook, legs: number): string {
  const width = 10;
  const feet = Array.from({ length: legs }, (_, index) =>
    box((index - (legs - 1) / 2) * (7.6 / legs) - 0.4, 3.4, 0.8, 2.4, { fill: TIN }),
  ).join("");
  return (
    feet +
    box(-width / 2, -5.8, width, 6, { fill: "url(#metal)", round: 0.4 }) +
    disc(0, -3.9, 1.6, { fill: "#494d4d" }) +
    box(-width / 2, -1.6, width, 5.4, { fill: "#242528", round: 0.3 }) +
    print(look.marking, { x: 0, y: 0.4 }, { size: 1.7, fill: INK, room: width - 1 }) +
    print(look.dateCode, { x: 0, y: 2.4 }, { size: 1.4, fill: INK, room: width - 1 })
  );
}

/** A metal power transistor: a round can on a diamond-shaped flange with two screws. */
export function metalCan(look: ChipLook, { width, height }: { width: number; height: number }): string {
  const [half, rise] = [width / 2, height / 2];
  const flange = `M${mm(-half)} 0L${mm(-half * 0.35)} ${mm(-rise)}H${mm(half * 0.35)}L${mm(half)} 0L${mm(half * 0.35)} ${mm(rise)}H${mm(-half * 0.35)}z`;
  const screws = [-half * 0.77, half * 0.77].map((x) => disc(x, 0, 2.2, { fill: "#6d7273" }));
  return (
    path(flange, { fill: "#a9aeae", stroke: "#83898a", strokeWidth: 0.4 }) +
    screws.join("") +
    disc(0, 0, rise * 0.86, { fill: "url(#can)" }) +
    print(look.marking, { x: 0, y: 0 }, { size: 2.2, fill: "#4c5152", room: rise * 1.4 })
  );
}
