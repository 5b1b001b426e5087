// What is drawn: the water strip, the bed's depth, labels that do not lie on each other, spans that can be zoomed.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { spreadOut } from '../../admin/draw/spread.ts';
import { stripWords } from '../../admin/draw/strip-words.ts';
import { stripOf } from '../../admin/draw/strip.ts';
import { zoomed } from '../../admin/draw/zoom.ts';
import { filledSpans } from '../../admin/air/plots.ts';
import { depthPicture, depthWords } from '../../admin/expose/depth.ts';

const wet = { mean: 0.019, scoop: 0.058, scoopLow: 0.047, scoopHigh: 0.069, upper: 0.05, lower: null };

describe('the water strip', () => {
  it('puts the limit in the middle and the water where it belongs between nothing and twice the limit', () => {
    const strip = stripOf(wet);
    expect(strip.limit).toBe(50);
    expect(strip.scoop?.at).toBeCloseTo(58, 9);
    expect(strip.mean?.at).toBeCloseTo(19, 9);
    expect(strip.bar?.from).toBeCloseTo(47, 9);
    expect(strip.bar?.to).toBeCloseTo(69, 9);
    expect(strip.scoop?.beyond).toBe(false);
  });
  it('keeps everything on the strip, and marks what lies beyond its end', () => {
    const fraction = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(fraction, fraction, fraction, fraction, fraction, (mean, scoop, scoopLow, scoopHigh, upper) => {
        const strip = stripOf({ mean, scoop, scoopLow, scoopHigh, upper, lower: null });
        for (const at of [strip.mean?.at, strip.scoop?.at, strip.bar?.from, strip.bar?.to, strip.limit]) {
          expect(at).toBeGreaterThanOrEqual(0);
          expect(at).toBeLessThanOrEqual(100);
        }
        expect(strip.scoop?.beyond).toBe(scoop > strip.end);
      }),
    );
  });
  it('draws no figure where nobody knows one', () => {
    expect(stripOf({ ...wet, mean: null, scoop: null, scoopLow: null, scoopHigh: null })).toMatchObject({
      bar: null,
      scoop: null,
      mean: null,
    });
  });
  it('says to the ear what it shows to the eye', () => {
    expect(stripWords(wet, false).replaceAll('\u00a0', ' ')).toBe(
      'Water: next scoop about 5.8 % (4.7 to 6.9), mean 1.9 %, upper end 5.0 %.',
    );
    expect(stripWords(wet, true)).toContain('a guess');
    expect(stripWords({ ...wet, scoop: null }, false)).toBe('Water unknown: weigh a scoop.');
  });
});

describe('the bed', () => {
  const profile = [
    { depthMm: 0, waterFraction: 0.08 },
    { depthMm: 10, waterFraction: 0.06 },
    { depthMm: 100, waterFraction: 0.01 },
  ];
  it('is told from the top down', () => {
    expect(depthWords(profile, 0.05).replaceAll('\u00a0', ' ')).toBe(
      'Now 8.0 % at the top and 1.0 % at 100 mm; past its upper end down to 10 mm.',
    );
    expect(depthWords([], 0.05)).toBe('');
  });
  it('fills its box from top to bottom', () => {
    const { path, deepest } = depthPicture(profile, 0.05);
    expect(deepest).toBe(100);
    expect(path.startsWith('M100.00 0.00')).toBe(true);
    expect(path.endsWith('100.00')).toBe(true);
  });
});

describe('plots', () => {
  it('labels at the ends of lines stand apart, in the order of their lines', () => {
    const ys = fc.array(fc.double({ min: -50, max: 250, noNaN: true }), { minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(ys, (values) => {
        const placed = spreadOut(
          values.map((y) => ({ y })),
          15,
          10,
          200,
        ).map(({ y }) => y);
        for (const [i, y] of placed.slice(1).entries()) expect(y - (placed[i] ?? 0)).toBeGreaterThanOrEqual(15 - 1e-9);
        for (const y of placed) expect(y).toBeLessThanOrEqual(200);
      }),
    );
  });
  it('zooming stays within what there is, and keeps the point one looks at in place', () => {
    const at = fc.double({ min: 0, max: 100_000, noNaN: true });
    fc.assert(
      fc.property(at, fc.double({ min: 0.2, max: 5, noNaN: true }), (about, factor) => {
        const [from, until] = zoomed([20_000, 80_000], [0, 100_000], factor, about);
        expect(from).toBeGreaterThanOrEqual(0);
        expect(until).toBeLessThanOrEqual(100_000);
        expect(until - from).toBeCloseTo(Math.min(100_000, 60_000 * factor), 5);
      }),
    );
    expect(zoomed([20_000, 80_000], [0, 100_000], 0.5, 50_000)).toEqual([35_000, 65_000]);
  });
  it('neighbouring filled points make one shaded stretch', () => {
    const points = [false, true, true, false, true].map((isFilled, hour) => ({
      at: new Date(hour * 3_600_000).toISOString(),
      isFilled,
    }));
    expect(filledSpans(points)).toEqual([
      { from: 3600, until: 7200 },
      { from: 14_400, until: 14_400 },
    ]);
  });
});
