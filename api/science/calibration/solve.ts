// One linearised step of the fit, with the spread that goes with it: normal equations in which each family's own factors are
// eliminated first, so that a class with thousands of containers costs no more than its shared factors.
//
// Least ½ Σ((y - h - J δ)/σ)² + ½ Σ((θ + δ)/s)². With A = JᵀN⁻¹J + Λ⁻¹ in blocks (l own, s shared):
// (A_ss - Σ A_sl A_ll⁻¹ A_ls) δ_s = g_s - Σ A_sl A_ll⁻¹ g_l, then δ_l = A_ll⁻¹ (g_l - A_ls δ_s).
import { CholeskyDecomposition, Matrix } from 'ml-matrix';
import type { Expected } from './expect.ts';
import { valueOf, type Values } from './factors.ts';
import type { Family } from './families.ts';

interface Eliminated {
  readonly family: Family;
  /** A_ll⁻¹. */
  readonly own: Matrix;
  /** A_ll⁻¹ A_ls. */
  readonly gain: Matrix;
  /** A_ll⁻¹ g_l. */
  readonly step: Matrix;
}

export interface Solution {
  readonly step: ReadonlyMap<string, number>;
  readonly sharedNames: readonly string[];
  /** Row of each shared factor in `shared`. */
  readonly at: ReadonlyMap<string, number>;
  /** Covariance of the shared factors. */
  readonly shared: Matrix;
  readonly families: readonly Eliminated[];
}

const solved = (matrix: Matrix, right: Matrix): Matrix => {
  const cholesky = new CholeskyDecomposition(matrix);
  if (!cholesky.isPositiveDefinite())
    throw new Error('invalid weighings: the fit has no minimum, expected finite noise');
  return cholesky.solve(right);
};

const inverse = (matrix: Matrix): Matrix => {
  const made = solved(matrix, Matrix.eye(matrix.rows));
  return made.add(made.transpose()).mul(0.5);
};

const added = (matrix: Matrix, i: number, j: number, value: number): void => {
  matrix.set(i, j, matrix.get(i, j) + value);
};

/** A factor whose prior is a point cannot move, and would divide by nothing. */
const leastSd = 1e-9;
const precision = (priors: ReadonlyMap<string, number>, name: string): number =>
  1 / Math.max(leastSd, priors.get(name) ?? NaN) ** 2;

interface Sums {
  readonly all: Matrix;
  readonly right: Matrix;
}

// JᵀN⁻¹J and JᵀN⁻¹(y - h) of a family over its locals, then its shared factors.
function sumsOf(family: Family, isUsed: (row: Expected) => boolean): Sums {
  const names = [...family.locals, ...family.shared];
  const at = new Map(names.map((name, i) => [name, i]));
  const all = Matrix.zeros(names.length, names.length);
  const right = Matrix.zeros(names.length, 1);
  for (const row of family.rows) {
    if (!isUsed(row)) continue;
    const entries = [...row.slopes].map(([name, { value }]) => [at.get(name) ?? 0, value / row.noise] as const);
    const residual = (row.found - row.expected) / row.noise;
    for (const [i, one] of entries) {
      added(right, i, 0, one * residual);
      for (const [j, other] of entries) added(all, i, j, one * other);
    }
  }
  return { all, right };
}

function eliminated(family: Family, sums: Sums, values: Values, priors: ReadonlyMap<string, number>): Eliminated {
  const k = family.locals.length;
  const width = k + family.shared.length;
  if (k === 0) {
    const none = () => Matrix.zeros(0, 0);
    return { family, own: none(), gain: none(), step: none() };
  }
  const matrix = sums.all.subMatrix(0, k - 1, 0, k - 1);
  const right = sums.right.subMatrix(0, k - 1, 0, 0);
  for (const [i, name] of family.locals.entries()) {
    added(matrix, i, i, precision(priors, name));
    added(right, i, 0, -precision(priors, name) * valueOf(values, name));
  }
  const own = inverse(matrix);
  const across = width > k ? sums.all.subMatrix(0, k - 1, k, width - 1) : Matrix.zeros(k, 0);
  return { family, own, gain: own.mmul(across), step: own.mmul(right) };
}

/** The step from `values` to the minimum of the linearised problem, and the covariance there. */
export function solve(
  families: readonly Family[],
  values: Values,
  priors: ReadonlyMap<string, number>,
  isUsed: (row: Expected) => boolean,
): Solution {
  const sharedNames = [...new Set(families.flatMap(({ shared }) => shared))].sort();
  const at = new Map(sharedNames.map((name, i) => [name, i]));
  const matrix = Matrix.zeros(sharedNames.length, sharedNames.length);
  const right = Matrix.zeros(sharedNames.length, 1);
  for (const [i, name] of sharedNames.entries()) {
    matrix.set(i, i, precision(priors, name));
    right.set(i, 0, -precision(priors, name) * valueOf(values, name));
  }
  const parts = families.map((family) => {
    const sums = sumsOf(family, isUsed);
    const part = eliminated(family, sums, values, priors);
    const k = family.locals.length;
    for (const [i, name] of family.shared.entries()) {
      const to = at.get(name) ?? 0;
      let value = sums.right.get(k + i, 0);
      for (let l = 0; l < k; l++) value -= sums.all.get(l, k + i) * part.step.get(l, 0);
      added(right, to, 0, value);
      for (const [j, other] of family.shared.entries()) {
        let both = sums.all.get(k + i, k + j);
        for (let l = 0; l < k; l++) both -= sums.all.get(l, k + i) * part.gain.get(l, j);
        added(matrix, to, at.get(other) ?? 0, both);
      }
    }
    return part;
  });
  // Rounding must not make it lopsided.
  const even = matrix.clone().add(matrix.transpose()).mul(0.5);
  const shared = sharedNames.length > 0 ? inverse(even) : Matrix.zeros(0, 0);
  const sharedStep = sharedNames.length > 0 ? shared.mmul(right) : right;
  const step = new Map(sharedNames.map((name, i) => [name, sharedStep.get(i, 0)]));
  for (const { family, gain, step: own } of parts) {
    for (const [l, name] of family.locals.entries()) {
      let value = own.get(l, 0);
      for (const [i, other] of family.shared.entries()) value -= gain.get(l, i) * (step.get(other) ?? 0);
      step.set(name, value);
    }
  }
  return { step, sharedNames, at, shared, families: parts };
}

/** Variance of what a weighing expects, by the factors' covariance alone. */
export function varianceOf({ at, shared }: Solution, part: Eliminated, row: Expected): number {
  const { family, own, gain } = part;
  // e = J_s - J_l G: what is left for the shared factors.
  const left = family.shared.map((name, i) => {
    let value = row.slopes.get(name)?.value ?? 0;
    for (const [l, local] of family.locals.entries()) value -= (row.slopes.get(local)?.value ?? 0) * gain.get(l, i);
    return value;
  });
  let variance = 0;
  for (const [i, name] of family.shared.entries()) {
    for (const [j, other] of family.shared.entries()) {
      variance += left[i]! * left[j]! * shared.get(at.get(name) ?? 0, at.get(other) ?? 0);
    }
  }
  for (const [l, one] of family.locals.entries()) {
    for (const [m, other] of family.locals.entries()) {
      variance += (row.slopes.get(one)?.value ?? 0) * (row.slopes.get(other)?.value ?? 0) * own.get(l, m);
    }
  }
  return variance;
}
