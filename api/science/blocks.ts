// One sensor's readings as 300 s block means: linear between readings, held at the first and the last beyond them.
import { saturatedKgPerM3 } from './air.ts';
import { blockSeconds, blocksPerDay, daySeconds } from './climate.ts';
import type { DayBlocks, TypicalDay } from './history.ts';

/** One reading of a room's air. */
export interface Reading {
  readonly atS: number;
  readonly temperatureC: number;
  /** 0 to 1, over liquid water. */
  readonly humidity: number;
}

/** The days from `fromS` to `toS`, whole. Readings in order of time, at least one. */
export function heldBlocks(readings: readonly Reading[], fromS: number, toS: number): DayBlocks[] {
  const firstDay = Math.floor(fromS / daySeconds);
  const lastDay = Math.floor(toS / daySeconds);
  const days: DayBlocks[] = [];
  let next = 0;
  for (let day = firstDay; day <= lastDay; day++) {
    const temperatureC = new Float64Array(blocksPerDay);
    const vapourKgPerM3 = new Float64Array(blocksPerDay);
    const saturated = new Float64Array(blocksPerDay);
    for (let block = 0; block < blocksPerDay; block++) {
      const end = day * daySeconds + (block + 1) * blockSeconds;
      for (let s = end - blockSeconds; s < end;) {
        while (next < readings.length && readings[next]!.atS <= s) next++;
        const to = Math.min(end, readings[next]?.atS ?? Infinity);
        const share = (to - s) / blockSeconds;
        const a = between(readings[next - 1], readings[next], s);
        const b = between(readings[next - 1], readings[next], to);
        const saturatedA = saturatedKgPerM3(a.temperatureC);
        const saturatedB = saturatedKgPerM3(b.temperatureC);
        temperatureC[block] = temperatureC[block]! + (share * (a.temperatureC + b.temperatureC)) / 2;
        saturated[block] = saturated[block]! + (share * (saturatedA + saturatedB)) / 2;
        vapourKgPerM3[block] =
          vapourKgPerM3[block]! + (share * (a.humidity * saturatedA + b.humidity * saturatedB)) / 2;
        s = to;
      }
    }
    days.push({
      day,
      temperatureC,
      vapourKgPerM3,
      saturatedKgPerM3: saturated,
      uncertain: new Uint8Array(blocksPerDay),
    });
  }
  return days;
}

function between(
  before: Reading | undefined,
  after: Reading | undefined,
  atS: number,
): { temperatureC: number; humidity: number } {
  if (!before || !after) return before ?? after ?? { temperatureC: NaN, humidity: NaN };
  const share = (atS - before.atS) / (after.atS - before.atS);
  return {
    temperatureC: before.temperatureC + share * (after.temperatureC - before.temperatureC),
    humidity: before.humidity + share * (after.humidity - before.humidity),
  };
}

/** A day of one temperature and humidity, as blocks of a typical day. */
export function evenDay(temperatureC: number, humidity: number): TypicalDay {
  const saturated = saturatedKgPerM3(temperatureC);
  return {
    temperatureC: new Float64Array(blocksPerDay).fill(temperatureC),
    vapourKgPerM3: new Float64Array(blocksPerDay).fill(humidity * saturated),
    saturatedKgPerM3: new Float64Array(blocksPerDay).fill(saturated),
  };
}
