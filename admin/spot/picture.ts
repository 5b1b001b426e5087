// A chart as places in a picture: points, lines, limits and stretches of lots. Pure.
import type { Chart } from './questions.ts';

export interface Panel {
  readonly name: string;
  readonly height: number;
  readonly points: readonly { readonly i: number; readonly x: number; readonly y: number; readonly isOut: boolean }[];
  readonly path: string;
  readonly limits: readonly { readonly y: number; readonly label: string; readonly isCentre: boolean }[];
}

export interface Picture {
  readonly panels: readonly Panel[];
  readonly lots: readonly {
    readonly from: number;
    readonly to: number;
    readonly lot: string;
    readonly isFirst: boolean;
  }[];
  readonly left: number;
  readonly right: number;
}

/** Room for the labels of limits, px. */
const left = 6;
const right = 46;
const above = 18;

interface Values {
  readonly name: string;
  readonly height: number;
  readonly values: readonly (number | null)[];
  readonly out: readonly boolean[];
  readonly limits: { readonly low: number; readonly centre: number; readonly high: number } | null;
  readonly digits: number;
}

/** Where the i-th of so many stands across. */
export function across(i: number, count: number, width: number): number {
  const span = Math.max(1, width - left - right);
  return count < 2 ? left + span / 2 : left + 8 + (i * (span - 16)) / (count - 1);
}

function panelOf({ name, height, values, out, limits, digits }: Values, width: number): Panel {
  const known = values.filter((value): value is number => value !== null);
  const ends = limits ? [limits.low, limits.high] : [];
  const low = Math.min(...known, ...ends);
  const high = Math.max(...known, ...ends);
  const span = high - low || 1;
  const y = (value: number): number => above + ((high - value) / span) * (height - 2 * above);
  const format = (value: number): string => value.toFixed(digits);
  const points = values.flatMap((value, i) =>
    value === null ? [] : [{ i, x: across(i, values.length, width), y: y(value), isOut: out[i] ?? false }],
  );
  return {
    name,
    height,
    points,
    path: points.map(({ x, y: at }, k) => `${k === 0 ? 'M' : 'L'}${x.toFixed(1)} ${at.toFixed(1)}`).join(''),
    limits: limits
      ? [
          { y: y(limits.high), label: format(limits.high), isCentre: false },
          { y: y(limits.centre), label: format(limits.centre), isCentre: true },
          // The range has no lower limit but nought.
          ...(limits.low > 0 ? [{ y: y(limits.low), label: format(limits.low), isCentre: false }] : []),
        ]
      : [],
  };
}

export function pictureOf(chart: Chart, width: number): Picture {
  const { points, values, averages, ranges, lots } = chart;
  const largest = Math.max(...points.map(({ value }) => Math.abs(value)), 0);
  const digits = largest < 10 ? 2 : 1;
  const panels = [
    {
      name: 'Each value',
      height: 180,
      values: points.map(({ value }) => value),
      out: points.map(({ isValueOutside }) => isValueOutside),
      limits: values,
      digits,
    },
    {
      name: 'Weighted average',
      height: 116,
      values: points.map(({ average }) => average),
      out: points.map(({ isAverageOutside }) => isAverageOutside),
      limits: averages,
      digits: digits + 1,
    },
    {
      name: 'Moving range',
      height: 100,
      values: points.map(({ range }) => range),
      out: points.map(({ isRangeOutside }) => isRangeOutside),
      limits: ranges,
      digits: digits + 1,
    },
  ];
  const half = points.length < 2 ? 0 : (across(1, points.length, width) - across(0, points.length, width)) / 2;
  return {
    panels: panels.map((panel) => panelOf(panel, width)),
    lots: lots.map(({ lot, from, to }, i) => ({
      from: i === 0 ? left : across(from, points.length, width) - half,
      to: i === lots.length - 1 ? width - right : across(to, points.length, width) + half,
      lot: lot.lotNumber,
      isFirst: i === 0,
    })),
    left,
    right: width - right,
  };
}
