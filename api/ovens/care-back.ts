// Oven care that ends, is taken back, or counts again.
import { z } from 'zod';
import type { Context } from '../context.ts';
import type { OvenCare } from '../database/generated/sqlite/client.ts';
import { invalid, unknown } from '../errors.ts';
import { localId } from '../stock/service.ts';
import { write, type Work } from '../work.ts';
import { careBackSaid, endSaid } from './care-said.ts';
import type { CareKept } from './care.ts';

async function careOf({ tx, labId }: Work, said: string): Promise<OvenCare> {
  const found = await tx.ovenCare.findFirst({ where: { id: localId('OvenCare', said, 'input.care'), labId } });
  if (!found) throw unknown('input.care', said, 'the id of something noted of an oven of this lab');
  return found;
}

/** Takes a note back, or lets it count again. */
export function careTakenBack(
  context: Context,
  input: z.output<typeof careBackSaid>,
  back: boolean,
): Promise<CareKept> {
  return write(context, back ? 'takeOvenCareBack' : 'restoreOvenCare', input, async (work) => {
    const { id } = await careOf(work, input.care);
    await work.tx.ovenCare.update({ where: { id }, data: { takenBackAt: back ? work.now : null } });
    work.changed('OvenCare', id, 'CHANGED');
    return { careId: id };
  });
}

/** It works again: what was out of order ends. */
export function careEnded(context: Context, input: z.output<typeof endSaid>): Promise<CareKept> {
  return write(context, 'endOvenCare', input, async (work) => {
    const { id, at, kind } = await careOf(work, input.care);
    const until = input.at ?? work.now;
    if (kind !== 'OUT_OF_ORDER' && kind !== 'BAKE_OUT') {
      throw invalid('input.care', input.care, 'something that lasts: out of order, or a bake-out');
    }
    if (until <= at) throw invalid('input.at', until.toISOString(), `after it began, ${at.toISOString()}`);
    await work.tx.ovenCare.update({ where: { id }, data: { until } });
    work.changed('OvenCare', id, 'CHANGED');
    return { careId: id };
  });
}
