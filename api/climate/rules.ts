// Which readings speak for a room on a day, and what its air was: pure decisions on readings.
import { blocksPerDay } from '../science/climate.ts';
import type { DayBlocks } from '../science/history.ts';
import { roomDay } from './blocks.ts';
import { absurdSpans } from './faults/absurd.ts';
import { carriedSpans } from './faults/carried.ts';
import { farSpans } from './faults/far.ts';
import { type Measure, measures, type SensorNearDay, type Span } from './faults/fault.ts';
import { stuckSpans } from './faults/stuck.ts';
import { between, dayMs, type Series } from './series.ts';

/** What is left out of the room's air of a day; the series hold that day and its neighbours, no more. */
export function spansLeftOut(day: number, sensors: readonly SensorNearDay[]): Span[] {
  const absurd = sensors.flatMap((near, sensor) => measures.flatMap((m) => absurdSpans(sensor, m, near[m])));
  const sane = sensors.map((near, sensor) => without(near, absurd, sensor));
  const rest = sane.flatMap((near, sensor) => {
    const others = (measure: Measure) =>
      sane.filter((other, i) => i !== sensor && other[measure].atMs.length > 0).map((other) => other[measure]);
    return [
      ...carriedSpans(sensor, near, day),
      ...measures.flatMap((m) => stuckSpans(sensor, m, near[m], others(m))),
      ...measures.flatMap((m) => farSpans(sensor, m, near[m], others(m), day)),
    ];
  });
  return [...absurd, ...rest];
}

function kept(series: Series, spans: readonly Span[]): Series {
  if (spans.length === 0) return series;
  const keep = [...series.atMs.keys()].filter((i) => {
    const at = series.atMs[i] ?? 0;
    return !spans.some((span) => at >= span.fromMs && at <= span.untilMs);
  });
  return {
    atMs: Float64Array.from(keep, (i) => series.atMs[i] ?? 0),
    values: Float64Array.from(keep, (i) => series.values[i] ?? 0),
  };
}

/** One sensor's readings without those left out. */
export function without(near: SensorNearDay, spans: readonly Span[], sensor: number): SensorNearDay {
  const of = (measure: Measure) => spans.filter((span) => span.sensor === sensor && span.measure === measure);
  return { temperature: kept(near.temperature, of('temperature')), humidity: kept(near.humidity, of('humidity')) };
}

/** The readings of a day and its neighbours. */
export function nearDay(day: number, { temperature, humidity }: SensorNearDay): SensorNearDay {
  const from = (day - 1) * dayMs;
  const until = (day + 2) * dayMs;
  return { temperature: between(temperature, from, until), humidity: between(humidity, from, until) };
}

/** A room's air of one day from all that its sensors read, the order of the sensors being of no account. */
export function airOfDay(day: number, sensors: readonly SensorNearDay[]): DayBlocks {
  const near = sensors.map((sensor) => nearDay(day, sensor));
  const spans = spansLeftOut(day, near);
  return roomDay(
    day,
    near.map((sensor, index) => without(sensor, spans, index)),
  );
}

/** The first block that differs, by what an estimate sees of it; -1 when none does. */
export function firstDifference(before: DayBlocks | null, after: DayBlocks): number {
  for (let k = 0; k < blocksPerDay; k++) {
    const known = after.uncertain[k] === 0;
    if (!before || before.uncertain[k] !== 0) {
      if (known) return k;
    } else if (
      !known ||
      before.temperatureC[k] !== after.temperatureC[k] ||
      before.vapourKgPerM3[k] !== after.vapourKgPerM3[k] ||
      before.saturatedKgPerM3[k] !== after.saturatedKgPerM3[k]
    ) {
      return k;
    }
  }
  return -1;
}
