// Sixteen weeks worked out by hand, week by week; the tables are derived from the published formulas with a calculator.
import { describe, expect, it } from 'vitest';
import { forecastOf } from '../../../api/science/demand/forecast.ts';
import { crostonAfter, levelAfter } from '../../../api/science/demand/smoothing.ts';
import { reorderFor } from '../../../api/science/demand/service.ts';
import { countBelow } from '../../../api/science/distributions/counts.ts';

const weeks = [0, 0, 3, 0, 0, 0, 2, 0, 5, 0, 0, 1, 0, 4, 0, 0];
const threeWeeks = [{ weeks: 3, chance: 1 }];

// week, z, x, Syntetos–Boylan rate, smoothed level
const table: [number, number, number, number, number | null][] = [
  [3, 3, 3, 0.95, null],
  [4, 3, 3, 0.95, 0.75],
  [5, 3, 3, 0.95, 0.675],
  [6, 3, 3, 0.95, 0.6075],
  [7, 2.9, 3.1, 0.88871, 0.74675],
  [8, 2.9, 3.1, 0.88871, 0.672075],
  [9, 3.11, 2.99, 0.988127, 1.104868],
  [10, 3.11, 2.99, 0.988127, 0.994381],
  [11, 3.11, 2.99, 0.988127, 0.894943],
  [12, 2.899, 2.991, 0.920779, 0.905448],
  [13, 2.899, 2.991, 0.920779, 0.814904],
  [14, 3.0091, 2.8919, 0.988501, 1.133413],
  [15, 3.0091, 2.8919, 0.988501, 1.020072],
  [16, 3.0091, 2.8919, 0.988501, 0.918065],
];
const sixDigits = (value: number | null): number => Number((value ?? NaN).toFixed(6));

describe('sixteen weeks of lumpy use', () => {
  it('give size, interval, rate and level of every week to six digits', () => {
    const croston = crostonAfter(weeks);
    const levels = levelAfter(weeks);
    expect(croston.slice(0, 2)).toEqual([
      { rate: 0, z: null, x: null },
      { rate: 0, z: null, x: null },
    ]);
    for (const [week, z, x, rate, level] of table) {
      const after = croston[week - 1];
      expect([week, after?.z, after?.x, after?.rate].map((value) => sixDigits(value ?? null))).toEqual([
        week,
        z,
        x,
        rate,
      ]);
      if (level === null) expect(levels[week - 1]).toBeNull();
      else expect(sixDigits(levels[week - 1] ?? null)).toBe(level);
    }
  });

  it('have forecasts after each demand as they are known without the correction', () => {
    const plain = crostonAfter(weeks).flatMap(({ rate }, i) => ((weeks[i] ?? 0) > 0 ? [sixDigits(rate / 0.95)] : []));
    expect(plain).toEqual([1, 0.935484, 1.040134, 0.969241, 1.040527]);
  });

  it('choose the method with the smaller square over origins 8 to 13', () => {
    const forecast = forecastOf(weeks, threeWeeks);
    expect(forecast?.method).toBe('croston-sb');
    expect(forecast?.origins).toBe(6);
    expect(sixDigits(forecast?.meanSquare['croston-sb'] ?? null)).toBe(3.395317);
    expect(sixDigits(forecast?.meanSquare.smoothing ?? null)).toBe(4.603311);
  });

  it('ask for 9 units to serve 95 of 100 lead times of three weeks', () => {
    const forecast = forecastOf(weeks, threeWeeks);
    if (!forecast) throw new Error('expected a forecast');
    const { mean, variance, counts } = forecast.leadTime;
    expect([forecast.variance, mean, variance].map(sixDigits)).toEqual([2.729167, 2.965502, 9.480263]);
    if (counts.family !== 'negative-binomial') throw new Error('expected a negative binomial');
    expect([counts.r, counts.p].map(sixDigits)).toEqual([1.349889, 0.312808]);
    expect([0.5, 0.9, 0.95, 0.99].map((service) => reorderFor(forecast.leadTime, service).point)).toEqual([
      2, 7, 9, 14,
    ]);
    expect([6, 7, 8, 9, 14].map((count) => sixDigits(countBelow(counts, count)))).toEqual([
      0.880321, 0.914839, 0.939597, 0.957271, 0.992641,
    ]);
    expect(sixDigits(reorderFor(forecast.leadTime, 0.95).safetyStock)).toBe(6.034498);
  });

  it('vary more when the supplier does', () => {
    const lead = [2, 3, 4].map((given) => ({ weeks: given, chance: given === 3 ? 0.5 : 0.25 }));
    const forecast = forecastOf(weeks, lead);
    if (!forecast) throw new Error('expected a forecast');
    // 8.1875 + 0.488567 + 1.364583
    expect(forecast.leadTime.variance).toBeCloseTo(10.0406501, 7);
    expect(sixDigits(countBelow(forecast.leadTime.counts, 9))).toBe(0.954065);
    expect(reorderFor(forecast.leadTime, 0.95).point).toBe(9);
  });
});
