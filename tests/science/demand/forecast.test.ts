// What any history's forecast must keep to, and how often the stock it asks for is really enough.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { forecastOf } from '../../../api/science/demand/forecast.ts';
import type { Lead } from '../../../api/science/demand/lead.ts';
import { reorderFor } from '../../../api/science/demand/service.ts';
import { countBelow, countsOf } from '../../../api/science/distributions/counts.ts';
import { dice } from '../support/lab.ts';

const fixed = (weeks: number): Lead => [{ weeks, chance: 1 }];
const history = fc.array(fc.oneof({ weight: 3, arbitrary: fc.constant(0) }, fc.nat(20)), {
  minLength: 8,
  maxLength: 60,
});
const leads = fc.constantFrom(
  fixed(1),
  fixed(4),
  fixed(60),
  [2, 5].map((weeks) => ({ weeks, chance: 0.5 })),
);

describe('a forecast', () => {
  it('is not made of fewer than eight weeks', () => {
    expect(forecastOf([1, 2, 3, 4, 5, 6, 7], fixed(1))).toBeNull();
    expect(forecastOf([1, 2, 3, 4, 5, 6, 7, 8], fixed(1))).not.toBeNull();
  });

  it('of a week that never changes is that week, as Poisson', () => {
    const forecast = forecastOf(new Array<number>(20).fill(5), fixed(2));
    expect(forecast?.level).toBeCloseTo(5, 12);
    // The correction takes α/2 off; the smoothed level, which errs less, is chosen.
    expect(forecast?.method).toBe('smoothing');
    expect(forecast?.leadTime.counts).toEqual({ family: 'poisson', mean: forecast?.leadTime.mean });
  });

  it('of an item that nobody used asks for nothing', () => {
    const forecast = forecastOf(new Array<number>(12).fill(0), fixed(3));
    expect(forecast?.rate).toBe(0);
    expect(forecast && reorderFor(forecast.leadTime, 0.99)).toEqual({ point: 0, safetyStock: 0 });
  });

  it('takes the first method where there is no week to hold it against', () => {
    const forecast = forecastOf([0, 9, 0, 0, 9, 9, 9, 9], fixed(3));
    expect(forecast?.origins).toBe(0);
    expect(forecast?.meanSquare).toEqual({ 'croston-sb': null, smoothing: null });
    expect(forecast?.method).toBe('croston-sb');
  });

  it('knows nothing of what comes after', () => {
    fc.assert(
      fc.property(history, fc.nat(20), (weeks, next) => {
        const now = forecastOf(weeks, fixed(2));
        const then = forecastOf([...weeks, next], fixed(2));
        // A week without demand leaves size and interval as they are.
        if (next === 0) expect([then?.z, then?.x]).toEqual([now?.z, now?.x]);
        expect(then?.level).toBeCloseTo((now?.level ?? NaN) + 0.1 * (next - (now?.level ?? NaN)), 9);
      }),
    );
  });

  it('is the same in plates and in dozens of plates', () => {
    fc.assert(
      fc.property(history, leads, (weeks, lead) => {
        const one = forecastOf(weeks, lead);
        const dozens = forecastOf(
          weeks.map((quantity) => quantity / 16),
          lead,
        );
        expect(dozens?.method).toBe(one?.method);
        expect(16 * (dozens?.rate ?? NaN)).toBeCloseTo(one?.rate ?? NaN, 9);
        expect(256 * (dozens?.leadTime.variance ?? NaN)).toBeCloseTo(one?.leadTime.variance ?? NaN, 6);
      }),
    );
  });

  it('asks for more stock the more lead times are to be served, and no more than is needed', () => {
    fc.assert(
      fc.property(history, leads, (weeks, lead) => {
        const forecast = forecastOf(weeks, lead);
        if (!forecast) throw new Error('expected a forecast');
        const { counts } = forecast.leadTime;
        let before = 0;
        for (const service of [0.5, 0.8, 0.9, 0.95, 0.99, 0.999]) {
          const { point } = reorderFor(forecast.leadTime, service);
          expect(point).toBeGreaterThanOrEqual(before);
          expect(countBelow(counts, point)).toBeGreaterThanOrEqual(service);
          if (point > 0) expect(countBelow(counts, point - 1)).toBeLessThan(service);
          before = point;
        }
      }),
    );
  });
});

describe('the stock for a service level of 95 %', () => {
  /** Independent weeks, drawn by turning a table of chances round. */
  function drawn(mean: number, variance: number, chance: () => number): () => number {
    const counts = countsOf(mean, variance);
    const below: number[] = [];
    for (let k = 0; (below.at(-1) ?? 0) < 1 - 1e-12; k++) below.push(countBelow(counts, k));
    return () => {
      const u = chance();
      const k = below.findIndex((share) => u <= share);
      return k < 0 ? below.length : k;
    };
  }

  it.each([
    [0.5, 1, 4],
    [1, 2, 4],
    [2, 6, 3],
    [5, 20, 3],
  ])('is enough in 93 to 97 of 100 lead times: weeks of %d with variance %d, lead %d', (mean, variance, lead) => {
    // The demand of a lead time is again a negative binomial: r adds up over independent weeks.
    const truth = countsOf(mean * lead, variance * lead);
    for (const weeks of [26, 52, 104, 260]) {
      const draw = drawn(mean, variance, dice(weeks));
      let served = 0;
      for (let series = 0; series < 1000; series++) {
        const forecast = forecastOf(Array.from({ length: weeks }, draw), fixed(lead));
        if (forecast) served += countBelow(truth, reorderFor(forecast.leadTime, 0.95).point);
      }
      expect(served / 1000).toBeGreaterThan(0.93);
      expect(served / 1000).toBeLessThan(0.97);
    }
  });
});
