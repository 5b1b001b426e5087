// Poisson and negative binomial counts by their mean and variance: chances and quantiles.
import { betaShares } from './beta.ts';
import { gammaShares } from './gamma.ts';

export type Counts =
  | { readonly family: 'poisson'; readonly mean: number }
  /** r successes wanted, each with chance p; the count is the failures before. */
  | { readonly family: 'negative-binomial'; readonly mean: number; readonly r: number; readonly p: number };

/** The negative binomial where the variance exceeds the mean, else Poisson. */
export function countsOf(mean: number, variance: number): Counts {
  if (!(mean > 0) || !(variance > mean)) return { family: 'poisson', mean: Math.max(0, mean) };
  return { family: 'negative-binomial', mean, r: (mean * mean) / (variance - mean), p: mean / variance };
}

/** Beyond this many wanted successes the two families cannot be told apart in double precision. */
const likePoisson = 1e12;

/** P(D ≤ count). */
export function countBelow(counts: Counts, count: number): number {
  const k = Math.floor(count);
  if (k < 0) return 0;
  if (counts.mean === 0) return 1;
  if (counts.family === 'poisson' || counts.r > likePoisson) return gammaShares(k + 1, counts.mean)[1];
  // q = mean/(mean + r) keeps its digits when p is nearly 1.
  const q = counts.mean / (counts.mean + counts.r);
  return betaShares(counts.r, k + 1, counts.p, q)[0];
}

/** The smallest count that a share of all cases does not exceed. */
export function countQuantile(counts: Counts, share: number): number {
  if (!(share < 1)) return Infinity;
  let low = -1;
  let high = Math.ceil(counts.mean) + 1;
  while (countBelow(counts, high) < share) {
    low = high;
    high *= 2;
  }
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (countBelow(counts, middle) < share) low = middle;
    else high = middle;
  }
  return high;
}
