// What the planner answers: the batches, what they come to, what no plan can beat, and how far that is apart, in words too.
import { fixedFigure } from './alone.ts';
import type { Kept } from './kept.ts';
import { type Model, never } from './model.ts';
import type { Objective } from './objective.ts';
import { reasonOf } from './reasons.ts';
import { type ScheduledBatch, scheduleOf } from './schedule.ts';
import type { Best } from './search/anneal.ts';
import { gapWords } from './words.ts';

export interface AnswerBatch extends ScheduledBatch {
  readonly reason: string;
}

export interface OvenAnswer {
  readonly batches: readonly AnswerBatch[];
  readonly objective: {
    readonly weightedLatenessHours: number;
    readonly ovenHours: number;
    readonly loads: number;
    readonly value: number;
  };
  readonly lowerBound: {
    readonly weightedLatenessHours: number;
    readonly ovenHours: number | null;
    readonly value: number;
  };
  readonly gap: {
    /** What any plan could save at most per unit of weight. */
    readonly minutes: number;
    readonly relative: number;
    /** The share of the oven hours that any plan on time could save at most. */
    readonly ovenHours: number | null;
  };
  readonly provenOptimal: boolean;
  readonly stopped: 'proof' | 'budget' | 'time';
  readonly words: string;
}

export interface Proof {
  /** No plan of the free jobs has a smaller figure. */
  readonly figure: number;
  /** No plan of that figure needs fewer oven minutes; null: not known. */
  readonly hours: number | null;
  /** Nothing is better, loads included. */
  readonly isWhole: boolean;
}

const grain = 1e-6;

/** A bound on whole minutes may be rounded up to one. */
export const wholeUp = (model: Model, bound: number): number =>
  model.weight.every(Number.isInteger) ? Math.ceil(bound - grain) : bound;

function latenessOf(model: Model, batches: readonly ScheduledBatch[]): number {
  const end = new Map(batches.flatMap((batch) => batch.jobs.map((job) => [job, batch.end] as const)));
  return model.problem.jobs.reduce(
    (sum, { id, dueAt, weight }) => sum + weight * Math.max(0, (end.get(id) ?? 0) - (dueAt ?? never)),
    0,
  );
}

export function answerOf(
  model: Model,
  objective: Objective,
  best: Best,
  proof: Proof,
  isStopped: boolean,
  kept: Kept | null,
): OvenAnswer {
  const batches = scheduleOf(model, best.sequences, kept);
  const fixed = fixedFigure(model, objective);
  const joined = (figure: number) => (objective.isLargest ? Math.max(figure, fixed) : figure + fixed);
  const isTardiness = objective.name === 'lateness' || objective.name === 'weighted-tardiness';
  const lateness = latenessOf(model, batches);
  const value = joined(best.figure);
  const bound = Math.min(value, joined(proof.figure));
  const hours = batches.reduce((sum, { start, end, setupMinutes }) => sum + end - start + setupMinutes, 0);
  const weight = model.problem.jobs.reduce((sum, job) => sum + job.weight, 0);
  const open = value - bound;
  const hoursBound = proof.hours === null ? null : Math.min(hours, proof.hours);
  const minutes = isTardiness || objective.name === 'weighted-completion' ? open / Math.max(weight, 1e-9) : open;
  const gap = {
    minutes: open <= grain ? 0 : minutes,
    relative: open <= grain ? 0 : open / Math.max(Math.abs(value), 1e-9),
    ovenHours: isTardiness && value <= grain && hoursBound !== null && hours > 0 ? (hours - hoursBound) / hours : null,
  };
  const provenOptimal = open <= grain && (objective.name !== 'lateness' || proof.isWhole);
  return {
    batches: batches.map((batch) => ({ ...batch, reason: reasonOf(model, batch) })),
    objective: { weightedLatenessHours: lateness / 60, ovenHours: hours / 60, loads: batches.length, value },
    lowerBound: {
      weightedLatenessHours: (isTardiness ? bound : 0) / 60,
      ovenHours: hoursBound === null ? null : hoursBound / 60,
      value: bound,
    },
    gap,
    provenOptimal,
    stopped: provenOptimal ? 'proof' : isStopped ? 'time' : 'budget',
    words: gapWords(objective.name, value, gap, provenOptimal),
  };
}
