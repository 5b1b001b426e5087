// Closures against the rates that define their classes (USP <671>).
import { describe, expect, it } from 'vitest';
import { diffusivityM2PerS, saturationPressurePa, vapourKgPerM3 } from '../../api/science/air.ts';
import { conductanceM3PerS, sameLid } from '../../api/science/closures.ts';
import { foldExposure } from '../../api/science/exposure.ts';
import type { Closure, Geometry } from '../../api/science/history.ts';
import { after, evenAir, jar } from './support/lab.ts';

const litre: Geometry = { kind: 'bed', areaM2: 0.00636, mouthAreaM2: 0.00636, heightM: 0.157, volumeM3: 0.001 };
const milligramsADay = (closure: Closure, geometry = litre): number =>
  1e6 * 86_400 * conductanceM3PerS(closure, geometry) * vapourKgPerM3(23, 0.75);

describe('closures', () => {
  it('let in what USP <671> allows per day and litre at 75 % RH and 23 °C: 100 mg tight, 2000 mg well closed', () => {
    expect(Math.abs(milligramsADay('tight') / 100 - 1)).toBeLessThan(0.01);
    expect(Math.abs(milligramsADay('well closed') / 2000 - 1)).toBeLessThan(0.01);
    expect(Math.abs(milligramsADay('tight', { ...litre, volumeM3: 0.0025 }) / 250 - 1)).toBeLessThan(0.01);
  });

  it('let in 0.0474 and 0.949 g per day, litre and kPa', () => {
    const drivingKPa = (0.75 * saturationPressurePa(23)) / 1000;
    expect(Math.abs(milligramsADay('tight') / 1000 / drivingKPa - 0.0474)).toBeLessThan(0.0005);
    expect(Math.abs(milligramsADay('well closed') / 1000 / drivingKPa - 0.949)).toBeLessThan(0.01);
  });

  it('loosely covered let in a gap’s worth by the rim: between 0.1 and 0.5 mm of it, 51 to 250 mg a day at 25 °C and 50 % RH per 20 cm', () => {
    const rim20: Geometry = { ...litre, mouthAreaM2: (0.2 / Math.PI) ** 2 * (Math.PI / 4) };
    const daily = 1e6 * 86_400 * conductanceM3PerS('loosely covered', rim20) * vapourKgPerM3(25, 0.5);
    expect(daily).toBeGreaterThan(51);
    expect(daily).toBeLessThan(250);
  });

  it('over dry sorbent give that inflow in the bed as well, less what the film and the headspace behind them take', () => {
    const air = evenAir(23, 0.75, 3);
    const mouth = 1 / 0.003 + 0.03 / diffusivityM2PerS(23);
    for (const [closure, grams] of [
      ['tight', 0.1],
      ['well closed', 2],
    ] as const) {
      const { waterGainedKg } = foldExposure(after(jar({ lid: closure, start: 0, air, sorbent: 'alumina' }), 24));
      const shut = litre.kind === 'bed' ? litre.areaM2 / conductanceM3PerS(closure, litre) : NaN;
      const share = shut / (shut + mouth);
      // The top is no longer quite dry at the end.
      expect((1000 * waterGainedKg) / (grams * share)).toBeGreaterThan(0.9);
      expect((1000 * waterGainedKg) / (grams * share)).toBeLessThan(1.01);
    }
  });

  it('are told apart by name or by conductance', () => {
    expect(sameLid('tight', 'tight')).toBe(true);
    expect(sameLid('tight', 'open')).toBe(false);
    expect(sameLid({ conductanceM3PerS: 1e-8 }, { conductanceM3PerS: 1e-8 })).toBe(true);
    expect(sameLid({ conductanceM3PerS: 1e-8 }, { conductanceM3PerS: 2e-8 })).toBe(false);
  });
});
