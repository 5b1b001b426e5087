// A weighing corrects the estimate: the profile is scaled so that what was weighed has the water that was found.
import { bedMean, settleActivity, topMean, type Bed } from './bed.ts';
import { fill, type Condition } from './condition.ts';
import { clampedActivity, tableWater } from './isotherm.ts';

/** What was found: true water fraction (dry basis) of the top `depthM` and its sigma. */
export interface Finding {
  readonly depthM: number;
  readonly waterFraction: number;
  readonly sd: number;
}

/** After this only the weighing's own noise is in doubt; every other response starts again from 0. */
export function observe(condition: Condition, key: string, { depthM, waterFraction, sd }: Finding): void {
  const { bed } = condition;
  const wanted = waterFraction / bed.capacity;
  const cap = tableWater(bed.isotherm, clampedActivity);
  const expected = topMean(bed, bed.water, 0, depthM);
  const profile = Float64Array.from(bed.water);
  const condensing = wanted > cap || !(expected > 0);
  fill(condition, key, waterFraction, waterFraction > 0 ? sd / waterFraction : 0);
  if (!condensing) {
    bed.water.set(profile);
    scaleTo(bed, depthM, wanted, cap);
    settleActivity(bed);
    bed.responses.set(bed.water);
    condition.peak = bedMean(bed, bed.water);
  }
  condition.startKnown = true;
  condition.airKnown = true;
  condition.wetted = false;
}

// Cells that scaling would fill beyond the cap stay at it, and the rest is scaled further; each round settles at least one cell.
function scaleTo(bed: Bed, depthM: number, wanted: number, cap: number): void {
  for (let round = 0; round <= bed.grid.cells; round++) {
    const ratio = wanted / topMean(bed, bed.water, 0, depthM);
    if (Math.abs(ratio - 1) < 1e-14) return;
    for (let i = 0; i < bed.grid.cells; i++) bed.water[i] = Math.min(cap, bed.water[i]! * ratio);
  }
}
