// A request is put before another, or last.
import { z } from 'zod';
import type { Context } from '../context.ts';
import { invalid } from '../errors.ts';
import { write } from '../work.ts';
import { positionBefore } from './rules.ts';
import { moveSaid } from './request-said.ts';
import { type Requested, waitingRequest, waitingOf } from './request.ts';

/** Puts a request before another, or last. */
export function dryingMoved(context: Context, input: z.output<typeof moveSaid>): Promise<Requested> {
  return write(context, 'moveDryingRequest', input, async (work) => {
    const request = await waitingRequest(work, input.id, 'input.id');
    const before = input.before ? await waitingRequest(work, input.before, 'input.before') : null;
    if (before?.id === request.id) throw invalid('input.before', input.before, 'another request');
    const place = async (id: string, position: number) => {
      await work.tx.dryingRequest.update({ where: { id }, data: { position } });
      work.changed('DryingRequest', id, 'CHANGED');
    };
    const others = (await waitingOf(work)).filter(({ id }) => id !== request.id);
    const position = positionBefore(others, before?.id ?? null);
    if (position !== null) await place(request.id, position);
    else {
      // Halved too often: number the whole list anew.
      const at = others.findIndex(({ id }) => id === before?.id);
      const all = [...others.slice(0, at), request, ...others.slice(at)];
      for (const [index, { id }] of all.entries()) await place(id, index + 1);
    }
    return { requestId: request.id };
  });
}
