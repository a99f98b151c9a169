import type { PinRole, PinType } from "../shared/index.ts";

/** Longer names carry no more meaning for the role, and patterns stay cheap on hostile ones. */
const NAME_READ = 48;

/**
 * Names by which data sheets call a pin, in upper case, without bar, blanks, `_` and `-`; the first line that fits
 * wins. Common practice, no source. A leading section number (`2CLK`) and a trailing section (`OEa`, `CLK2`) are
 * allowed where the names have them.
 */
const ROLE_NAMES: readonly (readonly [PinRole, RegExp])[] = [
  ["unused", /^(NC\d*|N\/C|DNC|DNU|DU|NMC|RSVD?|RESERVED)$/],
  ["ground", /^([ADPS]?GND[A-Z]?\d*|GND[ADIOP]\d*|GROUND|V?VSS[A-Z]?[IO0-9]*|[AD]VSS\d*|0V|EARTH|COMMON)$/],
  ["supply", /^([AD]?V(CC|DD|EE|BB)[A-Z]{0,3}\d*|[AD]?V[+]|V[-]|VS[+-]?|[+-]VS|VBAT|VPP\d*)$/],
  ["supply", /^[+-]?\d{1,2}([.]\d{1,2})?V\d?([+-]|[AD])?$|^[+-]?\dV\d$|^[+-]V$/],
  ["oscillator", /^(E?XTAL[IO0-9]*(IN|OUT)?|X[12IO]|XIN|XOUT|OSC[0-9]?(IN|OUT)?|[HL]FX(IN|OUT))$/],
  ["interrupt", /^(N?INTR?[A-Z]?\d*|N?F?IRQ[A-Z]?\d*|NMI|IPL\d|INTREQ|RST[567][.]5)$/],
  ["reset", /^(\d?N?(RESET|RST|RES|MR\d?|MCLR|CLR|CLEAR|POR)(IN)?[A-D1-4]?|\d?CD|SRCLR|RCLR)$/],
  [
    "clock",
    /^\d?(S|R|SR|T|TX|RX|BIT|M|B|W|LR|J?T)?(CLK|CLOCK|CK|CP)(IN|OUT|A|B|U|D|EN)?\d*$|^(PHI|Ø|φ|Φ)\d?(IN|OUT)?$|^[TR]XC[AB]?$/,
  ],
  ["select", /^(\d?N?(CS|CE|SS|NSS|SEL|CHIPSEL)([AB]|\d{0,2}|SEL)?|[UL]CS|[MPS]CS\d)$/],
  ["enable", /^(\d?N?(OE|EN|ENA|ENABLE|OC)[A-D]?\d?|INH|\d?STB|[DR]E)$/],
  [
    "control",
    /^(N?(WE|WR|RD|RW|R\/W|W\/R|RAS|CAS|[UL]CAS|LE|LD|LOAD|PL|SH\/LD|PRE|DIR|U\/D|ALE|AS|[UL]?DS|DTACK|READY|RDY|WAIT|HALT|HOLD|HLDA)[AB]?\d?)$/,
  ],
  [
    "control",
    /^(BUSR(E?Q|EQ)|BUSA(C?K|CK)|BG(ACK)?|BR|M1|MREQ|IORQ|RFSH|VMA|VPA|BERR|FC[0-2]|SYNC|SO|TSC|DBE|BA|BS|PGM|INTA|DT\/R|IO\/M|M\/IO|LOCK|TEST|WP|EA|PSEN|AEN)$/,
  ],
  [
    "analog",
    /^(V?REF[+-]?(IN|OUT)?|VREF[HLPN+-]?|[+-]|IN[+-]|[+-]IN|AIN\d*|AN\d+|AOUT[AB]?|[+-]|CV|THR|DIS|TRIG?|FB|COMP|ADJ|BAL|CEXT|REXT|RXCX|R\/?C\d?)$/,
  ],
  ["address", /^A\d{1,2}$|^MA\d{1,2}$|^BA[0-3]$|^ADDR\d{0,2}$/],
  [
    "data",
    /^([DQ]\d{0,2}|\d[DQ]|Q[A-H]\d?|D[A-H]|DQ\d{1,2}|DB\d{1,2}|AD\d{1,2}|I\/?O\d{1,2}|D(IN|OUT|I|O)\d?|DATA\d{0,2}|SD[AIO]|SER|P[A-H]\d{1,2}|P\d[.]\d)$/,
  ],
];

/** Single letters, which say something on an input only: outputs called S0 or E are sums and segments. */
const SHORT_INPUT_NAMES: typeof ROLE_NAMES = [
  ["reset", /^\d?R(\d|0[(]\d[)])?$/],
  ["control", /^\d?S\d?$/],
  ["enable", /^\d?[EG]\d?[AB]?\d?$/],
];

const ROLE_OF_TYPE: Readonly<Record<PinType, PinRole>> = {
  input: "input",
  output: "output",
  "three-state": "output",
  "open-collector": "output",
  "open-emitter": "output",
  bidirectional: "unknown",
  passive: "unknown",
  "power-in": "supply",
  "power-out": "supply",
  "no-connect": "unused",
  "do-not-connect": "unused",
  unspecified: "unknown",
};

/**
 * What a pin is for, from its name and electrical type. The type decides where it is stronger than a name: a pin that
 * is connected to nothing is unused whatever it is called, and a power pin is a supply unless it is called ground.
 * Where a name lists several functions (`RESET/PC6`) the first one that is known counts.
 */
export function pinRole(name: string, type: PinType): PinRole {
  if (type === "no-connect" || type === "do-not-connect") return "unused";
  const whole = plainName(name);
  const short = type === "input" ? roleIn(SHORT_INPUT_NAMES, whole) : undefined;
  const named = short ?? roleOfName(whole) ?? firstKnownRole(whole.split("/"));
  if (type === "power-in" || type === "power-out") return named === "ground" ? "ground" : "supply";
  // A transceiver calls its two sides A and B; only a pin that listens or is driven as an address is one.
  if (named === "address" && type === "bidirectional") return "data";
  // A segment of a display driver may be called E or EN; what the part drives enables nothing on it.
  if (named === "enable" && DRIVEN.has(type)) return "output";
  return named ?? ROLE_OF_TYPE[type];
}

const DRIVEN: ReadonlySet<PinType> = new Set<PinType>(["output", "three-state", "open-collector", "open-emitter"]);

function plainName(name: string): string {
  return name.slice(0, NAME_READ).toUpperCase().replaceAll(/[\s_]/g, "");
}

function firstKnownRole(names: readonly string[]): PinRole | undefined {
  for (const name of names) {
    const role = roleOfName(name);
    if (role !== undefined) return role;
  }
  return undefined;
}

function roleOfName(plain: string): PinRole | undefined {
  return roleIn(ROLE_NAMES, plain);
}

function roleIn(table: typeof ROLE_NAMES, plain: string): PinRole | undefined {
  return table.find(([, pattern]) => pattern.test(plain))?.[0];
}

/**
 * The roles of a whole pin table. It sees what a single pin cannot tell: where A0, A1… stand beside B0, B1… of the
 * same kind (adders, comparators, multiplexers, transceivers) they are operands and no addresses; and `clockShape`
 * says that the pin is drawn with the wedge of a clock.
 */
export function pinRoles(pins: readonly { name: string; type: PinType; clockShape?: boolean }[]): PinRole[] {
  const names = new Set(pins.map((pin) => plainName(pin.name)));
  return pins.map((pin) => {
    if (pin.clockShape === true && pin.type === "input") return "clock";
    const role = pinRole(pin.name, pin.type);
    return OPERAND_ROLES.has(role) && isOperand(plainName(pin.name), names) ? "data" : role;
  });
}

/** Letters of two operands that stand beside each other; P and R (or Q) on comparators. */
const OPERAND_PAIRS: Readonly<Record<string, readonly string[]>> = { A: ["B"], B: ["A"], P: ["R", "Q"], R: ["P"] };
const OPERAND_ROLES: ReadonlySet<PinRole> = new Set<PinRole>(["address", "input", "output", "reset", "unknown"]);

function isOperand(plain: string, names: ReadonlySet<string>): boolean {
  if (!/^[A-Z]\d{1,2}$/.test(plain)) return false;
  const partners = OPERAND_PAIRS[plain.charAt(0)] ?? [];
  return partners.some((letter) => names.has(`${letter}${plain.slice(1)}`));
}

/**
 * The voltage of a supply pin in volts as its name says it (`+5V`, `-12V`, `3V3`), or null. A name such as VCC says
 * nothing: it is +5 V on one part and +12 V on another.
 */
export function supplyVolts(name: string): number | null {
  const plain = plainName(name);
  if (plain === "0V") return null;
  const decimal = /^([+-]?)(\d{1,2}(?:[.]\d{1,2})?)V$/.exec(plain);
  if (decimal !== null) return Number(`${decimal[1] ?? ""}${decimal[2] ?? ""}`);
  const infix = /^([+-]?)(\d)V(\d)$/.exec(plain);
  return infix === null ? null : Number(`${infix[1] ?? ""}${infix[2] ?? ""}.${infix[3] ?? ""}`);
}
