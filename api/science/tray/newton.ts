// The linear system of one Newton pass: 2 × 2 blocks of water and heat, cells in a row, the tray folded into the last one.
import type { Column, Stack } from './column.ts';

/** Factors of the last pass and its answer. Written in place. */
export interface Factors {
  /** Four numbers a cell each: what is taken off by the cell above, the inverted diagonal, the link to the cell below. */
  readonly lower: Float64Array;
  readonly inverse: Float64Array;
  readonly upper: Float64Array;
  readonly waterChange: Float64Array;
  readonly heatChange: Float64Array;
  trayChange: number;
  /** Of the tray's own row. */
  trayInverse: number;
  trayPull: number;
}

export function factorsOf(cells: number): Factors {
  return {
    lower: new Float64Array(4 * cells),
    inverse: new Float64Array(4 * cells),
    upper: new Float64Array(4 * cells),
    waterChange: new Float64Array(cells),
    heatChange: new Float64Array(cells),
    trayChange: 0,
    trayInverse: 0,
    trayPull: 0,
  };
}

/**
 * Factorises m − β ∂F/∂(w, u) at a column, β in s. The tray's row, C_tr + β (slope + link), is eliminated beforehand; with no
 * heat capacity it is the algebraic balance, and β cancels.
 */
export function factorise(stack: Stack, at: Column, beta: number, into: Factors): void {
  const { cells, mass, lastLink, load } = stack;
  const { slopes, kPerWater, kPerHeat } = at;
  const { lower, inverse, upper } = into;
  into.trayInverse = 1 / (load.trayHeatJPerM2K + beta * (at.trayGainPerK + lastLink));
  into.trayPull = beta * lastLink;
  const floor = lastLink * (1 - into.trayPull * into.trayInverse);
  let i00 = 0;
  let i01 = 0;
  let i10 = 0;
  let i11 = 0;
  for (let i = 0; i < cells; i++) {
    const s = 8 * i;
    const b = 4 * i;
    const last = i === cells - 1;
    const n = s + 8;
    const m = mass[i]!;
    let d00 = m + beta * slopes[s + 2]!;
    let d01 = beta * slopes[s + 3]!;
    let d10 = beta * slopes[s + 6]!;
    let d11 = m + beta * slopes[s + 7]!;
    if (last) {
      d10 += beta * floor * kPerWater[i]!;
      d11 += beta * floor * kPerHeat[i]!;
    } else {
      d00 -= beta * slopes[n]!;
      d01 -= beta * slopes[n + 1]!;
      d10 -= beta * slopes[n + 4]!;
      d11 -= beta * slopes[n + 5]!;
    }
    if (i > 0) {
      const l00 = beta * slopes[s]!;
      const l01 = beta * slopes[s + 1]!;
      const l10 = beta * slopes[s + 4]!;
      const l11 = beta * slopes[s + 5]!;
      const m00 = l00 * i00 + l01 * i10;
      const m01 = l00 * i01 + l01 * i11;
      const m10 = l10 * i00 + l11 * i10;
      const m11 = l10 * i01 + l11 * i11;
      lower[b] = m00;
      lower[b + 1] = m01;
      lower[b + 2] = m10;
      lower[b + 3] = m11;
      const u00 = upper[b - 4]!;
      const u01 = upper[b - 3]!;
      const u10 = upper[b - 2]!;
      const u11 = upper[b - 1]!;
      d00 -= m00 * u00 + m01 * u10;
      d01 -= m00 * u01 + m01 * u11;
      d10 -= m10 * u00 + m11 * u10;
      d11 -= m10 * u01 + m11 * u11;
    }
    if (!last) {
      upper[b] = -beta * slopes[n + 2]!;
      upper[b + 1] = -beta * slopes[n + 3]!;
      upper[b + 2] = -beta * slopes[n + 6]!;
      upper[b + 3] = -beta * slopes[n + 7]!;
    }
    const determinant = 1 / (d00 * d11 - d01 * d10);
    i00 = d11 * determinant;
    i01 = -d01 * determinant;
    i10 = -d10 * determinant;
    i11 = d00 * determinant;
    inverse[b] = i00;
    inverse[b + 1] = i01;
    inverse[b + 2] = i10;
    inverse[b + 3] = i11;
  }
}

/**
 * Solves in place for a right-hand side that stands in `waterChange`, `heatChange` (kg/m², J/m²) and `trayChange` (J/m²);
 * leaves kg/kg, J/kg and K.
 */
export function resolve(stack: Stack, at: Column, factors: Factors): void {
  const { cells } = stack;
  const { lower, inverse, upper, waterChange, heatChange, trayInverse, trayPull } = factors;
  const end = cells - 1;
  heatChange[end] = heatChange[end]! + trayPull * trayInverse * factors.trayChange;
  for (let i = 1; i < cells; i++) {
    const b = 4 * i;
    const w = waterChange[i - 1]!;
    const u = heatChange[i - 1]!;
    waterChange[i] = waterChange[i]! - lower[b]! * w - lower[b + 1]! * u;
    heatChange[i] = heatChange[i]! - lower[b + 2]! * w - lower[b + 3]! * u;
  }
  let nextWater = 0;
  let nextHeat = 0;
  for (let i = end; i >= 0; i--) {
    const b = 4 * i;
    const w = waterChange[i]! - (i < end ? upper[b]! * nextWater + upper[b + 1]! * nextHeat : 0);
    const u = heatChange[i]! - (i < end ? upper[b + 2]! * nextWater + upper[b + 3]! * nextHeat : 0);
    nextWater = inverse[b]! * w + inverse[b + 1]! * u;
    nextHeat = inverse[b + 2]! * w + inverse[b + 3]! * u;
    waterChange[i] = nextWater;
    heatChange[i] = nextHeat;
  }
  const warmer = at.kPerWater[end]! * waterChange[end]! + at.kPerHeat[end]! * heatChange[end];
  factors.trayChange = trayInverse * (factors.trayChange + trayPull * warmer);
}

/** Moves the column's flows along their slopes by the answer of a pass, so that they belong to the solution of that pass. */
export function follow(stack: Stack, at: Column, factors: Factors): void {
  const { cells, lastLink } = stack;
  const { slopes, vapour, energy, kPerWater, kPerHeat } = at;
  const { waterChange, heatChange, trayChange } = factors;
  let aboveWater = 0;
  let aboveHeat = 0;
  for (let i = 0; i < cells; i++) {
    const s = 8 * i;
    const w = waterChange[i]!;
    const u = heatChange[i]!;
    vapour[i] =
      vapour[i]! + slopes[s]! * aboveWater + slopes[s + 1]! * aboveHeat + slopes[s + 2]! * w + slopes[s + 3]! * u;
    energy[i] =
      energy[i]! + slopes[s + 4]! * aboveWater + slopes[s + 5]! * aboveHeat + slopes[s + 6]! * w + slopes[s + 7]! * u;
    aboveWater = w;
    aboveHeat = u;
  }
  const end = cells - 1;
  energy[cells] = energy[cells]! + lastLink * (trayChange - kPerWater[end]! * aboveWater - kPerHeat[end]! * aboveHeat);
  at.trayGain -= at.trayGainPerK * trayChange;
}
