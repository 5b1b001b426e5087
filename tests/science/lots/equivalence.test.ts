// Two one-sided tests against SciPy and simple-statistics, and what a verdict must never do.
import fc from 'fast-check';
import { mean, sampleStandardDeviation, tTestTwoSample } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import reference from '../../../fixtures/reference/statistics.json' with { type: 'json' };
import { differenceOf, type PlateValue } from '../../../api/science/lots/difference.ts';
import { equivalenceOf } from '../../../api/science/lots/equivalence.ts';
import { quantitiesOf } from '../../../api/science/lots/quantities.ts';
import { rfOf, rfWrong } from '../../../api/science/lots/rf.ts';
import { lotOutcome, verdictOf } from '../../../api/science/lots/verdict.ts';

const oneTank = (old: readonly number[], fresh: readonly number[]): PlateValue[] => [
  ...old.map((value): PlateValue => ({ lot: 'old', tank: null, value })),
  ...fresh.map((value): PlateValue => ({ lot: 'new', tank: null, value })),
];
const inPairs = (old: readonly number[], fresh: readonly number[]): PlateValue[] => [
  ...old.map((value, i): PlateValue => ({ lot: 'old', tank: `day ${i}`, value })),
  ...fresh.map((value, i): PlateValue => ({ lot: 'new', tank: `day ${i}`, value })),
];
function found(plates: readonly PlateValue[]) {
  const difference = differenceOf(plates, 0);
  if (!difference) throw new Error('expected a difference');
  return difference;
}

const rf = fc.integer({ min: 0, max: 100 }).map((percent) => percent / 100);
const plates = fc.array(rf, { minLength: 2, maxLength: 12 });

describe('two one-sided tests', () => {
  it('have the p and the interval of SciPy, in one tank and in pairs', () => {
    for (const { old, new: fresh, margin, apart, interval, pairs, pairInterval } of reference.margins) {
      const one = equivalenceOf(found(oneTank(old, fresh)), margin);
      expect(one.p).toBeCloseTo(apart, 11);
      expect(one.low).toBeCloseTo(interval[0] ?? NaN, 11);
      expect(one.high).toBeCloseTo(interval[1] ?? NaN, 11);
      if (pairs === null || pairInterval === null) continue;
      const paired = equivalenceOf(found(inPairs(old, fresh)), margin);
      expect(paired.p).toBeCloseTo(pairs, 11);
      expect(paired.low).toBeCloseTo(pairInterval[0] ?? NaN, 11);
      expect(paired.high).toBeCloseTo(pairInterval[1] ?? NaN, 11);
    }
  });

  it('rest on the t of simple-statistics', () => {
    fc.assert(
      fc.property(plates, plates, fc.double({ min: 0.01, max: 0.1, noNaN: true }), (old, fresh, margin) => {
        fc.pre(new Set(old).size > 1);
        const { difference, standardError, freedom } = found(oneTank(old, fresh));
        expect(freedom).toBe(old.length + fresh.length - 2);
        expect((difference - margin) / standardError).toBeCloseTo(tTestTwoSample(fresh, old, margin) ?? NaN, 6);
        const apart = old.map((value, i) => (fresh[i] ?? value + 0.05) - value);
        fc.pre(Math.max(...apart) - Math.min(...apart) > 0.001);
        const paired = found(
          inPairs(
            old,
            old.map((value, i) => value + (apart[i] ?? NaN)),
          ),
        );
        expect((paired.difference - margin) / paired.standardError).toBeCloseTo(
          ((mean(apart) - margin) * Math.sqrt(apart.length)) / sampleStandardDeviation(apart),
          6,
        );
      }),
    );
  });

  it('find a difference within the margin just when both p are at most 5 %, that is when the 90 % interval lies within', () => {
    fc.assert(
      fc.property(plates, plates, (old, fresh) => {
        fc.pre(new Set(old).size > 1);
        const { p, within, beyond, low, high } = equivalenceOf(found(oneTank(old, fresh)), 0.03);
        fc.pre(Math.abs(p - 0.05) > 1e-9);
        expect(within).toBe(p < 0.05);
        expect(within).toBe(low > -0.03 && high < 0.03);
        expect(within && beyond).toBe(false);
      }),
    );
  });
});

describe('a difference', () => {
  it('is not moved by a tank in which everything ran higher', () => {
    const day = [
      ['old', 0.4],
      ['old', 0.42],
      ['new', 0.43],
      ['new', 0.45],
    ] as const;
    const tank = (name: string, higher: number): PlateValue[] =>
      day.map(([lot, value]) => ({ lot, tank: name, value: value + higher }));
    const calm = found([...tank('Monday', 0), ...tank('Tuesday', 0)]);
    const moved = found([...tank('Monday', 0), ...tank('Tuesday', 0.2)]);
    for (const key of ['difference', 'sd', 'freedom', 'standardError'] as const) {
      expect(moved[key]).toBeCloseTo(calm[key], 12);
    }
    expect(calm.difference).toBeCloseTo(0.03, 12);
  });

  it('is none where the lots never ran in one tank', () => {
    expect(
      differenceOf(
        [
          { lot: 'old', tank: 'Monday', value: 0.4 },
          { lot: 'old', tank: 'Monday', value: 0.41 },
          { lot: 'new', tank: 'Tuesday', value: 0.4 },
        ],
        0,
      ),
    ).toBeNull();
  });
});

describe('a verdict', () => {
  const same = [0.42, 0.44, 0.41, 0.43, 0.45, 0.42, 0.4, 0.43];

  it('accepts a lot that runs the same, rejects one that runs far off, and asks for more plates between', () => {
    expect(verdictOf(oneTank(same, same))).toMatchObject({ outcome: 'accepted', more: null, difference: 0 });
    const off = verdictOf(
      oneTank(
        same,
        same.map((value) => value + 0.08),
      ),
    );
    expect(off).toMatchObject({ outcome: 'rejected', more: null });
    expect(off.low).toBeGreaterThan(0.03);
    const between = verdictOf(
      oneTank(
        same,
        same.map((value) => value + 0.02),
      ),
    );
    expect(between.outcome).toBe('too few');
    expect(between.more).toBeGreaterThan(between.moreIfSame ?? NaN);
    // At the margin itself no number of plates decides.
    const edge = verdictOf(
      oneTank(
        same,
        same.map((value) => value + 0.03),
      ),
    );
    expect(edge).toMatchObject({ outcome: 'too few', more: null });
  });

  it('is never given of one or two plates of a lot, however alike they are', () => {
    for (const few of [
      oneTank([0.4], [0.4]),
      oneTank([0.4, 0.4], [0.4, 0.4]),
      oneTank([0.4, 0.4], [0.4, 0.4, 0.4, 0.4, 0.4]),
      oneTank([0.4, 0.4], [0.9, 0.9]),
      inPairs([0.4, 0.4], [0.4, 0.4]),
      [],
    ]) {
      expect(verdictOf(few).outcome).toBe('too few');
    }
  });

  it('takes no spread for smaller than the ruler shows', () => {
    const { sd, outcome } = verdictOf(oneTank([0.4, 0.4, 0.4], [0.41, 0.41, 0.41]));
    expect(sd).toBeCloseTo(0.01 / Math.sqrt(12), 12);
    expect(outcome).toBe('accepted');
  });

  it('does not depend on which lot is called new', () => {
    fc.assert(
      fc.property(plates, plates, (old, fresh) => {
        const there = verdictOf(oneTank(old, fresh));
        const back = verdictOf(oneTank(fresh, old));
        expect(back.outcome).toBe(there.outcome);
        expect(back.low).toBeCloseTo(-(there.high ?? NaN), 9);
        expect(back.moreIfSame).toBe(there.moreIfSame);
      }),
      { numRuns: 40 },
    );
  });

  it('on a lot needs every quantity accepted, and one rejected is enough', () => {
    const [accepted, rejected, few] = (['accepted', 'rejected', 'too few'] as const).map((outcome) => ({ outcome }));
    if (!accepted || !rejected || !few) throw new Error('expected three');
    expect(lotOutcome([accepted, accepted])).toBe('accepted');
    expect(lotOutcome([accepted, few])).toBe('too few');
    expect(lotOutcome([accepted, few, rejected])).toBe('rejected');
    expect(lotOutcome([])).toBe('too few');
  });
});

describe('what is compared', () => {
  it('is each compound’s mean on a plate and how far two stand apart, a plate without one left out', () => {
    const found = quantitiesOf([
      { lot: 'old', tank: 'a', spots: { red: [0.5, 0.52], blue: [0.2] } },
      { lot: 'new', tank: 'a', spots: { red: [0.55], blue: [] } },
    ]);
    expect(
      found.map(({ compounds, plates: values }) => [compounds.join('/'), values.map(({ lot, value }) => [lot, value])]),
    ).toEqual([
      [
        'red',
        [
          ['old', 0.51],
          ['new', 0.55],
        ],
      ],
      ['blue', [['old', 0.2]]],
      ['red/blue', [['old', expect.closeTo(0.31, 12)]]],
    ]);
  });

  it('is an Rf from 0 to 1 of a front above the spot', () => {
    expect(rfOf({ spotMm: 31.5, frontMm: 70 })).toBeCloseTo(0.45, 12);
    expect(rfOf({ spotMm: 0, frontMm: 70 })).toBe(0);
    expect(rfOf({ spotMm: 71, frontMm: 70 })).toBe('front below the spot');
    expect(rfOf({ spotMm: 0, frontMm: 0 })).toBe('front not above the start');
    expect(rfOf({ spotMm: -1, frontMm: 70 })).toBe('below 0');
    expect(rfOf({ spotMm: NaN, frontMm: 70 })).toBe('not a number');
    expect([0, 1, -0.01, 1.01, NaN].map(rfWrong)).toEqual([null, null, 'below 0', 'above 1', 'not a number']);
  });
});
