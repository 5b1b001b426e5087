// The rule of four sigmas: a weighing that far from what everything else makes one expect is shown and left out until somebody
// confirms it. Which are left out depends on no order: each is held against all others, the worst goes first.
import type { Expected } from './expect.ts';
import type { Values } from './factors.ts';
import type { Family } from './families.ts';
import { solve, varianceOf, type Solution } from './solve.ts';

export const leftOutBeyond = 4;

export interface Screened {
  readonly solution: Solution;
  readonly leftOut: ReadonlySet<Expected>;
  /** By how many sigmas each differs from what the others make one expect, once the step is taken. */
  readonly sigmas: ReadonlyMap<Expected, number>;
}

// Left in, its residual r has variance σ² - v and the others alone would miss by r σ²/(σ² - v), give or take √(σ⁴/(σ² - v)):
// r/√(σ² - v). Left out: r/√(σ² + v).
function sigmasOf(solution: Solution, leftOut: ReadonlySet<Expected>): Map<Expected, number> {
  const sigmas = new Map<Expected, number>();
  for (const part of solution.families) {
    for (const row of part.family.rows) {
      let residual = row.found - row.expected;
      for (const [name, { value }] of row.slopes) residual -= value * (solution.step.get(name) ?? 0);
      const variance = varianceOf(solution, part, row);
      const own = row.noise ** 2;
      const spread = leftOut.has(row) ? own + variance : Math.max(own - variance, 1e-9 * own);
      sigmas.set(row, residual / Math.sqrt(spread));
    }
  }
  return sigmas;
}

const worst = (
  sigmas: ReadonlyMap<Expected, number>,
  isAsked: (row: Expected, sigma: number) => boolean,
  isWorse: (one: number, other: number) => boolean,
): Expected | null => {
  let found: Expected | null = null;
  let most = 0;
  for (const [row, sigma] of sigmas) {
    const size = Math.abs(sigma);
    if (isAsked(row, size) && (found === null || isWorse(size, most))) [found, most] = [row, size];
  }
  return found;
};

/** Leaves out the worst beyond four sigmas, one by one, then takes back those that fit after all. */
export function screen(families: readonly Family[], values: Values, priors: ReadonlyMap<string, number>): Screened {
  const leftOut = new Set<Expected>();
  const backAgain = new Set<Expected>();
  for (;;) {
    const solution = solve(families, values, priors, (row) => !leftOut.has(row));
    const sigmas = sigmasOf(solution, leftOut);
    const drop = worst(
      sigmas,
      (row, size) => size > leftOutBeyond && !leftOut.has(row) && !backAgain.has(row) && !row.weighing.confirmed,
      (one, other) => one > other,
    );
    if (drop) {
      leftOut.add(drop);
      continue;
    }
    const back = worst(
      sigmas,
      (row, size) => size <= leftOutBeyond && leftOut.has(row),
      (one, other) => one < other,
    );
    if (!back) return { solution, leftOut, sigmas };
    leftOut.delete(back);
    backAgain.add(back);
  }
}
