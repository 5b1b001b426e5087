// A load while it dries: what is kept from step to step, and what crossed its top and its floor.
import { columnOf, evaluate, heatOf, stackOf, type Column, type Stack } from './column.ts';
import { trayGrid } from './grid.ts';
import type { Load } from './load.ts';
import { factorsOf, type Factors } from './newton.ts';

/** Net gain of every cell and of the tray at one instant, with what crosses the top and what comes in. */
export interface Flows {
  readonly water: Float64Array;
  readonly heat: Float64Array;
  tray: number;
  out: number;
  in: number;
}

const flowsOf = (cells: number): Flows => ({
  water: new Float64Array(cells),
  heat: new Float64Array(cells),
  tray: 0,
  out: 0,
  in: 0,
});

/** Changed in place by the stepper. */
export interface Drying {
  readonly stack: Stack;
  readonly at: Column;
  readonly factors: Factors;
  /** Right-hand sides of a stage. */
  readonly known: Flows;
  /** Flows at the start, the middle and the end of the last step. */
  first: Flows;
  middle: Flows;
  last: Flows;
  readonly water: Float64Array;
  readonly heat: Float64Array;
  trayK: number;
  second: number;
  /** The same before the last step, and at its middle stage. */
  readonly waterBefore: Float64Array;
  readonly heatBefore: Float64Array;
  trayKBefore: number;
  readonly waterMiddle: Float64Array;
  readonly heatMiddle: Float64Array;
  trayKMiddle: number;
  secondBefore: number;
  /** The step the control would take next, s. */
  stepS: number;
  /** Since the start: water out, kg/m²; heat in through top and tray less what vapour carried off, J/m². */
  waterOut: number;
  heatIn: number;
  steps: number;
}

const firstStepS = 0.05;

/** A load at its start. */
export function startDrying(load: Load, thicknessM = trayGrid(load.depthM)): Drying {
  const stack = stackOf(load, thicknessM);
  const { cells } = stack;
  const water = new Float64Array(cells).fill(load.startWater);
  const heat = new Float64Array(cells).fill(heatOf(load, load.startWater, load.startK));
  const at = columnOf(cells);
  at.water.set(water);
  at.heat.set(heat);
  at.trayK = load.startK;
  evaluate(stack, at, 0);
  if (load.trayHeatJPerM2K === 0) settleTray(stack, at);
  const last = flowsOf(cells);
  takeFlows(stack, at, last);
  return {
    stack,
    at,
    factors: factorsOf(cells),
    known: flowsOf(cells),
    first: flowsOf(cells),
    middle: flowsOf(cells),
    last,
    water,
    heat,
    trayK: at.trayK,
    second: 0,
    waterBefore: water.slice(),
    heatBefore: heat.slice(),
    trayKBefore: at.trayK,
    waterMiddle: water.slice(),
    heatMiddle: heat.slice(),
    trayKMiddle: at.trayK,
    secondBefore: 0,
    stepS: firstStepS,
    waterOut: 0,
    heatIn: 0,
    steps: 0,
  };
}

// A tray without heat capacity stands where it passes on what it gains.
function settleTray(stack: Stack, at: Column): void {
  for (let pass = 0; pass < 30; pass++) {
    at.trayK += (at.trayGain - at.energy[stack.cells]!) / (at.trayGainPerK + stack.lastLink);
    evaluate(stack, at, 0);
  }
}

/** Net gains from the column's flows through its faces. */
export function takeFlows({ cells, load }: Stack, { vapour, energy, trayGain }: Column, into: Flows): void {
  const { water, heat } = into;
  for (let i = 0; i < cells; i++) {
    water[i] = (i + 1 < cells ? vapour[i + 1]! : 0) - vapour[i]!;
    heat[i] = energy[i + 1]! - energy[i]!;
  }
  const kept = load.trayHeatJPerM2K > 0;
  into.tray = kept ? trayGain - energy[cells]! : 0;
  into.out = vapour[0]!;
  into.in = (kept ? trayGain : energy[cells]!) - energy[0]!;
}

/** What bed and tray hold beyond their start less what came in, as a share of start water and of heat; 0 but for rounding. */
export function unbalanced({ stack, water, heat, trayK, waterOut, heatIn }: Drying): { water: number; energy: number } {
  const { load, mass, cells } = stack;
  const startHeat = heatOf(load, load.startWater, load.startK);
  const warmed = load.trayHeatJPerM2K * (trayK - load.startK);
  let waterSum = waterOut;
  let heatSum = warmed - heatIn;
  let moved = Math.abs(waterOut);
  let stirred = Math.abs(warmed) + Math.abs(heatIn);
  for (let i = 0; i < cells; i++) {
    waterSum += mass[i]! * (water[i]! - load.startWater);
    heatSum += mass[i]! * (heat[i]! - startHeat);
    moved += mass[i]! * load.startWater;
    stirred += mass[i]! * Math.abs(heat[i]! - startHeat);
  }
  return { water: waterSum / (moved + 1e-300), energy: heatSum / (stirred + 1e-300) };
}
