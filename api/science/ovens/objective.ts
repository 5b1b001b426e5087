// What a plan is judged by. `lateness` compares weighted minutes late, then oven minutes, then loads, one after the other;
// the others are single figures, known from the literature on machine scheduling.

export const objectiveNames = [
  'lateness',
  'weighted-tardiness',
  'max-lateness',
  'makespan',
  'weighted-completion',
  'late-jobs',
  'weighted-sum',
] as const;

export type ObjectiveName = (typeof objectiveNames)[number];

/** What `weighted-sum` adds up; oven minutes there are those of the batches, without set-ups. */
export interface SumWeights {
  readonly lateJobs: number;
  readonly ovenMinutes: number;
  readonly setupMinutes: number;
  readonly setupCost: number;
}

export interface Objective {
  readonly name: ObjectiveName;
  /** Is the figure the largest over jobs, in place of their sum? */
  readonly isLargest: boolean;
  /** Do oven minutes decide between plans of the same figure, so that a later but shorter stay can be better? */
  readonly countsHours: boolean;
  /** What a job adds that ends then. */
  readonly ofJob: (end: number, due: number, weight: number) => number;
  /** A figure that falls on the way to a better one where the objective itself is flat. */
  readonly guide: (end: number, due: number, weight: number) => number;
  readonly perBatchMinute: number;
  readonly perSetupMinute: number;
  readonly perSetupCost: number;
}

const late = (end: number, due: number) => (end > due ? end - due : 0);
const nothing = () => 0;
const tardiness = (end: number, due: number, weight: number) => weight * late(end, due);

const plain = { isLargest: false, countsHours: false, perBatchMinute: 0, perSetupMinute: 0, perSetupCost: 0 };

/** The objective of a name; `weights` are those of `weighted-sum`. */
export function objectiveOf(name: ObjectiveName, weights: SumWeights): Objective {
  switch (name) {
    case 'lateness':
      return { ...plain, name, countsHours: true, ofJob: tardiness, guide: nothing };
    case 'weighted-tardiness':
      return { ...plain, name, ofJob: tardiness, guide: nothing };
    case 'max-lateness':
      return { ...plain, name, isLargest: true, ofJob: (end, due) => end - due, guide: tardiness };
    case 'makespan':
      return { ...plain, name, isLargest: true, ofJob: (end) => end, guide: (end) => end };
    case 'weighted-completion':
      return { ...plain, name, ofJob: (end, _due, weight) => weight * end, guide: nothing };
    case 'late-jobs':
      return { ...plain, name, ofJob: (end, due) => (end > due ? 1 : 0), guide: (end, due) => late(end, due) };
    case 'weighted-sum':
      return {
        ...plain,
        name,
        countsHours: true,
        ofJob: (end, due) => (end > due ? weights.lateJobs : 0),
        guide: (end, due) => late(end, due),
        perBatchMinute: weights.ovenMinutes,
        perSetupMinute: weights.setupMinutes,
        perSetupCost: weights.setupCost,
      };
  }
}
