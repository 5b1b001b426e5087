// The chart of one sorbent and compound over time: its points, where one lot ends and the next begins, what lies outside.
import { ewmaOf } from './ewma.ts';
import { individualsOf, movingRanges, outside, type Limits } from './individuals.ts';

/** In the order in which they were measured. */
export interface Measured {
  readonly value: number;
  readonly lot: string;
}

export interface ChartPoint extends Measured {
  readonly range: number | null;
  readonly average: number;
  readonly valueOutside: boolean;
  readonly rangeOutside: boolean;
  readonly averageOutside: boolean;
}

export interface Chart {
  readonly points: readonly ChartPoint[];
  readonly values: Limits;
  readonly ranges: Limits;
  readonly averages: Limits;
  /** Stretches of one lot, as places among the points, both included. */
  readonly lots: readonly { readonly lot: string; readonly from: number; readonly to: number }[];
  /** How many points the limits rest on. */
  readonly rests: number;
}

/** Limits rest on the first `rests` points, or on all; null of too few to have any. */
export function chartOf(measured: readonly Measured[], rests = measured.length): Chart | null {
  const values = measured.map(({ value }) => value);
  const base = individualsOf(values.slice(0, rests));
  if (!base) return null;
  const ranges = movingRanges(values);
  const ewma = ewmaOf(values, base.values.centre, base.sigma);
  const points = measured.map(({ value, lot }, i): ChartPoint => {
    const range = i === 0 ? null : ranges[i - 1]!;
    const average = ewma.values[i]!;
    return {
      value,
      lot,
      range,
      average,
      valueOutside: outside(value, base.values),
      rangeOutside: range !== null && outside(range, base.ranges),
      averageOutside: outside(average, ewma.limits),
    };
  });
  return {
    points,
    values: base.values,
    ranges: base.ranges,
    averages: ewma.limits,
    lots: stretches(measured),
    rests: Math.min(rests, measured.length),
  };
}

function stretches(measured: readonly Measured[]): Chart['lots'] {
  const lots: { lot: string; from: number; to: number }[] = [];
  for (const [i, { lot }] of measured.entries()) {
    const last = lots.at(-1);
    if (last?.lot === lot) last.to = i;
    else lots.push({ lot, from: i, to: i });
  }
  return lots;
}
