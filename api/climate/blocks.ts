// The air of a room on 300 s blocks, from the readings of any number of sensors.
//
// A day's blocks depend on the readings of that day and its two neighbours and on nothing else, so that whatever
// order readings come in, the same readings give the same bytes.
import { saturatedKgPerM3 } from '../science/air.ts';
import { blockSeconds, blocksPerDay } from '../science/climate.ts';
import { type DayBlocks } from '../science/history.ts';
import { median } from './median.ts';
import { dayMs, hourMs, indexAt, type Series } from './series.ts';

/** Between two readings further apart than this nothing is known (exposure model, "Climate"). */
export const bridgedMs = 2 * hourMs;

const blockMs = blockSeconds * 1000;

/** What one sensor says of one day: means over each block, NaN where it says nothing. */
interface SensorDay {
  temperatureC: Float64Array;
  saturatedKgPerM3: Float64Array;
  /** 0 to 1. */
  humidity: Float64Array;
  vapourKgPerM3: Float64Array;
}

export interface SensorReadings {
  /** °C */
  readonly temperature: Series;
  /** % RH */
  readonly humidity: Series;
}

const add = (sums: Float64Array, block: number, amount: number): void => {
  sums[block] = (sums[block] ?? 0) + amount;
};

const fraction = (percent: number): number => Math.min(1, Math.max(0, percent / 100));

/** Walks the straight lines between a series' readings; `at(x)` may only be asked where `spans` said yes. */
function line({ atMs, values }: Series, start: number) {
  let segment = indexAt(atMs, start + 1) - 1;
  return {
    /** Goes on to the segment that holds `x`; gives where it ends. */
    reach(x: number): number {
      while (segment + 1 < atMs.length && (atMs[segment + 1] ?? 0) <= x) segment++;
      return segment + 1 < atMs.length ? (atMs[segment + 1] ?? 0) : Infinity;
    },
    spans(): boolean {
      return segment >= 0 && segment + 1 < atMs.length && (atMs[segment + 1] ?? 0) - (atMs[segment] ?? 0) <= bridgedMs;
    },
    at(x: number): number {
      const from = atMs[segment] ?? 0;
      const value = values[segment] ?? 0;
      return value + ((values[segment + 1] ?? 0) - value) * ((x - from) / ((atMs[segment + 1] ?? 0) - from));
    },
  };
}

/** A reading that stands alone, hours from the next, speaks for its own block. */
function fillAlone(
  means: Float64Array,
  { atMs, values }: Series,
  start: number,
  read: (value: number) => number,
): void {
  for (let i = indexAt(atMs, start + dayMs) - 1; i >= 0 && (atMs[i] ?? 0) >= start; i--) {
    const block = Math.floor(((atMs[i] ?? 0) - start) / blockMs);
    if (Number.isNaN(means[block])) means[block] = read(values[i] ?? 0);
  }
}

/**
 * Block means of one sensor: its readings joined by straight lines, the lines integrated. Vapour is φ c_s(T),
 * where both are known: φ is linear and c_s all but quadratic over a piece, so Simpson's rule is all but exact.
 */
function sensorDay(day: number, { temperature, humidity }: SensorReadings): SensorDay {
  const start = day * dayMs;
  const end = start + dayMs;
  const zeros = () => new Float64Array(blocksPerDay);
  const [sumT, sumS, sumH, sumC] = [zeros(), zeros(), zeros(), zeros()];
  const [spanT, spanH, spanC] = [zeros(), zeros(), zeros()];
  const warmth = line(temperature, start);
  const damp = line(humidity, start);
  // The end of one piece is the beginning of the next.
  let full = NaN;
  let fullAt = NaN;
  for (let x = start; x < end;) {
    const block = Math.floor((x - start) / blockMs);
    const next = Math.min(warmth.reach(x), damp.reach(x), start + (block + 1) * blockMs);
    const width = next - x;
    const hasT = warmth.spans();
    const hasH = damp.spans();
    const h0 = hasH ? fraction(damp.at(x)) : 0;
    const h1 = hasH ? fraction(damp.at(next)) : 0;
    if (hasH) {
      add(sumH, block, (width * (h0 + h1)) / 2);
      add(spanH, block, width);
    }
    if (hasT) {
      const t0 = warmth.at(x);
      const t1 = warmth.at(next);
      const s0 = x === fullAt ? full : saturatedKgPerM3(t0);
      const s1 = saturatedKgPerM3(t1);
      full = s1;
      fullAt = next;
      const middle = saturatedKgPerM3((t0 + t1) / 2);
      add(sumT, block, (width * (t0 + t1)) / 2);
      add(sumS, block, (width * (s0 + 4 * middle + s1)) / 6);
      add(spanT, block, width);
      if (hasH) {
        add(sumC, block, (width * (h0 * s0 + 2 * (h0 + h1) * middle + h1 * s1)) / 6);
        add(spanC, block, width);
      }
    }
    x = next;
  }
  const means = (sum: Float64Array, span: Float64Array) => sum.map((value, k) => value / (span[k] ?? 0));
  const told = {
    temperatureC: means(sumT, spanT),
    saturatedKgPerM3: means(sumS, spanT),
    humidity: means(sumH, spanH),
    vapourKgPerM3: means(sumC, spanC),
  };
  fillAlone(told.temperatureC, temperature, start, (value) => value);
  fillAlone(told.saturatedKgPerM3, temperature, start, saturatedKgPerM3);
  fillAlone(told.humidity, humidity, start, fraction);
  return told;
}

/** Room air of one UTC day: the median across the sensors, in each block; `uncertain` is 0 where it is known, else 2. */
export function roomDay(day: number, sensors: readonly SensorReadings[]): DayBlocks {
  const told = sensors.map((sensor) => sensorDay(day, sensor));
  const temperatureC = new Float64Array(blocksPerDay);
  const vapourKgPerM3 = new Float64Array(blocksPerDay);
  const saturated = new Float64Array(blocksPerDay);
  const uncertain = new Uint8Array(blocksPerDay);
  for (let k = 0; k < blocksPerDay; k++) {
    const warmth = median(told.map((sensor) => sensor.temperatureC[k] ?? NaN));
    const full = median(told.map((sensor) => sensor.saturatedKgPerM3[k] ?? NaN));
    const vapour = median(
      told.map((sensor) => {
        const own = sensor.vapourKgPerM3[k] ?? NaN;
        if (!Number.isNaN(own)) return own;
        const ownFull = sensor.saturatedKgPerM3[k] ?? NaN;
        return (sensor.humidity[k] ?? NaN) * (Number.isNaN(ownFull) ? full : ownFull);
      }),
    );
    if (Number.isNaN(warmth) || Number.isNaN(vapour)) {
      uncertain[k] = 2;
      continue;
    }
    temperatureC[k] = warmth;
    saturated[k] = full;
    vapourKgPerM3[k] = Math.min(vapour, full);
  }
  return { day, temperatureC, vapourKgPerM3, saturatedKgPerM3: saturated, uncertain };
}
