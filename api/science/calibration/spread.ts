// The spread of a container's water under what was learned, with the doubts about the factors hanging together.
import type { Condition } from '../condition.ts';
import type { Spread } from '../interval.ts';
import type { Held } from '../history.ts';
import { varianceAlong } from './gaussian.ts';
import { answering, type Stock } from './slopes.ts';

/**
 * Of the mean of the top `depthM`. A wrong hygrometer adds and everything else multiplies; where both were learned together
 * the whole variance is kept, and the hygrometer's part is what its own sigma makes of it.
 */
export function learnedSpread(
  stock: Stock,
  condition: Condition,
  depthM: number,
  held: Held,
  extraSdLn: number,
): Spread {
  const { water, slopes, blur } = answering(stock, condition, depthM);
  const variance = varianceAlong(held, slopes) + blur ** 2 + (water * extraSdLn) ** 2;
  const bias = slopes.get('bias');
  const shift = bias
    ? Math.min(
        Math.abs(bias.value) * (held.has('bias') ? Math.sqrt(held.covariance('bias', 'bias')) : bias.sd),
        Math.sqrt(variance),
      )
    : 0;
  return { water, sd: Math.sqrt(Math.max(0, variance - shift ** 2)), shift };
}
