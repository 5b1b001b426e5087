// When somebody works, as the planner takes it: the lab's clock and days off become plain minutes, so that clocks that
// change are dealt with here.
import { DateTime } from 'luxon';
import { workingHoursOf } from '../exposure/service.ts';
import type { Interval } from '../science/prep/intervals.ts';

export const minuteMs = 60_000;
export const minuteOf = (at: Date): number => Math.floor(at.getTime() / minuteMs);
/** The first full minute that is not before it. */
export const lastMinuteOf = (at: Date): number => Math.ceil(at.getTime() / minuteMs);
export const instantOf = (minute: number): Date => new Date(minute * minuteMs);

interface Clocked {
  timeZone: string;
  settings: unknown;
}

/** A wall clock's time on a day. One that the clocks skip is as much later; one that comes twice is the first. */
const on = (day: DateTime, second: number): DateTime =>
  day.startOf('day').set({ hour: Math.floor(second / 3600), minute: Math.floor(second / 60) % 60 });

/** Stretches in which somebody works, from an instant to another; hours over midnight belong to the day they begin on. */
export function workingMinutes(lab: Clocked, daysOff: readonly string[], from: Date, to: Date): Interval[] {
  const { fromS, toS, days } = workingHoursOf(lab.settings, lab.timeZone);
  const off = new Set(daysOff);
  const intervals: Interval[] = [];
  let day = DateTime.fromJSDate(from, { zone: lab.timeZone }).startOf('day').minus({ days: 1 });
  for (; day.toMillis() <= to.getTime(); day = day.plus({ days: 1 })) {
    if (off.has(day.toISODate() ?? '') || (days && !days.includes(day.weekday))) continue;
    const begins = on(day, fromS);
    const ends = on(toS <= fromS ? day.plus({ days: 1 }) : day, toS);
    const interval = { from: Math.ceil(begins.toMillis() / minuteMs), to: Math.floor(ends.toMillis() / minuteMs) };
    const before = intervals.at(-1);
    // Hours that meet are one stretch.
    if (before && interval.from <= before.to)
      intervals.splice(-1, 1, { from: before.from, to: Math.max(before.to, interval.to) });
    else if (interval.to > interval.from) intervals.push(interval);
  }
  return intervals;
}

export { dayOf, daysAfter } from '../days.ts';

export const clockOf = (at: Date, timeZone: string): string =>
  DateTime.fromJSDate(at, { zone: timeZone }).toFormat('HH:mm');

/** The instant of a clock's time on a day; of one that comes twice the first, whatever season it is asked in. */
export function instantOn(day: string, clock: string, timeZone: string): Date {
  const at = DateTime.fromISO(`${day}T${clock}`, { zone: timeZone });
  return (at.getPossibleOffsets()[0] ?? at).toJSDate();
}

export const weekdayOf = (day: string): number => DateTime.fromISO(day, { zone: 'utc' }).weekday;

/** As people say it: `Thu 26 Nov, 14:05`. */
export const saidTime = (at: Date, timeZone: string): string =>
  DateTime.fromJSDate(at, { zone: timeZone }).setLocale('en-GB').toFormat('ccc d LLL, HH:mm');
