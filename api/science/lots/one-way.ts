// One-way random effects: how much values differ within their groups (spots of a plate) and between them (plates of a box).
// Equations: G. W. Snedecor and W. G. Cochran for the estimators; R. K. Burdick and F. A. Graybill, Confidence Intervals on
// Variance Components, 1992, for the intervals (from memory; their coverage is held by simulation).
import { chiSquareQuantile, fisherBelow, fisherQuantile } from '../distributions/continuous.ts';

export interface Estimate {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

export interface OneWay {
  readonly mean: number;
  readonly groups: number;
  readonly count: number;
  readonly freedomBetween: number;
  readonly freedomWithin: number;
  /** Mean squares. */
  readonly squareBetween: number;
  readonly squareWithin: number;
  readonly f: number;
  /** Chance of such an F, or a larger one, of groups that do not differ. */
  readonly p: number;
  /** Variances. */
  readonly within: Estimate;
  readonly between: Estimate;
  /** Between, of the whole. */
  readonly share: Estimate;
}

/** Null with one group, without a second value in any group, or when all values are the same. */
export function oneWay(groups: readonly (readonly number[])[], confidence = 0.9): OneWay | null {
  const filled = groups.filter((group) => group.length > 0);
  const count = filled.reduce((sum, group) => sum + group.length, 0);
  const freedomBetween = filled.length - 1;
  const freedomWithin = count - filled.length;
  if (freedomBetween < 1 || freedomWithin < 1) return null;
  const means = filled.map(meanOf);
  const mean = meanOf(filled.flat());
  const sumWithin = filled.reduce((sum, group, i) => sum + squaresAbout(group, means[i]!), 0);
  const sumBetween = filled.reduce((sum, group, i) => sum + group.length * (means[i]! - mean) ** 2, 0);
  const squareWithin = sumWithin / freedomWithin;
  const squareBetween = sumBetween / freedomBetween;
  if (!(squareWithin > 0)) return null;

  const sizes = filled.map((group) => group.length);
  const size = (count - sizes.reduce((sum, n) => sum + n * n, 0) / count) / freedomBetween;
  const f = squareBetween / squareWithin;
  const between = Math.max(0, (squareBetween - squareWithin) / size);
  // The intervals take unweighted group means, which have their harmonic size; with equal groups nothing changes.
  const harmonic = filled.length / sizes.reduce((sum, n) => sum + 1 / n, 0);
  const unweighted = (harmonic * squaresAbout(means, meanOf(means))) / freedomBetween;
  const tail = (1 - confidence) / 2;
  return {
    mean,
    groups: filled.length,
    count,
    freedomBetween,
    freedomWithin,
    squareBetween,
    squareWithin,
    f,
    p: 1 - fisherBelow(f, freedomBetween, freedomWithin),
    within: {
      value: squareWithin,
      low: sumWithin / chiSquareQuantile(1 - tail, freedomWithin),
      high: sumWithin / chiSquareQuantile(tail, freedomWithin),
    },
    between: {
      value: between,
      ...differenceOfSquares([unweighted, freedomBetween], [squareWithin, freedomWithin], harmonic, tail),
    },
    share: {
      value: between / (between + squareWithin),
      ...shareInterval(unweighted / squareWithin, freedomBetween, freedomWithin, harmonic, tail),
    },
  };
}

type Square = readonly [square: number, freedom: number];

/** Modified large-sample interval of (one − other)/size. */
function differenceOfSquares([one, n1]: Square, [other, n2]: Square, size: number, tail: number) {
  const g = (n: number): number => 1 - n / chiSquareQuantile(1 - tail, n);
  const h = (n: number): number => n / chiSquareQuantile(tail, n) - 1;
  const upper = fisherQuantile(1 - tail, n1, n2);
  const lower = fisherQuantile(tail, n1, n2);
  const cross = ((upper - 1) ** 2 - g(n1) ** 2 * upper ** 2 - h(n2) ** 2) / upper;
  const crossHigh = ((1 - lower) ** 2 - h(n1) ** 2 * lower ** 2 - g(n2) ** 2) / lower;
  const down = (g(n1) * one) ** 2 + (h(n2) * other) ** 2 + cross * one * other;
  const up = (h(n1) * one) ** 2 + (g(n2) * other) ** 2 + crossHigh * one * other;
  return {
    low: Math.max(0, (one - other - Math.sqrt(Math.max(0, down))) / size),
    high: Math.max(0, (one - other + Math.sqrt(Math.max(0, up))) / size),
  };
}

/** Exact with equal groups; else J. D. Thomas and R. A. Hultquist, Ann. Statist. 6 (1978) 582. */
function shareInterval(f: number, n1: number, n2: number, size: number, tail: number) {
  const share = (quantile: number): number => {
    const ratio = Math.max(0, (f / quantile - 1) / size);
    return ratio / (1 + ratio);
  };
  return { low: share(fisherQuantile(1 - tail, n1, n2)), high: share(fisherQuantile(tail, n1, n2)) };
}

const meanOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

const squaresAbout = (values: readonly number[], centre: number): number =>
  values.reduce((sum, value) => sum + (value - centre) ** 2, 0);
