// Readings that do not speak for the room's air, and why.
//
// Everything here judges one UTC day from the readings of that day and its two neighbours, so that a late reading
// can change the verdict on three days and no more. Figures are common practice with small sensors unless a
// source stands beside them.
import type { Series } from '../series.ts';

/** One sensor's readings of a day and its neighbours: °C and % RH. */
export interface SensorNearDay {
  readonly temperature: Series;
  readonly humidity: Series;
}

export type Measure = keyof SensorNearDay;
export const measures: readonly Measure[] = ['temperature', 'humidity'];

export type Fault = 'absurd' | 'carried in' | 'stuck' | 'far from the others';

/** Readings from `fromMs` to `untilMs`, both included, that are left out. */
export interface Span {
  readonly sensor: number;
  readonly measure: Measure;
  readonly fault: Fault;
  readonly fromMs: number;
  readonly untilMs: number;
  /** The absurd or stuck value, the first one carried in, or the distance from the others. */
  readonly value: number;
}

export function mean(values: Float64Array): number {
  let sum = 0;
  for (const value of values) sum += value;
  return sum / values.length;
}
