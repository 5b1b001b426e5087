// How long a load is planned to stay in an oven: the tray model's figures, held against those of an independent fine grid.
import { describe, expect, it } from 'vitest';
import { ovenMinutes } from '../../api/ovens/oven-minutes.ts';
import { waterAfter, type InOven } from '../../api/ovens/tray.ts';

const vacuum: InOven = {
  sorbentClass: 'silica',
  isPlates: false,
  depthMm: 10,
  layerMm: null,
  waterFraction: 0.1,
  temperatureC: 130,
  oven: { kind: 'VACUUM', hasFan: false, pressureMbar: null, waterMbar: null, pumpM3PerH: null },
  isVacuum: true,
  trayAreaM2: 0.09,
  roomVapourPa: null,
};
const air: InOven = { ...vacuum, isVacuum: false, oven: { ...vacuum.oven, kind: 'AIR' }, temperatureC: 120 };
/** The model's minutes are planned with the 30 % by which they may be wrong. */
const slow = 1.3;

describe('minutes in the oven', () => {
  it('are those of the fine grid: its wettest spot at 1 % after 15.29, 77.74 and 55.58 min, and 30 % for doubt', () => {
    // Drying model, section 2: cases P3, P4 and P1.
    for (const [of, minutes] of [
      [vacuum, 15.29],
      [{ ...vacuum, depthMm: 30 }, 77.74],
      [air, 55.58],
    ] as const) {
      const { dry } = ovenMinutes(of, 0.01) ?? {};
      expect(Math.abs((dry ?? NaN) - slow * minutes)).toBeLessThan(0.02 * slow * minutes + 1);
    }
  });
  it('until it is hot: 10 mm under vacuum is at 128.7 °C after half an hour, and not at 125 °C after a quarter', () => {
    // Same, P3: 78.2 °C in the middle after 15 min, 128.68 after 30.
    const { hot } = ovenMinutes(vacuum, 0.01) ?? {};
    expect(hot).toBeGreaterThan(15);
    expect(hot).toBeLessThanOrEqual(30);
  });
  it('grow with depth, water, room vapour and a slower pump, and shrink with heat', () => {
    const dry = (more: Partial<InOven>) => ovenMinutes({ ...vacuum, depthMm: 20, ...more }, 0.01)?.dry ?? Infinity;
    const usual = dry({});
    expect(dry({ depthMm: 30 })).toBeGreaterThan(usual);
    expect(dry({ waterFraction: 0.2 })).toBeGreaterThan(usual);
    expect(dry({ temperatureC: 160 })).toBeLessThan(usual);
    const pump = (pumpM3PerH: number) => dry({ oven: { ...vacuum.oven, pumpM3PerH } });
    expect(pump(2)).toBeGreaterThan(pump(20));
    const inAir = (roomVapourPa: number) => ovenMinutes({ ...air, roomVapourPa }, 0.005)?.dry ?? Infinity;
    expect(inAir(2500)).toBeGreaterThan(inAir(700));
  });
  it('are none where the oven’s own air keeps more in it, and it says how much', () => {
    const { dry, floor } = ovenMinutes({ ...air, roomVapourPa: 1400 }, 0.002) ?? {};
    expect(dry).toBeNull();
    // With 6 nm silica and 120 °C room air the floor is about 0.31 %.
    expect(floor).toBeGreaterThan(0.0028);
    expect(floor).toBeLessThan(0.0034);
  });
  it('what is nearly the same is asked of the model once, so 500 loads of ten kinds are quick', () => {
    ovenMinutes({ ...vacuum, depthMm: 12 }, 0.01);
    const began = performance.now();
    for (let i = 0; i < 500; i++) ovenMinutes({ ...vacuum, depthMm: 11.6 + 0.0007 * i, trayAreaM2: i }, 0.01);
    expect(performance.now() - began).toBeLessThan(100);
  });
  it('a pump too slow for its trays leaves more in them', () => {
    const left = (pumpM3PerH: number) => waterAfter({ ...vacuum, oven: { ...vacuum.oven, pumpM3PerH } }, 15) ?? NaN;
    expect(left(1)).toBeGreaterThan(left(100));
  });
});
