// Chances and quantiles as SciPy has them, and as a distribution must behave.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import reference from '../../../fixtures/reference/statistics.json' with { type: 'json' };
import {
  chiSquareQuantile,
  fisherBelow,
  fisherQuantile,
  noncentralFisherBelow,
  normalShare,
  studentBelow,
  studentQuantile,
} from '../../../api/science/distributions/continuous.ts';
import { countBelow, countQuantile, countsOf } from '../../../api/science/distributions/counts.ts';
import { chiSquareBelow } from '../../../api/science/distributions/gamma.ts';

const near = (given: number, wanted: number, relative: number): void =>
  expect(Math.abs(given / wanted - 1)).toBeLessThan(relative);

/** Rows of numbers: what is asked, then the answer. */
function holds(rows: readonly (readonly number[])[], relative: number, ours: (...asked: number[]) => number): void {
  for (const row of rows) near(ours(...row.slice(0, -1)), row.at(-1) ?? NaN, relative);
}

describe('chances and quantiles', () => {
  it('of the normal, Student, chi-square and Fisher distributions are those of SciPy', () => {
    holds(reference.normal, 1e-11, (x = NaN) => normalShare(x));
    holds(reference.studentQuantile, 1e-11, (share = NaN, freedom = NaN) => studentQuantile(share, freedom));
    holds(reference.chiSquareQuantile, 1e-11, (share = NaN, freedom = NaN) => chiSquareQuantile(share, freedom));
    holds(reference.fisherQuantile, 1e-11, (share = NaN, above = NaN, below = NaN) =>
      fisherQuantile(share, above, below),
    );
    holds(reference.noncentralFisher, 1e-11, (f = NaN, above = NaN, below = NaN, lambda = NaN) =>
      noncentralFisherBelow(f, above, below, lambda),
    );
  });

  it('of counts are those of SciPy, in plates and in millions of grams', () => {
    holds(reference.counts, 1e-9, (mean = NaN, variance = NaN, count = NaN) =>
      countBelow(countsOf(mean, variance), count),
    );
    for (const [mean = NaN, variance = NaN, share = NaN, count = NaN] of reference.quantiles) {
      expect(countQuantile(countsOf(mean, variance), share)).toBe(count);
    }
  });

  // Recomputed from the mass function; Poisson where the variance is the mean.
  it.each([
    [4, 4, 0.95, 8, 0.97864],
    [4, 4, 0.99, 9, NaN],
    [10, 10, 0.95, 15, 0.95126],
    [2.5, 2.5, 0.95, 5, 0.95798],
    [4, 8, 0.95, 9, 0.95386],
  ])('a mean of %d with variance %d needs, for %d, a stock of %d', (mean, variance, share, stock, reached) => {
    const counts = countsOf(mean, variance);
    expect(countQuantile(counts, share)).toBe(stock);
    if (!Number.isNaN(reached)) expect(countBelow(counts, stock)).toBeCloseTo(reached, 5);
  });

  it('of a stock one short of nine: 0.92700 at mean 4 and variance 8', () => {
    expect(countBelow(countsOf(4, 8), 8)).toBeCloseTo(0.927, 5);
  });

  it('undo each other', () => {
    const share = fc.double({ min: 1e-6, max: 1 - 1e-6, noNaN: true });
    const freedom = fc.double({ min: 0.5, max: 500, noNaN: true });
    fc.assert(
      fc.property(share, freedom, freedom, (p, n, m) => {
        near(studentBelow(studentQuantile(p, n), n), p, 1e-9);
        near(chiSquareBelow(chiSquareQuantile(p, n), n), p, 1e-9);
        near(fisherBelow(fisherQuantile(p, n, m), n, m), p, 1e-9);
        near(noncentralFisherBelow(1.5, n, m, 0), fisherBelow(1.5, n, m), 1e-12);
      }),
    );
  });
});
