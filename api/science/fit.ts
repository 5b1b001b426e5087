// A lab's own isotherm from weighed samples that stood at known humidities until nothing changed.
import { referenceActivity } from './air.ts';
import type { CapacityDoubt, IsothermNumbers } from './history.ts';
import { waterAtActivity } from './isotherm.ts';

/** One sample: relative humidity 0 to 1 (say over a saturated salt), and its water, kg per kg dry. */
export interface Point {
  readonly humidity: number;
  readonly temperatureC: number;
  readonly waterFraction: number;
}

export interface Fit {
  readonly isotherm: IsothermNumbers;
  /** Root mean square of ln(measured / fitted). */
  readonly rms: number;
  readonly doubt: CapacityDoubt;
}

/** From so many points on the shape is fitted as well; fewer only rescale. */
const pointsForShape = 4;
/** One sigma by which the shape may leave the class it starts from: ln w_m, ln C, logit K, ln w_c (chosen wide). */
const loose = [2, 1.5, 1, 0.7] as const;
/** What one weighed equilibration is worth, one sigma of ln: 5 % (common practice). */
const pointSd = 0.05;

type Numbers4 = readonly [number, number, number, number];

function numbersAt(base: IsothermNumbers, [film, c, k, pore]: Numbers4): IsothermNumbers {
  const odds = (base.filmK / (1 - base.filmK)) * Math.exp(k);
  return {
    ...base,
    filmCapacity: base.filmCapacity * Math.exp(film),
    filmC: base.filmC * Math.exp(c),
    filmK: odds / (1 + odds),
    poreCapacity: base.poreCapacity * Math.exp(pore),
  };
}

const misfits = (numbers: IsothermNumbers, points: readonly Point[]): number[] =>
  points.map(({ humidity, temperatureC, waterFraction }) =>
    Math.log(waterFraction / waterAtActivity(numbers, referenceActivity(humidity, temperatureC))),
  );

const meanSquare = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value * value, 0) / values.length;

/** Rescales the class's isotherm to one to three points, or fits film and pores to more; null when no point has water. */
export function fitIsotherm(base: IsothermNumbers, given: readonly Point[]): Fit | null {
  const points = given.filter(({ humidity, waterFraction }) => waterFraction > 0 && humidity > 0 && humidity < 0.95);
  if (points.length === 0) return null;
  const scale = misfits(base, points).reduce((sum, one) => sum + one, 0) / points.length;
  const scaled = numbersAt(base, [scale, 0, 0, scale]);
  const isotherm = points.length < pointsForShape ? scaled : shaped(scaled, points);
  const rms = Math.sqrt(meanSquare(misfits(isotherm, points)));
  const sd = Math.hypot(pointSd, rms);
  return { isotherm, rms, doubt: { below: sd, above: 2 * sd, from: 0.6, to: 0.7 } };
}

// Levenberg and Marquardt on the four logarithms, each held by its prior.
function shaped(base: IsothermNumbers, points: readonly Point[]): IsothermNumbers {
  let at: Numbers4 = [0, 0, 0, 0];
  const cost = (x: Numbers4): number =>
    (points.length * meanSquare(misfits(numbersAt(base, x), points))) / pointSd ** 2 +
    x.reduce((sum, one, i) => sum + (one / loose[i]!) ** 2, 0);
  let damping = 1;
  for (let round = 0; round < 200 && damping < 1e9; round++) {
    const now = misfits(numbersAt(base, at), points);
    const slopes = at.map((_, p) => {
      const nudged = misfits(numbersAt(base, moved(at, p, 1e-5)), points);
      return nudged.map((one, i) => (one - now[i]!) / 1e-5);
    });
    const matrix = slopes.map((a, p) =>
      slopes.map(
        (b, q) => a.reduce((sum, one, i) => sum + one * b[i]!, 0) / pointSd ** 2 + (p === q ? 1 / loose[p]! ** 2 : 0),
      ),
    );
    const right = slopes.map(
      (a, p) => -a.reduce((sum, one, i) => sum + one * now[i]!, 0) / pointSd ** 2 - at[p]! / loose[p]! ** 2,
    );
    const step = solved(
      matrix.map((row, p) => row.map((one, q) => (p === q ? one * (1 + damping) : one))),
      right,
    );
    const next: Numbers4 = [at[0] + step[0]!, at[1] + step[1]!, at[2] + step[2]!, at[3] + step[3]!];
    const gain = cost(at) - cost(next);
    if (gain > 0) {
      at = next;
      damping /= 5;
      if (gain < 1e-12) break;
    } else damping *= 5;
  }
  return numbersAt(base, at);
}

const moved = (at: Numbers4, p: number, by: number): Numbers4 => [
  at[0] + (p === 0 ? by : 0),
  at[1] + (p === 1 ? by : 0),
  at[2] + (p === 2 ? by : 0),
  at[3] + (p === 3 ? by : 0),
];

// Gauss elimination; the matrix is positive definite, so that no pivot is sought.
function solved(matrix: number[][], right: number[]): number[] {
  const n = right.length;
  for (let i = 0; i < n; i++) {
    for (let j = i + 1; j < n; j++) {
      const factor = matrix[j]![i]! / matrix[i]![i]!;
      for (let k = i; k < n; k++) matrix[j]![k] = matrix[j]![k]! - factor * matrix[i]![k]!;
      right[j] = right[j]! - factor * right[i]!;
    }
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let k = i + 1; k < n; k++) right[i] = right[i]! - matrix[i]![k]! * right[k]!;
    right[i] = right[i]! / matrix[i]![i]!;
  }
  return right;
}
