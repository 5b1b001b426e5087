// A request is taken off the list, and put back.
import { z } from 'zod';
import type { Context } from '../context.ts';
import { invalid } from '../errors.ts';
import { write } from '../work.ts';
import { howDried } from './how-dried.ts';
import { checkRequest } from './rules.ts';
import { withdrawSaid } from './request-said.ts';
import { type Requested, waitingRequest, requestOf, waitingOf } from './request.ts';
import { requestWithdrawn } from './request-ends.ts';

export function dryingWithdrawn(context: Context, input: z.output<typeof withdrawSaid>): Promise<Requested> {
  return write(context, 'withdrawDrying', input, async (work) => {
    const { id } = await waitingRequest(work, input.id, 'input.id');
    await requestWithdrawn(work, id);
    return { requestId: id };
  });
}

/** Puts a withdrawn request back where it was; one that waits stays as it is. */
export function dryingRestored(context: Context, input: z.output<typeof withdrawSaid>): Promise<Requested> {
  return write(context, 'restoreDrying', input, async (work) => {
    const { tx } = work;
    const request = await requestOf(work, input.id, 'input.id');
    const { id, state, containerId, dryGrams, plates, temperatureC } = request;
    if (state === 'WAITING') return { requestId: id };
    if (state === 'DRIED') throw invalid('input.id', input.id, 'it was dried already; undo that drying instead');
    const container = await tx.container.findUniqueOrThrow({ where: { id: containerId } });
    const { refusal } = await howDried(tx, container);
    const others = (await waitingOf(work)).filter((other) => other.containerId === containerId);
    checkRequest(container, refusal, { dryGrams, plates, temperatureC }, others);
    await tx.dryingRequest.update({ where: { id }, data: { state: 'WAITING', endedAt: null } });
    work.changed('DryingRequest', id, 'CHANGED');
    return { requestId: id };
  });
}
