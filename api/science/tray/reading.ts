// What stands in the bed at an instant of the last step: profile, mean, wettest spot, centre, tray.
import { zeroCelsiusK } from '../air.ts';
import { columnOf, evaluate, type Column } from './column.ts';
import type { Drying } from './drying.ts';
import { restingWater } from './residual.ts';
import { gamma } from './stepper.ts';

/** Places from surface to floor: the surface itself, the middle of every cell, the floor itself. */
export interface Reading {
  second: number;
  readonly depthM: Float64Array;
  readonly water: Float64Array;
  readonly temperatureK: Float64Array;
  mean: number;
  wettest: number;
  wettestM: number;
  centreK: number;
  trayK: number;
  readonly column: Column;
}

/** An empty reading for a load. */
export function readingOf({ stack }: Drying): Reading {
  const { cells, thicknessM, load } = stack;
  const depthM = new Float64Array(cells + 2);
  let top = 0;
  for (let i = 0; i < cells; i++) {
    depthM[i + 1] = top + thicknessM[i]! / 2;
    top += thicknessM[i]!;
  }
  depthM[cells + 1] = load.depthM;
  return {
    second: 0,
    depthM,
    water: new Float64Array(cells + 2),
    temperatureK: new Float64Array(cells + 2),
    mean: NaN,
    wettest: NaN,
    wettestM: NaN,
    centreK: NaN,
    trayK: NaN,
    column: columnOf(cells),
  };
}

/**
 * Reads the load at a time within its last step, by the parabola through the step's start, middle stage and end. (Rates would
 * be of no use: what is stiff has them wherever it has not yet come to rest.)
 */
export function read(drying: Drying, second: number, into: Reading): Reading {
  const { stack, waterBefore, waterMiddle, heatBefore, heatMiddle } = drying;
  const { cells, mass, load } = stack;
  const { column, water, temperatureK } = into;
  const length = drying.second - drying.secondBefore;
  const s = length > 0 ? (second - drying.secondBefore) / length : 1;
  const before = ((gamma - s) * (1 - s)) / gamma;
  const middle = (s * (1 - s)) / (gamma * (1 - gamma));
  const after = (s * (s - gamma)) / (1 - gamma);
  let sum = 0;
  let whole = 0;
  for (let i = 0; i < cells; i++) {
    const w = Math.max(0, before * waterBefore[i]! + middle * waterMiddle[i]! + after * drying.water[i]!);
    column.water[i] = w;
    column.heat[i] = before * heatBefore[i]! + middle * heatMiddle[i]! + after * drying.heat[i]!;
    water[i + 1] = w;
    sum += mass[i]! * w;
    whole += mass[i]!;
  }
  column.trayK = before * drying.trayKBefore + middle * drying.trayKMiddle + after * drying.trayK;
  evaluate(stack, column, second);
  temperatureK.set(column.temperatureK, 1);
  into.second = second;
  into.mean = sum / whole;
  into.trayK = column.trayK;

  const { vapourPa, surface } = column;
  const isotherm = load.table.numbers;
  temperatureK[0] = surface.surfaceK;
  water[0] = restingWater(isotherm, surface.surfaceK - zeroCelsiusK, surface.surfacePa);
  // No vapour crosses the floor: its pressure is that of the parabola with a level end.
  const floorPa = vapourPa[cells - 1]! + (vapourPa[cells - 1]! - vapourPa[cells - 2]!) / 8;
  temperatureK[cells + 1] = column.trayK;
  water[cells + 1] = restingWater(isotherm, column.trayK - zeroCelsiusK, floorPa);
  const half = cells >> 1;
  into.centreK = (column.temperatureK[half - 1]! + column.temperatureK[half]!) / 2;
  findWettest(into);
  return into;
}

// The highest place, moved to the vertex of the parabola through it and its neighbours.
function findWettest(into: Reading): void {
  const { water, depthM } = into;
  let k = 0;
  for (let i = 1; i < water.length; i++) if (water[i]! > water[k]!) k = i;
  into.wettest = water[k]!;
  into.wettestM = depthM[k]!;
  if (k === 0 || k === water.length - 1) return;
  const above = depthM[k - 1]! - depthM[k]!;
  const below = depthM[k + 1]! - depthM[k]!;
  const slopeAbove = (water[k - 1]! - water[k]!) / above;
  const slopeBelow = (water[k + 1]! - water[k]!) / below;
  const bend = (slopeBelow - slopeAbove) / (below - above);
  if (!(bend < 0)) return;
  const slope = slopeAbove - bend * above;
  into.wettest -= (slope * slope) / (4 * bend);
  into.wettestM -= slope / (2 * bend);
}
