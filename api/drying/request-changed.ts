// What a request that waits wants is changed.
import { z } from 'zod';
import type { Context } from '../context.ts';
import { invalid } from '../errors.ts';
import { write } from '../work.ts';
import { howDried } from './how-dried.ts';
import { changeSaid } from './request-said.ts';
import { type Requested, waitingRequest } from './request.ts';

/** Changes what a request that waits wants. */
export function dryingChanged(context: Context, input: z.output<typeof changeSaid>): Promise<Requested> {
  return write(context, 'setDryingRequest', input, async (work) => {
    const request = await waitingRequest(work, input.id, 'input.id');
    const container = await work.tx.container.findUniqueOrThrow({ where: { id: request.containerId } });
    const { wantedBy, temperatureC, minutes, priority, depthMm, readyAt } = input;
    if (typeof temperatureC === 'number') {
      const hot = (await howDried(work.tx, container)).refusal(temperatureC);
      if (hot) throw invalid('input.temperatureC', temperatureC, hot);
    }
    if (typeof depthMm === 'number' && container.kind === 'PLATE_BOX') {
      throw invalid('input.depthMm', depthMm, 'none: plates lie in no tray');
    }
    const weight = priority === undefined ? {} : { weight: priority ?? 1 };
    const given = Object.entries({ wantedBy, temperatureC, minutes, depthMm, readyAt });
    const changes = Object.fromEntries(given.filter(([, value]) => value !== undefined));
    await work.tx.dryingRequest.update({ where: { id: request.id }, data: { ...changes, ...weight } });
    work.changed('DryingRequest', request.id, 'CHANGED');
    return { requestId: request.id };
  });
}
