// Moist air against an independent library, the steam tables and the handbook.
import psychrolib from 'psychrolib';
import { describe, expect, it } from 'vitest';
import diffusivity from '../../fixtures/measured/diffusivity.json' with { type: 'json' };
import saturation from '../../fixtures/measured/saturation.json' with { type: 'json' };
import {
  diffusivityM2PerS,
  icePressurePa,
  referenceActivity,
  saturatedKgPerM3,
  saturationPressurePa,
  vapourKgPerM3,
} from '../../api/science/air.ts';

const off = (is: number, should: number): number => Math.abs(is / should - 1);

describe('water vapour', () => {
  for (const [name, { source, tolerance, points }] of Object.entries(saturation)) {
    if (name === 'vapour') continue;
    it(`has the saturation pressure of ${source}`, () => {
      for (const [temperatureC, pa] of points)
        expect(off(saturationPressurePa(temperatureC!), pa!)).toBeLessThan(tolerance);
    });
  }

  it('has the saturation pressure that psychrolib gives, over liquid and over ice', () => {
    psychrolib.SetUnitSystem(psychrolib.SI);
    for (let t = 0.25; t <= 200; t += 0.25)
      expect(off(saturationPressurePa(t), psychrolib.GetSatVapPres(t))).toBeLessThan(1e-9);
    for (let t = -60; t < 0; t += 0.25) expect(off(icePressurePa(t), psychrolib.GetSatVapPres(t))).toBeLessThan(1e-9);
  });

  it('weighs what 2.16679 e/T says', () => {
    for (const [t, humidity, grams] of saturation.vapour.points) {
      expect(off(1000 * vapourKgPerM3(t!, humidity!), grams!)).toBeLessThan(saturation.vapour.tolerance);
    }
    expect(saturatedKgPerM3(25)).toBeCloseTo(0.023036, 5);
  });

  it('diffuses as Massman found, and near to Monteith and Unsworth', () => {
    for (const { tolerance, points } of [diffusivity.massman, diffusivity.monteith]) {
      for (const [t, value] of points) expect(off(1e5 * diffusivityM2PerS(t!), value!)).toBeLessThan(tolerance);
    }
    expect(off(diffusivityM2PerS(25, 202_650), diffusivityM2PerS(25) / 2)).toBeLessThan(1e-12);
  });

  it('rests at the same loading when only the temperature changes: 9.68 % at 40 °C is 8.25 % at 20 °C (je400517c, derived)', () => {
    expect(off(referenceActivity(0.0968, 40), referenceActivity(0.0825, 20))).toBeLessThan(0.002);
    expect(referenceActivity(0.4, 25)).toBeCloseTo(0.4, 12);
  });
});
