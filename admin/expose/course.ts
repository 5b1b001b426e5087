// Water over time as a plot, as words and as a table: one set of points, told three ways.
import type { PlotData } from '../draw/data.ts';
import { fullTime, spokenTime } from '../say/time.ts';
import { aboutPercent, percent } from '../say/water.ts';
import type { Water } from './questions.ts';

export type Point = Water['waterOverTime'][number];

export interface Band {
  upper: number | null;
  lower: number | null;
}

/** What would be, drawn on from now. */
export interface Ahead {
  points: readonly Omit<Point, 'roomHumidityPercent'>[];
  label: string;
}

/** Something that happened, as the plot tells it. */
export interface Happened {
  at: string;
  sentence: string;
}

const seconds = (at: string): number => Date.parse(at) / 1000;

/** The instants of the plot: what was, then what would be. */
const timesOf = (points: readonly Point[], ahead: Ahead | null): number[] =>
  [...points, ...(ahead?.points ?? [])].map(({ at }) => seconds(at));

const blank = (of: readonly unknown[]): null[] => of.map(() => null);

export function waterPlot(
  points: readonly Point[],
  { upper, lower }: Band,
  events: readonly string[],
  ahead: Ahead | null = null,
): PlotData {
  const would = ahead?.points ?? [];
  const of = (key: 'scoopWaterFraction' | 'scoopLow' | 'scoopHigh' | 'meanWaterFraction') => [
    ...points.map((point) => point[key]),
    ...blank(would),
  ];
  const drawn: PlotData['lines'] = ahead
    ? [
        {
          label: ahead.label,
          values: [...blank(points), ...would.map(({ scoopWaterFraction }) => scoopWaterFraction)],
          low: [...blank(points), ...would.map(({ scoopLow }) => scoopLow)],
          high: [...blank(points), ...would.map(({ scoopHigh }) => scoopHigh)],
          dashed: true,
          colour: 'accent',
        },
      ]
    : [];
  const limits = [];
  if (upper !== null) limits.push({ value: upper, label: `upper end ${percent(upper)}` });
  if (lower !== null && lower > 0) limits.push({ value: lower, label: `lower end ${percent(lower)}` });
  return {
    times: timesOf(points, ahead),
    lines: [
      {
        label: 'next scoop',
        values: of('scoopWaterFraction'),
        low: of('scoopLow'),
        high: of('scoopHigh'),
        colour: 'ink',
      },
      { label: 'mean', values: of('meanWaterFraction'), dashed: true, colour: 'muted' },
      ...drawn,
    ],
    limits,
    ticks: events.map(seconds),
    format: (value) => percent(value, (upper ?? 1) < 0.02 ? 1 : 0),
    least: [0, (upper ?? 0) * 1.2],
  };
}

export function humidityPlot(points: readonly Point[], ahead: Ahead | null = null): PlotData {
  const humidities = points.map(({ roomHumidityPercent }) => roomHumidityPercent);
  return {
    times: timesOf(points, ahead),
    lines: [{ label: '', values: [...humidities, ...blank(ahead?.points ?? [])], colour: 'accent' }],
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

/** For each point, what happened at it or since the one before. */
export function happenedAt(points: readonly Pick<Point, 'at'>[], events: readonly Happened[]): Map<number, Happened[]> {
  const found = new Map<number, Happened[]>();
  const first = points[0];
  const last = points.at(-1);
  if (!first || !last) return found;
  for (const event of events) {
    const ms = Date.parse(event.at);
    if (ms < Date.parse(first.at) || ms > Date.parse(last.at)) continue;
    let nearest = 0;
    for (const [i, { at }] of points.entries()) {
      if (Math.abs(Date.parse(at) - ms) < Math.abs(Date.parse(points[nearest]?.at ?? at) - ms)) nearest = i;
    }
    found.set(nearest, [...(found.get(nearest) ?? []), event]);
  }
  return found;
}

/** Either side of an event one still hovers on it, points. */
const REACH = 3;

/** The point with an event nearest to one, within reach. */
export function eventNear(at: ReadonlyMap<number, readonly Happened[]>, index: number): number | null {
  const near = [...at.keys()].filter((point) => Math.abs(point - index) <= REACH);
  near.sort((a, b) => Math.abs(a - index) - Math.abs(b - index));
  return near[0] ?? null;
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
