import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readDateCode, readMarking, weeksInYear } from "#lib/core/marking/index.ts";

describe("readDateCode", () => {
  // ISO 8601 weeks: 8432, 8501 and 8701 as worked out in the project's list of references; the others from a calendar.
  test.each([
    ["8432", { year: 1984, week: 32, from: "1984-08-06", to: "1984-08-12", regular: true }],
    ["8501", { year: 1985, week: 1, from: "1984-12-31", to: "1985-01-06", regular: true }],
    ["8701", { year: 1987, week: 1, from: "1986-12-29", to: "1987-01-04", regular: true }],
    ["8453", { year: 1984, week: 53, from: "1984-12-31", to: "1985-01-06", regular: false }],
    ["8153", { year: 1981, week: 53, from: "1981-12-28", to: "1982-01-03", regular: true }],
    ["8400", null],
    ["8454", null],
    ["8499", null],
    ["4164", null],
    ["2732", null],
    ["843", null],
    ["84a2", null],
  ])("%s", (digits, date) => {
    expect(readDateCode(digits)).toEqual(date);
  });

  /** ISO week by the definition (the week belongs to the year of its Thursday), with the platform's own calendar. */
  function isoWeek(day: Date): { year: number; week: number } {
    const thursday = new Date(day.getTime() + (3 - ((day.getUTCDay() + 6) % 7)) * 86_400_000);
    const year = thursday.getUTCFullYear();
    return { year, week: 1 + Math.floor((thursday.getTime() - Date.UTC(year, 0, 1)) / (7 * 86_400_000)) };
  }

  test("every week of 1965 to 2026 begins and ends where the platform's calendar says", () => {
    for (let year = 1965; year <= 2026; year++) {
      expect(weeksInYear(year)).toBe(isoWeek(new Date(Date.UTC(year, 11, 28))).week);
      for (let week = 1; week <= weeksInYear(year); week++) {
        const digits = `${String(year % 100).padStart(2, "0")}${String(week).padStart(2, "0")}`;
        const date = readDateCode(digits);
        expect(isoWeek(new Date(date?.from ?? ""))).toEqual({ year, week });
        expect(Date.parse(date?.to ?? "") - Date.parse(date?.from ?? "")).toBe(6 * 86_400_000);
      }
    }
  });
});

describe("readMarking", () => {
  const short = (text: string) => {
    const { key, readings } = readMarking(text);
    return { key, readings: readings.map(({ kind, fields }) => ({ kind, fields })) };
  };

  test("a logic number and the date beside it", () => {
    expect(short("SN74LS244N\n8432")).toEqual({
      key: "sn74ls244n",
      readings: [
        { kind: "logic", fields: { series: "74", family: "LS", function: "244" } },
        { kind: "date-code", fields: { year: 1984, week: 32, from: "1984-08-06", to: "1984-08-12" } },
      ],
    });
  });

  test.each(["7404", "7432"])("%s is a number and a date: both are shown, the number first", (text) => {
    expect(short(text).readings.map(({ kind }) => kind)).toEqual(["logic", "date-code"]);
  });

  test("7805 is a regulator and a week of 1978", () => {
    expect(short("7805").readings.map(({ kind }) => kind)).toEqual(["regulator", "date-code"]);
  });

  // Size and speed of the 27C256 family: TI SMLS256H.
  test.each([
    ["27C256-15", { kilobits: 256, organisation: "32 K × 8", accessNs: 150 }],
    ["27C256-20", { kilobits: 256, organisation: "32 K × 8", accessNs: 200 }],
    ["27C256-25", { kilobits: 256, organisation: "32 K × 8", accessNs: 250 }],
    ["2764", { kilobits: 64, organisation: "8 K × 8" }],
  ])("%s is a memory with contents", (text, fields) => {
    expect(short(text).readings[0]).toEqual({ kind: "memory", fields });
  });

  test("a one-digit grade of a memory is the maker's own and no time", () => {
    expect(short("D4164-2").readings).toEqual([{ kind: "memory", fields: { organisation: "64 K × 1", grade: "2" } }]);
  });

  test.each([
    ["CD4011BE", "4011"],
    ["MC14011BCP", "4011"],
    ["40106", "40106"],
  ])("%s is CMOS function %s", (text, number) => {
    expect(readMarking(text).readings[0]?.fields).toMatchObject({ series: "4000", function: number });
  });

  test("LM7905CT is a negative regulator", () => {
    expect(short("LM7905CT").readings).toEqual([{ kind: "regulator", fields: { volts: -5 } }]);
  });

  test("74 LS 244 in three pieces is one number", () => {
    expect(short("74 LS 244")).toEqual({
      key: "74ls244",
      readings: [{ kind: "logic", fields: { series: "74", family: "LS", function: "244" } }],
    });
  });

  test("a house code is said to be one, and no more", () => {
    expect(readMarking("VQ4-0061-03")).toEqual({
      input: "VQ4-0061-03",
      key: "vq4006103",
      readings: [
        {
          kind: "house-code",
          meaning: "a maker's own number: nothing can be read from it; only records of it can say what it is",
          fields: {},
          confidence: 0.2,
          source: "no industry rule fits",
        },
      ],
    });
  });

  test("week 53 of a year with 52 is read as unlikely, not refused", () => {
    const [reading] = readMarking("8453").readings;
    expect([reading?.confidence, reading?.meaning.includes("unlikely")]).toEqual([0.2, true]);
  });

  test("nothing gives nothing", () => {
    expect(readMarking(" — ")).toEqual({ input: " — ", key: "", readings: [] });
  });

  test("any text is read, with confidences between 0 and 1 and the most certain first", () => {
    fc.assert(
      fc.property(fc.string({ unit: "grapheme", maxLength: 80 }), (text) => {
        const sure = readMarking(text).readings.map(({ confidence }) => confidence);
        expect(sure.every((one) => one > 0 && one < 1)).toBe(true);
        expect(sure).toEqual(sure.toSorted((a, b) => b - a));
      }),
    );
  });
});
