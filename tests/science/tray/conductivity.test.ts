// Heat through a bed of powder and through the gap under a tray, in air and in vacuum.
import { describe, expect, it } from 'vitest';
import measured from '../../../fixtures/measured/tray-fine-grid.json' with { type: 'json' };
import { bedConductivity, freePathM } from '../../../api/science/tray/conductivity.ts';
import { conductivityOf } from '../../../api/science/tray/load.ts';
import { shelfContact } from '../../../api/science/tray/oven.ts';
import { trayOf } from './trays.ts';

describe('heat through a bed', () => {
  it('fades with the gas as the drying model’s table says', () => {
    const { sorbent, temperatureC, mbar, wPerMK } = measured.conductivity;
    for (const [i, pressureMbar] of mbar.entries()) {
      const tray = trayOf({ sorbent, oven: { kind: 'vacuum', temperatureC, pressureMbar } });
      // Printed to three places.
      expect(Math.abs(conductivityOf(tray) - wPerMK[i]!)).toBeLessThan(0.00051);
    }
  });

  it('is that of the grains alone in a perfect vacuum, and gains all of the gas at high pressure', () => {
    expect(bedConductivity(0.03, 0.09, 22e-6, 393, 1e-6)).toBeCloseTo(0.03, 6);
    expect(bedConductivity(0.03, 0.09, 22e-6, 393, 1e9)).toBeCloseTo(0.12, 6);
  });

  it('takes the one that was measured instead', () => {
    expect(conductivityOf({ ...trayOf(), conductivityWPerMK: 0.146 })).toBe(0.146);
  });

  it('counts on a free path of air of 67 nm at 20 °C and one atmosphere (handbook value 66 to 68 nm)', () => {
    expect(freePathM(293.15, 101_325) * 1e9).toBeGreaterThan(65);
    expect(freePathM(293.15, 101_325) * 1e9).toBeLessThan(68);
  });

  it('reaches the tray from a shelf less the harder the vacuum', () => {
    const { mbar, wPerM2K } = measured.contact;
    for (const [i, pressure] of mbar.entries()) {
      // Printed to whole numbers.
      expect(Math.abs(shelfContact(130, 100 * pressure) - wPerM2K[i]!)).toBeLessThan(0.6);
    }
  });
});
