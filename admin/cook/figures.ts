// A recipe in figures one can take in at a glance.
import type { Recipe } from './questions.ts';

const ranged = (low: number, high: number, unit: string): string =>
  low === high ? `${low}\u00a0${unit}` : `${low} to ${high}\u00a0${unit}`;

/** Long stays in hours. */
const timed = (low: number, high: number): string =>
  low >= 120 && low % 60 === 0 && high % 60 === 0 ? ranged(low / 60, high / 60, 'h') : ranged(low, high, 'min');

export interface FigureShown {
  name: string;
  words: string;
  /** Nobody in this lab has set it. */
  guessed: boolean;
}

/** Its figures in the order one needs them at the oven. */
export function figures(recipe: Recipe): FigureShown[] {
  const { own, depthMm } = recipe;
  const shown = (name: string, words: string, ...keys: string[]): FigureShown => ({
    name,
    words,
    guessed: !keys.some((key) => own.includes(key)),
  });
  return [
    shown('Oven', recipe.vacuum ? 'vacuum' : 'full of air', 'vacuum'),
    shown(
      'Temperature',
      ranged(recipe.temperatureLowC, recipe.temperatureHighC, '°C'),
      'temperatureLowC',
      'temperatureHighC',
    ),
    shown('Once hot', timed(recipe.minutesLow, recipe.minutesHigh), 'minutesLow', 'minutesHigh'),
    ...(depthMm === null ? [] : [shown('Tray, at most', `${depthMm}\u00a0mm`, 'depthMm')]),
    shown('Hot after', `${recipe.heatUpMinutes}\u00a0min`, 'heatUpMinutes'),
    shown('Cool after', `${recipe.coolDownMinutes}\u00a0min`, 'coolDownMinutes'),
  ];
}

/** Where the upper temperature comes from, as a sentence. */
export const sourceWords = ({ limitSource }: Recipe): string =>
  `${limitSource[0]?.toUpperCase() ?? ''}${limitSource.slice(1)}.`;
