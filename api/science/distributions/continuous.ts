// The normal, Student's, Fisher's and the chi-square distribution: chances and quantiles to about 1e-12.
import { betaShares } from './beta.ts';
import { chiSquareBelow, gammaShares } from './gamma.ts';
import { poissonTerm } from './saddle.ts';
import { rootAbove } from './root.ts';

/** Φ(x). */
export function normalShare(x: number): number {
  const [below, above] = gammaShares(0.5, (x * x) / 2);
  return x < 0 ? above / 2 : 0.5 + below / 2;
}

/** P(T ≤ t). */
export function studentBelow(t: number, freedom: number): number {
  const square = t * t;
  const [tails] = betaShares(freedom / 2, 0.5, freedom / (freedom + square), square / (freedom + square));
  return t > 0 ? 1 - tails / 2 : tails / 2;
}

/** The t below which a share lies. */
export function studentQuantile(share: number, freedom: number): number {
  if (share === 0.5) return 0;
  const tail = Math.min(share, 1 - share);
  const t = rootAbove((x) => tail - studentBelow(-x, freedom));
  return share < 0.5 ? -t : t;
}

export const chiSquareQuantile = (share: number, freedom: number): number =>
  rootAbove((x) => chiSquareBelow(x, freedom) - share);

/** P(F ≤ f). */
export function fisherBelow(f: number, above: number, below: number): number {
  const x = above * f;
  return betaShares(above / 2, below / 2, x / (x + below), below / (x + below))[0];
}

export const fisherQuantile = (share: number, above: number, below: number): number =>
  rootAbove((f) => fisherBelow(f, above, below) - share);

/** P(F ≤ f) when the effect is there: a Poisson mixture of beta chances, from its middle outwards. */
export function noncentralFisherBelow(f: number, above: number, below: number, noncentrality: number): number {
  const mean = noncentrality / 2;
  const x = (above * f) / (above * f + below);
  const y = below / (above * f + below);
  const part = (j: number): number => poissonTerm(j, mean) * betaShares(above / 2 + j, below / 2, x, y)[0];
  const middle = Math.floor(mean);
  let sum = 0;
  for (let j = middle; j >= 0; j--) {
    sum += part(j);
    if (poissonTerm(j, mean) < 1e-16) break;
  }
  for (let j = middle + 1; poissonTerm(j, mean) > 1e-16; j++) sum += part(j);
  return Math.min(1, sum);
}
