// A room's typical day: what stands in where nobody measured.
//
// On UTC blocks, as everything stored is: for the one or two days after a change to or from summer time it lags the
// lab's habits by an hour, which is less than what one day differs from another.
import { saturatedKgPerM3 } from '../science/air.ts';
import { blocksPerDay } from '../science/climate.ts';
import type { DayBlocks, TypicalDay } from '../science/history.ts';

const windowDays = 30;
const blocksPerHour = blocksPerDay / 24;

type Means = 'temperatureC' | 'vapourKgPerM3' | 'saturatedKgPerM3';
type DayOf = (day: number) => DayBlocks | undefined;

/** Measured blocks of [from, end), by hour of the day: which day, which block. */
function measuredByHour(dayOf: DayOf, from: number, end: number): { days: DayBlocks[]; hours: number[][] } {
  const days: DayBlocks[] = [];
  const hours: number[][] = Array.from({ length: 24 }, () => []);
  for (let number = Math.floor(from / blocksPerDay); number * blocksPerDay < end; number++) {
    const day = dayOf(number);
    if (!day) continue;
    const first = Math.max(0, from - number * blocksPerDay);
    const last = Math.min(blocksPerDay, end - number * blocksPerDay);
    for (let block = first; block < last; block++) {
      if (day.uncertain[block] === 0)
        hours[Math.floor(block / blocksPerHour)]?.push(days.length * blocksPerDay + block);
    }
    days.push(day);
  }
  return { days, hours };
}

/** Native sorting of typed arrays: a typical day is wanted for each gap of a record that may have hundreds. */
function middleOf(days: readonly DayBlocks[], means: Means, places: readonly number[]): number {
  const values = new Float64Array(places.length);
  places.forEach((place, index) => {
    values[index] = days[Math.floor(place / blocksPerDay)]?.[means][place % blocksPerDay] ?? NaN;
  });
  values.sort();
  const middle = values.length >> 1;
  const upper = values[middle] ?? NaN;
  return values.length % 2 === 1 ? upper : ((values[middle - 1] ?? NaN) + upper) / 2;
}

/**
 * The median of each hour of the day over the 30 days before a block (counted from 1970), measured air only; an hour
 * that was never measured takes the median of all. Null when nothing was measured in that time.
 */
export function typicalDayBefore(dayOf: DayOf, endBlock: number): TypicalDay | null {
  const { days, hours } = measuredByHour(dayOf, endBlock - windowDays * blocksPerDay, endBlock);
  if (hours.every((places) => places.length === 0)) return null;
  const typical = (means: Means): Float64Array => {
    const whole = hours.some((places) => places.length === 0) ? middleOf(days, means, hours.flat()) : NaN;
    const byHour = hours.map((places) => (places.length > 0 ? middleOf(days, means, places) : whole));
    return Float64Array.from({ length: blocksPerDay }, (_, block) => byHour[Math.floor(block / blocksPerHour)] ?? NaN);
  };
  const saturated = typical('saturatedKgPerM3');
  const vapour = typical('vapourKgPerM3').map((value, block) => Math.min(value, saturated[block] ?? value));
  return { temperatureC: typical('temperatureC'), vapourKgPerM3: vapour, saturatedKgPerM3: saturated };
}

/** A day of one temperature and one humidity: what a lab takes for granted of a room without readings. */
export function constantDay(temperatureC: number, humidityPercent: number): TypicalDay {
  const full = saturatedKgPerM3(temperatureC);
  const all = (value: number) => new Float64Array(blocksPerDay).fill(value);
  return {
    temperatureC: all(temperatureC),
    vapourKgPerM3: all((humidityPercent / 100) * full),
    saturatedKgPerM3: all(full),
  };
}
