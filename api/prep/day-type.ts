// What the prep adds to the day: what comes next, and what to do before going home.
import { builder } from '../builder.ts';
import type { Context } from '../context.ts';
import type { PrepStep } from '../database/generated/sqlite/client.ts';
import { DayRef } from '../stock/refs.ts';
import { dayOf, daysAfter, instantOn } from './hours.ts';
import { planBroughtUp } from './current.ts';
import { PrepStepRef } from './refs.ts';
import { prepSettingsOf } from './settings.ts';
import { waiting } from './waiting.ts';

/** Steps that somebody does something for. */
async function open(context: Context, until: Date | null, from: Date | null, take: number): Promise<PrepStep[]> {
  await planBroughtUp(context);
  return context.database.read.prepStep.findMany({
    where: {
      labId: context.lab.id,
      doneAt: null,
      goneAt: null,
      kind: { notIn: [...waiting] },
      need: { droppedAt: null, metAt: null, at: { gt: context.now() } },
      startAt: { ...(from ? { gte: from } : {}), ...(until ? { lt: until } : {}) },
    },
    orderBy: [{ startAt: 'asc' }, { id: 'asc' }],
    take,
  });
}

builder.objectFields(DayRef, (t) => ({
  nextPrepStep: t.field({
    type: PrepStepRef,
    nullable: true,
    description: 'The next step of the prep that is not ticked; null when there is none.',
    resolve: async (_, __, context) => (await open(context, null, null, 1))[0] ?? null,
  }),
  beforeLeaving: t.field({
    type: [PrepStepRef],
    description: 'What to do before going home: the open steps of this evening, in order.',
    resolve: (_, __, context) => {
      const { lab } = context;
      const today = dayOf(context.now(), lab.timeZone);
      const evening = instantOn(today, prepSettingsOf(lab.settings).eveningFrom, lab.timeZone);
      return open(context, instantOn(daysAfter(today, 1), '00:00', lab.timeZone), evening, 200);
    },
  }),
}));
