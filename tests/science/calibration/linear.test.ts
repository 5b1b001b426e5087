// Where everything is linear and Gaussian the fit has closed answers, and must not depend on order, units or how it is split.
import fc from 'fast-check';
import { inverse, Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import type { Expected } from '../../../api/science/calibration/expect.ts';
import { priorsOf } from '../../../api/science/calibration/families.ts';
import { gaussianOf } from '../../../api/science/calibration/gaussian.ts';
import { fitted, row } from './rows.ts';

const seed = 20_260_302;
const names = [
  'class:s',
  'lot:a',
  'lot:b',
  'bed',
  'closed:tight',
  'container:x',
  'container:y',
  'start:x@0',
  'start:y@0',
];

/** Containers x and y of lots a and b, each weighed a few times, with slopes at random. */
const weighed = fc
  .array(
    fc.record({
      isX: fc.boolean(),
      found: fc.double({ min: -0.02, max: 0.02, noNaN: true }),
      noise: fc.double({ min: 0.01, max: 0.05, noNaN: true }),
      slopes: fc.array(fc.double({ min: -0.1, max: 0.1, noNaN: true }), { minLength: 6, maxLength: 6 }),
    }),
    { minLength: 1, maxLength: 12 },
  )
  .map((all) =>
    all.map(({ isX, found, noise, slopes: [c = 0, l = 0, b = 0, t = 0, k = 0, s = 0] }, i) => {
      const key = isX ? 'x' : 'y';
      return row(`${i}`, key, found, noise, {
        'class:s': [c, 0.18],
        [isX ? 'lot:a' : 'lot:b']: [l, 0.18],
        bed: [b, 0.2],
        'closed:tight': [t, 0.25],
        [`container:${key}`]: [k, 0.3],
        [`start:${key}@0`]: [s, 0.3],
      });
    }),
  );

/** Mean and covariance by the textbook, all factors at once: C = (Λ⁻¹ + JᵀN⁻¹J)⁻¹, m = C JᵀN⁻¹y. */
function textbook(rows: readonly Expected[]): { mean: number[]; covariance: Matrix } {
  const priors = priorsOf(rows);
  const all = names.filter((name) => priors.has(name));
  const slopes = new Matrix(rows.map((one) => all.map((name) => (one.slopes.get(name)?.value ?? 0) / one.noise)));
  const found = Matrix.columnVector(rows.map((one) => one.found / one.noise));
  const prior = Matrix.diag(all.map((name) => 1 / (priors.get(name) ?? NaN) ** 2));
  const covariance = inverse(slopes.transpose().mmul(slopes).add(prior));
  return { mean: covariance.mmul(slopes.transpose()).mmul(found).to1DArray(), covariance };
}

const held = (rows: readonly Expected[]) => {
  const { solution } = fitted(rows);
  return gaussianOf(solution, solution.step, () => true);
};

describe('one weighing of one unknown', () => {
  it('is the mean of prior and weighing by their precisions, worked by hand', () => {
    // Prior 0 ± 0.3; found 0.2 ± 0.1 with slope 1: precision 1/0.09 + 1/0.01 = 1000/9, mean 20 / (1000/9) = 0.18, sd √0.009.
    const { names: of, mean, covariance } = held([row('1', 'x', 0.2, 0.1, { 'container:x': [1, 0.3] })]);
    expect(of).toEqual(['container:x']);
    expect(mean[0]).toBeCloseTo(0.18, 12);
    expect(Math.sqrt(covariance[0]?.[0] ?? NaN)).toBeCloseTo(Math.sqrt(0.009), 12);
  });

  it('seen through a type and a container is shared out by their variances, worked by hand', () => {
    // y = t + c, t ± 0.25, c ± 0.30, found 0.3 ± 0.1: variance of y is 0.0625 + 0.09 + 0.01 = 0.1625; t gets 0.0625/0.1625 of it.
    const {
      names: of,
      mean,
      covariance,
    } = held([row('1', 'x', 0.3, 0.1, { 'closed:tight': [1, 0.25], 'container:x': [1, 0.3] })]);
    const t = of.indexOf('closed:tight');
    const c = of.indexOf('container:x');
    expect(mean[t]).toBeCloseTo((0.3 * 0.0625) / 0.1625, 12);
    expect(mean[c]).toBeCloseTo((0.3 * 0.09) / 0.1625, 12);
    expect(covariance[t]?.[t]).toBeCloseTo(0.0625 - 0.0625 ** 2 / 0.1625, 12);
    expect(covariance[t]?.[c]).toBeCloseTo((-0.0625 * 0.09) / 0.1625, 12);
  });
});

describe('the fit of anything linear', () => {
  it('is that of all factors at once, though each family is eliminated by itself', () => {
    fc.assert(
      fc.property(weighed, (rows) => {
        const { names: of, mean, covariance } = held(rows);
        const all = textbook(rows);
        const at = names.filter((name) => of.includes(name)).map((name) => of.indexOf(name));
        at.forEach((i, p) => {
          expect(mean[i]).toBeCloseTo(all.mean[p] ?? NaN, 9);
          at.forEach((j, q) => expect(covariance[i]?.[j]).toBeCloseTo(all.covariance.get(p, q), 9));
        });
      }),
      { numRuns: 60, seed },
    );
  });

  it('does not depend on the order of the weighings', () => {
    fc.assert(
      fc.property(weighed, (rows) => {
        const forwards = fitted(rows).solution.step;
        const backwards = fitted([...rows].reverse()).solution.step;
        for (const [name, value] of forwards) expect(backwards.get(name)).toBeCloseTo(value, 12);
      }),
      { numRuns: 60, seed },
    );
  });

  it('does not depend on the unit in which one weighs', () => {
    fc.assert(
      fc.property(weighed, fc.constantFrom(1e-3, 1e3), (rows, unit) => {
        const scaled = rows.map((one) => ({
          ...one,
          found: one.found * unit,
          noise: one.noise * unit,
          slopes: new Map([...one.slopes].map(([name, { value, sd }]) => [name, { value: value * unit, sd }])),
        }));
        const here = fitted(rows).solution.step;
        for (const [name, value] of fitted(scaled).solution.step) expect(value).toBeCloseTo(here.get(name) ?? NaN, 9);
      }),
      { numRuns: 60, seed },
    );
  });

  it('takes four equal weighings for one of half the noise', () => {
    fc.assert(
      fc.property(weighed, (rows) => {
        const four = rows.flatMap((one) =>
          [0, 1, 2, 3].map((n) => ({ ...one, weighing: { ...one.weighing, id: `${one.weighing.id} ${n}` } })),
        );
        const sharp = rows.map((one) => ({ ...one, noise: one.noise / 2 }));
        const here = held(four);
        const there = held(sharp);
        here.mean.forEach((value, i) => {
          expect(there.mean[i]).toBeCloseTo(value, 9);
          expect(there.covariance[i]?.[i]).toBeCloseTo(here.covariance[i]?.[i] ?? NaN, 9);
        });
      }),
      { numRuns: 60, seed },
    );
  });

  it('is never less sure of anything after one more weighing', () => {
    fc.assert(
      fc.property(weighed, (rows) => {
        const before = held(rows.slice(0, -1));
        const after = held(rows);
        before.names.forEach((name, i) => {
          const j = after.names.indexOf(name);
          expect(after.covariance[j]?.[j]).toBeLessThanOrEqual((before.covariance[i]?.[i] ?? NaN) * (1 + 1e-9));
        });
      }),
      { numRuns: 60, seed },
    );
  });

  it('holds each weighing against all others as a fit without it would', () => {
    fc.assert(
      fc.property(
        weighed.filter((rows) => rows.length > 1),
        (rows) => {
          const [first, ...others] = rows;
          if (!first) return;
          const { sigmas } = fitted(rows);
          const without = held(others);
          const at = without.names.map((name) => first.slopes.get(name)?.value ?? 0);
          let variance = first.noise ** 2;
          at.forEach((one, i) => at.forEach((two, j) => (variance += one * two * (without.covariance[i]?.[j] ?? NaN))));
          // Factors that only this one has are at their priors.
          for (const [name, { value, sd }] of first.slopes) {
            if (!without.names.includes(name)) variance += (value * sd) ** 2;
          }
          const missed = first.found - at.reduce((sum, one, i) => sum + one * (without.mean[i] ?? NaN), 0);
          expect(sigmas.get(first)).toBeCloseTo(missed / Math.sqrt(variance), 6);
        },
      ),
      { numRuns: 60, seed },
    );
  });
});

describe('a weighing beyond four sigmas', () => {
  const honest = Array.from({ length: 9 }, (_, i) =>
    row(`${i}`, 'x', 0.2 + 0.01 * ((i % 3) - 1), 0.02, { 'container:x': [1, 0.3] }),
  );
  const wrong = (confirmed: boolean) => row('wrong', 'x', 0.6, 0.02, { 'container:x': [1, 0.3] }, confirmed);

  it('is left out and told by how much, and the rest is as if it had not been', () => {
    const { leftOut, solution, sigmas } = fitted([...honest, wrong(false)]);
    expect([...leftOut].map(({ weighing }) => weighing.id)).toEqual(['wrong']);
    expect(solution.step.get('container:x')).toBe(fitted(honest).solution.step.get('container:x'));
    expect(Math.max(...[...sigmas.values()].map(Math.abs))).toBeGreaterThan(15);
  });

  it('counts once somebody confirms it', () => {
    const { leftOut, solution } = fitted([...honest, wrong(true)]);
    expect([...leftOut].map(({ weighing }) => weighing.id)).not.toContain('wrong');
    expect(solution.step.get('container:x')).toBeGreaterThan(0.21);
  });

  it('two that are wrong in the same way do not hide each other among nine', () => {
    const twice = [wrong(false), row('as wrong', 'x', 0.61, 0.02, { 'container:x': [1, 0.3] })];
    expect([...fitted([...honest, ...twice]).leftOut].map(({ weighing }) => weighing.id).sort()).toEqual([
      'as wrong',
      'wrong',
    ]);
  });
});
