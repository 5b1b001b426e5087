// What an item's weeks foretell: the method that erred least, its weekly rate and the demand of a lead time.
import { crostonAfter, levelAfter } from './smoothing.ts';
import { meanSquareError, originsOf } from './error.ts';
import { leadDemand, meanWeeks, type Lead, type LeadDemand } from './lead.ts';

/** Below so many weeks a forecast would be a guess. */
export const fewestWeeks = 8;

export type Method = 'croston-sb' | 'smoothing';

export interface Forecast {
  readonly method: Method;
  /** Expected use of a week. */
  readonly rate: number;
  readonly z: number | null;
  readonly x: number | null;
  readonly level: number;
  readonly meanSquare: Readonly<Record<Method, number | null>>;
  readonly origins: number;
  /** Of the weeks, with divisor n − 1. */
  readonly variance: number;
  readonly leadTime: LeadDemand;
}

/** Null is too little history: ask for a weekly figure. */
export function forecastOf(weeks: readonly number[], lead: Lead): Forecast | null {
  if (weeks.length < fewestWeeks) return null;
  const croston = crostonAfter(weeks);
  const levels = levelAfter(weeks);
  // A spread of lead times is held against its mean, in whole weeks.
  const ahead = Math.max(1, Math.round(meanWeeks(lead)));
  const meanSquare = {
    'croston-sb': meanSquareError(weeks, (week) => croston[week - 1]!.rate, ahead),
    smoothing: meanSquareError(weeks, (week) => levels[week - 1]!, ahead),
  };
  const { rate: crostonRate, z, x } = croston.at(-1)!;
  const level = levels.at(-1)!;
  const smoothed = (meanSquare.smoothing ?? 0) < (meanSquare['croston-sb'] ?? 0);
  const rate = smoothed ? level : crostonRate;
  const variance = sampleVariance(weeks);
  return {
    method: smoothed ? 'smoothing' : 'croston-sb',
    rate,
    z,
    x,
    level,
    meanSquare,
    origins: originsOf(weeks.length, ahead),
    variance,
    leadTime: leadDemand(lead, { mean: rate, variance }),
  };
}

function sampleVariance(weeks: readonly number[]): number {
  const mean = weeks.reduce((sum, quantity) => sum + quantity, 0) / weeks.length;
  return weeks.reduce((sum, quantity) => sum + (quantity - mean) ** 2, 0) / (weeks.length - 1);
}
