// What the oven planner is given: ovens, jobs, what may not share an oven, and what is fixed already. Whole minutes throughout.

/** From, to; both ends belong to it. */
export type Span = readonly [from: number, to: number];

export interface Oven {
  readonly id: string;
  /** Shelf area, in the unit of the jobs' areas. */
  readonly area: number;
  /** The lowest and the highest temperature it can hold; absent: any. */
  readonly temperatureC?: Span;
  /** What it stands at when it becomes free; also what it falls to while it is out of order. */
  readonly startTemperatureC?: number;
  readonly heatMinutesPerC: number;
  readonly coolMinutesPerC: number;
  /** To unload a batch before the oven is set up for the next. */
  readonly doorMinutes: number;
  /** When someone is there to load and unload. */
  readonly open: readonly Span[];
  /** May it run while nobody is there? */
  readonly unattended: boolean;
  readonly freeAt: number;
  /** With a set-up table: the family it was last set up for. */
  readonly startFamily?: string;
  readonly outOfOrder: readonly Span[];
}

export interface Job {
  readonly id: string;
  readonly area: number;
  /** Least and most minutes in the oven at temperature. */
  readonly minutes: Span;
  /** The lowest and the highest temperature that is right for it; absent: any. */
  readonly temperatureC?: Span;
  readonly readyAt: number;
  /** Absent: it is never late. */
  readonly dueAt?: number;
  readonly weight: number;
  readonly family: string;
  /** The ovens it may go into; absent: any that it fits. */
  readonly ovens?: readonly string[];
}

/** A batch that runs, is done, or was pinned to its place. */
export interface FixedBatch {
  readonly oven: string;
  readonly jobs: readonly string[];
  readonly start: number;
  readonly end: number;
  readonly temperatureC?: number;
}

/** Set-ups by family in place of those by temperature; the row is the family before. */
export interface SetupTable {
  readonly families: readonly string[];
  readonly minutes: readonly (readonly number[])[];
  readonly cost?: readonly (readonly number[])[];
}

export interface OvenProblem {
  readonly ovens: readonly Oven[];
  readonly jobs: readonly Job[];
  /** Pairs of families that may not share a batch. */
  readonly incompatible: readonly (readonly [string, string])[];
  readonly fixed: readonly FixedBatch[];
  readonly setup?: SetupTable;
  /** May a batch hold jobs of more than one family? With a set-up table it may not: a mixture has no row there. */
  readonly familiesMix: boolean;
}
