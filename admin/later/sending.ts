// Sends what waits, one after the other, until nothing may go any more or nobody answers.
import { leaving, nextOf, settled, type Outcome, type Queue, type Waiting } from './queue.ts';

export interface Sender {
  /** The queue as it lies on this machine now. */
  read: () => Promise<Queue>;
  /** Changes it in one step that no other tab comes between; answers what it is then. */
  change: (how: (queue: Queue) => Queue) => Promise<Queue>;
  tell: (one: Waiting) => Promise<Outcome>;
  /** Hears how each attempt ended. */
  told?: (one: Waiting, outcome: Outcome) => void;
  nowMs: () => number;
  newKey: () => string;
}

/** Whether somebody answered to the end: false when an attempt got no answer. */
export async function sendWaiting({ read, change, tell, told, nowMs, newKey }: Sender): Promise<boolean> {
  for (;;) {
    const next = nextOf(await read(), nowMs());
    if (next === null) return true;
    // Marked before it goes: a tab that is closed meanwhile leaves word that it may have arrived.
    const attempt = newKey();
    const sent = (await change((queue) => leaving(queue, next.key, attempt))).find(({ key }) => key === next.key);
    if (sent === undefined || sent.question !== null) continue;
    const outcome = await tell(sent);
    await change((queue) => settled(queue, sent, outcome, nowMs(), newKey));
    told?.(sent, outcome);
    if (outcome.kind === 'unanswered') return false;
  }
}
