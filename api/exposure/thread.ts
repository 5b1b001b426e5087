// A worker thread as the main thread sees it: given a share, it sends batches until it is done.
import { Worker } from 'node:worker_threads';
import type { DatabaseSettings } from '../database/place.ts';
import type { Estimates } from './estimate.ts';
import type { Share } from './round.ts';
import type { FromWorker, ToWorker } from './worker.ts';

export interface Thread {
  /**
   * Works through a share. `total` is told its size, `store` stores each batch and gives how many containers the next may
   * hold. Gives the events whose parcels were asked for.
   */
  work(share: Share, asked: string[], told: Listening): Promise<string[]>;
  stop(): Promise<void>;
}

export interface Listening {
  total: (count: number) => void;
  store: (made: Estimates, containers: number) => Promise<number>;
}

/** Memory for a thread's tables: some hundred sorbents and a year of twenty rooms. */
const heapMb = 384;

/** How long a thread may take to end by itself, ms. */
const endMs = 2_000;

export function startThread({ dataFolder, databaseUrl }: DatabaseSettings): Thread {
  const settings: DatabaseSettings = { dataFolder, databaseUrl };
  const worker = new Worker(new URL('./worker.mjs', import.meta.url), {
    workerData: settings,
    execArgv: [],
    resourceLimits: { maxOldGenerationSizeMb: heapMb },
  });
  const say = (message: ToWorker) => worker.postMessage(message);
  let end: ((error: Error) => void) | null = null;
  worker.on('error', (error) => end?.(error instanceof Error ? error : new Error(String(error))));
  worker.on('exit', () => end?.(new Error('the estimating thread ended')));
  const ended = new Promise<void>((resolve) => worker.once('exit', () => resolve()));
  return {
    work(share, asked, { total, store }) {
      return new Promise<string[]>((resolve, reject) => {
        const finish = () => {
          worker.off('message', hear);
          end = null;
        };
        end = (error) => {
          finish();
          reject(error);
        };
        const fail = end;
        let storing = Promise.resolve();
        function hear(message: FromWorker) {
          if (message.kind === 'total') total(message.count);
          else if (message.kind === 'failed') fail(new Error(message.message));
          else if (message.kind === 'batch') {
            storing = storing
              .then(() => store(message.made, message.containers))
              .then((nextSize) => say({ kind: 'stored', nextSize }))
              .catch(fail);
          } else {
            void storing.then(() => {
              finish();
              resolve(message.asked);
            });
          }
        }
        worker.on('message', hear);
        say({ kind: 'share', share, asked });
      });
    },
    async stop() {
      say({ kind: 'stop' });
      const late = setTimeout(() => void worker.terminate(), endMs);
      await ended;
      clearTimeout(late);
    },
  };
}
