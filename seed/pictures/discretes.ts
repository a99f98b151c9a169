import { chance, chosen } from "./chance.ts";
import { around, box, disc, mm, path, print } from "./svg.ts";

const WIRE = "#b4b8b8";
/** IEC 60062 colours of the digits 0 to 9. */
const DIGITS = [
  "#161616",
  "#6b3b1c",
  "#b3261e",
  "#d9772b",
  "#d8bb2c",
  "#3d7a3f",
  "#2f55a4",
  "#6d4591",
  "#7d7f80",
  "#ecebe4",
];

function leads(span: number): string {
  return (
    box(-span / 2, -0.3, span, 0.6, { fill: WIRE }) +
    disc(-span / 2, 0, 0.8, { fill: "#c8cbca" }) +
    disc(span / 2, 0, 0.8, { fill: "#c8cbca" })
  );
}

/** The two digits and the power of ten that a value such as `4k7` or `470R` would be ringed with; null for other words. */
export function ringsOf(value: string): [first: number, second: number, power: number] | null {
  const read = /^(\d*)([RkM])(\d*)(?:\s|$)/.exec(value);
  if (read === null) return null;
  const [, whole = "", letter = "R", rest = ""] = read;
  const factor = { R: 1, k: 1e3, M: 1e6 }[letter] ?? 1;
  const ohms = Number(`${whole === "" ? "0" : whole}.${rest}`) * factor;
  if (!(ohms >= 1)) return null;
  const power = Math.floor(Math.log10(ohms) + 1e-9) - 1;
  const digits = Math.round(ohms / 10 ** power);
  return [Math.floor(digits / 10), digits % 10, power];
}

export function resistor(value: string): string {
  const rings = ringsOf(value);
  const body =
    around(6.2, 2.2, { fill: "#c9a878", round: 1.1 }) +
    around(6.2, 0.7, { fill: "#ffffff", opacity: 0.16, round: 0.3 });
  const bands = (rings ?? []).map((digit, index) =>
    box(-2.2 + index * 1.25, -1.1, 0.65, 2.2, { fill: DIGITS[digit] ?? "#c6a13c" }),
  );
  const tolerance = box(2, -1.1, 0.6, 2.2, { fill: "#c6a13c" });
  return leads(9) + body + bands.join("") + tolerance;
}

export function trimmer(): string {
  return (
    around(9.6, 9.6, { fill: "#2f66ad", round: 0.6 }) +
    around(9.6, 9.6, { stroke: "#204a80", strokeWidth: 0.3, round: 0.6 }) +
    disc(2.4, -2.2, 1.5, { fill: "#d9b45a" }) +
    `<g transform="translate(2.4 -2.2) rotate(35)">${around(2.6, 0.5, { fill: "#6a5522" })}</g>`
  );
}

export function resistorPack(value: string, length: number): string {
  const legs = Math.max(3, Math.round(length / 2.54));
  const feet = Array.from({ length: legs }, (_, index) =>
    disc((index - (legs - 1) / 2) * 2.54, 1.6, 0.8, { fill: "#c8cbca" }),
  );
  return (
    feet.join("") +
    around(legs * 2.54, 3, { fill: "#9a4a2f", round: 0.5 }) +
    disc(-legs * 1.27 + 1.3, 0, 0.5, { fill: "#e9e2d0" }) +
    print(value, { x: 0.6, y: 0 }, { size: 1.6, fill: "#ecdcc8", room: legs * 2.54 - 5 })
  );
}

export function capacitor(value: string, designator: string, width: number): string {
  if (value.includes("tantalum")) return tantalum(value, designator);
  if (value.includes("polystyrene")) return polystyrene(value);
  if (width >= 8) return can(value, width);
  return ceramic(value, designator);
}

function tantalum(value: string, designator: string): string {
  const fill = chosen(["#d59b34", "#c9822b", "#3d6fa3", "#dcae52"], designator, "drop");
  return (
    disc(-1.3, 2, 0.8, { fill: "#c8cbca" }) +
    disc(1.3, 2, 0.8, { fill: "#c8cbca" }) +
    path("M-2.5 0.2a2.5 2.6 0 1 1 5 0c0 1.5-1.2 2.2-2.5 2.2s-2.5-.7-2.5-2.2z", { fill }) +
    path("M-1.6-1.2a1.7 1.7 0 0 1 1.4-1", { stroke: "#fff3d8", strokeWidth: 0.5 }) +
    print(`+ ${value.split(" ")[0] ?? ""}`, { x: 0, y: 0.3 }, { size: 1.3, fill: "#2a2118", room: 4.4 })
  );
}

function polystyrene(value: string): string {
  return (
    leads(8.4) +
    around(6, 3.2, { fill: "#d6dbd8", round: 1.2 }) +
    around(4.4, 2.2, { fill: "#aab3b4", round: 0.6 }) +
    box(2, -1.6, 0.7, 3.2, { fill: "#b64134" }) +
    print(value.split(" ")[0] ?? "", { x: -0.4, y: 0 }, { size: 1.3, fill: "#2d3234" })
  );
}

function ceramic(value: string, designator: string): string {
  const fill = chosen(["#c98a3d", "#4f83a8", "#c4a24c"], designator, "disc");
  return (
    disc(-1.8, 0.6, 0.7, { fill: "#c8cbca" }) +
    disc(1.8, 0.6, 0.7, { fill: "#c8cbca" }) +
    around(4.6, 2.1, { fill, round: 1 }) +
    print(value, { x: 0, y: 0 }, { size: 1.2, fill: "#2a2118", room: 4 })
  );
}

/** An electrolytic capacitor from above: sleeve, aluminium with a cross stamped in, a stripe at the negative side. */
function can(value: string, width: number): string {
  const radius = width / 2 - 0.4;
  const inner = radius * 0.78;
  const arm = inner * 0.7;
  return (
    disc(0.5, 0.6, radius, { fill: "#000000", opacity: 0.3 }) +
    disc(0, 0, radius, { fill: "#27405f" }) +
    path(
      `M${mm(radius * 0.5)} ${mm(-radius * 0.86)}A${mm(radius)} ${mm(radius)} 0 0 1 ${mm(radius * 0.5)} ${mm(radius * 0.86)}z`,
      { fill: "#c9d2d8", opacity: 0.75 },
    ) +
    disc(0, 0, inner, { fill: "url(#can)" }) +
    path(`M${mm(-arm)} 0H${mm(arm)}M0 ${mm(-arm)}V${mm(arm)}`, { stroke: "#7d8486", strokeWidth: 0.35 }) +
    (width > 16
      ? print(value, { x: 0, y: inner * 0.5 }, { size: Math.min(2.4, width / 8), fill: "#5b6264", room: inner * 1.4 })
      : "")
  );
}

export function diode(value: string): string {
  if (value.includes("LED")) return lamp(value);
  const power = /1N40|1N58|fast|damper/.test(value);
  if (power)
    return leads(9) + around(5.2, 2.8, { fill: "#1f2022", round: 0.3 }) + box(1.4, -1.4, 0.9, 2.8, { fill: "#d9dad6" });
  return leads(8) + around(4, 1.8, { fill: "#c5713d", round: 0.8 }) + box(0.9, -0.9, 0.6, 1.8, { fill: "#1c1c1c" });
}

function lamp(value: string): string {
  const [rim, glow] = value.includes("green") ? ["#2f8f4b", "#9fe3a6"] : ["#a8271f", "#f08a78"];
  return (
    disc(0, 0, 2.6, { fill: rim }) + disc(0, 0, 2, { fill: rim }) + disc(-0.7, -0.7, 0.8, { fill: glow, opacity: 0.85 })
  );
}

/** Four diodes in one body: a block with a screw through it, or a slab that stands on its legs. */
export function bridge(value: string, { width, height }: { width: number; height: number }): string {
  const rating = value.replace("bridge", "").trim();
  if (height < 15) {
    return (
      around(width, height, { fill: "#202124", round: 0.6 }) +
      print("+ ~ ~ -", { x: 0, y: -height * 0.18 }, { size: 1.7, fill: "#d8d8d2", room: width - 4 }) +
      print(rating, { x: 0, y: height * 0.24 }, { size: 1.6, fill: "#b9b9b3", room: width - 4 })
    );
  }
  return (
    around(26, 26, { fill: "#202124", round: 1.5 }) +
    disc(0, 0, 3, { fill: "#777b7b" }) +
    disc(0, 0, 1.9, { fill: "#33363a" }) +
    print("+", { x: 9.5, y: -9.5 }, { size: 4, fill: "#d8d8d2" }) +
    print("~", { x: -9.5, y: -9.5 }, { size: 4, fill: "#d8d8d2" }) +
    print(rating, { x: 0, y: 8.6 }, { size: 3, fill: "#b9b9b3" })
  );
}

/** A small transistor from above: flat front, round back. */
export function smallTransistor(designator: string): string {
  return (
    [-1.5, 0, 1.5].map((x) => disc(x, 1.4, 0.7, { fill: "#c8cbca" })).join("") +
    path("M-2.4 1a2.5 2.5 0 1 1 4.8 0z", { fill: chosen(["#252628", "#2f2c2a"], designator) })
  );
}

export function crystal(value: string): string {
  const width = value.includes("ceramic") ? 7 : 11;
  if (value.includes("ceramic"))
    return (
      around(width, 3.4, { fill: "#c46a2c", round: 0.6 }) + print("500", { x: 0, y: 0 }, { size: 1.7, fill: "#32200f" })
    );
  return (
    around(width, 4.6, { fill: "#83898b", round: 2.3 }) +
    around(width - 1, 3.6, { fill: "url(#metal)", round: 1.8 }) +
    print(value.replace(" MHz", ""), { x: 0, y: 0 }, { size: 1.7, fill: "#3c4244", room: width - 3 })
  );
}

export function fuse(value: string, width: number): string {
  const cap = 5;
  return (
    around(width - 4, 5.2, { fill: "#e4ebe6", opacity: 0.75, round: 1 }) +
    path(`M${mm(-width / 2 + cap)} 0q${mm(width / 4)} 1.2 ${mm(width - 2 * cap)} 0`, {
      stroke: "#8b8f8d",
      strokeWidth: 0.3,
    }) +
    box(-width / 2, -3.2, cap, 6.4, { fill: "url(#metal)", round: 0.6 }) +
    box(width / 2 - cap, -3.2, cap, 6.4, { fill: "url(#metal)", round: 0.6 }) +
    print(value.split(" slow")[0] ?? value, { x: 0, y: -1.3 }, { size: 1.6, fill: "#59605d" })
  );
}

export function battery(value: string): string {
  const cells = [-7, 0, 7].map((x) => disc(x, 0, 3.4, { fill: "#2f6f4e" }) + disc(x, 0, 2.2, { fill: "url(#metal)" }));
  const crust = [
    [-9, 6],
    [-5, 7],
    [-10, 3],
    [8, 6],
    [3, 7],
  ] as const;
  const leak = crust.map(([x, y]) =>
    disc(x, y, 0.8 + chance(value, String(x)) * 1.2, { fill: "#9fc7b4", opacity: 0.7 }),
  );
  return around(22, 9, { fill: "#1f5a43", round: 3 }) + cells.join("") + leak.join("");
}

export function dipSwitch(positions: number): string {
  const length = positions * 2.54;
  const levers = Array.from({ length: positions }, (_, index) => {
    const x = (index - (positions - 1) / 2) * 2.54;
    const up = chance("lever", String(index)) > 0.5;
    return box(x - 0.7, -2, 1.4, 4, { fill: "#5a1511" }) + box(x - 0.6, up ? -1.9 : 0.1, 1.2, 1.8, { fill: "#f0efe9" });
  });
  return (
    around(length, 9, { fill: "#b3322a", round: 0.4 }) +
    levers.join("") +
    print("ON", { x: -length / 2 + 2.6, y: -3.3 }, { size: 1.6, fill: "#f4e4df" })
  );
}

export function testPoint(): string {
  return disc(0, 0, 1.5, { fill: "#d5b45b" }) + disc(0, 0, 0.7, { fill: "#4a3c19" });
}

export function jumper(): string {
  return (
    around(5, 2.6, { fill: "#1d1e20", round: 0.3 }) +
    disc(-1.27, 0, 0.5, { fill: "#d5b45b" }) +
    disc(1.27, 0, 0.5, { fill: "#d5b45b" })
  );
}

/** A part that has no picture of its own: a plain box with its value. */
export function plainBox(value: string, width: number, height: number): string {
  return (
    around(width, height, { fill: "#b9b39f", round: 0.8 }) +
    around(width - 1.4, height - 1.4, { stroke: "#8e8875", strokeWidth: 0.3, round: 0.5 }) +
    print(value, { x: 0, y: 0 }, { size: Math.min(2.4, height / 3), fill: "#43402f", room: width - 2 })
  );
}
