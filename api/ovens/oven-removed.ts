// An oven is taken out of use, and put back.
import { z } from 'zod';
import type { Context } from '../context.ts';
import { invalid } from '../errors.ts';
import { write } from '../work.ts';
import { ovenSaid } from './oven-said.ts';
import { type OvenKept, ovenOf } from './ovens.ts';
import { checkName } from './oven-checked.ts';

/** Takes an oven out of use; its runs and care stay. One with something in it is refused. */
export function ovenRemoved(context: Context, input: z.output<typeof ovenSaid>): Promise<OvenKept> {
  return write(context, 'removeOven', input, async (work) => {
    const oven = await ovenOf(work, input.oven);
    const inIt = await work.tx.dryingRun.count({ where: { ovenId: oven.id, state: 'IN_OVEN' } });
    if (inIt > 0) throw invalid('input.oven', input.oven, 'something is in it; an empty oven');
    if (!oven.removedAt) {
      await work.tx.oven.update({ where: { id: oven.id }, data: { removedAt: work.now } });
      await work.tx.dryingRun.updateMany({ where: { ovenId: oven.id, state: 'PLANNED' }, data: { isPinned: false } });
      work.changed('Oven', oven.id, 'CHANGED');
    }
    return { ovenId: oven.id };
  });
}

/** Puts a removed oven back into use. */
export function ovenRestored(context: Context, input: z.output<typeof ovenSaid>): Promise<OvenKept> {
  return write(context, 'restoreOven', input, async (work) => {
    const oven = await ovenOf(work, input.oven);
    if (oven.removedAt) {
      await checkName(work, oven.name, oven.id);
      await work.tx.oven.update({ where: { id: oven.id }, data: { removedAt: null } });
      work.changed('Oven', oven.id, 'CHANGED');
    }
    return { ovenId: oven.id };
  });
}
