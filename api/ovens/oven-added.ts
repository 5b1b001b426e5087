// An oven is added.
import { z } from 'zod';
import { roomNamed } from '../climate/service.ts';
import type { Context } from '../context.ts';
import { invalid } from '../errors.ts';
import { newId, write } from '../work.ts';
import { addOvenSaid } from './oven-said.ts';
import { type OvenKept, used } from './ovens.ts';
import { checkName, checkWhole, hoursKept } from './oven-checked.ts';

/** The planner tells ovens apart by the bits of a word. */
const mostOvens = 30;

/** Where nobody measured: invented defaults of a bench oven. */
const usual = { heatMinutesPerC: 0.5, coolMinutesPerC: 1, doorMinutes: 5 };

export function ovenAdded(context: Context, input: z.output<typeof addOvenSaid>): Promise<OvenKept> {
  return write(context, 'addOven', input, async (work) => {
    const { tx, labId } = work;
    const { clientKey: _, room, hours: open, ...rest } = input;
    await checkName(work, input.name, null);
    if ((await used(tx, labId)).length >= mostOvens) {
      throw invalid('input.name', input.name, `at most ${mostOvens} ovens; remove one first`);
    }
    const { id: roomId } = await roomNamed(tx, labId, room, 'input.room');
    const oven = {
      ...rest,
      roomId,
      hasFan: rest.hasFan ?? false,
      heatMinutesPerC: rest.heatMinutesPerC ?? usual.heatMinutesPerC,
      coolMinutesPerC: rest.coolMinutesPerC ?? usual.coolMinutesPerC,
      doorMinutes: rest.doorMinutes ?? usual.doorMinutes,
      pressureMbar: rest.pressureMbar ?? null,
      waterMbar: rest.waterMbar ?? null,
      pumpM3PerH: rest.pumpM3PerH ?? null,
      isUnattended: rest.isUnattended ?? true,
    };
    checkWhole(oven);
    const ovenId = newId();
    await tx.oven.create({ data: { id: ovenId, labId, ...oven, hours: hoursKept(open), addedAt: work.now } });
    work.changed('Oven', ovenId, 'MADE');
    return { ovenId };
  });
}
