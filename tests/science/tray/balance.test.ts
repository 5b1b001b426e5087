// What a tray loses and gains, added up: water and heat are neither made nor lost.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { forecast } from '../../../api/science/tray/forecast.ts';
import { startDrying } from '../../../api/science/tray/drying.ts';
import { loadOf } from '../../../api/science/tray/load.ts';
import { read, readingOf } from '../../../api/science/tray/reading.ts';
import { step } from '../../../api/science/tray/stepper.ts';
import { trayOf } from './trays.ts';

const ask = { targets: [0.01], mostS: 86_400, profileAtS: 3600 };

describe('a tray in an oven', () => {
  it('loses exactly the water that leaves its top, and holds exactly the heat it was given', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('silica', 'alumina', 'c18', 'magnesium silicate', 'cellulose'),
        fc.constantFrom('air', 'vacuum'),
        fc.double({ min: 1, max: 60, noNaN: true }),
        fc.double({ min: 50, max: 160, noNaN: true }),
        fc.double({ min: 0.001, max: 0.03, noNaN: true }),
        fc.constantFrom(0, 2000, 4200),
        fc.constantFrom(0, 15),
        (sorbent, kind, depthMm, temperatureC, start, trayHeatJPerM2K, warmUpMinutes) => {
          const tray = trayOf({ sorbent, depthMm, start, oven: { kind, temperatureC, warmUpMinutes } });
          const { balance } = forecast(loadOf({ ...tray, trayHeatJPerM2K }), { ...ask, atS: [600, 7200] });
          expect(Math.abs(balance.water)).toBeLessThan(1e-10);
          expect(Math.abs(balance.energy)).toBeLessThan(1e-6);
        },
      ),
      { numRuns: 60, endOnFailure: true },
    );
  });

  it('gains what flows show when they are added up second by second, heat counted by hand from its temperatures', () => {
    for (const kind of ['air', 'vacuum']) {
      const tray = trayOf({ oven: { kind, temperatureC: 120 } });
      const load = loadOf(tray);
      const drying = startDrying(load);
      const reading = readingOf(drying);
      const pace = { water: 1e-5, temperatureK: 0.025, fixedStepS: 0.5 };
      const flows = (): [number, number] => {
        const { surface, trayGain } = read(drying, drying.second, reading).column;
        return [surface.vapour, surface.heat + trayGain - surface.vapour * 1900 * (surface.surfaceK - 348.15)];
      };
      // The first second is a jump of the oven's temperature; from there on everything is smooth.
      while (drying.second < 1) step(drying, 1, pace);
      const stored = (): [number, number] => {
        read(drying, drying.second, reading);
        const cells = drying.stack.cells;
        let [water, heat] = [0, 2000 * reading.trayK];
        for (let i = 1; i <= cells; i++) {
          const [w, kelvin] = [reading.water[i]!, reading.temperatureK[i]!];
          water += (5 * w) / cells;
          heat += (5 * ((921 + 4180 * w) * (kelvin - 348.15) - 2.75e6 * w)) / cells;
        }
        return [water, heat];
      };
      const [water, heat] = stored();
      let [lost, gained] = [0, 0];
      for (let [out, into] = flows(); drying.second < 900;) {
        step(drying, 900, pace);
        const [outNow, intoNow] = flows();
        lost += 0.25 * (out + outNow);
        gained += 0.25 * (into + intoNow);
        [out, into] = [outNow, intoNow];
      }
      const [waterLeft, heatNow] = stored();
      expect(lost / (water - waterLeft)).toBeCloseTo(1, 3);
      expect(gained / (heatNow - heat)).toBeCloseTo(1, 3);
    }
  });

  it('says so when its load is so cold that the chamber’s vapour condenses on it', () => {
    const wet = trayOf({ sorbent: 'cellulose', start: 0.02, oven: { kind: 'air', temperatureC: 56, waterMbar: 570 } });
    expect(forecast(loadOf(wet), { ...ask, atS: [6000] }).condensed).toBe(true);
    expect(forecast(loadOf(trayOf()), { ...ask, atS: [6000] }).condensed).toBe(false);
  });

  it('may not begin wetter than saturated air would make it', () => {
    expect(() => loadOf(trayOf({ start: 0.9 }))).toThrow(/^invalid waterFraction: 0.9, expected 0 to 0.77/);
  });

  it('answers the same for one time whatever else is asked', () => {
    const load = loadOf(trayOf());
    const alone = forecast(load, { atS: [1800], targets: [], mostS: 0, profileAtS: null }).moments[0]!;
    const among = forecast(load, { ...ask, atS: [60, 600, 1800, 3600] }).moments[2]!;
    expect(Math.abs(alone.mean - among.mean)).toBeLessThan(1e-5);
  });

  it('is dry enough from the start where it is', () => {
    const { crossings } = forecast(loadOf(trayOf({ start: 0.005 })), { ...ask, atS: [] });
    expect(crossings[0]).toEqual({ target: 0.01, meanS: 0, wettestS: 0 });
  });

  it('never reaches what the oven’s air holds back', () => {
    const { crossings } = forecast(loadOf(trayOf()), { atS: [], targets: [0.002], mostS: 86_400, profileAtS: null });
    expect(crossings[0]).toEqual({ target: 0.002, meanS: null, wettestS: null });
  });
});
