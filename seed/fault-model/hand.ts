import type { Random } from "./random.ts";

/** How somebody writes numbers at the bench. */
export interface Hand {
  volts: (value: number) => string;
  millivolts: (value: number) => string;
  ohms: (value: number) => string;
  hertz: (value: number) => string;
  diode: (value: number) => string;
}

/** Blank before the unit, none, or no unit at all on volts, where the kind of check says it. */
export type Habit = "spaced" | "tight" | "bare";

export function handOf(habit: Habit): Hand {
  const gap = habit === "spaced" ? " " : "";
  return {
    volts: (value) => `${voltDigits(value)}${habit === "bare" ? "" : `${gap}V`}`,
    millivolts: (value) => `${Math.round(value)}${gap}mVpp`,
    ohms: (value) => ohmDigits(value, gap),
    hertz: (value) => hertzDigits(value, gap),
    diode: (value) => `${value.toFixed(3)}${habit === "bare" ? "" : `${gap}V`}`,
  };
}

/** As a 4,000-count meter shows it. */
function voltDigits(value: number): string {
  const size = Math.abs(value);
  const text = value.toFixed(size < 0.4 ? 3 : size < 20 ? 2 : 1);
  return Number(text) === 0 ? text.replace("-", "") : text;
}

function ohmDigits(value: number, gap: string): string {
  if (value < 100) return `${value.toFixed(1)}${gap}ohm`;
  if (value < 1000) return `${Math.round(value)}${gap}ohm`;
  return `${(value / 1000).toFixed(value < 10_000 ? 2 : 1)}${gap}k`;
}

function hertzDigits(value: number, gap: string): string {
  if (value === 0) return `0${gap}Hz`;
  if (value < 1000) return `${value.toFixed(1)}${gap}Hz`;
  return value < 1e6 ? `${(value / 1e3).toFixed(2)}${gap}kHz` : `${(value / 1e6).toFixed(4)}${gap}MHz`;
}

/** A checksum of four figures, as a programmer shows it. */
export function checksum(random: Random): string {
  return random.whole(0x1000, 0xffff).toString(16).toUpperCase();
}
