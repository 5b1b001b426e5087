// A fitted isotherm as a picture: where its lines and points lie, and what it says to somebody who does not see it.
import { spreadOut } from '../draw/spread.ts';
import { percent } from '../say/water.ts';
import type { Fit } from './questions.ts';

export const height = 300;
const margin = { left: 40, right: 8, top: 14, bottom: 44 };

/** Round ends of the axis, kg/kg, and into how many round parts each goes. */
const tops: readonly (readonly [number, number])[] = [
  [0.005, 5],
  [0.01, 5],
  [0.02, 4],
  [0.03, 3],
  [0.05, 5],
  [0.08, 4],
  [0.1, 5],
  [0.15, 3],
  [0.2, 4],
  [0.3, 3],
  [0.5, 5],
  [1, 5],
  [2, 4],
];

/** The least round water above what is shown. */
function topOf({ curve, points }: Pick<Fit, 'curve' | 'points'>): readonly [number, number] {
  const upTo = curve.filter(({ relativeHumidityPercent }) => relativeHumidityPercent <= 70);
  const most = Math.max(
    ...upTo.flatMap(({ waterFraction, classWaterFraction }) => [1.15 * waterFraction, classWaterFraction]),
    ...points.map(({ waterFraction }) => 1.2 * waterFraction),
  );
  return tops.find(([round]) => round >= most) ?? [most, 4];
}

interface Drawn {
  fitted: string;
  before: string;
  range: string;
  points: { x: number; y: number; label: string }[];
  labels: { x: number; y: number; label: string; line: 'fitted' | 'before' }[];
  xTicks: { x: number; label: string }[];
  yTicks: { y: number; label: string }[];
  inner: { left: number; right: number; top: number; bottom: number };
}

/** The picture in a frame so many pixels wide. */
export function drawn(fit: Fit, width: number): Drawn {
  const [top, parts] = topOf(fit);
  const inner = {
    left: margin.left,
    right: width - margin.right,
    top: margin.top,
    bottom: height - margin.bottom,
  };
  const x = (relativeHumidity: number): number => inner.left + ((inner.right - inner.left) * relativeHumidity) / 90;
  const y = (water: number): number => inner.bottom - ((inner.bottom - inner.top) * Math.min(water, 1.3 * top)) / top;
  const path = (of: (point: Fit['curve'][number]) => number, reversed = false): string =>
    (reversed ? fit.curve.toReversed() : fit.curve)
      .map((point) => `${x(point.relativeHumidityPercent).toFixed(1)} ${y(of(point)).toFixed(1)}`)
      .join(' L');
  const range = `M${path(({ high }) => high)} L${path(({ low }) => low, true)} Z`;
  // Labels stand where the curves are still in the picture, at the right.
  const inside = fit.curve.filter(
    ({ waterFraction, classWaterFraction }) => Math.max(waterFraction, classWaterFraction) <= top,
  );
  const end = inside.at(-1) ?? fit.curve[0];
  const ends = end
    ? [
        {
          x: x(end.relativeHumidityPercent) - 10,
          y: y(end.waterFraction),
          label: 'as weighed',
          line: 'fitted' as const,
        },
        {
          x: x(end.relativeHumidityPercent),
          y: y(end.classWaterFraction) + 20,
          label: fit.fromClass,
          line: 'before' as const,
        },
      ]
    : [];
  return {
    fitted: `M${path(({ waterFraction }) => waterFraction)}`,
    before: `M${path(({ classWaterFraction }) => classWaterFraction)}`,
    range,
    points: fit.points.map(({ relativeHumidityPercent, waterFraction, over }) => ({
      x: x(relativeHumidityPercent),
      y: y(waterFraction),
      label: `${over}, ${percent(waterFraction)}`,
    })),
    labels: spreadOut(ends, 20, inner.top + 12, inner.bottom - 6),
    xTicks: [0, 15, 30, 45, 60, 75, 90].map((one) => ({ x: x(one), label: String(one) })),
    yTicks: Array.from({ length: parts + 1 }, (_, i) => {
      const water = (i * top) / parts;
      return { y: y(water), label: String(Number((100 * water).toFixed(2))) };
    }),
    inner,
  };
}

export function curveWords(fit: Fit): string {
  const at = (relativeHumidity: number) =>
    fit.curve.find(({ relativeHumidityPercent }) => Math.abs(relativeHumidityPercent - relativeHumidity) < 1.01);
  const half = at(50);
  const points = fit.points
    .map((one) => `${percent(one.waterFraction)} at ${Math.round(one.relativeHumidityPercent)} % RH`)
    .join(', ');
  const middle = half
    ? ` At 50 % RH the curve as weighed holds ${percent(half.waterFraction)} (${percent(half.low)} to ${percent(half.high)}), ${fit.fromClass} ${percent(half.classWaterFraction)}.`
    : '';
  return `Water over relative humidity at 25 °C, dry basis. Weighed: ${points}.${middle}`;
}
