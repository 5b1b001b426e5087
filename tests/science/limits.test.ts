// The bed in the limits that have closed answers.
import { describe, expect, it } from 'vitest';
import { diffusivityM2PerS, referenceActivity, saturatedKgPerM3, vapourKgPerM3 } from '../../api/science/air.ts';
import { isothermOf, tableWater } from '../../api/science/isotherm.ts';
import { foldExposure } from '../../api/science/exposure.ts';
import type { SorbentNumbers } from '../../api/science/history.ts';
import { after, evenAir, jar, numbersOf, plateBox } from './support/lab.ts';
import { frontM, sheetUptake, surfaceUptake } from './support/limits.ts';

/** w = slope · a to a part in ten thousand: the film with C = 1 and a K near nothing. */
const slope = 0.2;
const linear: SorbentNumbers = {
  isotherm: { filmCapacity: slope / 1e-5, filmC: 1, filmK: 1e-5, poreCapacity: 0, poreActivity: 0.8, poreWidth: 0.05 },
  bulkDensityKgPerM3: 500,
  voidFraction: 0.4,
  doubt: numbersOf('silica').doubt,
  grades: null,
};
const bedM2PerS = diffusivityM2PerS(25) * 0.4 ** 1.5;
/** Diffusivity of water along a bed that holds it linearly. */
const effective = (bedM2PerS * saturatedKgPerM3(25)) / (500 * slope);

describe('a bed in its limits', () => {
  it('without resistance fills as Crank’s plane sheet: 0.35682, 0.76395, 0.93126 at D t / L² of 0.1, 0.5, 1', () => {
    const depthM = 0.05;
    for (const [fourier, uptake] of [
      [0.1, 0.35682],
      [0.5, 0.76395],
      [1, 0.93126],
    ] as const) {
      expect(sheetUptake(fourier)).toBeCloseTo(uptake, 5);
      const hours = (fourier * depthM ** 2) / effective / 3600;
      const air = evenAir(25, 0.5, Math.ceil(hours / 24) + 1);
      const { answer } = foldExposure(
        after(jar({ sorbent: linear, depthMm: 1000 * depthM, headspaceMm: 0, start: 0, air, filmMPerS: 1e6 }), hours),
      );
      expect(Math.abs(answer.meanWaterFraction / (slope * 0.5) / uptake - 1)).toBeLessThan(0.003);
    }
  });

  it('behind a film and a headspace fills as Crank’s series with surface resistance', () => {
    for (const [depthMm, headspaceMm] of [
      [50, 0],
      [50, 40],
      [15, 60],
    ] as const) {
      const depthM = depthMm / 1000;
      const resistance = 1 / 0.003 + headspaceMm / 1000 / diffusivityM2PerS(25);
      const biot = depthM / (bedM2PerS * resistance);
      for (const fourier of [0.2, 0.6, 1.5]) {
        const hours = (fourier * depthM ** 2) / effective / 3600;
        const air = evenAir(25, 0.5, Math.ceil(hours / 24) + 1);
        const { answer } = foldExposure(after(jar({ sorbent: linear, depthMm, headspaceMm, start: 0, air }), hours));
        expect(Math.abs(answer.meanWaterFraction / (slope * 0.5 * surfaceUptake(biot, fourier)) - 1)).toBeLessThan(
          0.003,
        );
      }
    }
  });

  it('as a thin layer behind its film fills exponentially', () => {
    const depthM = 0.2e-3;
    const air = evenAir(25, 0.5, 1);
    const constant = (500 * depthM * slope * (1 / 0.0005 + depthM / (3 * bedM2PerS))) / saturatedKgPerM3(25);
    for (const times of [0.3, 1, 2]) {
      const input = jar({ sorbent: linear, depthMm: 1000 * depthM, headspaceMm: 0, start: 0, air, filmMPerS: 0.0005 });
      const { answer } = foldExposure(after(input, (times * constant) / 3600));
      expect(Math.abs(answer.meanWaterFraction / (slope * 0.5 * (1 - Math.exp(-times))) - 1)).toBeLessThan(0.003);
    }
  });

  it('with a rectangular isotherm fills behind a sharp front', () => {
    const rectangular: SorbentNumbers = {
      ...linear,
      isotherm: { filmCapacity: 0.05, filmC: 3e5, filmK: 0.01, poreCapacity: 0, poreActivity: 0.8, poreWidth: 0.05 },
    };
    const air = evenAir(25, 0.5, 8);
    const resistance = 1 / 0.003 + 0.03 / diffusivityM2PerS(25);
    for (const hours of [24, 72, 168]) {
      const { answer } = foldExposure(after(jar({ sorbent: rectangular, start: 0, air }), hours));
      const front = frontM(500 * 0.05, bedM2PerS, resistance, vapourKgPerM3(25, 0.5) * hours * 3600);
      expect(Math.abs(answer.meanWaterFraction / ((0.05 * front) / 0.12) - 1)).toBeLessThan(0.02);
    }
  });

  it('left long enough holds what its room’s humidity holds, warm or cold, from wetter or drier', () => {
    for (const sorbent of ['silica', 'alumina', 'c18', 'magnesium silicate', 'cellulose']) {
      for (const temperatureC of [4, 25, 35]) {
        const air = evenAir(temperatureC, 0.45, 61);
        const wanted = tableWater(isothermOf(numbersOf(sorbent).isotherm), referenceActivity(0.45, temperatureC));
        for (const start of [0, 2.5 * wanted]) {
          const input = jar({ sorbent, depthMm: 5, headspaceMm: 0, start, air, upper: null });
          expect(Math.abs(foldExposure(after(input, 60 * 24)).answer.meanWaterFraction / wanted - 1)).toBeLessThan(
            0.003,
          );
        }
      }
    }
  });

  it('sealed keeps its water, though it levels inside', () => {
    const air = evenAir(25, 0.5, 41);
    const opened = {
      ...jar({ air }),
      actions: [{ atS: jar({ air }).start.atS + 8 * 3600, kind: 'closed', closure: 'sealed' }] as const,
    };
    const then = foldExposure(after(opened, 8)).answer;
    const now = foldExposure(after(opened, 40 * 24)).answer;
    expect(Math.abs(now.meanWaterFraction / then.meanWaterFraction - 1)).toBeLessThan(1e-12);
    expect(now.topWaterFraction).toBeLessThan(then.topWaterFraction);
    expect(now.topWaterFraction).toBeGreaterThan(now.meanWaterFraction);
  });

  it('on a plate goes from dry into 50 % RH half way in 2 to 5 min', () => {
    const box = plateBox(evenAir(25, 0.5, 1), { start: 0 });
    const half = tableWater(isothermOf(numbersOf('silica').isotherm), 0.5) / 2;
    expect(foldExposure(after(box, 2 / 60)).answer.meanWaterFraction).toBeLessThan(half);
    expect(foldExposure(after(box, 5 / 60)).answer.meanWaterFraction).toBeGreaterThan(half);
  });
});
