import { describe, expect, test } from "vitest";
import { pinRole, pinRoles, supplyVolts } from "#lib/core/pinout/index.ts";
import type { PinRole, PinType } from "#lib/core/shared/index.ts";

// Names as data sheets of the period print them; roles by common practice, no source.
const NAMED: Partial<Record<PinRole, string>> = {
  supply: "VCC VDD VEE VBB +5V -12V 5V +3.3V 3V3 V+ V- VS VPP AVDD VCC1",
  ground: "GND VSS AGND DGND GND1 0V VSSA",
  clock: "CLK CK CP CLOCK CLKA 1CLK 2CP SCK SCLK RCLK SRCLK PHI2 Φ0 TXC",
  reset: "RESET RST RES MR CLR 1CLR MCLR R 1R",
  select: "CS CE CS1 CE2 SS",
  enable: "OE OEa 1OE G G1 G2A E EN INH 1G",
  address: "A0 A15 MA3 A10",
  data: "D0 D7 Q3 DQ1 DB4 AD7 DIN DOUT I/O3 QA 1D 2Q PA0 P1.7",
  interrupt: "INT IRQ NMI FIRQ INTR IPL0",
  oscillator: "XTAL XTAL1 X1 X2 EXTAL OSC OSCOUT XIN",
  control: "WE WR RD R/W RAS CAS LE ALE DIR HALT WAIT BUSRQ M1 MREQ DTACK S0 PGM",
  analog: "VREF IN+ IN- + - AIN3 REXT",
  unused: "NC DNC N/C",
  input: "J K I3 1B",
};

describe("the role of a pin from its name", () => {
  test.each(Object.entries(NAMED))("%s: %s", (role, names) => {
    const pins = names.split(" ");
    expect(pins.map((name) => [name, pinRole(name, "input")])).toEqual(pins.map((name) => [name, role]));
  });

  test.each<[string, PinType, PinRole]>([
    ["VCC", "power-in", "supply"],
    ["EP", "power-in", "supply"],
    ["GND", "power-in", "ground"],
    ["GND", "passive", "ground"],
    ["D0", "no-connect", "unused"],
    ["A0", "do-not-connect", "unused"],
    ["A0", "bidirectional", "data"],
    ["A0", "three-state", "address"],
    ["Y3", "output", "output"],
    ["E", "open-collector", "output"],
    ["S0", "output", "output"],
    ["R1", "passive", "unknown"],
    ["PC6/RESET", "bidirectional", "data"],
    ["RESET/PC6", "bidirectional", "reset"],
    ["", "input", "input"],
    ["", "passive", "unknown"],
  ])("%s of type %s: %s", (name, type, role) => {
    expect(pinRole(name, type)).toBe(role);
  });

  test("A beside B is an operand, A alone an address, and the wedge of a clock tells a clock", () => {
    const input = (name: string, clockShape = false) => ({ name, type: "input" as const, clockShape });
    expect(pinRoles([input("A0"), input("B0"), input("A1"), input("C", true), input("C")])).toEqual([
      "data",
      "data",
      "address",
      "clock",
      "input",
    ]);
  });
});

test.each([
  ["+5V", 5],
  ["-12V", -12],
  ["5V", 5],
  ["3V3", 3.3],
  ["-5.2V", -5.2],
  ["+ 12 V", 12],
  ["VCC", null],
  ["0V", null],
  ["V+", null],
])("the name %s says %s volts", (name, volts) => {
  expect(supplyVolts(name)).toBe(volts);
});
