// Weighings in words, beside what was expected of them.
import type { PlotData } from '../draw/data.ts';
import { percent } from '../say/water.ts';
import type { Factor, Weighing } from './questions.ts';

type Amount = Pick<Weighing, 'of' | 'found' | 'expectedNow' | 'sigmas'>;

/** Water as a percentage, a gain in grams. */
export function amountWords(of: Weighing['of'], value: number | null): string {
  if (value === null) return 'nothing known';
  return of === 'GAIN' ? `${(1000 * value).toFixed(2)}\u00a0g` : percent(value, 2);
}

/** Nearer than this nobody would look twice, sigmas. */
const asExpected = 0.5;

/** "3.6 σ wetter": against what all others make one expect. */
export function awayWords(sigmas: number | null): string {
  if (sigmas === null) return 'not compared';
  const size = Math.abs(sigmas);
  if (size < asExpected) return 'as expected';
  return `${size < 9.95 ? size.toFixed(1) : size.toFixed(0)} σ ${sigmas > 0 ? 'wetter' : 'drier'}`;
}

export const againstWords = ({ of, found, expectedNow, sigmas }: Amount): string =>
  `${amountWords(of, found)} found, ${amountWords(of, expectedNow)} expected: ${awayWords(sigmas)}`;

/** How the page begins. */
export function leadWords(factors: readonly Factor[], leftOut: number): string {
  const ids = new Set(
    factors.flatMap(({ says }) =>
      says.flatMap(({ weighing }) => (/USED|CONFIRMED/.test(weighing.counts) ? [weighing.event.id] : [])),
    ),
  );
  const from = `From ${ids.size} ${ids.size === 1 ? 'weighing' : 'weighings'}`;
  const out = leftOut === 0 ? '' : `; ${leftOut} left out`;
  return `${from}${out}. Every estimate stands on it.`;
}

/** What lies further off is drawn there, so that the others can still be told apart; the words say how far. */
const farthest = 6;

/** Differences over time, in sigmas, with the four beyond which a weighing waits for somebody. */
export function residualPlot({ says }: Pick<Factor, 'says'>): { data: PlotData; weighings: readonly Weighing[] } {
  const weighings = says.map(({ weighing }) => weighing).filter(({ sigmas }) => sigmas !== null);
  const values = weighings.map(({ sigmas }) => Math.min(farthest, Math.max(-farthest, sigmas ?? 0)));
  return {
    weighings,
    data: {
      times: weighings.map(({ at }) => Date.parse(at) / 1000),
      lines: [{ label: 'found less expected', values, colour: 'accent' }],
      limits: [
        { value: 4, label: '4 σ wetter' },
        { value: -4, label: '4 σ drier' },
      ],
      format: (value) => `${Number(value.toPrecision(2))} σ`,
      least: [-5, 5],
    },
  };
}
