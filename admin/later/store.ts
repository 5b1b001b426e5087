// Keeps what waits, and what was last seen, in the browser's own database: it survives a reload and a closed tab.
import { createStore, get, set, update, type UseStore } from 'idb-keyval';
import type { Queue } from './queue.ts';

const WAITING = 'waiting';

let opened: UseStore | null = null;
const place = (): UseStore => (opened ??= createStore('drumkeep', 'kept'));
// Other tabs of this browser hear of every change.
const channel = typeof BroadcastChannel === 'undefined' ? null : new BroadcastChannel('drumkeep:waiting');

/** As it was last seen here; all there is where the browser keeps nothing (a private window, say). */
let last: Queue = [];
let lasting = true;

/** Whether what waits survives this page. */
export const isLasting = (): boolean => lasting;

export async function readQueue(): Promise<Queue> {
  if (!lasting) return last;
  try {
    return (last = (await get<Queue>(WAITING, place())) ?? []);
  } catch {
    lasting = false;
    return last;
  }
}

/** Changes what waits in one transaction, which no other tab comes between. */
export async function changeQueue(how: (queue: Queue) => Queue): Promise<Queue> {
  if (!lasting) return (last = how(last));
  try {
    await update<Queue>(WAITING, (before) => (last = how(before ?? [])), place());
    channel?.postMessage('changed');
    return last;
  } catch {
    lasting = false;
    return (last = how(last));
  }
}

export function onOtherTab(listener: () => void): void {
  if (channel) channel.onmessage = listener;
}

/** Something that was last seen, under a name; null when there is none or nothing is kept. */
export async function recall<T>(name: string): Promise<T | null> {
  try {
    return (await get<T>(name, place())) ?? null;
  } catch {
    return null;
  }
}

/** Remembers it. A browser that keeps nothing is no reason to stop. */
export async function remember(name: string, value: unknown): Promise<void> {
  await set(name, value, place()).catch(() => {});
}
