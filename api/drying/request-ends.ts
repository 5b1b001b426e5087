// How a request ends, within a larger act, and how it waits again.
import type { Work } from '../work.ts';
import { requestEnded } from './ended.ts';

/** Takes a request off the list, within a larger act. */
export async function requestWithdrawn(work: Work, id: string): Promise<void> {
  await work.tx.dryingRequest.update({ where: { id }, data: { state: 'WITHDRAWN', endedAt: work.now } });
  work.changed('DryingRequest', id, 'CHANGED');
  await requestEnded(work, id);
}

/** A request waits again, or goes on waiting, whatever was recorded of it. */
export async function requestWaits(work: Work, id: string): Promise<void> {
  await work.tx.dryingRequest.update({ where: { id }, data: { state: 'WAITING', endedAt: null, eventId: null } });
  work.changed('DryingRequest', id, 'CHANGED');
}

/** What a request waited for was dried. */
export async function requestAnswered(work: Work, id: string, eventId: string, endedAt: Date): Promise<void> {
  await work.tx.dryingRequest.update({ where: { id }, data: { state: 'DRIED', endedAt, eventId } });
  work.changed('DryingRequest', id, 'CHANGED');
  await requestEnded(work, id);
}
