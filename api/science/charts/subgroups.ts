// Means and ranges of subgroups of one size, such as the spots of a plate: NIST/SEMATECH e-Handbook 6.3.2.1.
import { chartConstants } from './constants.ts';
import type { Limits } from './individuals.ts';

/** Null for a size without constants: one, or more than ten. */
export function subgroupLimits(
  grandMean: number,
  meanRange: number,
  size: number,
): { readonly means: Limits; readonly ranges: Limits } | null {
  const constants = chartConstants[size];
  if (!constants) return null;
  const { A2, D3, D4 } = constants;
  return {
    means: { low: grandMean - A2 * meanRange, centre: grandMean, high: grandMean + A2 * meanRange },
    ranges: { low: D3 * meanRange, centre: meanRange, high: D4 * meanRange },
  };
}
