// Planning in two worker threads: one plan at a time for a lab, its progress for whoever asks, cancelled at will.
import type { Database } from '../database/database.ts';
import { planApart, usualSeconds } from '../drying/service.ts';
import { planningsOf } from '../plannings.ts';
import type { OvenAnswer } from '../science/ovens/answer.ts';
import { budgetOf } from '../science/ovens/prepared.ts';
import type { Posed } from './problem.ts';

export interface PlanningNow {
  readonly startedAt: Date;
  /** Of the work, 0 to 1. */
  readonly share: number;
  readonly jobs: number;
}

interface Running extends PlanningNow {
  readonly stop: AbortController;
  /** Cancelled, with the best so far taken or thrown away. */
  ended: 'kept' | 'dropped' | null;
  readonly cancel: (keepBest: boolean) => void;
}

const plannings = planningsOf<Running>();

/** Null while nothing is planned. */
export const planningNow: (database: Database) => PlanningNow | null = plannings.now;

/** Ends the planning under way; false when there is none. */
export const planningCancelled = plannings.cancelled;

/** One after the other for a lab. */
export const inLine = plannings.inLine;

/** When nothing is in line any more. */
export const allPlanned = plannings.idle;

const noWeights = { lateJobs: 0, ovenMinutes: 0, setupMinutes: 0, setupCost: 0 };
const seed = 1;

/** The planner's answer, or null when somebody cancelled and wants nothing of it. */
export async function answered(
  database: Database,
  { problem, before }: Pick<Posed, 'problem' | 'before'>,
  now: Date,
  seconds?: number | null,
): Promise<OvenAnswer | null> {
  const most = seconds ?? usualSeconds(problem.jobs.length);
  const state: Running = {
    startedAt: now,
    share: 0,
    jobs: problem.jobs.length,
    stop: new AbortController(),
    ended: null,
    cancel(keepBest) {
      state.ended = keepBest ? 'kept' : 'dropped';
      state.stop.abort();
    },
  };
  return plannings.during(database, state, async () => {
    const task = {
      problem,
      objective: 'lateness' as const,
      weights: noWeights,
      seed,
      ...budgetOf(most),
      ...(before.length > 0 ? { before } : {}),
    };
    const progress = (share: number) => Object.assign(state, { share });
    const answer = await planApart(task, { seconds: most, progress, signal: state.stop.signal });
    return state.ended === 'dropped' ? null : answer;
  });
}
