// Where spread comes from, reckoned without keeping anybody waiting: a compound takes a third of a second and more.
import { Worker } from 'node:worker_threads';
import { spreadInput, type CompoundSpread, type RunRead, type SpreadInput } from './rules.ts';

/** What was reckoned last is kept: a page asks again after every act. */
const mostKept = 40;
const kept = new Map<string, Promise<CompoundSpread[]>>();

function reckoned(input: readonly SpreadInput[]): Promise<CompoundSpread[]> {
  const worker = new Worker(new URL('./worker.mjs', import.meta.url), { workerData: input, execArgv: [] });
  return new Promise((resolve, reject) => {
    worker.once('message', resolve);
    worker.once('error', reject);
    worker.once('exit', () => reject(new Error('the reckoning thread ended without an answer')));
  });
}

/** Of each compound: how much its values differ between users, lots, boxes, plates, and within a plate. */
export function spreadApart(runs: readonly RunRead[]): Promise<CompoundSpread[]> {
  const input = spreadInput(runs);
  if (input.length === 0) return Promise.resolve([]);
  const key = JSON.stringify(input);
  const there = kept.get(key) ?? reckoned(input);
  // The newest stands last; what failed is tried again.
  kept.delete(key);
  kept.set(key, there);
  there.catch(() => kept.delete(key));
  const [oldest] = kept.keys();
  if (kept.size > mostKept && oldest !== undefined) kept.delete(oldest);
  return there;
}
