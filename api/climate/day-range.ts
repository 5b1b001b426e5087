// A stretch of time that a query asks for, with its limits.
import { Refused } from '../errors.ts';
import { dayMs } from './series.ts';

interface Limits {
  /** Days back from `until` when `from` is not given. */
  days: number;
  most: number;
}

/** Refuses a stretch that is empty or too long. */
export function dayRange(
  { from, until }: { from?: Date | null | undefined; until?: Date | null | undefined },
  now: Date,
  { days, most }: Limits,
): { from: Date; until: Date; fromDay: number; untilDay: number } {
  const end = until ?? now;
  const begin = from ?? new Date(end.getTime() - days * dayMs);
  const length = end.getTime() - begin.getTime();
  if (length <= 0) throw refusal(begin, `before until (${end.toISOString()})`);
  if (length > most * dayMs) throw refusal(begin, `at most ${most} days before until (${end.toISOString()})`);
  const untilDay = Math.ceil(end.getTime() / dayMs);
  return { from: begin, until: end, fromDay: Math.floor(begin.getTime() / dayMs), untilDay };
}

const refusal = (from: Date, expected: string): Refused =>
  new Refused(`invalid from: ${from.toISOString()}, ${expected}`, 'from', expected);
