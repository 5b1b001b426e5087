// Water over time as a plot, as words and as a table: one set of points, told three ways.
import type { PlotData } from '../draw/plot.ts';
import { fullTime, spokenTime } from '../say/time.ts';
import { aboutPercent, percent } from '../say/water.ts';
import type { Water } from './questions.ts';

export type Point = Water['waterOverTime'][number];

export interface Band {
  upper: number | null;
  lower: number | null;
}

const seconds = (at: string): number => Date.parse(at) / 1000;

export function waterPlot(points: readonly Point[], { upper, lower }: Band, events: readonly string[]): PlotData {
  const of = (key: 'scoopWaterFraction' | 'scoopLow' | 'scoopHigh' | 'meanWaterFraction') =>
    points.map((point) => point[key]);
  const limits = [];
  if (upper !== null) limits.push({ value: upper, label: `upper end ${percent(upper)}` });
  if (lower !== null && lower > 0) limits.push({ value: lower, label: `lower end ${percent(lower)}` });
  return {
    times: points.map(({ at }) => seconds(at)),
    lines: [
      {
        label: 'next scoop',
        values: of('scoopWaterFraction'),
        low: of('scoopLow'),
        high: of('scoopHigh'),
        colour: 'ink',
      },
      { label: 'mean', values: of('meanWaterFraction'), dashed: true, colour: 'ink' },
    ],
    limits,
    ticks: events.map(seconds),
    format: (value) => percent(value, (upper ?? 1) < 0.02 ? 1 : 0),
    least: [0, (upper ?? 0) * 1.2],
  };
}

export function humidityPlot(points: readonly Point[], room: string): PlotData {
  return {
    times: points.map(({ at }) => seconds(at)),
    lines: [
      {
        label: `${room}, % RH`,
        values: points.map(({ roomHumidityPercent }) => roomHumidityPercent),
        colour: 'accent',
      },
    ],
    format: (value) => String(Number(value.toFixed(1))),
    undated: true,
  };
}

/** The first instant at which the next scoop stands past an end of the band it had kept until then. */
function crossing(points: readonly Point[], upper: number | null): Point | null {
  if (upper === null) return null;
  const at = points.findIndex(({ scoopWaterFraction }) => scoopWaterFraction > upper);
  return at > 0 ? (points[at] ?? null) : null;
}

/** What the plot shows, in a sentence. */
export function courseWords(points: readonly Point[], { upper }: Band, now: Date, zone: string): string {
  const first = points[0];
  const last = points.at(-1);
  if (!first || !last) return 'No water is known over this time.';
  const said = (at: string) => spokenTime(new Date(at), now, zone);
  const past = crossing(points, upper);
  const cross = past && upper !== null ? `, past its upper end of ${percent(upper)} at ${said(past.at)}` : '';
  return `Water over time, ${said(first.at)} to ${said(last.at)}: the next scoop went from ${percent(first.scoopWaterFraction)} to ${percent(last.scoopWaterFraction)}${cross}.`;
}

export function pointWords({ at, ...point }: Point, now: Date, zone: string): string {
  const { scoopWaterFraction: value, scoopLow: low, scoopHigh: high, roomHumidityPercent: humidity } = point;
  const air = humidity === null ? 'air unknown' : `${Math.round(humidity)}\u00a0% RH`;
  return `${spokenTime(new Date(at), now, zone)}: next scoop ${aboutPercent({ value, low, high })}, mean ${percent(point.meanWaterFraction)}, ${air}`;
}

export interface Row {
  at: string;
  when: string;
  full: string;
  scoop: string;
  mean: string;
  humidity: string;
}

export function courseRows(points: readonly Point[], now: Date, zone: string): Row[] {
  return points
    .toReversed()
    .map(
      ({ at, scoopWaterFraction: value, scoopLow: low, scoopHigh: high, meanWaterFraction, roomHumidityPercent }) => {
        const when = new Date(at);
        return {
          at,
          when: spokenTime(when, now, zone),
          full: fullTime(when, zone),
          scoop: aboutPercent({ value, low, high }),
          mean: percent(meanWaterFraction),
          humidity: roomHumidityPercent === null ? 'unknown' : `${Math.round(roomHumidityPercent)}\u00a0%`,
        };
      },
    );
}
