// A room's typical day: what stands in where nobody measured.
//
// On UTC blocks, as everything stored is: for the one or two days after a change to or from summer time it lags the
// lab's habits by an hour, which is less than what one day differs from another.
import { saturatedKgPerM3 } from '../science/air.ts';
import { blocksPerDay } from '../science/climate.ts';
import type { DayBlocks, TypicalDay } from '../science/history.ts';
import { median } from './median.ts';

const windowDays = 30;
const blocksPerHour = blocksPerDay / 24;

type Means = 'temperatureC' | 'vapourKgPerM3' | 'saturatedKgPerM3';
type DayOf = (day: number) => DayBlocks | undefined;

/**
 * The median of each hour of the day over the 30 days before a block (counted from 1970), measured air only; an hour
 * that was never measured takes the median of all. Null when nothing was measured in that time.
 */
export function typicalDayBefore(dayOf: DayOf, endBlock: number): TypicalDay | null {
  const from = endBlock - windowDays * blocksPerDay;
  const hours: { day: DayBlocks; block: number }[][] = Array.from({ length: 24 }, () => []);
  for (let number = Math.floor(from / blocksPerDay); number * blocksPerDay < endBlock; number++) {
    const day = dayOf(number);
    if (!day) continue;
    for (let block = 0; block < blocksPerDay; block++) {
      const at = number * blocksPerDay + block;
      if (at >= from && at < endBlock && day.uncertain[block] === 0) {
        hours[Math.floor(block / blocksPerHour)]?.push({ day, block });
      }
    }
  }
  const all = hours.flat();
  if (all.length === 0) return null;
  const typical = (means: Means): Float64Array => {
    const middle = (among: typeof all) => median(among.map(({ day, block }) => day[means][block] ?? NaN));
    let whole: number | undefined;
    const byHour = hours.map((among) => (among.length > 0 ? middle(among) : (whole ??= middle(all))));
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
