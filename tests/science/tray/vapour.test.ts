// Vapour between grains from open air to steam, and the slopes that the solver relies on.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { diffusivityM2PerS } from '../../../api/science/air.ts';
import { columnOf, evaluate, stackOf, type Column, type Stack } from '../../../api/science/tray/column.ts';
import { trayGrid } from '../../../api/science/tray/grid.ts';
import { loadOf } from '../../../api/science/tray/load.ts';
import {
  conduct,
  freeM2PerS,
  gasConstant,
  molarMass,
  vapourPath,
  type Conductance,
} from '../../../api/science/tray/vapour.ts';
import { trayOf } from './trays.ts';

const silica = { sizeM: 50e-6, voidFraction: 0.4 };
const at = (pressurePa: number, temperatureK: number, vapourPa: number, grains = silica): Conductance => {
  const place = { value: NaN, perK: NaN, perPa: NaN };
  conduct(vapourPath(grains, pressurePa), temperatureK, vapourPa, place);
  return place;
};
// D_t from the conductance D_t M/(R T).
const diffusivity = (pressurePa: number, temperatureK: number, vapourPa: number, grains = silica): number =>
  (at(pressurePa, temperatureK, vapourPa, grains).value * gasConstant * temperatureK) / molarMass;

describe('vapour in a bed', () => {
  it('moves in open air as Massman says', () => {
    for (const celsius of [0, 25, 60, 100]) {
      expect(freeM2PerS(celsius + 273.15, 101_325)).toBeCloseTo(diffusivityM2PerS(celsius), 12);
    }
  });

  it('diffuses through coarse grains in air by the Stefan factor P/(P − p)', () => {
    const gravel = { sizeM: 0.01, voidFraction: 0.4 };
    for (const vapour of [100, 5000, 20_000, 60_000]) {
      const stefan = (0.4 ** 1.5 * freeM2PerS(350, 101_325) * 101_325) / (101_325 - vapour);
      expect(diffusivity(101_325, 350, vapour, gravel) / stefan).toBeCloseTo(1, 2);
    }
  });

  it('streams as steam alone where its pressure passes that of the chamber, joined without a step', () => {
    const below = diffusivity(2000, 330, 2000 * (1 - 1e-9));
    const above = diffusivity(2000, 330, 2000 * (1 + 1e-9));
    expect(below / above).toBeCloseTo(1, 7);
    // Knudsen flow in 22 µm voids and D'Arcy's flow, worked out by hand from the same sources.
    const knudsen = 0.4 ** 1.5 * (22.222e-6 / 3) * Math.sqrt((8 * 8.31446 * 330) / (Math.PI * 0.018015268));
    const darcy = (2.4691e-12 / 1.3e-5) * 4000;
    expect(diffusivity(2000, 330, 4000) / (knudsen + darcy)).toBeCloseTo(1, 4);
  });

  it('has the slopes that differences show', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 100, max: 101_325, noNaN: true }),
        fc.double({ min: 280, max: 450, noNaN: true }),
        fc.double({ min: 0.01, max: 3, noNaN: true }),
        (pressure, kelvin, ratio) => {
          const vapour = ratio * pressure;
          fc.pre(Math.abs(ratio - 1) > 1e-3);
          const { value, perK, perPa } = at(pressure, kelvin, vapour);
          const warmer = (at(pressure, kelvin + 1e-3, vapour).value - at(pressure, kelvin - 1e-3, vapour).value) / 2e-3;
          const step = 1e-5 * vapour;
          const fuller =
            (at(pressure, kelvin, vapour + step).value - at(pressure, kelvin, vapour - step).value) / (2 * step);
          expect(Math.abs(perK - warmer) * kelvin).toBeLessThan(1e-4 * value);
          expect(Math.abs(perPa - fuller) * vapour).toBeLessThan(1e-4 * value);
        },
      ),
    );
  });
});

describe('a column of cells', () => {
  // A few cells in some drying state, and every flow's difference when one cell is nudged.
  const stateOf = (
    kind: string,
    waters: readonly number[],
    rises: readonly number[],
  ): { stack: Stack; column: Column } => {
    const load = loadOf(trayOf({ depthMm: 10, oven: { kind, temperatureC: 130 } }));
    const stack = stackOf(load, trayGrid(load.depthM, waters.length));
    const column = columnOf(waters.length);
    column.trayK = 360;
    for (const [i, water] of waters.entries()) {
      column.water[i] = water;
      column.heat[i] = (load.heatCapacityJPerKgK + water * 4180) * rises[i]! - water * load.heatOfSorptionJPerKg;
    }
    evaluate(stack, column, 0);
    return { stack, column };
  };

  it('knows how every flow answers to water and heat of its neighbours', () => {
    const cell = fc.record({
      water: fc.double({ min: 0.003, max: 0.15, noNaN: true }),
      rise: fc.double({ min: -50, max: 40, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.constantFrom('air', 'vacuum'), fc.array(cell, { minLength: 3, maxLength: 3 }), (kind, cells) => {
        const waters = cells.map(({ water }) => water);
        const rises = cells.map(({ rise }) => rise);
        const { stack, column } = stateOf(kind, waters, rises);
        const { slopes } = column;
        const flows = (): number[] => [...column.vapour.subarray(0, 3), ...column.energy.subarray(0, 3)];
        for (let i = 0; i < 3; i++) {
          for (const [of, size] of [
            ['water', 1e-7],
            ['heat', 0.3],
          ] as const) {
            const kept = column[of][i]!;
            column[of][i] = kept + size;
            evaluate(stack, column, 0);
            const above = flows();
            column[of][i] = kept - size;
            evaluate(stack, column, 0);
            const below = flows();
            column[of][i] = kept;
            const offset = of === 'water' ? 0 : 1;
            for (const face of [i, i + 1]) {
              if (face > 2) continue;
              const side = face === i ? 2 : 0;
              for (const [quantity, base] of [
                [0, 0],
                [4, 3],
              ] as const) {
                const measured = (above[base + face]! - below[base + face]!) / (2 * size);
                const told = slopes[8 * face + quantity + side + offset]!;
                const scale = Math.abs(measured) + Math.abs(told) + ((quantity === 0 ? 1e-9 : 1e-3) / size) * 1e-3;
                expect(Math.abs(measured - told)).toBeLessThan(2e-3 * scale);
              }
            }
            evaluate(stack, column, 0);
            slopes.set(column.slopes);
          }
        }
      }),
      { numRuns: 60 },
    );
  });

  it('gives its surface as much vapour and heat as the chamber takes and gives', () => {
    const { stack, column } = stateOf('vacuum', [0.02, 0.05, 0.08], [20, 0, -20]);
    const { surface } = column;
    const { exchange } = stack.load.oven;
    const radiation = 0.6 * 5.670374419e-8 * (column.ovenK ** 4 - surface.surfaceK ** 4);
    expect(surface.heat).toBeCloseTo(exchange.topWPerM2K * (column.ovenK - surface.surfaceK) + radiation, 4);
    const place = { value: NaN, perK: NaN, perPa: NaN };
    const middleK = (surface.surfaceK + column.temperatureK[0]!) / 2;
    conduct(stack.load.path, middleK, (surface.surfacePa + column.vapourPa[0]!) / 2, place);
    const inside = (place.value * (column.vapourPa[0]! - surface.surfacePa)) / stack.firstHalfM;
    expect(inside / surface.vapour).toBeCloseTo(1, 6);
  });
});
