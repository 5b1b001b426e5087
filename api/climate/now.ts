// A room's air at this moment, worked out once a request however many ask.
import type { Context } from '../context.ts';
import { blockSeconds } from '../science/climate.ts';
import { airOf } from './air.ts';
import { onceARequest, onceEach } from '../once.ts';
import { dayMs } from './series.ts';

export interface AirNow {
  at: Date;
  temperatureC: number;
  vapourKgPerM3: number;
  humidityPercent: number;
  /** Filled by the typical day, or taken for granted. */
  isFilled: boolean;
}

/** Null where nothing is known. */
export const airNow = onceARequest((context: Context, roomId: string) => airAt(context, roomId, context.now()));

/** A room's air at an instant; null where nothing is known of it. */
export const airAt = (context: Pick<Context, 'database'>, roomId: string, at: Date): Promise<AirNow | null> =>
  airsIn(context, { from: at, until: at })(roomId, at);

const dayNumber = (at: Date): number => Math.floor(at.getTime() / dayMs);

/** The air of rooms at many instants within a span of time; each room is read once. */
export function airsIn(
  { database }: Pick<Context, 'database'>,
  { from, until }: { readonly from: Date; readonly until: Date },
): (roomId: string, at: Date) => Promise<AirNow | null> {
  const first = dayNumber(from);
  const daysOf = onceEach((roomId: string) => airOf(database, roomId, first, dayNumber(until) + 1));
  return async (roomId, at) => {
    const day = (await daysOf(roomId))[dayNumber(at) - first];
    const block = Math.floor((at.getTime() - dayNumber(at) * dayMs) / (blockSeconds * 1000));
    const doubt = day?.uncertain[block] ?? 2;
    if (!day || doubt === 2) return null;
    const vapourKgPerM3 = day.vapourKgPerM3[block] ?? NaN;
    const humidityPercent = (100 * vapourKgPerM3) / (day.saturatedKgPerM3[block] ?? NaN);
    return { at, temperatureC: day.temperatureC[block] ?? NaN, vapourKgPerM3, humidityPercent, isFilled: doubt === 1 };
  };
}
