// Water over time and over depth, for pictures: worked out when asked for, from the checkpoint before.
import type { Context } from '../context.ts';
import type { Container } from '../database/generated/sqlite/client.ts';
import { invalid } from '../errors.ts';
import { roomAt } from '../science/checkpoint.ts';
import { meanAir } from '../science/climate.ts';
import { foldExposure } from '../science/exposure.ts';
import type { FoldInput } from '../science/history.ts';
import { waterSeries } from '../science/series.ts';
import { foldInputAt } from './water.ts';

export interface WaterPoint {
  at: Date;
  meanWaterFraction: number;
  low: number;
  high: number;
  scoopWaterFraction: number;
  scoopLow: number;
  scoopHigh: number;
  roomHumidityPercent: number | null;
}

export interface DepthPoint {
  depthMm: number;
  waterFraction: number;
}

const dayMs = 86_400_000;
const usualDays = 7;
const mostAheadDays = 90;
const usualPoints = 200;
export const mostPoints = 1_000;
/** The room's air is told as the mean of so long, s. */
const airMeanS = 900;

/** The room that the container stands in at an instant. */
function roomOver({ checkpoint, start, actions }: FoldInput, atS: number): string {
  let room = checkpoint ? roomAt(checkpoint) : start.room;
  const since = checkpoint?.atS ?? start.atS;
  for (const action of actions) {
    if (action.atS > atS) break;
    if (action.kind === 'moved' && action.atS > since) room = action.room;
  }
  return room;
}

export interface Stretch {
  from?: Date | null | undefined;
  until?: Date | null | undefined;
  points?: number | null | undefined;
}

/** Evenly spread instants, s; the first and the last are the ends. */
export const spread = (fromS: number, untilS: number, points: number): number[] =>
  Array.from({ length: points }, (_, i) => (points === 1 ? untilS : fromS + ((untilS - fromS) * i) / (points - 1)));

/** Water and room air at each of the instants, which must be in order. */
export const waterAtEach = (input: FoldInput, instantsS: readonly number[]): WaterPoint[] =>
  waterSeries(input, instantsS).map((water) => {
    const air = input.airs.get(roomOver(input, water.atS));
    const humidity = air ? meanAir(air, water.atS - airMeanS, water.atS).humidity : NaN;
    return {
      at: new Date(Math.round(water.atS * 1000)),
      meanWaterFraction: water.mean,
      low: water.low,
      high: water.high,
      scoopWaterFraction: water.scoop,
      scoopLow: water.scoopLow,
      scoopHigh: water.scoopHigh,
      roomHumidityPercent: Number.isFinite(humidity) ? 100 * humidity : null,
    };
  });

/**
 * The container's water over a stretch of time; beyond now the room's typical day stands in. Empty where there can be no
 * estimate. Refuses more points than a picture has, and times that end before they begin.
 */
export async function waterOverTime(context: Context, container: Container, of: Stretch): Promise<WaterPoint[]> {
  const nowMs = context.now().getTime();
  const untilMs = of.until?.getTime() ?? nowMs;
  const fromMs = Math.max(container.cameInAt.getTime(), of.from?.getTime() ?? untilMs - usualDays * dayMs);
  const points = of.points ?? usualPoints;
  if (points < 1 || points > mostPoints) throw invalid('points', points, `from 1 to ${mostPoints}`);
  if (untilMs > nowMs + mostAheadDays * dayMs) {
    throw invalid('until', new Date(untilMs).toISOString(), `at most ${mostAheadDays} days ahead`);
  }
  if (fromMs > untilMs) return [];
  const found = await foldInputAt(context.database, context.lab, container.id, untilMs, fromMs);
  if (!found) return [];
  const { input } = found;
  const firstS = Math.max(fromMs / 1000, input.checkpoint?.atS ?? input.start.atS);
  return waterAtEach(input, spread(firstS, untilMs / 1000, points));
}

/** The water at each depth now, from the top; empty where there can be no estimate. */
export async function depthProfile(context: Context, container: Container): Promise<DepthPoint[]> {
  const found = await foldInputAt(context.database, context.lab, container.id, context.now().getTime());
  if (!found) return [];
  const { profile } = foldExposure(found.input).answer;
  return profile.map(({ depthM, waterFraction }) => ({ depthMm: 1000 * depthM, waterFraction }));
}
