// What a week is expected to use, after each week of history: Croston's method and simple exponential smoothing.

/** How much a new figure counts against all before it. */
export const smoothing = 0.1;

/** Weeks whose mean the smoothed level starts from. */
const firstWeeks = 4;

/** `z` is the size of a demand, `x` the weeks from one to the next; null before the first. */
export interface Croston {
  readonly rate: number;
  readonly z: number | null;
  readonly x: number | null;
}

/**
 * Croston's method with the correction of Syntetos and Boylan (Int. J. Forecasting 21 (2005) 303): size and interval
 * are smoothed only when there is a demand, and their ratio is taken down by α/2, by which it lies too high.
 */
export function crostonAfter(weeks: readonly number[]): Croston[] {
  let size: number | null = null;
  let interval = 0;
  let since = 0;
  return weeks.map((quantity) => {
    since += 1;
    if (quantity > 0) {
      if (size === null) [size, interval] = [quantity, since];
      else {
        size += smoothing * (quantity - size);
        interval += smoothing * (since - interval);
      }
      since = 0;
    }
    if (size === null) return { rate: 0, z: null, x: null };
    return { rate: ((1 - smoothing / 2) * size) / interval, z: size, x: interval };
  });
}

/** The level after each week; null until there are weeks enough to start from. */
export function levelAfter(weeks: readonly number[]): (number | null)[] {
  const first = weeks.slice(0, firstWeeks);
  let level = first.reduce((sum, quantity) => sum + quantity, 0) / firstWeeks;
  return weeks.map((quantity, i) => {
    if (i + 1 < firstWeeks) return null;
    if (i + 1 > firstWeeks) level += smoothing * (quantity - level);
    return level;
  });
}
