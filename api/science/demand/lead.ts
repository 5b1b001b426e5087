// How many weeks pass from order to shelf, as chances of whole weeks, and the demand that falls into them.
import { countsOf, type Counts } from '../distributions/counts.ts';
import { smoothing } from './smoothing.ts';

/** Chances of whole weeks; they add up to 1. */
export type Lead = readonly { readonly weeks: number; readonly chance: number }[];

export const meanWeeks = (lead: Lead): number => lead.reduce((sum, { weeks, chance }) => sum + weeks * chance, 0);

const varianceOfWeeks = (lead: Lead): number => {
  const mean = meanWeeks(lead);
  return lead.reduce((sum, { weeks, chance }) => sum + chance * (weeks - mean) ** 2, 0);
};

export interface LeadDemand {
  readonly mean: number;
  readonly variance: number;
  readonly counts: Counts;
}

/**
 * Demand over a random lead time L of weeks that use m on average with variance s²:
 * M = m E[L] and V = E[L] s² + Var(L) m² + (E[L]² + Var L) s² α/(2 − α). The last term is the doubt of m itself; without
 * it short histories come out two to three points under the service level.
 */
export function leadDemand(lead: Lead, weekly: { readonly mean: number; readonly variance: number }): LeadDemand {
  const expected = meanWeeks(lead);
  const spread = varianceOfWeeks(lead);
  const mean = weekly.mean * expected;
  const variance =
    expected * weekly.variance +
    spread * weekly.mean ** 2 +
    ((expected ** 2 + spread) * weekly.variance * smoothing) / (2 - smoothing);
  return { mean, variance, counts: countsOf(mean, variance) };
}
