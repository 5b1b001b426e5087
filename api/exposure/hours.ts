// The lab's working hours, over which a habit is spread: local wall-clock time, so they shift on daylight-saving days.
import { DateTime } from 'luxon';
import { z } from 'zod';
import type { Action, Habit } from '../science/history.ts';

/** Invented default; a lab sets its own in its settings. */
export const usualHours = { from: '08:00', to: '18:00' };
const clock = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/);
const workingHours = z.object({ from: clock, to: clock });
const workingDays = z.array(z.int().min(1).max(7)).min(1);

export interface WorkingHours {
  /** Seconds after local midnight. */
  readonly fromS: number;
  readonly toS: number;
  readonly timeZone: string;
  /** Days on which habits count, Monday 1 to Sunday 7; all of them when not given. */
  readonly days?: readonly number[];
}

const secondsOf = (time: string): number => 3600 * Number(time.slice(0, 2)) + 60 * Number(time.slice(3));

/** The working hours among a lab's settings. */
export function workingHoursOf(settings: unknown, timeZone: string): WorkingHours {
  const given = z.object({ workingHours }).safeParse(settings);
  const { from, to } = given.success ? given.data.workingHours : usualHours;
  const days = z.object({ workingDays }).safeParse(settings);
  const some = days.success && new Set(days.data.workingDays).size < 7 ? { days: days.data.workingDays } : {};
  return { fromS: secondsOf(from), toS: secondsOf(to), timeZone, ...some };
}

const offsetS = (timeZone: string, atS: number): number => DateTime.fromSeconds(atS, { zone: timeZone }).offset * 60;

const isWorkingDay = ({ days, timeZone }: WorkingHours, atS: number): boolean =>
  days === undefined || days.includes(DateTime.fromSeconds(atS, { zone: timeZone }).weekday);

/** Midnights after `fromS` and up to `untilS` at which working days begin or end. */
function dayTurns(hours: WorkingHours, fromS: number, untilS: number): number[] {
  if (hours.days === undefined) return [];
  const turns: number[] = [];
  let was = isWorkingDay(hours, fromS);
  let midnight = DateTime.fromSeconds(fromS, { zone: hours.timeZone }).startOf('day').plus({ days: 1 });
  for (; midnight.toSeconds() <= untilS; midnight = midnight.plus({ days: 1 })) {
    const is = hours.days.includes(midnight.weekday);
    if (is !== was) turns.push(midnight.toSeconds());
    was = is;
  }
  return turns;
}

/** A habit as it holds from an instant on, until the clocks change or working days end. */
export function habitAt(
  habit: { timesADay: number; minutes: number } | null,
  hours: WorkingHours,
  atS: number,
): Habit | null {
  if (!habit || habit.timesADay === 0 || habit.minutes === 0 || !isWorkingDay(hours, atS)) return null;
  const shift = (second: number): number => (((second - offsetS(hours.timeZone, atS)) % 86_400) + 86_400) % 86_400;
  return {
    timesPerDay: habit.timesADay,
    openSeconds: 60 * habit.minutes,
    fromS: shift(hours.fromS),
    toS: shift(hours.toS),
  };
}

/** Instants after `fromS` and up to `untilS` at which a zone's clocks change. */
export function clockChanges(timeZone: string, fromS: number, untilS: number): number[] {
  const changes: number[] = [];
  const week = 7 * 86_400;
  for (let atS = fromS; atS < untilS; atS += week) {
    const endS = Math.min(untilS, atS + week);
    if (offsetS(timeZone, atS) === offsetS(timeZone, endS)) continue;
    let before = atS;
    let after = endS;
    while (after - before > 60) {
      const middle = Math.floor((before + after) / 120) * 60;
      if (offsetS(timeZone, middle) === offsetS(timeZone, before)) before = Math.max(middle, before + 1);
      else after = middle;
    }
    changes.push(Math.ceil(after / 60) * 60);
  }
  return changes;
}

/** The actions by which a habit follows clocks and working days: one at each change while it holds. */
export function habitTurns(
  held: readonly { fromS: number; untilS: number; habit: { timesADay: number; minutes: number } }[],
  hours: WorkingHours,
): Action[] {
  return held.flatMap(({ fromS, untilS, habit }) => {
    const turns = new Set([...clockChanges(hours.timeZone, fromS, untilS), ...dayTurns(hours, fromS, untilS)]);
    return [...turns]
      .sort((one, other) => one - other)
      .map((atS) => ({ kind: 'habit' as const, atS, habit: habitAt(habit, hours, atS) }));
  });
}
