import { describe, expect, test } from "vitest";
import { readQuantity, type Quantity, type QuantityHint } from "#lib/core/quantity/index.ts";

type Extra = Pick<Quantity, "bound" | "form">;
type Row = [
  text: string,
  value: number,
  unit: Quantity["unit"],
  digits: number,
  resolution: number,
  extra?: Partial<Extra>,
];

function answer([, value, unit, digits, resolution, extra = {}]: Row): ReturnType<typeof readQuantity> {
  return { ok: true, value: { value, unit, digits, resolution, ...extra } };
}

// A value with its digits is the definition of the decimal system; what a doubtful text is comes from the job's brief.
describe("plain numbers in either decimal mark", () => {
  test.each<Row>([
    ["4.87", 4.87, null, 3, 0.01],
    ["4,87", 4.87, null, 3, 0.01],
    ["+5", 5, null, 1, 1],
    ["-12.1", -12.1, null, 3, 0.1],
    ["\u221212.1", -12.1, null, 3, 0.1],
    ["\u201312.1", -12.1, null, 3, 0.1],
    ["\u201112.1", -12.1, null, 3, 0.1],
    ["- 12.1", -12.1, null, 3, 0.1],
    [" 5 ", 5, null, 1, 1],
    ["0", 0, null, 1, 1],
    ["0.00", 0, null, 1, 0.01],
    ["-0", 0, null, 1, 1],
    ["007", 7, null, 1, 1],
    [".5", 0.5, null, 1, 0.1],
    [",5", 0.5, null, 1, 0.1],
    ["0.050", 0.05, null, 2, 0.001],
    ["0,612", 0.612, null, 3, 0.001],
    ["5.00", 5, null, 3, 0.01],
    ["1000", 1000, null, 4, 1],
    ["1.234", 1.234, null, 4, 0.001],
    ["12.345", 12.345, null, 5, 0.001],
    ["1234,5", 1234.5, null, 5, 0.1],
    ["1,2345", 1.2345, null, 5, 0.0001],
  ])("%j is %d %s", (...row) => {
    expect(readQuantity(row[0])).toEqual(answer(row));
  });
});

describe("thousands that cannot be anything else", () => {
  test.each<Row>([
    ["1,234.5", 1234.5, null, 5, 0.1],
    ["1.234,5", 1234.5, null, 5, 0.1],
    ["1,234,567", 1234567, null, 7, 1],
    ["1.234.567", 1234567, null, 7, 1],
    ["1'234", 1234, null, 4, 1],
    ["1’234,5 V", 1234.5, "V", 5, 0.1],
    ["1\u00a0234 V", 1234, "V", 4, 1],
    ["1\u202f234", 1234, null, 4, 1],
    ["3 579 545 Hz", 3579545, "Hz", 7, 1],
    ["1 234.5 Hz", 1234.5, "Hz", 5, 0.1],
  ])("%j is %d %s", (...row) => {
    expect(readQuantity(row[0])).toEqual(answer(row));
  });
});

describe("volts", () => {
  test.each<Row>([
    ["4,87 V", 4.87, "V", 3, 0.01],
    ["4.87V", 4.87, "V", 3, 0.01],
    ["4.87 v", 4.87, "V", 3, 0.01],
    ["+5V", 5, "V", 1, 1],
    ["-5.2V", -5.2, "V", 2, 0.1],
    ["5 volts", 5, "V", 1, 1],
    ["1 volt", 1, "V", 1, 1],
    ["50 mV", 0.05, "V", 2, 0.001],
    ["50mv", 0.05, "V", 2, 0.001],
    ["50 millivolts", 0.05, "V", 2, 0.001],
    ["612 mV", 0.612, "V", 3, 0.001],
    ["20 µV", 0.00002, "V", 2, 0.000001],
    ["20 \u03bcV", 0.00002, "V", 2, 0.000001],
    ["20 uV", 0.00002, "V", 2, 0.000001],
    ["20 microvolts", 0.00002, "V", 2, 0.000001],
    ["12 kV", 12000, "V", 2, 1000],
    ["0.6 V diode", 0.6, "V", 1, 0.1],
    ["0.6 V drop", 0.6, "V", 1, 0.1],
    ["4.9 V to GND", 4.9, "V", 2, 0.1],
    ["5 V DC", 5, "V", 1, 1],
    ["5 Vdc", 5, "V", 1, 1],
    ["5 V d.c.", 5, "V", 1, 1],
    ["5 V=", 5, "V", 1, 1],
  ])("%j is %d %s", (...row) => {
    expect(readQuantity(row[0])).toEqual(answer(row));
  });
});

describe("a.c. volts and amperes say how they were measured", () => {
  test.each<Row>([
    ["50mVpp", 0.05, "V", 2, 0.001, { form: "peak-to-peak" }],
    ["50 mV pp", 0.05, "V", 2, 0.001, { form: "peak-to-peak" }],
    ["50 mVp-p", 0.05, "V", 2, 0.001, { form: "peak-to-peak" }],
    ["50 mV p-p", 0.05, "V", 2, 0.001, { form: "peak-to-peak" }],
    ["50 mV pk-pk", 0.05, "V", 2, 0.001, { form: "peak-to-peak" }],
    ["50 mV peak to peak", 0.05, "V", 2, 0.001, { form: "peak-to-peak" }],
    ["50 mV peak-to-peak", 0.05, "V", 2, 0.001, { form: "peak-to-peak" }],
    ["3.2VPP", 3.2, "V", 2, 0.1, { form: "peak-to-peak" }],
    ["6.3 Vrms", 6.3, "V", 2, 0.1, { form: "rms" }],
    ["6.3 V RMS", 6.3, "V", 2, 0.1, { form: "rms" }],
    ["6.3 V AC", 6.3, "V", 2, 0.1, { form: "rms" }],
    ["6.3 Vac", 6.3, "V", 2, 0.1, { form: "rms" }],
    ["6.3 V a.c.", 6.3, "V", 2, 0.1, { form: "rms" }],
    ["230 V~", 230, "V", 3, 1, { form: "rms" }],
    ["10 Vpk", 10, "V", 2, 1, { form: "peak" }],
    ["10 V peak", 10, "V", 2, 1, { form: "peak" }],
    ["10 Vp", 10, "V", 2, 1, { form: "peak" }],
    ["20 mApp", 0.02, "A", 2, 0.001, { form: "peak-to-peak" }],
  ])("%j is %d %s", (...row) => {
    expect(readQuantity(row[0])).toEqual(answer(row));
  });
});

describe("resistance", () => {
  test.each<Row>([
    ["12 kohm", 12000, "ohm", 2, 1000],
    ["12kohm", 12000, "ohm", 2, 1000],
    ["12 k ohm", 12000, "ohm", 2, 1000],
    ["12kΩ", 12000, "ohm", 2, 1000],
    ["12 k\u2126", 12000, "ohm", 2, 1000],
    ["12 KOHM", 12000, "ohm", 2, 1000],
    ["12 kilohms", 12000, "ohm", 2, 1000],
    ["470 ohms", 470, "ohm", 3, 1],
    ["470Ω", 470, "ohm", 3, 1],
    ["470R", 470, "ohm", 3, 1],
    ["470 r", 470, "ohm", 3, 1],
    ["0R", 0, "ohm", 1, 1],
    ["4.7 Mohm", 4.7e6, "ohm", 2, 1e5],
    ["4.7 MΩ", 4.7e6, "ohm", 2, 1e5],
    ["4.7 megohm", 4.7e6, "ohm", 2, 1e5],
    ["4.7 megohms", 4.7e6, "ohm", 2, 1e5],
    ["4.7 meg ohm", 4.7e6, "ohm", 2, 1e5],
    ["1 GΩ", 1e9, "ohm", 1, 1e9],
    ["35 milliohm", 0.035, "ohm", 2, 0.001],
    ["35 µΩ", 0.000035, "ohm", 2, 0.000001],
  ])("%j is %d %s", (...row) => {
    expect(readQuantity(row[0])).toEqual(answer(row));
  });
});

// RKM code: IEC 60062; R47, 4R7, 470R, 4K7, 4n7, 1u0 are rows of the reference notes.
describe("the letter as decimal mark (IEC 60062)", () => {
  test.each<Row>([
    ["R47", 0.47, "ohm", 2, 0.01],
    ["4R7", 4.7, "ohm", 2, 0.1],
    ["4r7", 4.7, "ohm", 2, 0.1],
    ["0R1", 0.1, "ohm", 1, 0.1],
    ["R001", 0.001, "ohm", 1, 0.001],
    ["12R0", 12, "ohm", 3, 0.1],
    ["49R9", 49.9, "ohm", 3, 0.1],
    ["4k7", 4700, null, 2, 100],
    ["4K7", 4700, null, 2, 100],
    ["4k70", 4700, null, 3, 10],
    ["4k7 ohm", 4700, "ohm", 2, 100],
    ["4k7Ω", 4700, "ohm", 2, 100],
    ["10k0", 10000, null, 3, 100],
    ["1M5", 1.5e6, null, 2, 1e5],
    ["1G2", 1.2e9, null, 2, 1e8],
    ["4n7", 4.7e-9, null, 2, 1e-10],
    ["1u0", 1e-6, null, 2, 1e-7],
    ["2u2", 2.2e-6, null, 2, 1e-7],
    ["2µ2", 2.2e-6, null, 2, 1e-7],
    ["2u2F", 2.2e-6, "F", 2, 1e-7],
    ["4p7 F", 4.7e-12, "F", 2, 1e-13],
    ["n47", 4.7e-10, null, 2, 1e-11],
    ["5V1", 5.1, "V", 2, 0.1],
    ["-5V1", -5.1, "V", 2, 0.1],
  ])("%j is %d %s", (...row) => {
    expect(readQuantity(row[0])).toEqual(answer(row));
  });
});

describe("capacitance, inductance, time, temperature, share, power", () => {
  test.each<Row>([
    ["100n", 1e-7, null, 3, 1e-9],
    ["100nF", 1e-7, "F", 3, 1e-9],
    ["100 NF", 1e-7, "F", 3, 1e-9],
    ["4.7 µF", 4.7e-6, "F", 2, 1e-7],
    ["4,7uF", 4.7e-6, "F", 2, 1e-7],
    ["4.7UF", 4.7e-6, "F", 2, 1e-7],
    ["4700 uF", 0.0047, "F", 4, 1e-6],
    ["22 pF", 2.2e-11, "F", 2, 1e-12],
    ["22 picofarads", 2.2e-11, "F", 2, 1e-12],
    ["10 microfarad", 1e-5, "F", 2, 1e-6],
    ["0.1 F", 0.1, "F", 1, 0.1],
    ["10 uH", 1e-5, "H", 2, 1e-6],
    ["5 mH", 0.005, "H", 1, 0.001],
    ["1 henry", 1, "H", 1, 1],
    ["250 ns", 2.5e-7, "s", 3, 1e-9],
    ["20 ms", 0.02, "s", 2, 0.001],
    ["5 sec", 5, "s", 1, 1],
    ["30 seconds", 30, "s", 2, 1],
    ["45 °C", 45, "degC", 2, 1],
    ["45°", 45, "degC", 2, 1],
    ["45 deg C", 45, "degC", 2, 1],
    ["45 degrees", 45, "degC", 2, 1],
    ["45.5C", 45.5, "degC", 3, 0.1],
    ["50 %", 50, "%", 2, 1],
    ["50 percent", 50, "%", 2, 1],
    ["100 ppm", 100, "ppm", 3, 1],
    ["262144 bit", 262144, "bit", 6, 1],
    ["5 W", 5, "W", 1, 1],
    ["250 mW", 0.25, "W", 3, 0.001],
  ])("%j is %d %s", (...row) => {
    expect(readQuantity(row[0])).toEqual(answer(row));
  });
});

describe("current and frequency", () => {
  test.each<Row>([
    ["0.45 A", 0.45, "A", 2, 0.01],
    ["450 mA", 0.45, "A", 3, 0.001],
    ["450ma", 0.45, "A", 3, 0.001],
    ["2 amps", 2, "A", 1, 1],
    ["120 µA", 0.00012, "A", 3, 0.000001],
    ["5 nA", 5e-9, "A", 1, 1e-9],
    ["3.579545 MHz", 3579545, "Hz", 7, 1],
    ["3,579545 MHz", 3579545, "Hz", 7, 1],
    ["3.58MHz", 3.58e6, "Hz", 3, 1e4],
    ["3.58 Mhz", 3.58e6, "Hz", 3, 1e4],
    ["3.58 MHZ", 3.58e6, "Hz", 3, 1e4],
    ["3.58 megahertz", 3.58e6, "Hz", 3, 1e4],
    ["15.6 kHz", 15600, "Hz", 3, 100],
    ["15.6 khz", 15600, "Hz", 3, 100],
    ["50 Hz", 50, "Hz", 2, 1],
    ["50 hertz", 50, "Hz", 2, 1],
    ["1.2 GHz", 1.2e9, "Hz", 2, 1e8],
    ["1e+3 Hz", 1000, "Hz", 1, 1000],
    ["2.5e-6 s", 2.5e-6, "s", 2, 1e-7],
  ])("%j is %d %s", (...row) => {
    expect(readQuantity(row[0])).toEqual(answer(row));
  });
});

describe("bounds", () => {
  test.each<Row>([
    [">20M", 2e7, null, 2, 1e6, { bound: "above" }],
    ["> 20 MΩ", 2e7, "ohm", 2, 1e6, { bound: "above" }],
    ["≥ 2.4 V", 2.4, "V", 2, 0.1, { bound: "above" }],
    [">= 2.4 V", 2.4, "V", 2, 0.1, { bound: "above" }],
    ["over 20 Mohm", 2e7, "ohm", 2, 1e6, { bound: "above" }],
    ["more than 1k", 1000, null, 1, 1000, { bound: "above" }],
    ["<1 ohm", 1, "ohm", 1, 1, { bound: "below" }],
    ["≤ 50 mVpp", 0.05, "V", 2, 0.001, { bound: "below", form: "peak-to-peak" }],
    ["below 0.5R", 0.5, "ohm", 1, 0.1, { bound: "below" }],
    ["less than 2 ohm", 2, "ohm", 1, 1, { bound: "below" }],
    ["~5V", 5, "V", 1, 1, { bound: "about" }],
    ["≈ 5 V", 5, "V", 1, 1, { bound: "about" }],
    ["about 5 V", 5, "V", 1, 1, { bound: "about" }],
    ["ca. 4k7", 4700, null, 2, 100, { bound: "about" }],
    ["approx. -12 V", -12, "V", 2, 1, { bound: "about" }],
  ])("%j is %d %s", (...row) => {
    expect(readQuantity(row[0])).toEqual(answer(row));
  });
});

describe("on a diode test a bare integer is millivolts", () => {
  test.each<Row>([
    ["612", 0.612, "V", 3, 0.001],
    ["20", 0.02, "V", 2, 0.001],
    ["3000", 3, "V", 4, 0.001],
    ["3", 0.003, "V", 1, 0.001],
    ["003", 0.003, "V", 1, 0.001],
    ["0", 0, "V", 1, 0.001],
    ["0.612", 0.612, "V", 3, 0.001],
    [".612", 0.612, "V", 3, 0.001],
    ["0,612", 0.612, "V", 3, 0.001],
    ["1.85", 1.85, "V", 3, 0.01],
    ["612mV", 0.612, "V", 3, 0.001],
    ["612 mV", 0.612, "V", 3, 0.001],
    ["0.61 V", 0.61, "V", 2, 0.01],
    // 1.234 V and 1234 mV are the same reading, so there is nothing to ask.
    ["1,234", 1.234, "V", 4, 0.001],
    [">612", 0.612, "V", 3, 0.001, { bound: "above" }],
  ])("%j is %d %s", (...row) => {
    expect(readQuantity(row[0], { kind: "diode" })).toEqual(answer(row));
  });
});

describe("a d.c. voltage check gives volts", () => {
  test.each<Row>([
    ["4.87", 4.87, "V", 3, 0.01],
    ["12", 12, "V", 2, 1],
    ["50m", 0.05, "V", 2, 0.001],
    ["-12.1", -12.1, "V", 3, 0.1],
  ])("%j is %d %s", (...row) => {
    expect(readQuantity(row[0], { kind: "dc-voltage" })).toEqual(answer(row));
  });
});
describe("a resistance check gives ohms", () => {
  test.each<Row>([
    ["470", 470, "ohm", 3, 1],
    ["4k7", 4700, "ohm", 2, 100],
    ["1", 1, "ohm", 1, 1],
    ["2M2", 2.2e6, "ohm", 2, 1e5],
    ["4.7 meg", 4.7e6, "ohm", 2, 1e5],
  ])("%j is %d %s", (...row) => {
    expect(readQuantity(row[0], { kind: "resistance" })).toEqual(answer(row));
  });
});
describe("an ESR check takes milliohms", () => {
  test.each<Row>([
    ["35 mΩ", 0.035, "ohm", 2, 0.001],
    ["35 mohm", 0.035, "ohm", 2, 0.001],
    ["35 m", 0.035, "ohm", 2, 0.001],
    ["0.12", 0.12, "ohm", 2, 0.01],
  ])("%j is %d %s", (...row) => {
    expect(readQuantity(row[0], { kind: "esr" })).toEqual(answer(row));
  });
});
describe("a capacitance check gives farads", () => {
  test.each<Row>([
    ["100n", 1e-7, "F", 3, 1e-9],
    ["2u2", 2.2e-6, "F", 2, 1e-7],
    ["470 u", 4.7e-4, "F", 3, 1e-6],
    ["0", 0, "F", 1, 1],
  ])("%j is %d %s", (...row) => {
    expect(readQuantity(row[0], { kind: "capacitance" })).toEqual(answer(row));
  });
});
describe("a frequency check gives hertz", () => {
  test.each<Row>([
    ["4M", 4e6, "Hz", 1, 1e6],
    ["15.6k", 15600, "Hz", 3, 100],
    ["3579545", 3579545, "Hz", 7, 1],
    ["0", 0, "Hz", 1, 1],
  ])("%j is %d %s", (...row) => {
    expect(readQuantity(row[0], { kind: "frequency" })).toEqual(answer(row));
  });
});
describe("a current check gives amperes", () => {
  test.each<Row>([
    ["0.45", 0.45, "A", 2, 0.01],
    ["450m", 0.45, "A", 3, 0.001],
  ])("%j is %d %s", (...row) => {
    expect(readQuantity(row[0], { kind: "current" })).toEqual(answer(row));
  });
});
describe("a ripple check gives volts", () => {
  test.each<Row>([["0.05", 0.05, "V", 1, 0.01]])("%j is %d %s", (...row) => {
    expect(readQuantity(row[0], { kind: "ripple" })).toEqual(answer(row));
  });
});
describe("a temperature check gives degrees", () => {
  test.each<Row>([["45", 45, "degC", 2, 1]])("%j is %d %s", (...row) => {
    expect(readQuantity(row[0], { kind: "temperature" })).toEqual(answer(row));
  });
});
describe("a unit as hint settles what a bare number is", () => {
  test.each<Row>([["50", 50, "Hz", 2, 1]])("%j is %d %s", (...row) => {
    expect(readQuantity(row[0], { unit: "Hz" })).toEqual(answer(row));
  });
});

describe("a doubtful text gets a question and no number", () => {
  const asked: [text: string, hint: QuantityHint, question: RegExp][] = [
    ["5 M V", { kind: "dc-voltage" }, /Milli or mega\? Write mV/],
    ["5 MV", {}, /Milli or mega\? Write mV/],
    ["5M", { kind: "dc-voltage" }, /Milli or mega\? Write mV/],
    ["1M5", { kind: "dc-voltage" }, /Milli or mega/],
    ["5 Mv", {}, /Milli or mega/],
    ["20 MA", {}, /Milli or mega\? Write mA/],
    ["20 Ms", {}, /Milli or mega\? Write ms/],
    ["5 MH", {}, /Milli or mega\? Write mH/],
    ["10 m", { kind: "resistance" }, /Milli or mega\? Write MΩ/],
    ["10m", { kind: "continuity" }, /Milli or mega\? Write MΩ/],
    ["10 mΩ", { kind: "resistance" }, /Milli or mega\? Write MΩ/],
    ["10 mohm", {}, /Milli or mega/],
    ["4m7", { kind: "resistance" }, /Milli or mega/],
    ["10 m", {}, /Milli or mega/],
    ["35 M", { kind: "temperature" }, /Milli or mega/],
    ["3.58 mHz", {}, /Milli or mega\? Write MHz/],
    ["3.58 mhz", { kind: "frequency" }, /Milli or mega\? Write MHz/],
    ["10 mF", {}, /Microfarads/],
    ["10 MF", {}, /Microfarads/],
    ["10 mfd", {}, /Microfarads/],
    ["4m7", { kind: "capacitance" }, /Microfarads/],
    ["100n", { kind: "resistance" }, /Which unit/],
    ["4k7", { kind: "capacitance" }, /Which unit/],
    ["45K", { kind: "temperature" }, /Which unit/],
    ["1,234", {}, /Write 1\.234 if so, or 1234/],
    ["1,234 V", {}, /decimal mark/],
    ["12,345 ohm", {}, /decimal mark/],
    ["-1,234", { kind: "dc-voltage" }, /decimal mark/],
    ["1 234", {}, /One number or several/],
    ["612 610", { kind: "diode" }, /One number or several/],
    ["4E7", { kind: "resistance" }, /4R7/],
    ["1e3", {}, /power of ten/],
    ["100", { kind: "capacitance" }, /pF, nF or µF/],
    ["0.1", { kind: "capacitance" }, /pF, nF or µF/],
    ["3.58", { kind: "frequency" }, /Hz, kHz or MHz/],
    ["50", { kind: "frequency" }, /Hz, kHz or MHz/],
    ["35.2", { kind: "current" }, /mA or A/],
    ["120", { kind: "current" }, /mA or A/],
    ["50", { kind: "ripple" }, /mV or V/],
    ["3001", { kind: "diode" }, /Millivolts or volts/],
    ["5.5", { kind: "diode" }, /Millivolts or volts/],
  ];
  test.each(asked)("%j with %j", (text, hint, question) => {
    const read = readQuantity(text, hint);
    expect(read.ok ? "" : read.problem.question).toMatch(question);
  });
});

describe("what is no quantity says why", () => {
  const refused: [text: string, hint: QuantityHint, reason: string][] = [
    ["", {}, "Nothing was typed."],
    ["   ", {}, "Nothing was typed."],
    ["abc", {}, "“abc” does not begin with a number."],
    ["V", {}, "“V” does not begin with a number."],
    ["5 furlongs", {}, "“furlongs” is no unit known here."],
    ["20 MS", {}, "“MS” is no unit known here."],
    ["5 h", {}, "“h” is no unit known here."],
    ["1.2.3", {}, "“1.2.3” does not begin with a number."],
    ["1,2,3", {}, "“1,2,3” does not begin with a number."],
    ["5..6", {}, "“5..6” does not begin with a number."],
    ["5 V 6", {}, "“V 6” is no unit known here."],
    ["5 VA", {}, "“VA” is no unit known here."],
    ["104 °F", {}, "“°F” is no unit known here."],
    ["constructor", {}, "“constructor” does not begin with a number."],
    ["5 constructor", {}, "“constructor” is no unit known here."],
    ["5 __proto__", {}, "“__proto__” is no unit known here."],
    ["4k7 V1", {}, "“k7 V1” is no unit known here."],
    ["4.7 V", { kind: "resistance" }, "“4.7 V” is a voltage; this check is read in Ω."],
    ["4R7", { kind: "dc-voltage" }, "“4R7” is a resistance; this check is read in V."],
    ["250 ns", { kind: "frequency" }, "“250 ns” is a time; this check is read in Hz."],
    ["5 V", { unit: "A" }, "“5 V” is a voltage; this check is read in A."],
    ["1.2345678901234567", {}, "“1.2345678901234567” has more digits than any instrument shows."],
    ["1e+999 V", {}, "“1e+999 V” is outside of anything that can be measured."],
    ["1e-999 V", {}, "“1e-999 V” is outside of anything that can be measured."],
    ["1".repeat(81), {}, "This is too long to be a reading."],
  ];
  test.each(refused)("%j with %j", (text, hint, reason) => {
    expect(readQuantity(text, hint)).toEqual({ ok: false, problem: { reason } });
  });
});
