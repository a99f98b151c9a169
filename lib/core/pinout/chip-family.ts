import type { Technology } from "../shared/index.ts";

/** Family letters of the 54/74 series. Families without a word of their own in the closed set stand under the nearest. */
const FAMILIES: ReadonlyMap<string, Technology> = new Map<string, Technology>([
  ["", "TTL"],
  ["H", "TTL"],
  ["L", "TTL"],
  ["LS", "LS"],
  ["ALS", "ALS"],
  ["S", "S"],
  ["AS", "S"],
  ["F", "F"],
  ["HC", "HC"],
  ["HCT", "HCT"],
  ["HCU", "HC"],
  ["C", "CMOS"],
  ["AC", "CMOS"],
  ["ACT", "CMOS"],
  ["AHC", "CMOS"],
  ["AHCT", "CMOS"],
  ["VHC", "CMOS"],
  ["VHCT", "CMOS"],
  ["LV", "CMOS"],
  ["LVC", "CMOS"],
  ["LVT", "CMOS"],
  ["LCX", "CMOS"],
  ["ALVC", "CMOS"],
  ["AUP", "CMOS"],
  ["CBT", "CMOS"],
  ["CBTLV", "CMOS"],
  ["FCT", "CMOS"],
]);

/** Maker's letters before the number: SN, DM, MC, CD, HD. */
const SERIES_74 = /^[A-Z]{0,4}(?:54|74)([A-Z]{0,5}?)(?:\dT)?((?:[1-3]G)?\d{2,6})(?:[A-Z].*)?$/;
const SERIES_4000 = /^(?:CD|HEF|HCF|MC1|TC|MN|M)?(4[05]\d{2}|40\d{3})(?:[A-Z]{1,4})?$/;

/** The rest of the trade's numbers, by how they begin. Common practice, no source. */
const OTHER_FAMILIES: readonly (readonly [RegExp, Technology])[] = [
  [/^(MC)?10[HK]?1\d{2}[A-Z]{0,2}$/, "ECL"],
  [/^[A-Z]{0,3}27C\d/, "CMOS"],
  [/^[A-Z]{0,3}(27|25)\d{2,4}/, "NMOS"],
  [/^[A-Z]{0,3}(28C|29F|39SF)\d/, "CMOS"],
  [/^[A-Z]{0,3}(41|44)(16|64|256|464)/, "NMOS"],
  [/^[A-Z]{0,3}(6116|6264|62256)/, "CMOS"],
  [/^[A-Z]{0,3}(2114|2102|2147|4027)/, "NMOS"],
  [/^[A-Z]{0,3}(65C|63C|80C|82C|84C|68HC)\d/, "CMOS"],
  [/^[A-Z]{0,3}(65|68|80|82)\d{2}/, "NMOS"],
  [/^(LM|NE|SE|TL|UA|µA|RC|CA|OP|AD|MC14|MC15|MC33|MC34|MC78|MC79|ICL|LF|LT|SG|UC|ULN|TDA)\d/, "analog"],
  [/^[LA]?7[89][LM]?\d{2}/, "analog"],
];

/**
 * Technology of a part from its name: `74LS244` → LS, `SN7400N` → TTL, `CD4011BE` → CMOS-4000. `unknown` where the
 * name does not tell.
 */
export function technologyOf(name: string): Technology {
  const plain = plainPartName(name);
  const logic = SERIES_74.exec(plain);
  if (logic !== null) return FAMILIES.get(logic[1] ?? "") ?? "unknown";
  if (SERIES_4000.test(plain)) return "CMOS-4000";
  return OTHER_FAMILIES.find(([pattern]) => pattern.test(plain))?.[1] ?? "unknown";
}

/**
 * The function number that parts of several families share: `74LS244`, `SN74HC244N` → `244`; `CD4011BE`, `74HC4011` →
 * `4011`; null for all other parts. Equal numbers do not promise equal pins.
 */
export function functionNumber(name: string): string | null {
  const plain = plainPartName(name);
  return SERIES_74.exec(plain)?.[2] ?? SERIES_4000.exec(plain)?.[1] ?? null;
}

function plainPartName(name: string): string {
  return name
    .slice(0, 64)
    .toUpperCase()
    .replaceAll(/[\s_-]/g, "");
}
