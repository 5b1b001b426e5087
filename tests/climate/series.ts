// Series made up for tests.
import type { SensorNearDay } from '../../api/climate/faults/fault.ts';
import { nothingRead, type Series } from '../../api/climate/series.ts';

/** Values at the given times, by a function of the time. */
export function seriesOf(times: readonly number[], value: (at: number) => number): Series {
  return { atMs: Float64Array.from(times), values: Float64Array.from(times, value) };
}

/** Times from `from` on, every so many milliseconds, before `until`. */
export function every(from: number, until: number, step: number): number[] {
  return Array.from({ length: Math.ceil((until - from) / step) }, (_, index) => from + index * step);
}

export function sensor(
  times: readonly number[],
  temperature: (at: number) => number,
  humidity: (at: number) => number,
): SensorNearDay {
  return { temperature: seriesOf(times, temperature), humidity: seriesOf(times, humidity) };
}

export const thermometer = (temperature: Series): SensorNearDay => ({ temperature, humidity: nothingRead });
