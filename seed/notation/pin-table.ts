import type { PackageStyle, PinRole, PinType } from "#lib/core/shared/index.ts";
import { PIN_ROLES } from "#lib/core/shared/index.ts";
import type { SeedPackage, SeedPin } from "#seed/shapes.ts";

const TYPES: Record<string, PinType> = {
  in: "input",
  out: "output",
  bi: "bidirectional",
  "3s": "three-state",
  oc: "open-collector",
  pas: "passive",
  pwr: "power-in",
  reg: "power-out",
  nc: "no-connect",
  dnc: "do-not-connect",
  un: "unspecified",
};

/**
 * A package from a list with one pin a line: `number name type role [volts]`. A slash before the name means active
 * low, and a run of pins is one line: `2-9 D0-7 bi data`. Throws where a line cannot be read.
 */
export function packageOf(name: string, style: PackageStyle, table: string): SeedPackage {
  const pins = table
    .split("\n")
    .map((line) => line.trim())
    .filter((line) => line !== "")
    .flatMap(pinsOfLine);
  return { name, style, pins };
}

function pinsOfLine(line: string): SeedPin[] {
  const [numbers = "", name = "", type = "", role = "", volts] = line.split(/\s+/);
  const pinType = TYPES[type];
  const pinRole = PIN_ROLES.find((known) => known === role);
  if (pinType === undefined || pinRole === undefined) throw new Error(`Pin line cannot be read: ${line}`);
  const activeLow = name.startsWith("/");
  const names = spread(activeLow ? name.slice(1) : name);
  const places = spread(numbers);
  if (names.length !== places.length)
    throw new Error(`Pin line has ${places.length} pins, ${names.length} names: ${line}`);
  return places.map((number, index) => onePin(number, names[index] ?? "", pinType, pinRole, activeLow, volts));
}

function onePin(
  number: string,
  name: string,
  type: PinType,
  role: PinRole,
  activeLow: boolean,
  volts: string | undefined,
): SeedPin {
  return {
    number,
    name,
    type,
    role,
    ...(activeLow ? { activeLow } : {}),
    ...(volts === undefined ? {} : { supply: Number(volts) }),
  };
}

/** `D0-3` → D0, D1, D2, D3; counts down where the second number is the smaller; anything else stays one word. */
function spread(word: string): string[] {
  const run = /^([A-Za-z]*)(\d+)-(\d+)$/.exec(word);
  if (run === null) return [word];
  const [, prefix = "", from = "0", to = "0"] = run;
  const step = Number(to) < Number(from) ? -1 : 1;
  const count = Math.abs(Number(to) - Number(from)) + 1;
  return Array.from({ length: count }, (_, index) => `${prefix}${Number(from) + index * step}`);
}
