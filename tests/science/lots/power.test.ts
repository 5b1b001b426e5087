// How many plates decide: the integral against simulated checks from a seeded generator.
import { describe, expect, it } from 'vitest';
import { differenceOf } from '../../../api/science/lots/difference.ts';
import { equivalenceOf } from '../../../api/science/lots/equivalence.ts';
import { chanceBeyond, chanceWithin, platesNeeded } from '../../../api/science/lots/power.ts';
import { amount } from '../../support/amount.ts';
import { normal } from '../support/normal.ts';

const margin = 0.03;
const checks = amount(1000, 100_000);
/** Four standard deviations of a simulated share. */
const allowed = 4 * Math.sqrt(0.25 / checks);

function simulated(each: number, apart: number, sd: number, inPairs: boolean): [within: number, beyond: number] {
  const draw = normal(1000 * each + 100 * apart);
  let [within, beyond] = [0, 0];
  for (let check = 0; check < checks; check++) {
    const plates = Array.from({ length: 2 * each }, (_, i) => {
      const isNew = i % 2 === 1;
      const tank = inPairs ? `${i >> 1}` : null;
      return { lot: isNew ? 'new' : 'old', tank, value: 0.4 + (isNew ? apart : 0) + sd * draw() } as const;
    });
    const difference = differenceOf(plates, 0);
    if (!difference) throw new Error('expected a difference');
    const found = equivalenceOf(difference, margin);
    if (found.within) within += 1;
    if (found.beyond) beyond += 1;
  }
  return [within / checks, beyond / checks];
}

describe('the chance of a verdict', () => {
  it.each([
    [9, 0, 0.02, false],
    [10, 0, 0.02, true],
    [8, 0.01, 0.02, false],
    [4, 0, 0.01, true],
    [6, 0.05, 0.015, false],
    [5, -0.06, 0.02, true],
    [12, 0.03, 0.02, false],
  ])(
    'with %d plates of a lot, %d apart, standard deviation %d, in pairs: %s, is what checks come out as',
    (each, apart, sd, inPairs) => {
      const trial = {
        difference: apart,
        margin,
        standardError: sd * Math.sqrt(2 / each),
        freedom: inPairs ? each - 1 : 2 * each - 2,
      };
      const [within, beyond] = simulated(each, apart, sd, inPairs);
      expect(Math.abs(chanceWithin(trial) - within)).toBeLessThan(allowed);
      expect(Math.abs(chanceBeyond(trial) - beyond)).toBeLessThan(allowed);
    },
  );

  it('of accepting a lot that differs by the margin is one in twenty at most', () => {
    for (const each of [3, 5, 20, 200]) {
      const trial = { difference: margin, margin, standardError: 0.02 * Math.sqrt(2 / each), freedom: 2 * each - 2 };
      expect(chanceWithin(trial)).toBeLessThanOrEqual(0.05 + 1e-6);
      expect(chanceBeyond(trial)).toBeLessThanOrEqual(0.05 + 1e-6);
    }
  });
});

describe('plates for a chance of 80 %', () => {
  // SciPy's quadrature of the same integral gives 9 and 18 in one tank; a normal approximation 8 and 17.
  it.each([
    [0.02, 0, 9],
    [0.03, 0, 18],
    [0.02, 1, 10],
    [0.03, 1, 19],
  ])('at a standard deviation of %d, with %d tanks a plate, are %d of each lot', (sd, tanksPerPlate, plates) => {
    expect(platesNeeded({ difference: 0, sd, margin, tanksPerPlate })).toBe(plates);
  });

  it('grow as the lots come nearer to the margin, until none would do', () => {
    const needed = [0, 0.01, 0.02, 0.025].map((difference) =>
      platesNeeded({ difference, sd: 0.02, margin, tanksPerPlate: 0 }),
    );
    expect(needed.every((plates, i) => i === 0 || (plates ?? Infinity) > (needed[i - 1] ?? Infinity))).toBe(true);
    expect(platesNeeded({ difference: margin, sd: 0.02, margin, tanksPerPlate: 0 })).toBeNull();
  });
});
