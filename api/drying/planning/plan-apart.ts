// Planning without keeping anybody waiting: search and proof in two threads side by side, with progress, and cancelled at will.
import { Worker } from 'node:worker_threads';
import type { OvenAnswer } from '../../science/ovens/answer.ts';
import { concluded } from '../../science/ovens/plan.ts';
import { type PlanTask, prepared } from '../../science/ovens/prepared.ts';
import { mostExact } from '../../science/ovens/exact/exact.ts';
import { type Proven } from '../../science/ovens/proof.ts';
import type { Found } from '../../science/ovens/search/search.ts';
import type { FromPlanner, ToPlan, ToProver } from './worker.ts';

export interface PlanningTime {
  /** The clock's guard; what decides is counted. */
  readonly seconds: number;
  readonly progress?: (share: number) => void;
  /** Cancelled: the best plan so far is given. */
  readonly signal?: AbortSignal;
}

/** Seconds for so many jobs: 2 up to 60, 15 for 200. */
export const usualSeconds = (jobs: number): number => Math.max(2, 2 + ((jobs - 60) * 13) / 140);

/** The guard lets a busy machine finish what is counted; an exact plan of a few jobs is worth waiting for. */
const guard = 1.5;
const exactSeconds = 20;

export function planApart(task: PlanTask, { seconds, progress, signal }: PlanningTime): Promise<OvenAnswer> {
  const flags = new SharedArrayBuffer(8);
  const words = new Int32Array(flags);
  const fixed = new Set(task.problem.fixed.flatMap(({ jobs }) => jobs));
  const isSmall = task.problem.jobs.length - fixed.size <= mostExact;
  const guardMs = 1000 * Math.max(guard * seconds, isSmall ? exactSeconds : 0);
  const start = (role: ToPlan['role']) => {
    const data: ToPlan = { role, task, flags, guardMs };
    return new Worker(new URL('./worker.mjs', import.meta.url), { workerData: data, execArgv: [] });
  };
  const searcher = start('search');
  const prover = isSmall ? null : start('prove');
  const workers = [searcher, ...(prover ? [prover] : [])];
  const cancel = () => Atomics.store(words, 0, 1);
  if (signal?.aborted) cancel();
  signal?.addEventListener('abort', cancel);
  const shares = { search: 0, prove: isSmall ? 1 : 0 };
  return new Promise<OvenAnswer>((resolve, reject) => {
    let found: Found | null = null;
    let proof: Proven | null = null;
    const conclude = () => {
      if (found && proof) resolve(concluded(prepared(task), found, proof));
    };
    const hear = (message: FromPlanner) => {
      if (message.kind === 'whole') resolve(message.answer);
      else if (message.kind === 'progress') {
        shares[message.role] = message.share;
        progress?.(Math.min(shares.search, shares.prove));
      } else if (message.kind === 'found') {
        ({ found } = message);
        conclude();
      } else if (message.kind === 'proof') {
        ({ proof } = message);
        conclude();
      } else prover?.postMessage({ best: message.best } satisfies ToProver);
    };
    for (const worker of workers) {
      worker.on('message', hear);
      worker.on('error', reject);
    }
    // The searcher ends by itself once it has said what it found; the prover waits to be ended.
    searcher.on('exit', () => {
      if (!found) reject(new Error('the searching thread ended without a plan'));
    });
    prover?.on('exit', () => reject(new Error('the proving thread ended without a proof')));
  }).finally(() => {
    signal?.removeEventListener('abort', cancel);
    for (const worker of workers) {
      worker.removeAllListeners('exit');
      void worker.terminate();
    }
  });
}
