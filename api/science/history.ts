// The words in which a container's history is told to the estimator, and its start, its bed and its air.
// Everything here is plain data; times are seconds since 1970 (UTC), quantities are SI.

export type { DayBlocks, TypicalDay } from './history/air.ts';
export type { Closure, Lid, Geometry, Habit, Scooping, BedSpec } from './history/vessel.ts';
export type { IsothermNumbers, CapacityDoubt, SorbentNumbers } from './history/sorbent.ts';
export type { Handover, Start, Action } from './history/action.ts';
export type { Factor, Factors, Held, Teaching } from './history/factor.ts';
export type { Target, Thresholds, State } from './history/band.ts';
export type { Answer } from './history/answer.ts';
export type { Checkpoint, FoldInput, FoldOutput } from './history/fold.ts';
