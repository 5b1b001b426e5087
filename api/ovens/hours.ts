// When somebody is there to load: spans on the lab's own clock, so that they shift with daylight saving, as instants.
import { DateTime } from 'luxon';
import type { OpenHours } from './rules.ts';

/** In milliseconds since 1970. */
export interface Opening {
  fromMs: number;
  toMs: number;
}

const minutesOf = (clock: string): number => 60 * Number(clock.slice(0, 2)) + Number(clock.slice(3));

/** A wall clock's time on a day. One that is skipped by the clocks is as much later; one that comes twice is the first. */
const on = (day: DateTime, clock: string): DateTime =>
  day.set({ hour: Math.floor(minutesOf(clock) / 60), minute: minutesOf(clock) % 60, second: 0, millisecond: 0 });

/** Openings that reach into a stretch of time, in order; those over midnight belong to the day on which they begin. */
export function openings(hours: readonly OpenHours[], timeZone: string, fromMs: number, untilMs: number): Opening[] {
  const out: Opening[] = [];
  let day = DateTime.fromMillis(fromMs, { zone: timeZone }).startOf('day').minus({ days: 1 });
  for (; day.toMillis() <= untilMs; day = day.plus({ days: 1 })) {
    for (const { days, from, to } of hours) {
      if (!days.includes(day.weekday)) continue;
      const isOverMidnight = minutesOf(to) <= minutesOf(from);
      const opens = on(day, from).toMillis();
      const closes = on(isOverMidnight ? day.plus({ days: 1 }) : day, to).toMillis();
      if (closes > opens && closes >= fromMs && opens <= untilMs) out.push({ fromMs: opens, toMs: closes });
    }
  }
  return out.sort((a, b) => a.fromMs - b.fromMs);
}

/** The instant itself when somebody is there then, else the next opening; the instant when there is none in sight. */
export function whenSomebody(spans: readonly Opening[], atMs: number): number {
  const next = spans.find(({ toMs }) => toMs >= atMs);
  return next ? Math.max(atMs, next.fromMs) : atMs;
}

/** A time of the lab as it is said: `Thu 26 Nov 14:05`. */
export const saidTime = (at: Date, timeZone: string): string =>
  DateTime.fromJSDate(at, { zone: timeZone }).setLocale('en-GB').toFormat('ccc d LLL HH:mm');

/** A time near now: the clock alone today, with its day else. */
export function saidClock(at: Date, now: Date, timeZone: string): string {
  const then = DateTime.fromJSDate(at, { zone: timeZone }).setLocale('en-GB');
  const isToday = then.hasSame(DateTime.fromJSDate(now, { zone: timeZone }), 'day');
  return then.toFormat(isToday ? 'HH:mm' : 'ccc d LLL HH:mm');
}
