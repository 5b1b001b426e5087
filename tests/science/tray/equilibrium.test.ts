// What an oven never takes out, beside measured equilibria, and the isotherm read backwards.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import measured from '../../../fixtures/measured/tray-equilibria.json' with { type: 'json' };
import { referenceActivity, saturationPressurePa } from '../../../api/science/air.ts';
import { dryingTable, heldWater, lnActivityAtWater } from '../../../api/science/tray/isotherm.ts';
import { dryingFigures } from '../../../api/science/tray/properties.ts';
import { residualWaterFraction, restingWater } from '../../../api/science/tray/residual.ts';
import { after, sorbentOf, trayOf } from './trays.ts';

const classes = Object.keys(dryingFigures);
/** kg/mol, water. */
const molarMass = 0.018015;
/** Desiccant gel to 6 nm gel (an assumption of the drying model). */
const scale = 0.67;

describe('water that stays', () => {
  it('keeps to the measured equilibria of a gel at 60 to 140 °C within a quarter, from 1 mbar up', () => {
    const lines = measured.isotherms.map(({ temperatureK, points }) => {
      const errors = points
        .filter(([pascal]) => pascal! >= 100)
        .map(([pascal, mmolPerG]) => {
          const theirs = scale * mmolPerG! * molarMass;
          return residualWaterFraction('silica', temperatureK - 273.15, pascal!)! / theirs - 1;
        });
      const rms = Math.sqrt(errors.reduce((sum, error) => sum + error * error, 0) / errors.length);
      const bias = errors.reduce((sum, error) => sum + error, 0) / errors.length;
      // The drying model states 5 to 22 % rms.
      expect(rms).toBeLessThan(0.22);
      return `${temperatureK - 273} °C: ours beside ${errors.length} measured, rms ${(100 * rms).toFixed(0)} %, mean ${(100 * bias).toFixed(0)} %`;
    });
    console.log(`equilibria of silica, 10.1021/je400517c table 3 times ${scale}\n${lines.join('\n')}`);
  });

  it('is about half a percent of silica at 105 °C in room air, and 0.31 % at 120 °C (drying model)', () => {
    expect(residualWaterFraction('silica', 105, 1400)).toBeCloseTo(0.0048, 4);
    expect(residualWaterFraction('silica', 120, 1400)).toBeCloseTo(0.0031, 4);
  });

  it('falls with temperature and rises with the vapour in the air', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...classes),
        fc.double({ min: 40, max: 180, noNaN: true }),
        fc.double({ min: 1, max: 60, noNaN: true }),
        fc.double({ min: 50, max: 3000, noNaN: true }),
        (name, temperatureC, warmer, pascal) => {
          const water = residualWaterFraction(name, temperatureC, pascal)!;
          expect(residualWaterFraction(name, temperatureC + warmer, pascal)!).toBeLessThan(water);
          expect(residualWaterFraction(name, temperatureC, 1.1 * pascal)!).toBeGreaterThan(water);
        },
      ),
    );
  });

  it('is not guessed for a phase whose water is not known', () => {
    expect(residualWaterFraction('amino', 60, 1400)).toBeNull();
  });

  it('is what every tray comes to in the end, wherever it began', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...classes),
        fc.constantFrom('air', 'vacuum'),
        fc.double({ min: 60, max: 150, noNaN: true }),
        fc.double({ min: 0, max: 0.03, noNaN: true }),
        (sorbent, kind, temperatureC, start) => {
          const tray = trayOf({ sorbent, depthMm: 5, start, oven: { kind, temperatureC } });
          const { oven } = tray;
          const { mean, wettest, centreC, trayC } = after(tray, 4000);
          const activity = referenceActivity(oven.vapourPa / saturationPressurePa(temperatureC), temperatureC);
          const rest = heldWater(tray.sorbent.isotherm, activity);
          expect(Math.abs(mean - rest)).toBeLessThan(1e-6);
          expect(Math.abs(wettest - rest)).toBeLessThan(1e-6);
          expect(Math.abs(centreC - temperatureC)).toBeLessThan(1e-2);
          expect(Math.abs(trayC - temperatureC)).toBeLessThan(1e-2);
        },
      ),
      { numRuns: 30, endOnFailure: true },
    );
  });

  it('is that of saturated air where the chamber would be wetter still', () => {
    const { isotherm } = sorbentOf('silica');
    expect(restingWater(isotherm, 25, 5000)).toBe(heldWater(isotherm, 1));
  });
});

describe('the table of activity over water', () => {
  it('gives back the water of every activity', () => {
    for (const name of classes) {
      const { isotherm } = sorbentOf(name);
      const table = dryingTable(isotherm);
      for (let lnActivity = -12; lnActivity < 0; lnActivity += 0.037) {
        const water = heldWater(isotherm, Math.exp(lnActivity));
        if (water < 1e-7) continue;
        const back = heldWater(isotherm, Math.exp(lnActivityAtWater(table, water)));
        expect(Math.abs(back / water - 1), `${name} at ln a ${lnActivity}`).toBeLessThan(1e-7);
      }
    }
  });

  it('goes on falling below its least water', () => {
    const table = dryingTable(sorbentOf('silica').isotherm);
    // w goes as a^0.4 there.
    expect(lnActivityAtWater(table, 1e-9) - lnActivityAtWater(table, 1e-8)).toBeCloseTo(-Math.log(10) / 0.4, 3);
  });
});
