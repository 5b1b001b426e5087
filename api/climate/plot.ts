// A room's air thinned for a plot: every block counts, in the mean and in the range of its point.
import { blocksPerDay, blockSeconds } from '../science/climate.ts';
import type { DayBlocks } from '../science/history.ts';
import { type AirReader, airOf } from './air.ts';

export interface AirPoint {
  /** Middle of the stretch it stands for. */
  at: Date;
  temperatureC: number | null;
  temperatureLowC: number | null;
  temperatureHighC: number | null;
  humidityPercent: number | null;
  humidityLowPercent: number | null;
  humidityHighPercent: number | null;
  vapourGramsPerM3: number | null;
  /** Share of its known time that was not measured, 0 to 1. */
  filledFraction: number;
}

interface Range {
  sum: number;
  low: number;
  high: number;
}

const emptyRange = (): Range => ({ sum: 0, low: Infinity, high: -Infinity });

function take(range: Range, value: number): void {
  range.sum += value;
  if (value < range.low) range.low = value;
  if (value > range.high) range.high = value;
}

/** The mean of a stretch's blocks and their range; humidity is that of the mean vapour at the mean saturation. */
function pointOf(days: ReadonlyMap<number, DayBlocks>, from: number, until: number): AirPoint {
  const temperature = emptyRange();
  const humidity = emptyRange();
  let vapour = 0;
  let saturated = 0;
  let known = 0;
  let filled = 0;
  for (let block = from; block < until; block++) {
    const day = days.get(Math.floor(block / blocksPerDay));
    const k = block - Math.floor(block / blocksPerDay) * blocksPerDay;
    if (!day || day.uncertain[k] === 2) continue;
    known++;
    if (day.uncertain[k] === 1) filled++;
    const held = day.vapourKgPerM3[k] ?? NaN;
    const full = day.saturatedKgPerM3[k] ?? NaN;
    take(temperature, day.temperatureC[k] ?? NaN);
    take(humidity, (100 * held) / full);
    vapour += held;
    saturated += full;
  }
  const at = new Date((from + until) * (blockSeconds / 2) * 1000);
  const told = (value: number): number | null => (known > 0 ? value : null);
  return {
    at,
    temperatureC: told(temperature.sum / known),
    temperatureLowC: told(temperature.low),
    temperatureHighC: told(temperature.high),
    humidityPercent: told((100 * vapour) / saturated),
    humidityLowPercent: told(humidity.low),
    humidityHighPercent: told(humidity.high),
    vapourGramsPerM3: told((1000 * vapour) / known),
    filledFraction: known > 0 ? filled / known : 0,
  };
}

/** At most `points` of them, each standing for as many whole blocks. */
export async function plotOf(
  read: AirReader,
  roomId: string,
  from: Date,
  until: Date,
  points: number,
): Promise<AirPoint[]> {
  const first = Math.floor(from.getTime() / 1000 / blockSeconds);
  const end = Math.max(first + 1, Math.ceil(until.getTime() / 1000 / blockSeconds));
  const untilDay = Math.floor((end - 1) / blocksPerDay) + 1;
  const blocks = await airOf(read, roomId, Math.floor(first / blocksPerDay), untilDay);
  const days = new Map(blocks.map((day) => [day.day, day]));
  const count = Math.min(points, end - first);
  const edge = (index: number) => first + Math.round(((end - first) * index) / count);
  return Array.from({ length: count }, (_, index) => pointOf(days, edge(index), edge(index + 1)));
}
