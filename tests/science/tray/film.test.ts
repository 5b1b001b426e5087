// Drying that nothing but the still air above a thin layer holds back.
import { describe, expect, it } from 'vitest';
import { saturationPressurePa } from '../../../api/science/air.ts';
import type { Tray } from '../../../api/science/tray/load.ts';
import { freeM2PerS, gasConstant, molarMass } from '../../../api/science/tray/vapour.ts';
import { after, trayOf } from './trays.ts';

// A layer so thin, so well heated and under air so thick that nothing but the film counts, its isotherm a straight line:
// w = 0.1 φ at 25 °C. Then ρ L dw/dt = −(p − p_0)/r_f is an exponential.
const temperatureC = 25;
const pressurePa = 1e7;
const filmM = 0.05;
const depthM = 2e-4;
const perActivity = 0.1;
const usual = trayOf();
const layer: Tray = {
  ...usual,
  sorbent: {
    ...usual.sorbent,
    heatOfSorptionJPerKg: 0,
    isotherm: {
      filmCapacity: perActivity / 1e-5,
      filmC: 1,
      filmK: 1e-5,
      poreCapacity: 0,
      poreActivity: 0.8,
      poreWidth: 0.05,
      tailCapacity: 0,
      tailActivity: 0.05,
      tailExponent: 0.4,
    },
  },
  depthM,
  waterFraction: 0.05,
  temperatureC,
  trayHeatJPerM2K: 0,
  oven: {
    ...usual.oven,
    temperatureC,
    pressurePa,
    vapourPa: 500,
    exchange: { topWPerM2K: 1e5, emissivityTop: 0, filmM, bottomWPerM2K: 1e5, emissivityBottom: 0 },
  },
};

describe('a thin layer under a thick film', () => {
  it('loses its water as an exponential', () => {
    const kelvin = temperatureC + 273.15;
    const resistance = ((gasConstant * kelvin) / molarMass) * (filmM / freeM2PerS(kelvin, pressurePa));
    const saturated = saturationPressurePa(temperatureC);
    const timeS = (layer.sorbent.bulkDensityKgPerM3 * depthM * resistance * perActivity) / saturated;
    const rest = (perActivity * 500) / saturated;
    for (const times of [0.25, 0.5, 1, 2, 4]) {
      const { mean } = after(layer, (times * timeS) / 60);
      const left = (mean - rest) / (layer.waterFraction - rest);
      expect(Math.abs(left - Math.exp(-times))).toBeLessThan(0.004);
    }
  });
});
