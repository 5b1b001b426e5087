// The last thing recorded of a run is taken back, its events with it.
import { z } from 'zod';
import type { Context } from '../context.ts';
import type { Prisma } from '../database/generated/sqlite/client.ts';
import { requestWaits } from '../drying/service.ts';
import { invalid } from '../errors.ts';
import { said, takenBack } from '../stock/service.ts';
import { write, type Work } from '../work.ts';
import { checkMay, type RunState } from './rules.ts';
import { runOf, type WholeRun } from './run-rows.ts';

export const backSaid = z.object({ run: z.string('the id of a run'), clientKey: said.clientKey });

export type Back = { runId: string; notes: string[]; moved: boolean };

const idsIn = (events: unknown): string[] =>
  Array.isArray(events) ? events.filter((each) => typeof each === 'string') : [];

/** Events of a run that ended are void again, last first; what was poured goes back. */
async function eventsBack(work: Work, run: WholeRun): Promise<void> {
  const why = 'the end of the drying run was taken back';
  for (const load of [...run.loads].reverse()) {
    for (const id of idsIn(load.events).reverse()) {
      const stands = await work.tx.event.findFirst({ where: { id, stands: true } });
      if (stands) await takenBack(work, id, why);
    }
    const cleared = { containerId: null, events: [], waterFraction: null, isWeighed: false };
    await work.tx.dryingLoad.update({ where: { id: load.id }, data: cleared });
    const request = await work.tx.dryingRequest.findUniqueOrThrow({ where: { id: load.requestId } });
    if (request.state === 'DRIED') await requestWaits(work, request.id);
  }
}

const before: Record<Exclude<RunState, 'PLANNED'>, (run: WholeRun) => Prisma.DryingRunUncheckedUpdateInput> = {
  IN_OVEN: () => ({ state: 'PLANNED', startedAt: null, dueOutAt: null, doorAt: [] }),
  COOLING: () => ({ state: 'IN_OVEN', outAt: null }),
  COOLED: () => ({ state: 'COOLING', cooledAt: null }),
  FINISHED: ({ outAt, cooledAt }) => ({ state: cooledAt ? 'COOLED' : outAt ? 'COOLING' : 'IN_OVEN', endedAt: null }),
  INTERRUPTED: () => ({ state: 'IN_OVEN', endedAt: null, why: null }),
};

export function stepTakenBack(context: Context, input: z.output<typeof backSaid>): Promise<Back> {
  return write(context, 'takeRunStepBack', input, async (work) => {
    const run = await runOf(work, input.run);
    checkMay('back', input.run, run.state);
    if (run.state === 'PLANNED') throw new Error('a planned run was let through');
    const data = before[run.state](run);
    if (data.state === 'IN_OVEN') {
      const other = await work.tx.dryingRun.findFirst({ where: { ovenId: run.ovenId, state: 'IN_OVEN' } });
      if (other)
        throw invalid('input.run', input.run, `another run is in ${run.oven.name} since; take that back first`);
    }
    if (run.state === 'FINISHED' || run.state === 'INTERRUPTED') await eventsBack(work, run);
    await work.tx.dryingRun.update({ where: { id: run.id }, data });
    work.changed('DryingRun', run.id, 'CHANGED');
    return { runId: run.id, notes: [], moved: false };
  });
}
