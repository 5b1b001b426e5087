// The truth that labs are weighed against is itself held against the fine-grid values of the exposure model's section 6.
import { describe, expect, it } from 'vitest';
import { conductanceM3PerS } from '../../../api/science/closures.ts';
import { jar, numbersOf, evenAir, dayZero } from '../support/lab.ts';
import { airOf, Truth } from './truth.ts';

const day = 86_400;
const air = airOf([0, 61].map((days) => ({ atS: dayZero + days * day, temperatureC: 25, humidity: 0.5 })));
const bedOf = (start: number): Truth =>
  new Truth({ sorbent: numbersOf('silica'), depthM: 0.12, capacity: 1, bedFactor: 1, start, desorption: 1 }, air);
const mouth = (diffusivity: number): number => 1 / 0.003 + 0.03 / diffusivity;

/** Within a hundredth of what came in. */
const close = (is: number, should: number, start: number) =>
  expect(Math.abs(is - should)).toBeLessThan(Math.max(1e-4, 0.01 * (should - start)));

describe('silica 120 mm deep', () => {
  it('takes up what a grid of 800 cells says when open', () => {
    const bed = bedOf(0);
    let atS = dayZero;
    for (const [hours, mean, top] of [
      [24, 0.0059, 0.04645],
      [168, 0.02196, 0.07126],
    ] as const) {
      bed.carry(atS, dayZero + hours * 3600, true, mouth);
      atS = dayZero + hours * 3600;
      close(bed.mean(), mean, 0);
      close(bed.mean(0.01), top, 0);
    }
  });

  it('and when tightly closed', () => {
    const bed = bedOf(0.01);
    const { geometry } = jar({ air: evenAir(25, 0.5, 1) }).spec;
    const areaM2 = Math.PI * 0.045 ** 2;
    const closed = (diffusivity: number): number => mouth(diffusivity) + areaM2 / conductanceM3PerS('tight', geometry);
    let atS = dayZero;
    for (const [days, mean, top] of [
      [15, 0.01258, 0.01817],
      [30, 0.01505, 0.02145],
      [60, 0.01981, 0.02595],
    ] as const) {
      bed.carry(atS, dayZero + days * day, false, closed);
      atS = dayZero + days * day;
      close(bed.mean(), mean, 0.01);
      close(bed.mean(0.01), top, 0.01);
    }
  });

  it('keeps every gram when it is sealed, with two branches too', () => {
    for (const desorption of [1, 2]) {
      const bed = new Truth(
        { sorbent: numbersOf('silica'), depthM: 0.12, capacity: 1, bedFactor: 1, start: 0.02, desorption },
        air,
      );
      bed.carry(dayZero, dayZero + day, true, mouth);
      const before = bed.mean();
      bed.turn();
      bed.carry(dayZero + day, dayZero + 20 * day, false, () => Infinity);
      expect(Math.abs(bed.mean() / before - 1)).toBeLessThan(1e-12);
    }
  });
});
