/* A calendar day typed as three numbers, each in a field of its own: the order of day and month then needs no guessing, in no country.
   Pure; days since 1970-01-01. Must not guess a century. */
import { DAY_MS } from "../../parts/figures";

export const DAY_PARTS = ["day", "month", "year"] as const;
export type DayPart = (typeof DAY_PARTS)[number];
export type DayTyped = Readonly<Record<DayPart, string>>;

export const NO_DAY: DayTyped = { day: "", month: "", year: "" };

/** A day as it is typed; empty fields for none. */
export function dayTyped(day: number | undefined): DayTyped {
  if (day === undefined) return NO_DAY;
  const at = new Date(day * DAY_MS);
  return { day: String(at.getUTCDate()), month: String(at.getUTCMonth() + 1), year: String(at.getUTCFullYear()) };
}

const FORMS: Record<DayPart, RegExp> = { day: /^([1-9]|0[1-9]|[12]\d|3[01])$/, month: /^([1-9]|0[1-9]|1[0-2])$/, year: /^(19|20)\d\d$/ };

/** The day, or which field keeps it from being one; neither where all are empty. `no_such`: each is one, and the month is too short. */
export function readDay(typed: DayTyped): { day?: number; wrong?: DayPart; no_such?: true } {
  const text = (part: DayPart): string => typed[part].trim();
  if (DAY_PARTS.every((part) => text(part) === "")) return {};
  const wrong = DAY_PARTS.find((part) => !FORMS[part].test(text(part)));
  if (wrong) return { wrong };
  const [date, month, year] = DAY_PARTS.map((part) => Number(text(part))) as [number, number, number];
  const at = new Date(Date.UTC(year, month - 1, date));
  return at.getUTCDate() === date ? { day: at.getTime() / DAY_MS } : { wrong: "day", no_such: true };
}
