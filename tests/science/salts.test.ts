// Humidities over saturated salts (Greenspan).
import { describe, expect, it } from 'vitest';
import measured from '../../fixtures/measured/salts.json' with { type: 'json' };
import { saltHumidity, salts } from '../../api/science/salts.ts';

describe('air over a saturated salt', () => {
  it('has the humidity of Greenspan 1977', () => {
    for (const [name, humidities] of Object.entries(measured.greenspan.points)) {
      for (const [i, percent] of humidities.entries()) {
        expect(
          Math.abs(100 * (saltHumidity(name, 20 + 5 * i) ?? NaN) - percent),
          `${name} at ${20 + 5 * i} °C`,
        ).toBeLessThan(0.03);
      }
    }
  });

  it('lies within 2 % of the handbook', () => {
    for (const [name, [a, b]] of Object.entries(measured.handbook.points)) {
      const percent = a! * Math.exp(b! / 298.15);
      expect(Math.abs((100 * (saltHumidity(name, 25) ?? NaN)) / percent - 1), name).toBeLessThan(0.02);
    }
  });

  it('over sodium chloride is 74.9 % at 0 °C and 74.7 % at 50 °C (Wexler and Hasegawa 1954), within 1 %', () => {
    expect(Math.abs((saltHumidity('sodium chloride', 0) ?? NaN) - 0.749)).toBeLessThan(0.01);
    expect(Math.abs((saltHumidity('sodium chloride', 50) ?? NaN) - 0.747)).toBeLessThan(0.01);
  });

  it('is not known outside its range, nor over what is no salt of the table', () => {
    for (const { name, fromC, toC } of salts) {
      expect(saltHumidity(name, fromC - 1)).toBeNull();
      expect(saltHumidity(name, toC + 1)).toBeNull();
    }
    expect(saltHumidity('magnesium nitrate', 40)).toBeNull();
    expect(saltHumidity('table sugar', 25)).toBeNull();
  });
});
