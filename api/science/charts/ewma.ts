// The exponentially weighted moving average, which sees a slow drift sooner: NIST/SEMATECH e-Handbook 6.3.2.4.
import type { Limits } from './individuals.ts';

/** How much the newest value counts; the handbook advises 0.2 to 0.3. */
export const usualWeight = 0.3;

export interface Ewma {
  readonly values: readonly number[];
  readonly limits: Limits;
}

/** `start`: the target, or the mean of earlier values; `sigma`: one standard deviation of a single value. */
export function ewmaOf(values: readonly number[], start: number, sigma: number, weight = usualWeight): Ewma {
  let average = start;
  const half = 3 * sigma * Math.sqrt(weight / (2 - weight));
  return {
    values: values.map((value) => (average = weight * value + (1 - weight) * average)),
    limits: { low: start - half, centre: start, high: start + half },
  };
}
