// Readings of one room become 300 s block means of temperature, vapour and saturated vapour: linear between readings.
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

/** Gaps up to this are bridged by the line between their ends, s. */
export const bridgedS = 7200;

/**
 * Days of blocks that cover `fromS` to `toS`. Lines join readings no more than `bridged` apart; with `held`, the first and
 * last readings stand beyond the ends. A block is known when at least half of it is covered.
 */
export function blocksOf(readings: readonly Reading[], fromS: number, toS: number, { bridged = bridgedS, held = false } = {}): DayBlocks[] {
  const firstDay = Math.floor(fromS / daySeconds);
  const days = Array.from({ length: Math.max(0, Math.ceil(toS / daySeconds) - firstDay) }, (_, i) => emptyDay(firstDay + i));
  const covered = days.map(() => new Float64Array(blocksPerDay));
  const add = (from: Reading, to: Reading): void => {
    const span = to.atS - from.atS;
    const at = (s: number): Reading => {
      const share = span > 0 ? (s - from.atS) / span : 0;
      return {
        atS: s, temperatureC: from.temperatureC + share * (to.temperatureC - from.temperatureC),
        humidity: from.humidity + share * (to.humidity - from.humidity),
      };
    };
    const begin = Math.max(from.atS, firstDay * daySeconds);
    const finish = Math.min(to.atS, (firstDay + days.length) * daySeconds);
    for (let s = begin; s < finish;) {
      const block = Math.floor(s / blockSeconds);
      const end = Math.min(finish, (block + 1) * blockSeconds);
      const day = Math.floor(block / blocksPerDay);
      const blocks = days[day - firstDay];
      const cover = covered[day - firstDay];
      if (blocks && cover) addPiece(blocks, cover, block - day * blocksPerDay, at(s), at(end));
      s = end;
    }
  };
  const [first] = readings;
  const last = readings.at(-1);
  if (held && first && last) add({ ...first, atS: -Infinity }, first);
  readings.forEach((reading, i) => {
    const before = readings[i - 1];
    if (before && reading.atS - before.atS <= bridged) add(before, reading);
  });
  if (held && last) add(last, { ...last, atS: Infinity });
  days.forEach((blocks, i) => settle(blocks, covered[i]!));
  return days;
}

type Writable = { -readonly [key in keyof DayBlocks]: DayBlocks[key] };

const emptyDay = (day: number): Writable => ({
  day, temperatureC: new Float64Array(blocksPerDay), vapourKgPerM3: new Float64Array(blocksPerDay),
  saturatedKgPerM3: new Float64Array(blocksPerDay), uncertain: new Uint8Array(blocksPerDay).fill(2),
});

function addPiece(blocks: DayBlocks, covered: Float64Array, block: number, from: Reading, to: Reading): void {
  const seconds = to.atS - from.atS;
  const saturatedFrom = saturatedKgPerM3(from.temperatureC);
  const saturatedTo = saturatedKgPerM3(to.temperatureC);
  covered[block] = covered[block]! + seconds;
  blocks.temperatureC[block]! += (seconds * (from.temperatureC + to.temperatureC)) / 2;
  blocks.saturatedKgPerM3[block]! += (seconds * (saturatedFrom + saturatedTo)) / 2;
  blocks.vapourKgPerM3[block]! += (seconds * (from.humidity * saturatedFrom + to.humidity * saturatedTo)) / 2;
}

function settle(blocks: DayBlocks, covered: Float64Array): void {
  covered.forEach((seconds, block) => {
    if (seconds < blockSeconds / 2) return;
    blocks.temperatureC[block]! /= seconds;
    blocks.saturatedKgPerM3[block]! /= seconds;
    blocks.vapourKgPerM3[block]! /= seconds;
    blocks.uncertain[block] = 0;
  });
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
