// The lab's working hours, over which a habit is spread: local wall-clock time, so they shift on daylight-saving days.
import { DateTime } from 'luxon';
import { z } from 'zod';
import type { Action, Habit } from '../science/history.ts';

/** Invented default; a lab sets its own in its settings. */
const usualHours = { from: '08:00', to: '18:00' };
const clock = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/);
const workingHours = z.object({ from: clock, to: clock });

export interface WorkingHours {
  /** Seconds after local midnight. */
  readonly fromS: number;
  readonly toS: number;
  readonly timeZone: string;
}

const secondsOf = (time: string): number => 3600 * Number(time.slice(0, 2)) + 60 * Number(time.slice(3));

/** The working hours among a lab's settings. */
export function workingHoursOf(settings: unknown, timeZone: string): WorkingHours {
  const given = z.object({ workingHours }).safeParse(settings);
  const { from, to } = given.success ? given.data.workingHours : usualHours;
  return { fromS: secondsOf(from), toS: secondsOf(to), timeZone };
}

const offsetS = (timeZone: string, atS: number): number => DateTime.fromSeconds(atS, { zone: timeZone }).offset * 60;

/** A habit as it holds from an instant on, until the clocks change. */
export function habitAt(
  habit: { timesADay: number; minutes: number } | null,
  hours: WorkingHours,
  atS: number,
): Habit | null {
  if (!habit || habit.timesADay === 0 || habit.minutes === 0) return null;
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

/** The actions by which a habit follows the clocks: one at each change while it holds. */
export function habitTurns(
  held: readonly { fromS: number; untilS: number; habit: { timesADay: number; minutes: number } }[],
  hours: WorkingHours,
): Action[] {
  return held.flatMap(({ fromS, untilS, habit }) =>
    clockChanges(hours.timeZone, fromS, untilS).map((atS) => ({
      kind: 'habit' as const,
      atS,
      habit: habitAt(habit, hours, atS),
    })),
  );
}
