// Planning in two worker threads: one plan at a time for a lab, its progress for whoever asks, cancelled at will.
import type { Database } from '../database/database.ts';
import { planApart, usualSeconds } from '../drying/service.ts';
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
}

const running = new WeakMap<Database, Running>();
const lines = new WeakMap<Database, Promise<unknown>>();

/** Null while nothing is planned. */
export const planningNow = (database: Database): PlanningNow | null => running.get(database) ?? null;

/** Ends the planning under way; false when there is none. */
export function planningCancelled(database: Database, keepBest: boolean): boolean {
  const now = running.get(database);
  if (!now) return false;
  now.ended = keepBest ? 'kept' : 'dropped';
  now.stop.abort();
  return true;
}

/** One after the other for a lab: each plan begins from what the one before left. */
export function inLine<A>(database: Database, work: () => Promise<A>): Promise<A> {
  const before = lines.get(database) ?? Promise.resolve();
  const mine = before.then(work, work);
  lines.set(
    database,
    mine.catch(() => undefined),
  );
  return mine;
}

/** When nothing is in line any more. */
export const allPlanned = async (database: Database): Promise<void> => {
  await lines.get(database);
};

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
  };
  running.set(database, state);
  try {
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
  } finally {
    running.delete(database);
  }
}
