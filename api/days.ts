// Days of a calendar such as 2026-11-27, as the lab's clock has them.
import { DateTime } from 'luxon';

const utc = (day: string): DateTime => DateTime.fromISO(day, { zone: 'utc' });

/** The day on the lab's clock. */
export const dayOf = (at: Date, timeZone: string): string =>
  DateTime.fromJSDate(at, { zone: timeZone }).toISODate() ?? at.toISOString().slice(0, 10);

export const daysAfter = (day: string, days: number): string => utc(day).plus({ days }).toISODate() ?? day;

/** Days from one to another; less than 0 when that is earlier. */
export const daysBetween = (from: string, to: string): number => Math.round(utc(to).diff(utc(from), 'days').days);

/** The Monday of a day's week. */
export const mondayOf = (day: string): string => utc(day).startOf('week').toISODate() ?? day;
