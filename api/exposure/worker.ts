// The thread that estimates while the server answers. It has a read-only connection of its own and writes nothing: batches go
// to the main thread, which stores them through its one write queue.
import { parentPort, workerData } from 'node:worker_threads';
import type { DatabaseSettings } from '../database/place.ts';
import { openSelector } from '../database/select.ts';
import type { Estimates } from './estimate.ts';
import { estimateShare, type Share } from './round.ts';

export type ToWorker =
  { kind: 'share'; share: Share; asked: string[] } | { kind: 'stored'; nextSize: number } | { kind: 'stop' };
export type FromWorker =
  | { kind: 'total'; count: number }
  | { kind: 'batch'; made: Estimates; containers: number }
  | { kind: 'done'; asked: string[] }
  | { kind: 'failed'; message: string };

/** Batches under way to the main thread before the worker waits for it. */
const underWay = 2;

const port = parentPort;
if (!port) throw new Error('a worker without a main thread');
const reader = openSelector(workerData as DatabaseSettings);

let isStopped = false;
let size = 50;
let waitingBatches = 0;
let goOn: (() => void) | null = null;

const say = (message: FromWorker) => port.postMessage(message);

async function handOver(made: Estimates, containers: number): Promise<number> {
  say({ kind: 'batch', made, containers });
  waitingBatches += 1;
  while (waitingBatches >= underWay && !isStopped) {
    await new Promise<void>((resolve) => {
      goOn = resolve;
    });
  }
  return size;
}

async function work(share: Share, before: string[]): Promise<void> {
  const asked = new Set(before);
  await estimateShare(reader, share, asked, {
    total: (count) => say({ kind: 'total', count }),
    batch: handOver,
    stopped: () => isStopped,
  });
  say({ kind: 'done', asked: [...asked] });
}

port.on('message', (message: ToWorker) => {
  if (message.kind === 'share') {
    work(message.share, message.asked).catch((error: unknown) => {
      say({ kind: 'failed', message: error instanceof Error ? (error.stack ?? error.message) : String(error) });
    });
  } else if (message.kind === 'stored') {
    size = message.nextSize;
    waitingBatches -= 1;
    goOn?.();
  } else {
    isStopped = true;
    goOn?.();
    void reader.close().then(() => port.close());
  }
});
