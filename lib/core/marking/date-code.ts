// Four-digit date codes: year and week, read as ISO 8601 weeks. Weeks are worked out without a clock or a calendar.

/** A day of the proleptic Gregorian calendar. */
interface Day {
  year: number;
  month: number;
  day: number;
}

/** A four-digit date code read as year and week. */
export interface DateCode {
  year: number;
  week: number;
  /** First and last day of that ISO week, `YYYY-MM-DD`. */
  from: string;
  to: string;
  /** False for week 53 of a year with 52: printed now and then, so never refused. */
  regular: boolean;
}

/** Years that a date code can mean. Before the first no such chips were made; after the last none is on a club's bench. */
const YEARS = { first: 1965, last: 2026 } as const;

const EPOCH_WEEKDAY = 3; // 1970-01-01 was a Thursday, counted from Monday = 0.

/** Days from 1970-01-01. The year begins in March, so that the leap day is its last. */
function dayNumber({ year, month, day }: Day): number {
  const y = month <= 2 ? year - 1 : year;
  const dayOfYear = Math.floor((153 * ((month + 9) % 12) + 2) / 5) + day - 1;
  return y * 365 + Math.floor(y / 4) - Math.floor(y / 100) + Math.floor(y / 400) + dayOfYear - 719_468;
}

function dayOf(number: number): Day {
  let year = 1969 + Math.floor(number / 365.2425);
  while (dayNumber({ year: year + 1, month: 1, day: 1 }) <= number) year++;
  let month = 1;
  while (month < 12 && dayNumber({ year, month: month + 1, day: 1 }) <= number) month++;
  return { year, month, day: number - dayNumber({ year, month, day: 1 }) + 1 };
}

function printDay(number: number): string {
  const { year, month, day } = dayOf(number);
  return `${year}-${String(month).padStart(2, "0")}-${String(day).padStart(2, "0")}`;
}

/** The day number of Monday of ISO week 1: the week that holds 4 January. */
function firstMonday(year: number): number {
  const fourth = dayNumber({ year, month: 1, day: 4 });
  return fourth - ((((fourth + EPOCH_WEEKDAY) % 7) + 7) % 7);
}

/** How many ISO 8601 weeks the year has: 52 or 53. */
export function weeksInYear(year: number): number {
  return (firstMonday(year + 1) - firstMonday(year)) / 7;
}

/** Reads four digits as year and week of 1965 to 2026; null when they are no such date (weeks 00 and 54 up are none). */
export function readDateCode(digits: string): DateCode | null {
  const match = /^(\d\d)(\d\d)$/.exec(digits);
  if (!match) return null;
  const short = Number(match[1]);
  const year = short + 1900 >= YEARS.first ? short + 1900 : short + 2000;
  const week = Number(match[2]);
  if (year > YEARS.last || week < 1 || week > 53) return null;
  const monday = firstMonday(year) + (week - 1) * 7;
  return { year, week, from: printDay(monday), to: printDay(monday + 6), regular: week <= weeksInYear(year) };
}
