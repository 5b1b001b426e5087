// An oven is changed.
import { z } from 'zod';
import { roomNamed } from '../climate/service.ts';
import type { Context } from '../context.ts';
import { write } from '../work.ts';
import { setOvenSaid } from './oven-said.ts';
import { type OvenKept, usedOven } from './ovens.ts';
import { checkName, checkWhole, hoursKept } from './oven-checked.ts';

/** What may be null there; of the others null says nothing. */
const nullable = ['pressureMbar', 'waterMbar', 'pumpM3PerH'] as const;

export function ovenSet(context: Context, input: z.output<typeof setOvenSaid>): Promise<OvenKept> {
  return write(context, 'setOven', input, async (work) => {
    const { tx, labId } = work;
    const before = await usedOven(work, input.oven);
    const { clientKey: _, oven: __, room, hours: open, ...rest } = input;
    const may: ReadonlySet<string> = new Set(nullable);
    const changes = Object.fromEntries(
      Object.entries(rest).filter(([key, value]) => value !== undefined && (value !== null || may.has(key))),
    );
    if (input.name) await checkName(work, input.name, before.id);
    checkWhole({ ...before, ...changes });
    const roomId = room ? (await roomNamed(tx, labId, room, 'input.room')).id : before.roomId;
    const kept = open === undefined ? {} : { hours: hoursKept(open) };
    await tx.oven.update({ where: { id: before.id }, data: { ...changes, roomId, ...kept } });
    work.changed('Oven', before.id, 'CHANGED');
    return { ovenId: before.id };
  });
}
