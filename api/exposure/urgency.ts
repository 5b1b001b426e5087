// What sorts the list of containers: what must be done comes first, and there what has the fewest hours.
import type { State } from '../science/history.ts';

const ranks: Record<State, number> = { REDRY: 0, USE_SOON: 1, UNKNOWN: 2, TOO_DRY: 3, GOOD: 4 };

/** Apart by more than any number of hours an estimate gives (90 days). */
const rankApart = 10_000;

/** Smaller is more urgent. No crossing in sight comes last among its state. */
export function urgencyOf(state: State, hoursToLimit: number | null): number {
  return ranks[state] * rankApart + Math.min(hoursToLimit ?? Infinity, rankApart - 1);
}
