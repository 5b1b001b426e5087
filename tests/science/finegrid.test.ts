// The bed against an independent fine grid, on the tabled cases and on others.
import { describe, expect, it } from 'vitest';
import measured from '../../fixtures/measured/fine-grid.json' with { type: 'json' };
import { foldExposure } from '../../api/science/exposure.ts';
import { after, dayZero, evenAir, hour, jar, noisyReadings, numbersOf } from './support/lab.ts';
import { heldBlocks } from '../../api/science/blocks.ts';
import { daySeconds, roomAir } from '../../api/science/climate.ts';
import { meanOf, plainWater } from './support/reference.ts';

/** Within 0.3 % of the uptake or 5e-5, whichever is larger. */
const allowed = (water: number, start: number): number => Math.max(5e-5, 0.003 * Math.abs(water - start));
/** The table is printed to five places. */
const printed = 5e-6;

describe('the estimator’s grid and steps', () => {
  for (const {
    sorbent,
    depthMm,
    headspaceMm,
    start,
    temperatureC,
    humidity,
    conductance,
    after: points,
  } of measured.cases) {
    it(`reach the fine-grid values for ${depthMm} mm of ${sorbent}${conductance ? ' closed tight' : ''}`, () => {
      for (const [hours, mean, top] of points) {
        const air = evenAir(temperatureC, humidity, Math.ceil(hours! / 24) + 1);
        const lid = conductance === null ? 'open' : { conductanceM3PerS: conductance };
        const { answer } = foldExposure(after(jar({ sorbent, depthMm, headspaceMm, start, air, lid }), hours!));
        expect(Math.abs(answer.meanWaterFraction - mean!)).toBeLessThan(allowed(mean!, start) + printed);
        expect(Math.abs(answer.topWaterFraction - top!)).toBeLessThan(allowed(top!, start) + printed);
      }
    });
  }

  it('reach another solver’s values in noisy air, for beds and sorbents not in that table', () => {
    const readings = noisyReadings(7, 4, 21, 0.5);
    const days = heldBlocks(readings, dayZero, dayZero + 4 * daySeconds);
    const air = roomAir(days, null);
    const block = (s: number) => {
      const day = days[Math.floor(s / daySeconds)]!;
      const k = Math.floor((s % daySeconds) / 300);
      return { temperatureC: day.temperatureC[k]!, humidity: day.vapourKgPerM3[k]! / day.saturatedKgPerM3[k]! };
    };
    const cases = [
      { sorbent: 'silica', depthMm: 60, headspaceMm: 10, start: 0.02, hours: 31 },
      { sorbent: 'alumina', depthMm: 25, headspaceMm: 5, start: 0.06, hours: 20 },
      { sorbent: 'c18', depthMm: 40, headspaceMm: 60, start: 0.002, hours: 14 },
      { sorbent: 'magnesium silicate', depthMm: 150, headspaceMm: 15, start: 0.001, hours: 50 },
      { sorbent: 'cellulose', depthMm: 12, headspaceMm: 0, start: 0.01, hours: 7 },
    ];
    for (const { sorbent, depthMm, headspaceMm, start, hours } of cases) {
      const { answer } = foldExposure(after(jar({ sorbent, depthMm, headspaceMm, start, air }), hours));
      const plain = plainWater(
        {
          sorbent: numbersOf(sorbent),
          depthM: depthMm / 1000,
          start,
          air: block,
          resistance: (diffusivity) => 1 / 0.003 + headspaceMm / 1000 / diffusivity,
        },
        hours * hour,
        hours * 12,
      );
      const mean = meanOf(plain);
      const top = meanOf(plain, 0.01);
      expect(Math.abs(answer.meanWaterFraction - mean), `${sorbent} mean`).toBeLessThan(allowed(mean, start));
      expect(Math.abs(answer.topWaterFraction - top), `${sorbent} top`).toBeLessThan(allowed(top, start));
    }
  });
});
