// The needs of one day again on another.
import { DateTime } from 'luxon';
import type { z } from 'zod';
import type { Context } from '../context.ts';
import { invalid } from '../errors.ts';
import { localId } from '../stock/service.ts';
import { write } from '../work.ts';
import { clockOf, instantOn } from './hours.ts';
import { replanned } from './plan.ts';
import type { copyNeedsSaid } from './said.ts';
import { type NeedsKept, needMade } from './need.ts';
import { checkTime, columnsOf } from './need-columns.ts';
import { saidOf } from './need-again.ts';

/** The needs of one day again on another, at the same times of the clock: "same as last Friday". */
export function needsCopied(context: Context, input: z.output<typeof copyNeedsSaid>): Promise<NeedsKept> {
  const { lab } = context;
  return write(context, 'copyNeeds', input, async (work) => {
    const { fromDay, toDay, ids } = input;
    const keys = ids?.map((id) => localId('Need', id, 'input.ids'));
    const needs = await work.tx.need.findMany({
      where: { labId: work.labId, day: fromDay, droppedAt: null, ...(keys ? { id: { in: keys } } : {}) },
      orderBy: [{ at: 'asc' }, { id: 'asc' }],
    });
    if (needs.length === 0) throw invalid('input.fromDay', fromDay, 'a day on which something was needed');
    if (fromDay === toDay) throw invalid('input.toDay', toDay, 'another day');
    const needIds: string[] = [];
    for (const need of needs) {
      const at = instantOn(toDay, clockOf(need.at, lab.timeZone), lab.timeZone);
      if (!DateTime.fromJSDate(at).isValid) throw invalid('input.toDay', toDay, 'a day that there is');
      checkTime(at, work.now, 'input.toDay');
      const columns = await columnsOf(work, { ...(await saidOf(work, need)), at }, lab.timeZone);
      needIds.push((await needMade(work, columns)).id);
    }
    await replanned(work, lab);
    return { needIds, notes: [] };
  });
}
