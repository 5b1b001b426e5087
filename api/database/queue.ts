// All writes of a process, one after the other, each one transaction.
//
// Why: through Prisma's SQLite adapter a plain write beside an open transaction is lost when that one rolls back,
// a plain read sees what it has not committed, and two hundred transactions at once time out.
import { AsyncLocalStorage } from 'node:async_hooks';
import { setImmediate } from 'node:timers/promises';
import type { Client, Engine, Transaction } from './client.ts';
import { entered } from './inside.ts';

export type Write = <Result>(work: (transaction: Transaction) => Promise<Result>) => Promise<Result>;

/** Milliseconds. The queue itself waits as long as it must; these bound what one transaction may take. */
const limits = { maxWait: 10_000, timeout: 60_000 };

/**
 * A function that runs `work` in a transaction of its own when all earlier work is done, and gives its result.
 * Whatever `work` throws rolls back and reaches the caller; later work goes on. Work that waits for other work
 * of the same queue would wait for ever, and is refused.
 */
export function writeQueue(client: Client, engine: Engine): Write {
  let last: Promise<unknown> = Promise.resolve();
  const turn = new AsyncLocalStorage<{ open: boolean }>();
  return (work) => {
    if (turn.getStore()?.open)
      return Promise.reject(new Error('a write inside a write: pass the transaction on instead'));
    const result = last.then(() => {
      const mine = { open: true };
      const act = (transaction: Transaction) => {
        entered(transaction, engine);
        return work(transaction);
      };
      return turn
        .run(mine, () => client.$transaction(act, limits))
        .finally(() => {
          mine.open = false;
        });
    });
    // Prisma over SQLite never leaves the microtasks: without a turn of the event loop between two writes, a process
    // with much to write would answer nobody until it is done.
    last = result.catch(() => undefined).then(() => setImmediate());
    return result;
  };
}
