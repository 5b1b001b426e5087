// The thread of the purchase planner: the programme, and beside it what the simple rule would cost.
import { parentPort, workerData } from 'node:worker_threads';
import loadHighs from 'highs';
import { planPurchase } from '../science/purchase/programme.ts';
import type { PurchaseAnswer, PurchaseProblem } from '../science/purchase/types.ts';
import { noDearer, reorderAnswer } from './policy.ts';

export interface ToPlanner {
  problem: PurchaseProblem;
  /** Reorder points by the names of items. */
  points: Record<string, number>;
  /** One word: planning is cancelled. */
  flags: SharedArrayBuffer;
}

export type FromPlanner =
  | { kind: 'progress'; share: number }
  | { kind: 'whole'; answer: PurchaseAnswer; simple: PurchaseAnswer; seconds: number };

const port = parentPort;
if (!port) throw new Error('a worker without a main thread');
const { problem, points, flags } = workerData as ToPlanner;
const words = new Int32Array(flags);
const say = (message: FromPlanner) => port.postMessage(message);

/** A word on progress is worth saying this often, ms. */
const everyMs = 100;
let said = 0;
const begun = performance.now();
const seconds = () => (performance.now() - begun) / 1000;
const answer = planPurchase(problem, await loadHighs(), {
  seconds,
  cancelled: () => Atomics.load(words, 0) === 1,
  progress(share) {
    const now = performance.now();
    if (now - said < everyMs) return;
    said = now;
    say({ kind: 'progress', share });
  },
});
const simple = reorderAnswer(problem, points);
say({ kind: 'whole', answer: noDearer(answer, simple), simple, seconds: seconds() });
