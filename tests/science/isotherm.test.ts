// Isotherms against published points.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import measured from '../../fixtures/measured/isotherms.json' with { type: 'json' };
import { referenceActivity } from '../../api/science/air.ts';
import {
  activityAtWater,
  isothermOf,
  leastActivity,
  mostActivity,
  tableSlope,
  tableWater,
  waterAtActivity,
  waterSlope,
} from '../../api/science/isotherm.ts';
import { sorbentClasses } from '../../api/science/properties.ts';
import { numbersOf } from './support/lab.ts';

const known = sorbentClasses.filter(({ isotherm }) => isotherm).map(({ name }) => name);

describe('water over humidity', () => {
  it('is what the table of defaults prints for each class', () => {
    for (const [name, percents] of Object.entries(measured.defaults.points)) {
      for (const [i, percent] of percents.entries()) {
        // Half of the last printed digit, and a little since the numbers themselves are printed to two or three.
        const allowed = percent > 40 ? 0.5 : 0.06;
        expect(
          Math.abs(100 * waterAtActivity(numbersOf(name).isotherm, (i + 1) / 10) - percent),
          `${name} ${i + 1}0 %`,
        ).toBeLessThan(allowed);
      }
    }
  });

  it('of alumina scales with area from the measured 350 m²/g (Li, Xiao and Webley 2009), within its band of 35 %', () => {
    const { humidity, water } = measured.alumina350;
    for (const [i, percent] of water.entries()) {
      const scaled = (percent / 100) * (155 / 350);
      expect(
        Math.abs(
          Math.log(waterAtActivity(numbersOf('alumina').isotherm, referenceActivity(humidity[i]!, 30)) / scaled),
        ),
      ).toBeLessThan(Math.log(1.35));
    }
  });

  it('of desiccant gel follows the measured points within 0.7 % of water', () => {
    const { humidity, water } = measured.desiccant20C;
    for (const [i, percent] of water.entries()) {
      expect(
        Math.abs(
          100 * waterAtActivity(numbersOf('desiccant gel').isotherm, referenceActivity(humidity[i]!, 20)) - percent,
        ),
      ).toBeLessThan(0.7);
    }
  });

  it('of 6 nm silica is bracketed by non-porous silica and 4 nm silica per area, within its band of 30 %', () => {
    for (const [i, humidity] of measured.nonporous.humidity.entries()) {
      const one = (measured.nonporous.water[i]! / 100) * (500 / 200);
      const other = measured.mesoporous4nm.water[i]! / 100;
      const water = waterAtActivity(numbersOf('silica').isotherm, humidity);
      expect(water).toBeGreaterThan(Math.min(one, other) / 1.3);
      expect(water).toBeLessThan(Math.max(one, other) * 1.3);
    }
  });

  it('comes from the table as from the equation', () => {
    for (const name of known) {
      const { isotherm: numbers } = numbersOf(name);
      const table = isothermOf(numbers);
      for (let a = 0.0003; a < 0.995; a += 0.00071) {
        expect(Math.abs(tableWater(table, a) - waterAtActivity(numbers, a))).toBeLessThan(2e-8);
        expect(Math.abs(tableSlope(table, a) / waterSlope(numbers, a) - 1)).toBeLessThan(1e-4);
        expect(tableSlope(table, a)).toBeGreaterThan(0);
      }
    }
  });

  it('read backwards is the activity it was read from', () => {
    fc.assert(
      fc.property(fc.constantFrom(...known), fc.double({ min: 1e-6, max: 0.994, noNaN: true }), (name, activity) => {
        const table = isothermOf(numbersOf(name).isotherm);
        expect(Math.abs(activityAtWater(table, tableWater(table, activity)) - activity)).toBeLessThan(1e-9);
      }),
    );
    const table = isothermOf(numbersOf('silica').isotherm);
    expect(activityAtWater(table, 0)).toBe(leastActivity);
    expect(activityAtWater(table, 5)).toBe(mostActivity);
  });
});
