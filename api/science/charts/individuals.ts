// Individuals and moving range: NIST/SEMATECH e-Handbook 6.3.2.2.
import { ofTwo } from './constants.ts';

export interface Limits {
  readonly low: number;
  readonly centre: number;
  readonly high: number;
}

export interface Individuals {
  readonly values: Limits;
  readonly ranges: Limits;
  /** One standard deviation as the moving ranges show it. */
  readonly sigma: number;
}

/** The difference of each value from the one before it. */
export const movingRanges = (values: readonly number[]): number[] =>
  values.slice(1).map((value, i) => Math.abs(value - values[i]!));

/** Limits from values in the order in which they were measured; null of fewer than two. */
export function individualsOf(values: readonly number[]): Individuals | null {
  const ranges = movingRanges(values);
  if (ranges.length === 0) return null;
  const centre = mean(values);
  const range = mean(ranges);
  const sigma = range / ofTwo.d2;
  return {
    values: { low: centre - 3 * sigma, centre, high: centre + 3 * sigma },
    ranges: { low: ofTwo.D3 * range, centre: range, high: ofTwo.D4 * range },
    sigma,
  };
}

export const outside = (value: number, { low, high }: Limits): boolean => value < low || value > high;

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
