// Bottles of solvent in use: batch, opened on, tested for peroxides on.
import { z } from 'zod';
import type { Context } from '../context.ts';
import { said } from '../stock/service.ts';
import { newId, write } from '../work.ts';
import { dayOf } from './hours.ts';
import { daySaid } from './said.ts';

export const batchSaid = z.object({
  solvent: said.name,
  batch: said.name,
  openedOn: daySaid.nullish(),
  peroxideTestedOn: daySaid.nullish(),
  isFinished: z.boolean('true or false').nullish(),
  clientKey: said.clientKey,
});

/** Notes a bottle; the same solvent and batch again is the same bottle. */
export function batchNoted(context: Context, input: z.output<typeof batchSaid>): Promise<{ batchId: string }> {
  const { lab } = context;
  return write(context, 'noteSolventBatch', input, async (work) => {
    const { tx, labId, now } = work;
    const { solvent, batch, openedOn, peroxideTestedOn, isFinished } = input;
    const there = await tx.solventBatch.findFirst({ where: { labId, solvent, batch } });
    const data = {
      ...(openedOn ? { openedOn } : {}),
      ...(peroxideTestedOn !== undefined ? { peroxideTestedOn } : {}),
      ...(isFinished === undefined ? {} : { finishedAt: isFinished ? now : null }),
    };
    const opened = { openedOn: openedOn ?? dayOf(now, lab.timeZone), addedAt: now };
    const row = there
      ? await tx.solventBatch.update({ where: { id: there.id }, data })
      : await tx.solventBatch.create({ data: { id: newId(), labId, solvent, batch, ...opened, ...data } });
    work.changed('SolventBatch', row.id, there ? 'CHANGED' : 'MADE');
    return { batchId: row.id };
  });
}
