// A request that waits no longer: whoever keeps something by it is told in the same transaction.
import type { Work } from '../work.ts';

/** Told after a request was dried or withdrawn; gives notes on it. */
export type EndListener = (work: Work, requestId: string) => Promise<void>;
const listeners: EndListener[] = [];
export const onRequestEnded = (listener: EndListener): void => {
  listeners.push(listener);
};

export async function requestEnded(work: Work, requestId: string): Promise<void> {
  for (const listener of listeners) await listener(work, requestId);
}
