// The chance that an amount lasts, when what is not booked comes as lumpy as it did so far. Pure.
import { countBelow } from '../science/distributions/counts.ts';
import { leadDemand } from '../science/demand/lead.ts';
import { daysAfter } from './weeks.ts';

interface Weekly {
  readonly mean: number;
  readonly variance: number;
}

/** P(unbooked use over so many weeks ≤ free). Below nothing it is 0; without any use it is 1. */
export function chanceOfLasting(free: number, weekly: Weekly, weeks: number): number {
  if (free < -1e-6) return 0;
  if (weeks <= 0 || weekly.mean <= 0) return 1;
  return countBelow(leadDemand([{ weeks, chance: 1 }], weekly).counts, Math.max(0, free + 1e-6));
}

/** So far is looked for an end, weeks. */
const mostWeeks = 104;

/** The day until which it lasts with a chance of this much or more; null when that is more than two years off. */
export function lastDay(free: number, weekly: Weekly, chance: number, today: string): string | null {
  const weeks = weeksWithChance(free, weekly, chance, mostWeeks);
  return weeks === mostWeeks ? null : daysAfter(today, 7 * weeks);
}

/** The most whole weeks over which it lasts with a chance of this much or more, up to `most`. */
export function weeksWithChance(free: number, weekly: Weekly, chance: number, most: number): number {
  let [low, high] = [0, most];
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (chanceOfLasting(free, weekly, middle) >= chance) low = middle;
    else high = middle - 1;
  }
  return low;
}
