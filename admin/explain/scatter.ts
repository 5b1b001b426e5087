// Values against what they may go with, as places in a small picture: figures along an axis, names side by side. Pure.
import type { Point } from './questions.ts';

export type By = 'water' | 'humidity' | 'activation' | 'lot' | 'user';

export const byWord: Record<By, string> = {
  water: 'Water at use',
  humidity: 'Humidity',
  activation: 'Activation',
  lot: 'Lot',
  user: 'Person',
};

const regimeWord = { DRY_UNTIL_SPOTTED: 'activated', EQUILIBRATED: 'equilibrated' } as const;

const of: Record<By, (point: Point) => number | string | null> = {
  water: ({ run }) => (run.waterFraction === null ? null : 100 * run.waterFraction),
  humidity: ({ run }) => run.humidityPercent,
  activation: ({ run }) => (run.regime ? regimeWord[run.regime] : 'not prepared'),
  lot: ({ run }) => run.lot.lotNumber,
  user: ({ run }) => run.ranBy?.shortName ?? null,
};
const unit: Partial<Record<By, string>> = { water: '%', humidity: '% RH' };

export interface Scatter {
  readonly dots: readonly { readonly x: number; readonly y: number; readonly id: string }[];
  /** Under the axis, in hundredths from the left. */
  readonly marks: readonly { readonly at: number; readonly words: string }[];
  readonly low: number;
  readonly high: number;
  readonly words: string;
}

/** More names than these are not told apart in a small picture. */
const mostNames = 6;

/** Null where there are not two to compare. */
export function scatterOf(points: readonly Point[], by: By): Scatter | null {
  const known = points.flatMap((point) => {
    const x = of[by](point);
    return x === null ? [] : [{ x, value: point.value, id: point.run.id }];
  });
  const values = known.map(({ value }) => value);
  const levels = [...new Set(known.map(({ x }) => x))];
  if (known.length < 3 || levels.length < 2) return null;
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const y = (value: number): number => (high > low ? 94 - (88 * (value - low)) / (high - low) : 50);
  const isNamed = typeof levels[0] === 'string';
  const names = isNamed ? levels.map(String).slice(0, mostNames) : [];
  const numbers = known.map(({ x }) => Number(x));
  const [from, to] = isNamed ? [0, names.length] : [Math.min(...numbers), Math.max(...numbers)];
  const x = (value: number | string, i: number): number => {
    if (!isNamed) return 4 + (92 * (Number(value) - from)) / (to - from);
    // Dots of one name stand a little apart, in an order that does not change.
    const place = names.indexOf(String(value));
    return (100 * (place + 0.3 + (0.4 * ((i * 7) % 11)) / 10)) / names.length;
  };
  const dots = known
    .filter((point) => !isNamed || names.includes(String(point.x)))
    .map((point, i) => ({ x: x(point.x, i), y: y(point.value), id: point.id }));
  const said = (value: number): string => `${value.toFixed(to - from < 5 ? 1 : 0)} ${unit[by] ?? ''}`.trim();
  const mean = (name: string): string => {
    const own = known.filter((point) => String(point.x) === name).map(({ value }) => value);
    return (own.reduce((sum, value) => sum + value, 0) / own.length).toFixed(2);
  };
  return {
    dots,
    low,
    high,
    marks: isNamed
      ? names.map((name, i) => ({ at: (100 * (i + 0.5)) / names.length, words: name }))
      : [
          { at: 4, words: said(from) },
          { at: 96, words: said(to) },
        ],
    words: isNamed
      ? `Mean by ${byWord[by].toLowerCase()}: ${names.map((name) => `${name} ${mean(name)}`).join(', ')}.`
      : `${known.length} values against ${byWord[by].toLowerCase()} from ${said(from)} to ${said(to)}.`,
  };
}
