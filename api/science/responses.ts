// How the water of every cell answers to what is not known well: forward sensitivities, carried with each step.
//
// Each row S = ∂w/∂(ln factor) obeys the linearised step; it costs one back substitution a stage with the factorisation
// the step already has. With J the Jacobian of a stage, S after the step is w' J⁻¹(…) exactly as the fluxes would give it.
import type { Bed } from './bed.ts';
import { bedCells } from './grid.ts';
import { cells, resolve, type Stage } from './stage.ts';

/** What drives the rows in this step. Written in place. */
export interface Sources {
  /** Part of the inflow that is the open mouth's. */
  openShare: number;
  /** Part of the top resistance that lies in the first half cell of the bed. */
  bedShare: number;
  /** By how much filled-in air widens the humidity bias. */
  biasWeight: number;
  step: number;
}

const omega = Math.SQRT2 / 4;
const d = 1 - Math.SQRT1_2;
const x = new Float64Array(bedCells);

/** Advances every row of the bed through the step just accepted. */
export function carryResponses(bed: Bed, start: Stage, middle: Stage, end: Stage, sources: Sources): void {
  const { count, mass, link, diffusivity, topLink } = cells;
  const { responses } = bed;
  const weight = sources.step * d;
  const mouthShare = 1 - sources.bedShare;
  for (let row = 0; row < bed.rows.length; row++) {
    const from = row * bedCells;
    let driven: number;
    let driven1: number;
    let driven2: number;
    if (row === bed.biasRow) {
      const link = topLink * sources.biasWeight;
      driven = link * start.saturated;
      driven1 = link * middle.saturated;
      driven2 = link * end.saturated;
    } else {
      const share =
        (row === bed.openRow ? sources.openShare : 0) +
        (row === bed.closedRow ? 1 - sources.openShare : 0) -
        (row === bed.bedRow ? 1 : 0);
      driven = share * mouthShare * start.inflow;
      driven1 = share * mouthShare * middle.inflow;
      driven2 = share * mouthShare * end.inflow;
    }
    const own = row === bed.bedRow ? 1 : 0;

    let here = (start.rise[0]! * responses[from]!) / start.slope[0]!;
    let above = driven - topLink * here;
    for (let i = 0; i < count; i++) {
      let below = 0;
      if (i < count - 1) {
        const next = (start.rise[i + 1]! * responses[from + i + 1]!) / start.slope[i + 1]!;
        below = diffusivity * link[i]! * (here - next);
        here = next;
      }
      x[i] = mass[i]! * responses[from + i]! + weight * (above - below + own * (start.flux[i]! + middle.flux[i]!));
      above = below;
    }
    x[0] = x[0]! + weight * driven1;
    resolve(middle, x, 0);
    for (let i = 0; i < count; i++) {
      const held = mass[i]! * responses[from + i]!;
      x[i] = held + (omega / d) * (mass[i]! * middle.slope[i]! * x[i]! - held) + weight * own * end.flux[i]!;
    }
    x[0] = x[0] + weight * driven2;
    resolve(end, x, 0);
    for (let i = 0; i < count; i++) responses[from + i] = end.slope[i]! * x[i]!;
  }
}
