// The two threads of the oven planner: one searches, the other proves beside it. They end by counted work; the clock only guards.
import { parentPort, workerData } from 'node:worker_threads';
import type { OvenAnswer } from '../../science/ovens/answer.ts';
import { isSmall, planSmall, searched } from '../../science/ovens/plan.ts';
import { prepared, type PlanTask } from '../../science/ovens/prepared.ts';
import { isAtFloor, proofOf, type Proven } from '../../science/ovens/proof.ts';
import type { Best } from '../../science/ovens/search/anneal.ts';
import type { Found } from '../../science/ovens/search/search.ts';

export interface ToPlan {
  role: 'search' | 'prove';
  task: PlanTask;
  /** Two words: planning is cancelled; the search has settled with nothing left to gain but oven hours. */
  flags: SharedArrayBuffer;
  /** How long a thread may take, ms from when it runs. */
  guardMs: number;
}
export type FromPlanner =
  | { kind: 'progress'; role: ToPlan['role']; share: number }
  | { kind: 'first' | 'settled'; best: Best }
  | { kind: 'whole'; answer: OvenAnswer }
  | { kind: 'found'; found: Found }
  | { kind: 'proof'; proof: Proven };
export type ToProver = { best: Best };

const port = parentPort;
if (!port) throw new Error('a worker without a main thread');
const { role, task, flags, guardMs } = workerData as ToPlan;
const words = new Int32Array(flags);
const say = (message: FromPlanner) => port.postMessage(message);
const until = Date.now() + guardMs;
const ready = prepared(task);

/** A word on progress is worth saying this often, ms. */
const everyMs = 100;
let said = 0;
const watch = {
  stopped: () => Atomics.load(words, 0) === 1 || Date.now() >= until,
  progress(share: number) {
    const now = Date.now();
    if (now - said < everyMs) return;
    said = now;
    say({ kind: 'progress', role, share });
  },
};

function searches(): void {
  if (isSmall(ready)) {
    say({ kind: 'whole', answer: planSmall(ready, watch) });
    return;
  }
  let isFirstAtFloor = false;
  const found = searched(ready, task.moves, {
    ...watch,
    first(best) {
      isFirstAtFloor = isAtFloor(ready, best);
      say({ kind: 'first', best });
    },
    settled(best) {
      if (isFirstAtFloor || !isAtFloor(ready, best)) return;
      Atomics.store(words, 1, 1);
      say({ kind: 'settled', best });
    },
  });
  say({ kind: 'found', found });
}

/** Proves what is asked last: with the first plan, and again if the search settles at what cannot be beaten. */
function proves(): void {
  port?.on('message', ({ best }: ToProver) => {
    const isFinal = isAtFloor(ready, best);
    if (!isFinal && Atomics.load(words, 1) === 1) return;
    const stopped = () => watch.stopped() || (!isFinal && Atomics.load(words, 1) === 1);
    const proof = proofOf(ready, best, { ...watch, stopped });
    if (isFinal || Atomics.load(words, 1) === 0) say({ kind: 'proof', proof });
  });
}

if (role === 'search') searches();
else proves();
