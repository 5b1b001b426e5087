// How much to have for one period of uncertain demand: the newsvendor, with normal and with Poisson demand.
import { countBelow, countQuantile } from '../distributions/counts.ts';
import { normalShare } from '../distributions/continuous.ts';
import { rootBetween } from '../distributions/root.ts';

export interface Critical {
  /** For a unit left over. */
  readonly over: number;
  /** For a unit that is missing. */
  readonly under: number;
}

export interface Stocked {
  readonly stock: number;
  readonly cost: number;
}

export const criticalShare = ({ over, under }: Critical): number => under / (under + over);

/** The z below which a share of the standard normal lies. */
export const normalQuantile = (share: number): number => rootBetween((x) => normalShare(x) - share, -40, 40);

export function newsvendorNormal(costs: Critical, demand: { readonly mean: number; readonly sd: number }): Stocked {
  const z = normalQuantile(criticalShare(costs));
  const density = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
  return { stock: demand.mean + z * demand.sd, cost: (costs.over + costs.under) * demand.sd * density };
}

/** Expected cost of having `stock` for Poisson demand: over E(S − D)⁺ + under E(D − S)⁺. */
export function poissonCost({ over, under }: Critical, mean: number, stock: number): number {
  const counts = { family: 'poisson', mean } as const;
  // E(S − D)⁺ = S F(S) − m F(S − 1), since d p(d) = m p(d − 1).
  const left = stock <= 0 ? 0 : stock * countBelow(counts, stock) - mean * countBelow(counts, stock - 1);
  return over * left + under * (left + mean - stock);
}

export function newsvendorPoisson(costs: Critical, mean: number): Stocked {
  const stock = countQuantile({ family: 'poisson', mean }, criticalShare(costs));
  return { stock, cost: poissonCost(costs, mean, stock) };
}
