// A habit ("three times a day, ten minutes") as the share of its working hours that the lid is off.
import { daySeconds } from './climate.ts';
import type { Habit } from './history.ts';

const within = ({ fromS, toS }: Habit, second: number): boolean =>
  fromS <= toS ? second >= fromS && second < toS : second >= fromS || second < toS;

const hoursOf = ({ fromS, toS }: Habit): number => (fromS < toS ? toS - fromS : daySeconds - fromS + toS);

/** Share of the time that the lid is off at a second of the UTC day; 0 without a habit and outside its hours. */
export function dutyAt(habit: Habit | null, second: number): number {
  if (!habit || !within(habit, second)) return 0;
  return Math.min(1, (habit.timesPerDay * habit.openSeconds) / hoursOf(habit));
}

/** The same over the whole day. */
export const dailyDuty = (habit: Habit | null): number =>
  habit ? Math.min(1, (habit.timesPerDay * habit.openSeconds) / daySeconds) : 0;

/** The next instant after `atS` at which working hours begin or end; Infinity without a habit. */
export function nextTurn(habit: Habit | null, atS: number): number {
  if (!habit || habit.fromS === habit.toS) return Infinity;
  const midnight = Math.floor(atS / daySeconds) * daySeconds;
  return Math.min(
    ...[habit.fromS, habit.toS].map((second) => {
      const today = midnight + (second % daySeconds);
      return today > atS ? today : today + daySeconds;
    }),
  );
}
