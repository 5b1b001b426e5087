// How sure the water of a container is: by what weighings taught, or by the priors where nothing was learned.
import { learnedSpread } from './calibration/spread.ts';
import type { Condition } from './condition.ts';
import type { FoldInput } from './history.ts';
import type { Spread } from './interval.ts';
import { spreadOf } from './uncertainty.ts';

/** Of the mean of the top `depthM`. */
export function spreadAt(input: FoldInput, condition: Condition, depthM: number, extraSdLn: number): Spread {
  const { taught, spec, factors } = input;
  if (taught) return learnedSpread({ input, ...taught }, condition, depthM, taught.held, extraSdLn);
  const doubts = { capacity: spec.sorbent.doubt, factors };
  return spreadOf(condition.bed, depthM, doubts, condition.startSdLn, extraSdLn);
}

/** As held against the water of an air: a sorbent that takes up more does so on both sides, so its capacity is no doubt. */
export function spreadFromAir(input: FoldInput, condition: Condition, depthM: number, extraSdLn: number): Spread {
  const { taught, spec, factors } = input;
  if (taught) return spreadAt(input, condition, depthM, extraSdLn);
  const doubts = { capacity: spec.sorbent.doubt, factors, capacityCancels: true };
  return spreadOf(condition.bed, depthM, doubts, condition.startSdLn, extraSdLn);
}
