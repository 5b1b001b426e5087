// One-way analysis against the handbook and the certified set of NIST, and how often its intervals hold the truth.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { oneWay } from '../../../api/science/lots/one-way.ts';
import { amount } from '../../support/amount.ts';
import { normal } from '../support/normal.ts';

function analysed(groups: readonly (readonly number[])[]) {
  const found = oneWay(groups);
  if (!found) throw new Error('expected an analysis');
  return found;
}

describe('the one-way analysis', () => {
  it('of the handbook’s three levels (7.4.3.4): 27.897 between, 17.452 within, F 9.59', () => {
    // The sums are confirmed; the data are from memory and reproduce them.
    const found = analysed([
      [6.9, 5.4, 5.8, 4.6, 4.0],
      [8.3, 6.8, 7.8, 9.2, 6.5],
      [8.0, 10.5, 8.1, 6.9, 9.3],
    ]);
    expect(found.squareBetween * found.freedomBetween).toBeCloseTo(27.897, 3);
    expect(found.squareWithin * found.freedomWithin).toBeCloseTo(17.452, 3);
    expect(found.f).toBeCloseTo(9.59, 2);
    expect([found.freedomBetween, found.freedomWithin]).toEqual([2, 12]);
  });

  it('of NIST’s certified resistivities (StRD SiRstv) agrees to ten digits', () => {
    const found = analysed([
      [196.3052, 196.124, 196.189, 196.2569, 196.3403],
      [196.3042, 196.3825, 196.1669, 196.3257, 196.0422],
      [196.1303, 196.2005, 196.2889, 196.0343, 196.1811],
      [196.2795, 196.1748, 196.1494, 196.1485, 195.9885],
      [196.2119, 196.1051, 196.185, 196.0052, 196.209],
    ]);
    expect(found.squareBetween / 1.27865654e-2).toBeCloseTo(1, 10);
    expect(found.squareWithin / 1.0831828e-2).toBeCloseTo(1, 10);
    expect(found.f).toBeCloseTo(1.18046237440255, 9);
    expect(Math.sqrt(found.within.value)).toBeCloseTo(0.104076068334656, 10);
  });

  it('puts squares and degrees of freedom together to those of the whole', () => {
    const group = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(fc.array(group, { minLength: 2, maxLength: 8 }), (groups) => {
        const found = oneWay(groups);
        fc.pre(found !== null && found.squareWithin > 1e-9);
        const all = groups.flat();
        const mean = all.reduce((sum, value) => sum + value, 0) / all.length;
        const whole = all.reduce((sum, value) => sum + (value - mean) ** 2, 0);
        const { squareBetween = NaN, freedomBetween = NaN, squareWithin = NaN, freedomWithin = NaN } = found ?? {};
        expect(squareBetween * freedomBetween + squareWithin * freedomWithin).toBeCloseTo(whole, 9);
        expect(freedomBetween + freedomWithin).toBe(all.length - 1);
      }),
    );
  });

  it('says nothing of one group, of single values or of values that do not differ', () => {
    expect(oneWay([[1, 2, 3]])).toBeNull();
    expect(oneWay([[1], [2], [3]])).toBeNull();
    expect(
      oneWay([
        [1, 1],
        [1, 1],
      ]),
    ).toBeNull();
  });

  it.each([
    [[3, 3, 3, 3, 3, 3], 1],
    [[2, 2, 2], 0.5],
    [[1, 2, 3, 4, 5, 6], 1],
    [[2, 2, 2, 2, 2, 2, 2, 2, 8, 8], 0.3],
  ])('holds the true variances in nine of ten intervals: groups of %j, %d between', (sizes, between) => {
    const draw = normal(17);
    const runs = amount(400, 20_000);
    const held = { within: 0, between: 0, share: 0 };
    const truth = { within: 1, between: between ** 2, share: between ** 2 / (between ** 2 + 1) };
    for (let run = 0; run < runs; run++) {
      const found = analysed(
        sizes.map((size) => {
          const shift = between * draw();
          return Array.from({ length: size }, () => shift + draw());
        }),
      );
      for (const key of ['within', 'between', 'share'] as const) {
        if (found[key].low <= truth[key] && truth[key] <= found[key].high) held[key] += 1;
      }
    }
    const allowed = 0.01 + 4 * Math.sqrt(0.09 / runs);
    for (const count of Object.values(held)) expect(Math.abs(count / runs - 0.9)).toBeLessThan(allowed);
  });
});
