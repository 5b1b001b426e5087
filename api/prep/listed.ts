// Needs between two times.
import type { Context } from '../context.ts';
import type { Need } from '../database/generated/sqlite/client.ts';
import { planBroughtUp } from './current.ts';
import { dayOf, instantOn } from './hours.ts';

const mostListed = 500;

interface Between {
  from?: Date | null | undefined;
  to?: Date | null | undefined;
  dropped?: boolean | null | undefined;
}

export async function needsBetween(context: Context, { from, to, dropped }: Between): Promise<Need[]> {
  await planBroughtUp(context);
  const { database, lab } = context;
  const begins = from ?? instantOn(dayOf(context.now(), lab.timeZone), '00:00', lab.timeZone);
  return database.read.need.findMany({
    where: {
      labId: lab.id,
      at: { gte: begins, ...(to ? { lt: to } : {}) },
      ...(dropped ? {} : { droppedAt: null }),
    },
    orderBy: [{ at: 'asc' }, { id: 'asc' }],
    take: mostListed,
  });
}
