// Carried in: a sensor that was brought from elsewhere reads its own way to the room's air for an hour or three.
import { median } from '../median.ts';
import { between, dayMs, hourMs, indexAt, type Series } from '../series.ts';
import { type Measure, measures, type SensorNearDay, type Span } from './fault.ts';

/**
 * A record that begins, or begins again after half a day, by running faster than a room's air does. A small logger
 * follows the air with a time constant of some tens of minutes; rooms are slower, even when they are heated up.
 */
const silentMs = 12 * hourMs;
/** It is looked for in this long from the beginning … */
const withinMs = 6 * hourMs;
/** … against the median of what is read from then until here. */
const settledMs = 24 * hourMs;
/** A run of this much within an hour gives it away. */
const run = { temperature: 4, humidity: 20 };
/** It counts from when it stays this near for an hour. */
const near = { temperature: 2, humidity: 5 };

/** Whether two values no more than an hour apart differ by `most` or more. */
function runs({ atMs, values }: Series, most: number): boolean {
  for (let i = 0, j = 0; j < values.length; j++) {
    while ((atMs[j] ?? 0) - (atMs[i] ?? 0) > hourMs) i++;
    for (let k = i; k < j; k++) if (Math.abs((values[j] ?? 0) - (values[k] ?? 0)) >= most) return true;
  }
  return false;
}

/** From when on a record that began at `begin` is near what it reads later. */
function settledAt(series: Series, measure: Measure, begin: number): number {
  const later = between(series, begin + withinMs, begin + settledMs).values;
  if (later.length < 3) return begin;
  const level = median([...later]);
  const { atMs, values } = between(series, begin, begin + withinMs);
  const isNear = (value: number) => Math.abs(value - level) <= near[measure];
  if (values.every(isNear)) return begin;
  const from = values.findIndex((_, i) => values.subarray(i, indexAt(atMs, (atMs[i] ?? 0) + hourMs)).every(isNear));
  return from < 0 ? begin + withinMs : (atMs[from] ?? begin);
}

function spansFrom(sensor: number, sensorNear: SensorNearDay, begin: number): Span[] {
  const first = (measure: Measure, until: number) => between(sensorNear[measure], begin, until);
  if (!measures.some((measure) => runs(first(measure, begin + withinMs), run[measure]))) return [];
  const settled = Math.max(...measures.map((measure) => settledAt(sensorNear[measure], measure, begin)));
  return measures.flatMap((measure): Span[] => {
    const { values } = first(measure, settled);
    const value = values[0];
    if (value === undefined) return [];
    return [{ sensor, measure, fault: 'carried in', fromMs: begin, untilMs: settled - 1, value }];
  });
}

/** Both quantities of a sensor are left out until both have settled: it is one body. */
export function carriedSpans(sensor: number, sensorNear: SensorNearDay, day: number): Span[] {
  const { temperature, humidity } = sensorNear;
  const found: Span[] = [];
  let before = (day - 1) * dayMs;
  for (let i = 0, j = 0; i < temperature.atMs.length || j < humidity.atMs.length;) {
    const warmth = temperature.atMs[i] ?? Infinity;
    const damp = humidity.atMs[j] ?? Infinity;
    const at = Math.min(warmth, damp);
    if (at - before >= silentMs) found.push(...spansFrom(sensor, sensorNear, at));
    if (warmth === at) i++;
    if (damp === at) j++;
    before = at;
  }
  return found;
}
