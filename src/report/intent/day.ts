import { dayOfYear } from "../../core/utc.js";

/** The number of a day like `2026-06-21` in its year; null where it is no day. */
export function dayOfYearOf(day: string): number | null {
  const [year, month, date] = day.trim().split("-").map(Number);
  return dayOfYear(year ?? 0, month ?? 0, date ?? 0) ?? null;
}
