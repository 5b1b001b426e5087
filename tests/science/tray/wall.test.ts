// A dry bed that warms, beside the series of a plane wall.
import { describe, expect, it } from 'vitest';
import { startDrying } from '../../../api/science/tray/drying.ts';
import { loadOf, type Tray } from '../../../api/science/tray/load.ts';
import { step, type Pace } from '../../../api/science/tray/stepper.ts';
import { after, sorbentOf, trayOf } from './trays.ts';

// A dry bed warmed from its top alone: no water, no vapour, a floor that neither takes nor gives heat.
const conductivityWPerMK = 0.12;
const depthM = 0.01;
const wall = (biot: number): Tray => {
  const tray = trayOf();
  return {
    ...tray,
    depthM,
    waterFraction: 0,
    temperatureC: 20,
    trayHeatJPerM2K: 0,
    conductivityWPerMK,
    oven: {
      ...tray.oven,
      vapourPa: 0,
      exchange: {
        topWPerM2K: (biot * conductivityWPerMK) / depthM,
        emissivityTop: 0,
        filmM: 0.006,
        bottomWPerM2K: 0,
        emissivityBottom: 0,
      },
    },
  };
};
const { bulkDensityKgPerM3, heatCapacityJPerKgK } = sorbentOf('silica');
const secondsOf = (fourier: number): number =>
  (fourier * depthM * depthM * bulkDensityKgPerM3 * heatCapacityJPerKgK) / conductivityWPerMK;

// Roots of ζ tan ζ = Bi and the series of the insulated face (Carslaw and Jaeger, Conduction of Heat in Solids, section 3.11).
function coldness(biot: number, fourier: number): number {
  let sum = 0;
  for (let n = 0; n < 40; n++) {
    let low = n * Math.PI;
    let high = low + Math.PI / 2 - 1e-12;
    for (let k = 0; k < 100; k++) {
      const middle = (low + high) / 2;
      if (middle * Math.tan(middle) > biot) high = middle;
      else low = middle;
    }
    sum += ((4 * Math.sin(low)) / (2 * low + Math.sin(2 * low))) * Math.exp(-low * low * fourier);
  }
  return sum;
}

describe('a dry bed', () => {
  it('warms as a plane wall with one face insulated', () => {
    const published = [
      [0.5, 0.77253],
      [1, 0.53386],
      [1.5, 0.36872],
    ] as const;
    for (const [fourier, left] of published) {
      const { trayC } = after(wall(1), secondsOf(fourier) / 60);
      expect(Math.abs((120 - trayC) / 100 - left)).toBeLessThan(1e-3);
      expect(coldness(1, fourier)).toBeCloseTo(left, 5);
    }
  });

  it('does so whatever the ratio of surface to inner resistance', () => {
    for (const biot of [0.2, 3, 10]) {
      for (const fourier of [0.3, 1, 2]) {
        const { trayC } = after(wall(biot), secondsOf(fourier) / 60);
        expect(Math.abs((120 - trayC) / 100 - coldness(biot, fourier)), `Bi ${biot} Fo ${fourier}`).toBeLessThan(2e-3);
      }
    }
  });

  it('converges with the square of the step', () => {
    const errors = [40, 80, 160, 320].map((steps) => {
      const drying = startDrying(loadOf(wall(1)));
      const endS = secondsOf(1);
      const pace: Pace = { water: 1e-5, temperatureK: 0.025, fixedStepS: endS / steps };
      while (drying.second < endS) step(drying, endS, pace);
      return drying.trayK;
    });
    const orders = [0, 1].map((i) => Math.log2((errors[i]! - errors[i + 1]!) / (errors[i + 1]! - errors[i + 2]!)));
    for (const order of orders) expect(Math.abs(order - 2)).toBeLessThan(0.3);
  });
});
