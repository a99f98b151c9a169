import { expect, test } from "vitest";
import { functionNumber, technologyOf } from "#lib/core/pinout/index.ts";
import type { Technology } from "#lib/core/shared/index.ts";

// Family letters: common practice, no source.
test.each<[string, Technology, string | null]>([
  ["74LS244", "LS", "244"],
  ["SN74LS244N", "LS", "244"],
  ["74ls244", "LS", "244"],
  ["SN7400N", "TTL", "00"],
  ["7490", "TTL", "90"],
  ["5404", "TTL", "04"],
  ["74S00", "S", "00"],
  ["74ALS573", "ALS", "573"],
  ["74F245", "F", "245"],
  ["MC74HC4051AN", "HC", "4051"],
  ["74HCT245", "HCT", "245"],
  ["74AHCT04", "CMOS", "04"],
  ["74LVC1G08", "CMOS", "1G08"],
  ["SN74LV4T125", "CMOS", "125"],
  ["74CBTLV3257", "CMOS", "3257"],
  ["CD4011BE", "CMOS-4000", "4011"],
  ["HEF40106BP", "CMOS-4000", "40106"],
  ["4538", "CMOS-4000", "4538"],
  ["27C256", "CMOS", null],
  ["27128", "NMOS", null],
  ["4164", "NMOS", null],
  ["6502", "NMOS", null],
  ["65C02", "CMOS", null],
  ["MC10124", "ECL", null],
  ["7805", "analog", null],
  ["LM358", "analog", null],
  ["VQ4-0061", "unknown", null],
  ["", "unknown", null],
])("%s: %s, function %s", (name, technology, number) => {
  expect([technologyOf(name), functionNumber(name)]).toEqual([technology, number]);
});
