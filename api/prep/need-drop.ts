// Needs that are dropped, and brought back.
import type { z } from 'zod';
import type { Context } from '../context.ts';
import type { Need } from '../database/generated/sqlite/client.ts';
import { invalid } from '../errors.ts';
import { needLetGo } from '../stock/service.ts';
import { write, type Work } from '../work.ts';
import { replanned } from './plan.ts';
import type { dropNeedSaid, whichNeedSaid } from './said.ts';
import { type NeedsKept, needOf } from './need.ts';
import { checkTime } from './need-columns.ts';

async function dropped(work: Work, need: Need): Promise<void> {
  if (need.droppedAt) return;
  if (need.metAt) throw invalid('input.id', need.id, 'one that was not handed over yet');
  await work.tx.need.update({ where: { id: need.id }, data: { droppedAt: work.now, changedAt: work.now } });
  await needLetGo(work, need.id);
  const steps = await work.tx.prepStep.findMany({ where: { needId: need.id, doneAt: null, goneAt: null } });
  for (const { id, version } of steps) {
    await work.tx.prepStep.update({
      where: { id },
      data: { goneAt: work.now, version: version + 1, changedAt: work.now },
    });
    work.changed('PrepStep', id, 'GONE');
  }
  work.changed('Need', need.id, 'CHANGED');
}

/** Drops a need, or all that is to come of its series; what was kept is free again. */
export function needDropped(context: Context, input: z.output<typeof dropNeedSaid>): Promise<NeedsKept> {
  const { lab } = context;
  return write(context, 'dropNeed', input, async (work) => {
    const need = await needOf(work, input.id);
    const all =
      input.isSeries && need.seriesId
        ? await work.tx.need.findMany({
            where: { seriesId: need.seriesId, at: { gte: need.at }, droppedAt: null, metAt: null },
          })
        : [need];
    if (input.isSeries && need.seriesId) {
      await work.tx.needSeries.update({ where: { id: need.seriesId }, data: { endedAt: work.now } });
    }
    for (const each of all) await dropped(work, each);
    await replanned(work, lab);
    return { needIds: all.map(({ id }) => id), notes: [] };
  });
}

/** Brings back what was dropped; its stock is chosen anew. */
export function needRestored(context: Context, input: z.output<typeof whichNeedSaid>): Promise<NeedsKept> {
  const { lab } = context;
  return write(context, 'restoreNeed', input, async (work) => {
    const need = await needOf(work, input.id);
    if (!need.droppedAt) return { needIds: [need.id], notes: [] };
    checkTime(need.at, work.now, 'input.id');
    const lotId = need.isLotWished ? need.lotId : null;
    await work.tx.need.update({ where: { id: need.id }, data: { droppedAt: null, changedAt: work.now, lotId } });
    work.changed('Need', need.id, 'CHANGED');
    await replanned(work, lab);
    return { needIds: [need.id], notes: [] };
  });
}
