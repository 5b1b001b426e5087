// Stretches of time in which somebody works or something is free, in whole minutes, ascending and apart; ends belong to them.

/** Minutes since 1970, UTC: clocks that change are dealt with before. */
export interface Interval {
  readonly from: number;
  readonly to: number;
}

/** Index of the last interval that begins at or before an instant; −1 when none does. */
function lastBegun(intervals: readonly Interval[], at: number): number {
  let low = 0;
  let high = intervals.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((intervals[middle]?.from ?? Infinity) <= at) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}

/** Whether one interval holds the whole stretch. */
export function holds(intervals: readonly Interval[], from: number, to: number): boolean {
  const found = intervals[lastBegun(intervals, from)];
  return found !== undefined && to <= found.to;
}

/** The last instant at or before `at` that lies in an interval; null when there is none. */
export function latestIn(intervals: readonly Interval[], at: number): number | null {
  const found = intervals[lastBegun(intervals, at)];
  return found === undefined ? null : Math.min(at, found.to);
}

/** The first instant at or after `at` that lies in an interval; null when there is none. */
export function earliestIn(intervals: readonly Interval[], at: number): number | null {
  const index = lastBegun(intervals, at);
  const found = intervals[index];
  if (found !== undefined && at <= found.to) return at;
  return intervals[index + 1]?.from ?? null;
}

/** In order and apart: what meets is one stretch, what has no length is none. */
export function merged(intervals: readonly Interval[]): Interval[] {
  const out: Interval[] = [];
  for (const each of [...intervals].sort((one, other) => one.from - other.from)) {
    const before = out.at(-1);
    if (before && each.from <= before.to) out[out.length - 1] = { from: before.from, to: Math.max(before.to, each.to) };
    else if (each.to > each.from) out.push(each);
  }
  return out;
}

export const overlaps = (one: Interval, other: Interval): boolean => one.from < other.to && other.from < one.to;
