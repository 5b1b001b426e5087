// Weeks as the lab counts them: from Monday on, by the days of its clock.
import { DateTime } from 'luxon';
import { daysAfter } from '../days.ts';

export { dayOf, daysAfter, daysBetween, mondayOf } from '../days.ts';

const utc = (day: string): DateTime => DateTime.fromISO(day, { zone: 'utc' });

/** Monday of a plan's week, counted from 1. */
export const mondayOfWeek = (fromMonday: string, week: number): string => daysAfter(fromMonday, 7 * (week - 1));

/** Which week of a plan a day lies in, counted from 1; 0 and less lie before it. */
export const weekOf = (fromMonday: string, day: string): number =>
  Math.floor(utc(day).diff(utc(fromMonday), 'days').days / 7) + 1;

/** As people say it: `12 March`, with the year where it is another one. */
export function daySaid(day: string, today: string): string {
  const at = utc(day).setLocale('en-GB');
  return at.toFormat(day.slice(0, 4) === today.slice(0, 4) ? 'd LLLL' : 'd LLLL yyyy');
}
