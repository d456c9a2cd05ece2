const PATTERN =
  /^(\d{4})-(\d{2})-(\d{2})[Tt ](\d{2}):(\d{2})(?::(\d{2})(?:\.(\d{1,9}))?)?(?:[Zz]|([+-])(\d{2}):?(\d{2}))$/;

const MONTH_DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

/** Whether a year of the Gregorian calendar has 366 days. */
export function isLeapYear(year: number): boolean {
  return (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
}

/** The number of days of a month (1 to 12) of the Gregorian calendar, 0 for any other month number. */
export function daysInMonth(year: number, month: number): number {
  return month === 2 && isLeapYear(year) ? 29 : (MONTH_DAYS[month - 1] ?? 0);
}

/** Days from 2000-01-01 to a date of the Gregorian calendar, negative before it. */
function daysFrom2000(year: number, month: number, day: number): number {
  const before = year - 1;
  let days =
    365 * (year - 2000) + Math.floor(before / 4) - Math.floor(before / 100) + Math.floor(before / 400);
  days -= Math.floor(1999 / 4) - Math.floor(1999 / 100) + Math.floor(1999 / 400);
  for (let m = 1; m < month; m += 1) days += daysInMonth(year, m);
  return days + day - 1;
}

/**
 * Reads an instant as ISO 8601 writes it, with its offset from UTC: `2026-06-21T12:00:00Z`,
 * `2026-06-21T14:00+02:00`. A text without `Z` or an offset names no instant and is refused.
 *
 * @param text - Date and time; seconds and their fraction may be left out. Leap seconds are not accepted.
 * @returns Days of 86400 s since 2000-01-01T12:00:00Z, or undefined when the text is not such an instant.
 */
export function daysSinceJ2000(text: string): number | undefined {
  const match = PATTERN.exec(text.trim());
  if (match === null) return undefined;
  const [, y, mo, d, h, mi, s, fraction, sign, offsetHours, offsetMinutes] = match;
  const year = Number(y);
  const month = Number(mo);
  const day = Number(d);
  const hour = Number(h);
  const minute = Number(mi);
  const second = Number(s ?? "0") + (fraction === undefined ? 0 : Number(`0.${fraction}`));
  if (day < 1 || day > daysInMonth(year, month)) return undefined;
  if (minute > 59 || second >= 60 || hour > 24 || (hour === 24 && (minute > 0 || second > 0)))
    return undefined;
  const awayHours = Number(offsetHours ?? "0");
  const awayMinutes = Number(offsetMinutes ?? "0");
  if (awayHours > 23 || awayMinutes > 59) return undefined;
  const away = (sign === "-" ? -1 : 1) * (awayHours * 60 + awayMinutes);
  const seconds = (hour - 12) * 3600 + (minute - away) * 60 + second;
  return daysFrom2000(year, month, day) + seconds / 86_400;
}

/**
 * The number of a day in its year: 1 on the first of January.
 *
 * @returns 1 to 366, or undefined when the calendar has no such day.
 */
export function dayOfYear(year: number, month: number, day: number): number | undefined {
  if (!Number.isInteger(day) || day < 1 || day > daysInMonth(year, month)) return undefined;
  return daysFrom2000(year, month, day) - daysFrom2000(year, 1, 1) + 1;
}

/**
 * Reads a day and a time of day with its offset from UTC: `2026-06-21` and `10:00 UTC`, `12:00 +02:00`. A time without
 * an offset names no instant and is refused.
 *
 * @param day - A date of the Gregorian calendar.
 * @param time - A time of day, then `UTC` or an offset.
 * @returns Days of 86400 s since 2000-01-01T12:00:00Z, or undefined.
 */
export function daysOfDayAndTime(day: string, time: string): number | undefined {
  const clock = /^(\d{1,2}):(\d{2}) ?(UTC|Z|[+-]\d{2}:\d{2})$/.exec(time.trim());
  if (clock === null) return undefined;
  const [, hour = "", minute = "", offset = ""] = clock;
  const away = offset === "UTC" ? "Z" : offset;
  return daysSinceJ2000(`${day.trim()}T${hour.padStart(2, "0")}:${minute}${away}`);
}
