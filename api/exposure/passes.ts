// The background estimate: a pass at the start, which catches up after any time off, and one every few minutes.
import { availableParallelism } from 'node:os';
import { log } from '../log.ts';
import type { App } from '../yoga.ts';
import { runPass } from './pass.ts';
import { progressOf } from './progress.ts';
import { startThread, type Thread } from './thread.ts';

export interface Passes {
  /** Runs one now, or waits for the one under way; resolves when it is over. */
  now(): Promise<void>;
  stop(): Promise<void>;
}

/** Containers that are worth a thread of their own. */
const containersPerThread = 5_000;
/** A pass that takes longer tells how far it is, every so often, ms. */
const toldEveryMs = 2_000;

async function threadsWanted({ database, lab }: App): Promise<number> {
  const [row] = await database.select<{ count: number }>(
    'select count(*) as "count" from "Container" where "labId" = $1 and "finishedAt" is null',
    [lab.id],
  );
  return Math.max(1, Math.min(availableParallelism(), 4, Math.ceil((row?.count ?? 0) / containersPerThread)));
}

/** Says on the terminal how far a long pass is. */
function telling(app: App): () => void {
  let told = false;
  const count = new Intl.NumberFormat('en-GB');
  const timer = setInterval(() => {
    const { running, done, total } = progressOf(app.database);
    if (!running || total === 0) return;
    told = true;
    console.log(`Estimating: ${count.format(Math.min(done, total))} of ${count.format(total)} containers`);
  }, toldEveryMs);
  timer.unref();
  return () => {
    clearInterval(timer);
    if (told) console.log('Estimates are up to date');
  };
}

/** Starts passing; the first pass begins at once. */
export function startPasses(app: App): Passes {
  const threads: Thread[] = [];
  let isStopped = false;
  let timer: NodeJS.Timeout | undefined;
  let underWay: Promise<void> | null = null;

  async function pass(): Promise<void> {
    const told = telling(app);
    try {
      const wanted = await threadsWanted(app);
      while (threads.length < wanted) threads.push(startThread(app.settings));
      await runPass({ ...app, threads: threads.slice(0, wanted), stopped: () => isStopped });
    } catch (error) {
      if (!isStopped) log.error({ err: error }, 'a pass over the estimates failed; the next one tries again');
      for (const thread of threads.splice(0)) await thread.stop();
    } finally {
      told();
    }
  }

  function now(): Promise<void> {
    clearTimeout(timer);
    underWay ??= pass().finally(() => {
      underWay = null;
      if (!isStopped) timer = setTimeout(() => void now(), app.settings.estimateEverySeconds * 1000);
    });
    return underWay;
  }

  void now();
  return {
    now,
    async stop() {
      isStopped = true;
      clearTimeout(timer);
      for (const thread of threads) await thread.stop();
      await underWay;
    },
  };
}
