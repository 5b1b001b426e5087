// A room's air in one line: what it is now, and how that is known.
import { spokenSpan, spokenTime } from '../say/time.ts';
import { air } from '../say/water.ts';
import type { Clock } from '../say/state.ts';
import type { Room } from './questions.ts';

type Known = Pick<
  Room,
  | 'temperatureC'
  | 'relativeHumidityPercent'
  | 'vapourGramsPerM3'
  | 'isAirFilled'
  | 'lastReadingAt'
  | 'assumedHumidityPercent'
  | 'assumedAir'
>;

export const airNow = ({ temperatureC, relativeHumidityPercent, vapourGramsPerM3 }: Known): string => {
  const vapour = vapourGramsPerM3 === null ? '' : `, ${vapourGramsPerM3.toFixed(1)}\u00a0g/m³ water`;
  return `${air(temperatureC, relativeHumidityPercent)}${vapour}`;
};

/** Where the air comes from; a stale record says how old it is. */
export function airFrom(room: Known, { now, zone }: Clock): string {
  const noted = room.assumedAir.findLast(({ humidityPercent }) => humidityPercent !== null);
  if (noted && (room.lastReadingAt === null || noted.from > room.lastReadingAt)) {
    return `noted by hand ${spokenTime(new Date(noted.from), now, zone)}, and taken for granted since`;
  }
  if (room.lastReadingAt === null) {
    return room.assumedHumidityPercent === null
      ? 'nobody knows its air: drop a logger’s file'
      : 'taken for granted, no readings';
  }
  const last = new Date(room.lastReadingAt);
  const hours = (now.getTime() - last.getTime()) / 3_600_000;
  const read = hours < 2 ? `read ${spokenSpan(hours)} ago` : `last read ${spokenTime(last, now, zone)}`;
  return room.isAirFilled ? `${read}; filled with its typical day since` : read;
}
