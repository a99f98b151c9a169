import { clean } from "./clean.ts";
import { codeParts, normalForm } from "./code.ts";
import { readDateCode } from "./date-code.ts";

export type MarkingKind = "logic" | "memory" | "regulator" | "date-code" | "house-code";

/** One thing that a marking may say. */
export interface MarkingReading {
  kind: MarkingKind;
  /** In plain words. */
  meaning: string;
  fields: Record<string, string | number>;
  /** Between 0 and 1: how sure the reading is by itself, before the place on the package is looked at. */
  confidence: number;
  /** Where the rule comes from. */
  source: string;
}

export interface MarkingRead {
  input: string;
  /** Normal form of the part's code, without a date code beside it. */
  key: string;
  /** The most certain first. */
  readings: MarkingReading[];
}

/** How sure each rule is. Chosen by hand: the order is what counts; places on a package and records decide further. */
const CONFIDENCE = {
  /** A number with its family letters can hardly be anything else. */
  fullNumber: 0.95,
  /** A bare number of the right shape. */
  bareNumber: 0.75,
  /** Four digits that are a week of a year in which chips were made. */
  dateCode: 0.6,
  /** The same four digits when they are an industry number too. */
  dateCodeOfNumber: 0.4,
  /** Week 53 of a year with 52. */
  irregularWeek: 0.2,
  houseCode: 0.2,
} as const;

const MEMORY_SOURCE = "industry numbering, from memory";

/** 54/74 numbers: temperature range, family, function. */
const LOGIC_54_74 = /^(54|74)(ls|als|as|s|f|h|l|hct|hc|act|ac|ahct|ahc|bct|fct|c|lvc|lv)?(\d{2,5})$/;
const CMOS_4000 = /^(4[05]\d\d|40\d{3})(ub|b|a)?$/;
const EPROM_27 = /^27(c)?(08|16|32|64|128|256|512|010|020|040)([a-z])?$/;
const REGULATOR = /^(78|79)(l|m|s)?(05|06|08|09|10|12|15|18|20|24)[ac]?$/;

/** Bits of the 27-series by its number. */
const EPROM_KILOBITS: Readonly<Record<string, number>> = { "010": 1024, "020": 2048, "040": 4096, "08": 8 };

/** Dynamic memories: words and bits a word. */
const DRAMS: Readonly<Record<string, readonly [string, number]>> = {
  "4116": ["16 K", 1],
  "4132": ["32 K", 1],
  "4164": ["64 K", 1],
  "41256": ["256 K", 1],
  "4416": ["16 K", 4],
  "4464": ["64 K", 4],
  "41464": ["64 K", 4],
};

function readLogic(core: string): MarkingReading | null {
  const match = LOGIC_54_74.exec(core);
  if (match) {
    const [, series = "", family, number = ""] = match;
    return {
      kind: "logic",
      meaning: `${series}-series logic, function ${number}${family ? `, family ${family.toUpperCase()}` : ", standard TTL"}`,
      fields: { series, family: family?.toUpperCase() ?? "TTL", function: number },
      confidence: family ? CONFIDENCE.fullNumber : CONFIDENCE.bareNumber,
      source: "54/74 numbering, common practice",
    };
  }
  const cmos = CMOS_4000.exec(core);
  if (!cmos) return null;
  return {
    kind: "logic",
    meaning: `4000-series CMOS logic, function ${cmos[1] ?? ""}`,
    fields: {
      series: "4000",
      family: "CMOS",
      function: cmos[1] ?? "",
      ...(cmos[2] && { outputs: cmos[2].toUpperCase() }),
    },
    confidence: cmos[2] ? CONFIDENCE.fullNumber : CONFIDENCE.bareNumber,
    source: "4000-series numbering, common practice",
  };
}

/** Two digits are tens of nanoseconds (TI SMLS256H for the 27C256), three are nanoseconds, one is a maker's own grade. */
function speedFields(grade: string | undefined): Record<string, string | number> {
  if (grade === undefined) return {};
  if (grade.length === 1) return { grade };
  return { accessNs: grade.length === 2 ? Number(grade) * 10 : Number(grade) };
}

function readMemory(core: string, grade: string | undefined): MarkingReading | null {
  const eprom = EPROM_27.exec(core);
  if (eprom) {
    const size = eprom[2] ?? "";
    const kilobits = EPROM_KILOBITS[size] ?? Number(size);
    return {
      kind: "memory",
      meaning: `EPROM or PROM of ${kilobits} Kbit, ${kilobits / 8} K × 8${eprom[1] ? ", CMOS" : ""}: holds contents`,
      fields: { kilobits, organisation: `${kilobits / 8} K × 8`, ...speedFields(grade) },
      confidence: CONFIDENCE.fullNumber,
      source: "27-series numbering; speed as TI SMLS256H",
    };
  }
  const dram = DRAMS[core];
  if (!dram) return null;
  const [words, bits] = dram;
  return {
    kind: "memory",
    meaning: `dynamic memory, ${words} × ${bits}`,
    fields: { organisation: `${words} × ${bits}`, ...speedFields(grade) },
    confidence: CONFIDENCE.bareNumber,
    source: MEMORY_SOURCE,
  };
}

function readRegulator(core: string): MarkingReading | null {
  const match = REGULATOR.exec(core);
  if (!match) return null;
  const volts = Number(match[3]) * (match[1] === "79" ? -1 : 1);
  return {
    kind: "regulator",
    meaning: `fixed voltage regulator, ${volts > 0 ? "+" : ""}${volts} V`,
    fields: { volts, ...(match[2] && { current: match[2].toUpperCase() }) },
    confidence: match[2] ? CONFIDENCE.fullNumber : CONFIDENCE.bareNumber,
    source: "78/79 numbering, common practice",
  };
}

function readDate(token: string, alsoNumber: boolean): MarkingReading | null {
  const date = readDateCode(token);
  if (!date) return null;
  const sure = alsoNumber ? CONFIDENCE.dateCodeOfNumber : CONFIDENCE.dateCode;
  return {
    kind: "date-code",
    meaning:
      `date code: about week ${date.week} of ${date.year} (${date.from} to ${date.to})` +
      (date.regular ? "" : "; unlikely, that year has 52 weeks"),
    fields: { year: date.year, week: date.week, from: date.from, to: date.to },
    confidence: date.regular ? sure : CONFIDENCE.irregularWeek,
    source: "year and week as ISO 8601; makers differ by a week or two",
  };
}

function readPart(code: string): MarkingReading[] {
  const { whole, core, grade } = codeParts(code);
  // A prefix may hide a number (MC14011), and a letter of the list may belong to it: both forms are tried.
  for (const form of [core, whole]) {
    const found = [readMemory(form, grade), readLogic(form), readRegulator(form)].filter((reading) => reading !== null);
    if (found.length > 0) return found;
  }
  return [];
}

function houseCode(): MarkingReading {
  return {
    kind: "house-code",
    meaning: "a maker's own number: nothing can be read from it; only records of it can say what it is",
    fields: {},
    confidence: CONFIDENCE.houseCode,
    source: "no industry rule fits",
  };
}

interface TokenRead {
  token: string;
  part: MarkingReading[];
  date: MarkingReading | null;
}

function readToken(token: string): TokenRead {
  const part = readPart(token);
  return { token, part, date: readDate(token, part.length > 0) };
}

/**
 * What the print on a package says: industry numbers of logic, memories and regulators, and four-digit date codes;
 * anything else is a house code. Several words or lines may be given. A number that is also a date (7404) gets both
 * readings. Text without letters or digits gives none.
 */
export function readMarking(text: string): MarkingRead {
  const tokens = clean(text)
    .split(" ")
    .filter((token) => normalForm(token) !== "");
  const reads = tokens.length === 1 ? tokens.map(readToken) : readSeveral(tokens);
  const readings = reads.flatMap(({ part, date }) => [...part, ...(date ? [date] : [])]);
  const codes = reads.filter(({ part, date }) => part.length > 0 || !date);
  const named = codes.find(({ part }) => part.length > 0);
  const code = normalForm(named?.token ?? codes.map(({ token }) => token).join(" "));
  if (code !== "" && !named) readings.push(houseCode());
  return {
    input: text,
    key: code || normalForm(text),
    readings: readings.toSorted((a, b) => b.confidence - a.confidence),
  };
}

/** `74 LS 244` is one number; `SN74LS244N 8432` is a number and a date. */
function readSeveral(tokens: readonly string[]): TokenRead[] {
  const reads = tokens.map(readToken);
  if (reads.some(({ part }) => part.length > 0)) return reads;
  const joined = readToken(tokens.join(" "));
  return joined.part.length > 0 ? [joined] : reads;
}
