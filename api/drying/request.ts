// Requests as they are found: by name, and those that wait in their order.
import type { DryingRequest } from '../database/generated/sqlite/client.ts';
import { invalid, unknown } from '../errors.ts';
import { localId } from '../stock/service.ts';
import type { Work } from '../work.ts';

const inOrder = [{ position: 'asc' as const }, { id: 'asc' as const }];

export const waitingOf = ({ tx, labId }: Work): Promise<DryingRequest[]> =>
  tx.dryingRequest.findMany({ where: { labId, state: 'WAITING' }, orderBy: inOrder });

/** The one that stands last in the list. */
export const lastOf = ({ tx, labId }: Work): Promise<DryingRequest | null> =>
  tx.dryingRequest.findFirst({
    where: { labId, state: 'WAITING' },
    orderBy: [{ position: 'desc' }, { id: 'desc' }],
  });

export async function requestOf(work: Work, id: string, path: string): Promise<DryingRequest> {
  const key = localId('DryingRequest', id, path);
  const request = await work.tx.dryingRequest.findFirst({ where: { id: key, labId: work.labId } });
  if (!request) throw unknown(path, id, 'the id of a drying request of this lab');
  return request;
}

/** A request that still waits; refuses one that was dried or withdrawn. */
export async function waitingRequest(work: Work, id: string, path: string): Promise<DryingRequest> {
  const request = await requestOf(work, id, path);
  if (request.state === 'WAITING') return request;
  throw invalid(path, id, `it was ${request.state.toLowerCase()} already; one that waits`);
}

export type Requested = { requestId: string };
