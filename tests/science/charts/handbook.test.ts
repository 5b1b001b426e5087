// Charts against the worked examples of the NIST/SEMATECH e-Handbook, 6.3.2, and what any chart must keep to.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chartOf } from '../../../api/science/charts/chart.ts';
import { chartConstants } from '../../../api/science/charts/constants.ts';
import { ewmaOf } from '../../../api/science/charts/ewma.ts';
import { individualsOf, movingRanges } from '../../../api/science/charts/individuals.ts';
import { subgroupLimits } from '../../../api/science/charts/subgroups.ts';
import { normalShare } from '../../../api/science/distributions/continuous.ts';

// 6.3.2.2; the limits are confirmed, the data are from memory and reproduce them.
const flow = [49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1];
// 6.3.2.4; the ten values above are its second half.
const run = [52.0, 47.0, 53.0, 49.3, 50.1, 47.0, 51.0, 50.1, 51.2, 50.5, ...flow];

describe('the handbook’s charts', () => {
  it('of individuals have a mean of 50.81, a moving range of 1.8778 and limits of 55.8041 and 45.8159', () => {
    const chart = individualsOf(flow);
    expect(chart?.values.centre).toBeCloseTo(50.81, 10);
    expect(chart?.ranges.centre).toBeCloseTo(1.8778, 4);
    expect(chart?.values.high).toBeCloseTo(55.8041, 4);
    expect(chart?.values.low).toBeCloseTo(45.8159, 4);
    expect(chart?.ranges.high).toBeCloseTo(6.135, 3);
    expect(chart?.ranges.low).toBe(0);
  });

  it('of the weighted average run from 50.60 to 51.99 between 47.4115 and 52.5884', () => {
    const { values, limits } = ewmaOf(run, 50, 2.0539, 0.3);
    expect(values.map((value) => Number(value.toFixed(2)))).toEqual([
      50.6, 49.52, 50.56, 50.18, 50.16, 49.21, 49.75, 49.85, 50.26, 50.33, 50.11, 49.36, 49.52, 50.05, 49.38, 49.92,
      50.73, 51.23, 51.94, 51.99,
    ]);
    expect(limits.high).toBeCloseTo(52.58843, 5);
    expect(limits.low).toBeCloseTo(47.41157, 5);
  });

  it('of means and ranges of five: 1.69325 and 1.31795 about 1.5056, ranges up to .68749', () => {
    // Montgomery's hard-bake example, from memory; the range limit is printed with D4 2.114, the handbook has 2.115.
    const limits = subgroupLimits(1.5056, 0.32521, 5);
    expect(limits?.means.high).toBeCloseTo(1.69325, 5);
    expect(limits?.means.low).toBeCloseTo(1.31795, 5);
    expect(limits?.ranges.high).toBeCloseTo((0.68749 * 2.115) / 2.114, 4);
    expect(subgroupLimits(1, 0.1, 11)).toBeNull();
  });
});

describe('chart constants', () => {
  /** Mean and standard deviation of the range of n normal values, by integrating over where the range lies. */
  function rangeOf(n: number): readonly [mean: number, sd: number] {
    const step = 0.02;
    const density = (x: number): number => Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI);
    const grid = Array.from({ length: 801 }, (_, i) => -8 + i * step).map((x) => ({ at: density(x), x }));
    const below = (range: number): number =>
      grid.reduce((sum, { at, x }) => sum + n * at * (normalShare(x + range) - normalShare(x)) ** (n - 1) * step, 0);
    // E W = ∫ P(W > w) dw and E W² = ∫ 2w P(W > w) dw.
    let [mean, square] = [0, 0];
    for (let w = 0.05 / 2; w < 10; w += 0.05) {
      const beyond = 1 - below(w);
      mean += beyond * 0.05;
      square += 2 * w * beyond * 0.05;
    }
    return [mean, Math.sqrt(square - mean * mean)];
  }

  it('are those of the normal distribution, to the printed digit', () => {
    for (const n of [2, 5, 10]) {
      const [mean, sd] = rangeOf(n);
      const { d2 = NaN, A2 = NaN, D3 = NaN, D4 = NaN } = chartConstants[n] ?? {};
      expect(Math.abs(d2 - mean)).toBeLessThan(0.0011);
      expect(Math.abs(A2 - 3 / (mean * Math.sqrt(n)))).toBeLessThan(0.0011);
      expect(Math.abs(D3 - Math.max(0, 1 - (3 * sd) / mean))).toBeLessThan(0.0015);
      expect(Math.abs(D4 - (1 + (3 * sd) / mean))).toBeLessThan(0.0015);
    }
  });
});

describe('a chart', () => {
  const measured = fc.array(
    fc.record({ value: fc.double({ min: 0, max: 1, noNaN: true }), lot: fc.constantFrom('A', 'B') }),
    { minLength: 2, maxLength: 40 },
  );

  it('marks each stretch of a lot once, with no point left out', () => {
    fc.assert(
      fc.property(measured, (points) => {
        const chart = chartOf(points);
        const told = chart?.lots.flatMap(({ lot, from, to }) => new Array<string>(to - from + 1).fill(lot));
        expect(told).toEqual(points.map(({ lot }) => lot));
        for (const [i, { lot }] of (chart?.lots ?? []).entries()) expect(chart?.lots[i + 1]?.lot).not.toBe(lot);
      }),
    );
  });

  it('moves with its values, and its limits widen as they do', () => {
    fc.assert(
      fc.property(measured, (points) => {
        const one = chartOf(points);
        const other = chartOf(points.map(({ value, lot }) => ({ value: 2 * value + 1, lot })));
        expect(other?.values.high).toBeCloseTo(2 * (one?.values.high ?? NaN) + 1, 9);
        expect(other?.averages.low).toBeCloseTo(2 * (one?.averages.low ?? NaN) + 1, 9);
        expect(other?.points.at(-1)?.average).toBeCloseTo(2 * (one?.points.at(-1)?.average ?? NaN) + 1, 9);
      }),
    );
  });

  it('keeps its limits when a new lot runs away, and says which points lie outside', () => {
    const old = [0.41, 0.42, 0.4, 0.43, 0.41, 0.42, 0.4, 0.41].map((value) => ({ value, lot: 'F-117' }));
    const chart = chartOf([...old, { value: 0.52, lot: 'F-118' }], old.length);
    expect(chart?.values).toEqual(chartOf(old)?.values);
    expect(chart?.points.map(({ valueOutside }) => valueOutside)).toEqual([...old.map(() => false), true]);
    expect(chart?.points.at(-1)).toMatchObject({ rangeOutside: true, averageOutside: true });
    expect(chart?.lots).toEqual([
      { lot: 'F-117', from: 0, to: 7 },
      { lot: 'F-118', from: 8, to: 8 },
    ]);
  });

  it('has no limits of a single point', () => {
    expect(chartOf([{ value: 0.4, lot: 'A' }])).toBeNull();
    expect(movingRanges([0.4])).toEqual([]);
  });
});
