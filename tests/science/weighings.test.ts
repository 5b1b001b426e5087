// Loss on drying: constant mass, both bases, and weighings that cannot be.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  asReceived,
  dryBasis,
  lossOnDrying,
  trueWaterFraction,
  type LossOnDrying,
  type Weighings,
} from '../../api/science/weighings.ts';

// 1.5 g of silica with 6 % of water, dry basis, in a bottle of 20 g.
const usual: Weighings = {
  tareG: 20,
  beforeG: 21.59,
  after: [20, 21.505, 21.5002, 21.5].slice(1).map((grossG, i) => ({ grossG, minutes: 60 * (i + 1) })),
  resolutionG: 0.0001,
  mostWaterFraction: 1,
};
const withAfter = (...grossG: number[]): Weighings => ({
  ...usual,
  after: grossG.map((gross) => ({ grossG: gross, minutes: null })),
});
const walked = (weighings: Weighings): Extract<LossOnDrying, { kind: 'walked' }> => {
  const loss = lossOnDrying(weighings);
  if (loss.kind !== 'walked') throw new Error(loss.message);
  return loss;
};
const refusal = (weighings: Partial<Weighings>): { path: string; message: string } => {
  const loss = lossOnDrying({ ...usual, ...weighings });
  if (loss.kind !== 'impossible') throw new Error('missing refusal');
  return loss;
};

describe('loss on drying', () => {
  it('ends at the second of two weighings that differ by half a milligram per gram or less (USP, Ph. Eur. 2.2.32)', () => {
    const { constantAt, steps } = walked(usual);
    // 21.505 to 21.5002 g is 3 mg per g; 21.5002 to 21.5 is 0.13.
    expect(steps.map(({ constant }) => constant)).toEqual([false, false, true]);
    expect(constantAt).toBe(2);
    expect(walked(withAfter(21.505, 21.5002)).constantAt).toBeNull();
    // 0.5 mg per g of 1.59 g is 0.795 mg.
    expect(walked(withAfter(21.5008, 21.5001)).constantAt).toBe(1);
    expect(walked(withAfter(21.5009, 21.5)).constantAt).toBeNull();
  });

  it('tells dry basis and as received apart', () => {
    const { waterFraction, asReceivedFraction } = walked(usual);
    expect(waterFraction).toBeCloseTo(0.09 / 1.5, 10);
    expect(asReceivedFraction).toBeCloseTo(0.09 / 1.59, 10);
    fc.assert(
      fc.property(fc.double({ min: 0, max: 0.9, noNaN: true }), (water) => {
        expect(dryBasis(asReceived(water))).toBeCloseTo(water, 12);
        expect(asReceived(water)).toBeLessThanOrEqual(water);
      }),
    );
  });

  it('does not count two weighings with less than half an hour of drying between them (Ph. Eur.)', () => {
    const hasty = [60, 75].map((minutes, i) => ({ grossG: [21.5002, 21.5][i]!, minutes }));
    expect(walked({ ...usual, after: hasty }).constantAt).toBeNull();
    expect(walked({ ...usual, after: [hasty[0]!, { grossG: 21.5, minutes: 90 }] }).constantAt).toBe(1);
  });

  it('asks for another hour while one weighing stands alone or still falls', () => {
    expect(walked(withAfter(21.5)).advice).toMatch(/another hour/);
    expect(walked(withAfter(21.52, 21.5)).advice).toMatch(/^Not constant yet/);
    expect(walked(usual).advice).toBe('Constant mass.');
  });

  it('is known no better than the balance reads', () => {
    expect(walked(usual).sd).toBeGreaterThan(0.0001 / Math.sqrt(12) / 1.5);
    expect(walked({ ...usual, resolutionG: 0.01 }).sd).toBeCloseTo(100 * walked(usual).sd, 12);
  });

  it('adds what the oven left behind', () => {
    // 105.0 g of wet sorbent to 100.5 g in the oven, of which 0.5 g is water still: 5 g on 100.
    expect(trueWaterFraction(4.5 / 100.5, 0.005)).toBeCloseTo(0.05, 12);
  });
});

describe('weighings that cannot be', () => {
  it('name a gain in the oven', () => {
    expect(refusal(withAfter(21.5, 21.51))).toMatchObject({
      path: 'after.1.grossG',
      message:
        'invalid after.1.grossG: 21.51, expected no more than the weighing before (21.5 g): nothing gains mass in an oven',
    });
    expect(refusal(withAfter(21.6)).path).toBe('after.0.grossG');
  });

  it('let two readings of one mass differ by the balance’s last digits', () => {
    expect(lossOnDrying(withAfter(21.5, 21.5002)).kind).toBe('walked');
  });

  it('name a tare that is swapped or another bottle’s', () => {
    expect(refusal({ tareG: 21.59, beforeG: 20 })).toMatchObject({ path: 'tareG' });
    expect(refusal({ tareG: 21.55 }).message).toMatch(/tares are mixed up/);
    expect(refusal({ tareG: 21.45 }).message).toMatch(/does not hold that much water/);
  });

  it('name a negative or missing mass', () => {
    expect(refusal({ tareG: -1 }).message).toMatch(/^invalid tareG: -1, /);
    expect(refusal({ beforeG: NaN }).path).toBe('beforeG');
    expect(refusal({ beforeG: 20 }).message).toMatch(/no sample/);
    expect(refusal(withAfter(-3)).path).toBe('after.0.grossG');
    expect(refusal({ after: [] }).message).toMatch(/^missing after, /);
  });

  it('name hours that run backwards', () => {
    const after = [
      { grossG: 21.505, minutes: 60 },
      { grossG: 21.5, minutes: 60 },
    ];
    expect(refusal({ after }).path).toBe('after.1.minutes');
  });
});
