// A fitted isotherm as a picture: where its lines and points lie, and what it says to somebody who does not see it.
import { spreadOut } from '../draw/spread.ts';
import { percent } from '../say/water.ts';
import type { Fit } from './questions.ts';

export interface Frame {
  width: number;
  height: number;
}
export const frame: Frame = { width: 640, height: 320 };
const margin = { left: 46, right: 8, top: 14, bottom: 44 };

/** The least round water above what is shown, kg/kg. */
function topOf({ curve, points }: Pick<Fit, 'curve' | 'points'>): number {
  const upTo = curve.filter(({ relativeHumidityPercent }) => relativeHumidityPercent <= 70);
  const most = Math.max(
    ...upTo.flatMap(({ waterFraction, classWaterFraction }) => [1.15 * waterFraction, classWaterFraction]),
    ...points.map(({ waterFraction }) => 1.2 * waterFraction),
  );
  return [0.005, 0.01, 0.02, 0.03, 0.05, 0.1, 0.15, 0.2, 0.3, 0.5, 1, 2].find((round) => round >= most) ?? most;
}

export interface Drawn {
  fitted: string;
  before: string;
  range: string;
  points: { x: number; y: number; label: string }[];
  labels: { y: number; label: string; line: 'fitted' | 'before' }[];
  xTicks: { x: number; label: string }[];
  yTicks: { y: number; label: string }[];
  inner: { left: number; right: number; top: number; bottom: number };
}

export function drawn(fit: Fit): Drawn {
  const top = topOf(fit);
  const inner = {
    left: margin.left,
    right: frame.width - margin.right,
    top: margin.top,
    bottom: frame.height - margin.bottom,
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
        { y: y(end.waterFraction), label: 'as weighed', line: 'fitted' as const },
        { y: y(end.classWaterFraction), label: fit.fromClass, line: 'before' as const },
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
    labels: spreadOut(ends, 18, inner.top + 12, inner.bottom - 6),
    xTicks: [0, 15, 30, 45, 60, 75, 90].map((one) => ({ x: x(one), label: String(one) })),
    yTicks: [0, 0.25, 0.5, 0.75, 1].map((share) => {
      const water = share * top;
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
