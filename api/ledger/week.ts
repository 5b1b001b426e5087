// Weeks on the lab's clock, from Monday on, named by the day of their Monday.
import { DateTime } from 'luxon';
import { daysAfter, mondayOf } from '../days.ts';

export type WeekOf = (at: Date) => string;

/** Names the week of an instant; days that were asked for once are remembered, since many lines fall on one. */
export function weekNames(timeZone: string): WeekOf {
  const known = new Map<number, { from: number; until: number; name: string }>();
  return (at) => {
    const ms = at.getTime();
    // Half weeks since 1970: a Monday in any zone lies in one of them, so that most instants find theirs at once.
    const slot = Math.floor(ms / 302_400_000);
    const there = known.get(slot);
    if (there && ms >= there.from && ms < there.until) return there.name;
    const monday = DateTime.fromMillis(ms, { zone: timeZone }).startOf('week');
    const week = {
      from: monday.toMillis(),
      until: monday.plus({ weeks: 1 }).toMillis(),
      name: monday.toFormat('yyyy-MM-dd'),
    };
    known.set(slot, week);
    return week.name;
  };
}

/** The Monday of a day as somebody writes it, such as 2026-03-04; null when it is no day. */
export const mondayIn = (written: string): string | null =>
  /^\d{4}-\d{2}-\d{2}$/.test(written) && DateTime.fromISO(written).isValid ? mondayOf(written) : null;

/** The Monday so many weeks later (or earlier). */
export const weeksAfter = (monday: string, weeks: number): string => daysAfter(monday, 7 * weeks);

/** All Mondays from one up to another, both with it. */
export function weeksBetween(first: string, last: string): string[] {
  const weeks: string[] = [];
  for (let week = first; week <= last; week = weeksAfter(week, 1)) weeks.push(week);
  return weeks;
}
