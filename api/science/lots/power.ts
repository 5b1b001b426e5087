// How likely so many plates are to decide, were the difference and the spread known: exact, by integrating over the spread
// that the plates would show.
import { normalShare, studentQuantile } from '../distributions/continuous.ts';
import { logGamma } from '../distributions/saddle.ts';
import { usualRisk } from './equivalence.ts';

export interface Trial {
  /** True difference of the lots. */
  readonly difference: number;
  readonly standardError: number;
  readonly freedom: number;
  readonly margin: number;
}

const pieces = 240;

/** Chance that the tests find the difference within the margin. */
export function chanceWithin({ difference, standardError, freedom, margin }: Trial, risk = usualRisk): number {
  const t = studentQuantile(1 - risk, freedom);
  const high = (margin - difference) / standardError;
  const low = (-margin - difference) / standardError;
  // Beyond this spread the interval is wider than the margins.
  const widest = margin / (t * standardError);
  return overSpread(freedom, widest, (u) => normalShare(high - t * u) - normalShare(low + t * u));
}

/** Chance that they find it beyond the margin, on either side. */
export function chanceBeyond({ difference, standardError, freedom, margin }: Trial, risk = usualRisk): number {
  const t = studentQuantile(1 - risk, freedom);
  const above = (difference - margin) / standardError;
  const below = (-margin - difference) / standardError;
  return overSpread(freedom, Infinity, (u) => normalShare(above - t * u) + normalShare(below - t * u));
}

/** Expectation over u = shown/true standard deviation, as far as `most`: Simpson's rule on the density of χ/√ν. */
function overSpread(freedom: number, most: number, chance: (u: number) => number): number {
  const reach = 9 / Math.sqrt(2 * freedom);
  const from = Math.max(0, 1 - reach);
  const to = Math.min(most, 1 + reach + 1 / freedom);
  if (to <= from) return 0;
  const log = Math.log(2) + (freedom / 2) * Math.log(freedom / 2) - logGamma(freedom / 2);
  const density = (u: number): number =>
    u === 0 ? (freedom === 1 ? Math.exp(log) : 0) : Math.exp(log + (freedom - 1) * Math.log(u) - (freedom * u * u) / 2);
  const step = (to - from) / pieces;
  let sum = 0;
  for (let i = 0; i <= pieces; i++) {
    const u = from + i * step;
    sum += (i === 0 || i === pieces ? 1 : i % 2 === 1 ? 4 : 2) * density(u) * chance(u);
  }
  return Math.min(1, (sum * step) / 3);
}

export const usualPower = 0.8;
const fewest = 3;
const most = 1000;

export interface Plan {
  readonly difference: number;
  readonly sd: number;
  readonly margin: number;
  /** Tanks for each plate of a lot: 1 when plates run in pairs, next to none when all share one tank. */
  readonly tanksPerPlate: number;
}

/** Plates of each lot for that chance of a verdict, the right one or not; null when a thousand would not do. */
export function platesNeeded(plan: Plan, power = usualPower): number | null {
  const decides = (plates: number): boolean => {
    const tanks = Math.max(1, Math.round(plan.tanksPerPlate * plates));
    const trial = {
      difference: plan.difference,
      margin: plan.margin,
      standardError: plan.sd * Math.sqrt(2 / plates),
      freedom: 2 * plates - tanks - 1,
    };
    return chanceWithin(trial) + chanceBeyond(trial) >= power;
  };
  if (!decides(most)) return null;
  let low = fewest - 1;
  let high = most;
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (decides(middle)) high = middle;
    else low = middle;
  }
  return high;
}
