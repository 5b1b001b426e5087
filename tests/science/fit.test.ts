// An isotherm of the lab's own from weighed samples.
import { describe, expect, it } from 'vitest';
import measured from '../../fixtures/measured/isotherms.json' with { type: 'json' };
import { fitIsotherm, type Point } from '../../api/science/fit.ts';
import { waterAtActivity } from '../../api/science/isotherm.ts';
import { saltHumidity } from '../../api/science/salts.ts';
import { numbersOf } from './support/lab.ts';

const silica = numbersOf('silica').isotherm;

describe('a lab’s own isotherm', () => {
  it('goes through the one sample that was weighed over a salt, and keeps its class’s shape', () => {
    const humidity = saltHumidity('magnesium chloride', 25) ?? NaN;
    const fit = fitIsotherm(numbersOf('magnesium silicate').isotherm, [
      { humidity, temperatureC: 25, waterFraction: 0.055 },
    ]);
    expect(waterAtActivity(fit!.isotherm, humidity)).toBeCloseTo(0.055, 9);
    const ratio = (a: number) =>
      waterAtActivity(fit!.isotherm, a) / waterAtActivity(numbersOf('magnesium silicate').isotherm, a);
    expect(ratio(0.1)).toBeCloseTo(ratio(0.8), 9);
    expect(fit!.doubt.below).toBeCloseTo(0.05, 9);
  });

  it('finds the isotherm that points were drawn from', () => {
    const truth = { ...silica, filmCapacity: 0.05, filmC: 12, filmK: 0.75, poreCapacity: 0.3 };
    const points = [0.08, 0.15, 0.25, 0.35, 0.5, 0.6, 0.7, 0.8, 0.88].map((humidity): Point => ({
      humidity,
      temperatureC: 25,
      waterFraction: waterAtActivity(truth, humidity),
    }));
    const fit = fitIsotherm(silica, points);
    for (let a = 0.05; a < 0.9; a += 0.05)
      expect(Math.abs(waterAtActivity(fit!.isotherm, a) / waterAtActivity(truth, a) - 1)).toBeLessThan(0.02);
  });

  it('describes the alumina of Li, Xiao and Webley 2009 within 0.9 % of water rms, from another class’s start', () => {
    const { humidity, water } = measured.alumina350;
    const points = water.map((percent, i): Point => ({
      humidity: humidity[i]!,
      temperatureC: 30,
      waterFraction: percent / 100,
    }));
    const fit = fitIsotherm(numbersOf('alumina').isotherm, points);
    const squares = points.map(
      ({ humidity: phi, waterFraction }) =>
        (waterAtActivity(fit!.isotherm, phi ** (303.15 / 298.15)) - waterFraction) ** 2,
    );
    expect(Math.sqrt(squares.reduce((a, b) => a + b, 0) / squares.length)).toBeLessThan(0.009);
  });

  it('is none without water', () => {
    expect(fitIsotherm(silica, [])).toBeNull();
    expect(fitIsotherm(silica, [{ humidity: 0.3, temperatureC: 25, waterFraction: 0 }])).toBeNull();
  });
});
