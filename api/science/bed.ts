// The sorbent itself: cells, their water and activity, and how each cell's water answers to what is not known well.
import { bedCells, bedGrid, plateGrid, type Grid } from './grid.ts';
import type { SorbentNumbers } from './history.ts';
import { activityAtWater, isothermOf, type Isotherm } from './isotherm.ts';

/** Changed in place by the stepper. Water is per unit of capacity: the true content is `capacity` times it. */
export interface Bed {
  grid: Grid;
  readonly isotherm: Isotherm;
  readonly capacity: number;
  /** Dry bulk density times the capacity's factor. */
  readonly densityKgPerM3: number;
  /** ε^1.5 (Bruggeman 1935) times the factor of bed diffusion. */
  readonly tortuosity: number;
  readonly pressurePa: number;
  /** Ratio of the doubt about filled-in air to that about measured air. */
  readonly filledWidening: number;
  water: Float64Array;
  activity: Float64Array;
  /** Names of the rows of `responses`, one for each factor; see `uncertainty.ts`. */
  rows: string[];
  responses: Float64Array;
  bedRow: number;
  biasRow: number;
  openRow: number;
  closedRow: number;
  /** The step the control would take next, s. */
  stepS: number;
  /** How long the bed remembers, s. */
  memoryS: number;
  /** Water that came in through the top since the beginning of the stretch, kg/m² per unit of capacity. */
  inflowKgPerM2: number;
  steps: number;
}

export function emptyBed(
  sorbent: SorbentNumbers,
  grid: Grid,
  capacity: number,
  bedFactor: number,
  pressurePa: number,
  filledWidening: number,
): Bed {
  return {
    grid,
    isotherm: isothermOf(sorbent.isotherm),
    capacity,
    densityKgPerM3: sorbent.bulkDensityKgPerM3 * capacity,
    tortuosity: Math.pow(sorbent.voidFraction, 1.5) * bedFactor,
    pressurePa,
    filledWidening,
    water: new Float64Array(bedCells),
    activity: new Float64Array(bedCells),
    rows: [],
    responses: new Float64Array(0),
    bedRow: -1,
    biasRow: -1,
    openRow: -1,
    closedRow: -1,
    stepS: 300,
    memoryS: Infinity,
    inflowKgPerM2: 0,
    steps: 0,
  };
}

/** The row of a factor, made (at zero) when the bed has none of that name. */
export function rowOf(bed: Bed, factor: string): number {
  const known = bed.rows.indexOf(factor);
  if (known >= 0) return known;
  const responses = new Float64Array((bed.rows.length + 1) * bedCells);
  responses.set(bed.responses.subarray(0, bed.rows.length * bedCells));
  bed.responses = responses;
  return bed.rows.push(factor) - 1;
}

/** Forgets every row. */
export function clearRows(bed: Bed): void {
  bed.rows = [];
  bed.responses = new Float64Array(0);
  bed.bedRow = bed.biasRow = bed.openRow = bed.closedRow = -1;
}

/** Mean over the bed of anything that stands by cell, from an offset. */
export function bedMean(bed: Bed, values: Float64Array, from = 0): number {
  return topMean(bed, values, from, bed.grid.depthM);
}

/** Mean over the top so many metres; the cell that is cut counts by its part. */
export function topMean({ grid }: Bed, values: Float64Array, from: number, depthM: number): number {
  const { cells, thicknessM } = grid;
  let sum = 0;
  let left = Math.min(depthM, grid.depthM);
  const whole = left;
  for (let i = 0; i < cells && left > 0; i++) {
    const part = i === cells - 1 ? left : Math.min(left, thicknessM[i]!);
    sum += part * values[from + i]!;
    left -= part;
  }
  return sum / whole;
}

/** Levels the profile: water and every row become their means. */
export function level(bed: Bed): void {
  const { cells } = bed.grid;
  bed.water.fill(bedMean(bed, bed.water), 0, cells);
  for (let row = 0; row < bed.rows.length; row++) {
    const from = row * bedCells;
    bed.responses.fill(bedMean(bed, bed.responses, from), from, from + cells);
  }
  settleActivity(bed);
}

/** Activity from the water, after anything but a step has changed it. */
export function settleActivity(bed: Bed): void {
  for (let i = 0; i < bed.grid.cells; i++) {
    bed.activity[i] =
      i > 0 && bed.water[i] === bed.water[i - 1] ? bed.activity[i - 1]! : activityAtWater(bed.isotherm, bed.water[i]!);
  }
}

/** Takes off the top until so much depth is left, and spreads that over a grid of its own; water and rows are kept. */
export function cutTop(bed: Bed, leftM: number): void {
  remap(bed, bed.grid, bedGrid(leftM), bed.grid.depthM - leftM);
}

/** The same profile stretched or shrunk to another depth: a fair sample left, or there is more than the book said. */
export function resize(bed: Bed, depthM: number): void {
  const old = bed.grid;
  if (old.cells !== bedCells) {
    bed.grid = plateGrid(depthM);
    return;
  }
  const stretched = {
    ...old,
    depthM,
    thicknessM: old.thicknessM.map((thickness) => (thickness * depthM) / old.depthM),
  };
  remap(bed, stretched, bedGrid(depthM), 0);
}

function remap(bed: Bed, old: Grid, grid: Grid, cutM: number): void {
  bed.water = spread(bed.water, 0, old, grid, cutM);
  const responses = new Float64Array(bed.responses.length);
  for (let row = 0; row < bed.rows.length; row++) {
    responses.set(spread(bed.responses, row * bedCells, old, grid, cutM), row * bedCells);
  }
  bed.responses = responses;
  bed.grid = grid;
  settleActivity(bed);
}

function spread(values: Float64Array, from: number, old: Grid, grid: Grid, cutM: number): Float64Array {
  const out = new Float64Array(bedCells);
  let i = 0;
  let oldEnd = old.thicknessM[0]!;
  let top = cutM;
  for (let j = 0; j < grid.cells; j++) {
    const end = j === grid.cells - 1 ? old.depthM : top + grid.thicknessM[j]!;
    let sum = 0;
    for (let x = top; x < end;) {
      while (i < old.cells - 1 && oldEnd <= x) oldEnd += old.thicknessM[++i]!;
      const next = i === old.cells - 1 ? end : Math.min(end, oldEnd);
      sum += (next - x) * values[from + i]!;
      x = next;
    }
    out[j] = sum / (end - top);
    top = end;
  }
  return out;
}
