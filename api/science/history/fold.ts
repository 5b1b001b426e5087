// What the estimator is given and what it gives back.
import type { RoomAir } from '../climate.ts';
import type { BedSpec } from './vessel.ts';
import type { Start, Action, Handover } from './action.ts';
import type { Target, Thresholds } from './band.ts';
import type { Factors, Teaching } from './factor.ts';
import type { Answer } from './answer.ts';

/** Everything the fold needs to go on from `atS`, after all that happened at that instant; about 1.2 kB. */
export interface Checkpoint {
  readonly atS: number;
  readonly bytes: Uint8Array;
}

export interface FoldInput {
  readonly spec: BedSpec;
  readonly start: Start;
  /** In order of time, then of recording. Those up to a given checkpoint's instant may be left out. */
  readonly actions: readonly Action[];
  /** By room, at least every room the container was in since the checkpoint. */
  readonly airs: ReadonlyMap<string, RoomAir>;
  readonly checkpoint: Checkpoint | null;
  readonly asOfS: number;
  readonly target: Target;
  readonly thresholds: Thresholds;
  readonly factors: Factors;
  /** Where anything was learned: ranges then come from it, not from the factors' own sigmas. */
  readonly taught?: Teaching | null;
}

export interface FoldOutput {
  readonly answer: Answer;
  /** Those worth keeping at `asOfS`, oldest first, of the instants passed in this run. */
  readonly checkpoints: readonly Checkpoint[];
  /** What left in this run, by the id of its event. */
  readonly handovers: readonly { readonly id: string; readonly dryKg: number; readonly handover: Handover }[];
  readonly waterGainedKg: number;
  readonly steps: number;
}
