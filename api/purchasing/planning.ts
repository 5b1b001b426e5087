// Planning in a worker thread: one plan at a time for a lab, its progress for whoever asks, cancelled at will.
import { setTimeout as sleep } from 'node:timers/promises';
import { Worker } from 'node:worker_threads';
import type { Database } from '../database/database.ts';
import { longestSeconds } from '../science/purchase/budget.ts';
import { planningsOf } from '../plannings.ts';
import type { PurchaseAnswer, PurchaseProblem } from '../science/purchase/types.ts';
import type { FromPlanner, ToPlanner } from './worker.ts';

export interface PlanningNow {
  readonly startedAt: Date;
  /** Of the work, 0 to 1. */
  readonly share: number;
  readonly items: number;
}

interface Running extends PlanningNow {
  cancel: (keepBest: boolean) => void;
}

const plannings = planningsOf<Running>();

/** Null while nothing is planned. */
export const planningNow: (database: Database) => PlanningNow | null = plannings.now;

/** Ends the planning under way; false when there is none. */
export const planningCancelled = plannings.cancelled;

/** One after the other for a lab. */
export const inLine = plannings.inLine;

export interface Answered {
  answer: PurchaseAnswer;
  simple: PurchaseAnswer;
  seconds: number;
}

/** A solver that is busy does not hear: it is ended so long after its time, or after a cancelling. */
const graceMs = 8000;

/** The programme's answer, or null when somebody cancelled and wants nothing of it, or it did not end in time. */
export async function answered(
  database: Database,
  problem: PurchaseProblem,
  points: Record<string, number>,
  startedAt: Date,
): Promise<Answered | null> {
  const flags = new SharedArrayBuffer(4);
  const task: ToPlanner = { problem, points, flags };
  const worker = new Worker(new URL('./worker.mjs', import.meta.url), { workerData: task, execArgv: [] });
  let end: (none: null) => void = () => undefined;
  const stopped = new Promise<null>((resolve) => (end = resolve));
  const later = (ms: number) => void sleep(ms, null, { ref: false }).then(end);
  const state = { startedAt, share: 0, items: problem.items.length };
  const whole = new Promise<Answered>((resolve, reject) => {
    worker.on('message', (message: FromPlanner) => {
      if (message.kind === 'progress') Object.assign(state, { share: message.share });
      else resolve(message);
    });
    worker.on('error', reject);
    worker.on('exit', () => reject(new Error('the planning thread ended without a plan')));
  });
  const now = Object.assign(state, {
    cancel(keepBest: boolean) {
      Atomics.store(new Int32Array(flags), 0, 1);
      if (keepBest) later(graceMs);
      else end(null);
    },
  });
  later(1000 * longestSeconds(problem.limits.seconds) + 2 * graceMs);
  try {
    return await plannings.during(database, now, () => Promise.race([whole, stopped]));
  } finally {
    worker.removeAllListeners();
    whole.catch(() => undefined);
    void worker.terminate();
  }
}
