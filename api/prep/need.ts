// Needs as they are told for the first time; each plans everything anew.
import type { Context } from '../context.ts';
import type { Need } from '../database/generated/sqlite/client.ts';
import { unknown } from '../errors.ts';
import { localId } from '../stock/service.ts';
import { newId, write, type Work } from '../work.ts';
import { replanned } from './plan.ts';
import type { NeedSaid } from './said.ts';
import { seriesMade } from './series.ts';
import { type Columns, checkTime, columnsOf } from './need-columns.ts';

export type NeedsKept = { needIds: string[]; notes: string[] };

/** Writes one need, within a larger act. */
export async function needMade(work: Work, columns: Columns, seriesId: string | null = null): Promise<Need> {
  const need = await work.tx.need.create({
    data: { id: newId(), labId: work.labId, ...columns, seriesId, madeAt: work.now, changedAt: work.now },
  });
  work.changed('Need', need.id, 'MADE');
  return need;
}

/** Writes many needs at once, within a larger act; their ids in the order given. */
export async function needsMade(work: Work, all: readonly Columns[]): Promise<string[]> {
  const { labId, now } = work;
  const rows = all.map((columns) => ({ id: newId(), labId, ...columns, madeAt: now, changedAt: now }));
  await work.tx.need.createMany({ data: rows });
  for (const { id } of rows) work.changed('Need', id, 'MADE');
  return rows.map(({ id }) => id);
}

export async function needOf(work: Pick<Work, 'tx' | 'labId'>, id: string, path = 'input.id'): Promise<Need> {
  const key = localId('Need', id, path);
  const need = await work.tx.need.findFirst({ where: { id: key, labId: work.labId } });
  if (!need) throw unknown(path, id, 'the id of a need of this lab');
  return need;
}

export function needAdded(context: Context, input: NeedSaid): Promise<NeedsKept> {
  const { lab } = context;
  return write(context, 'addNeed', input, async (work) => {
    const { weekdays, untilDay, clientKey: _, ...said } = input;
    checkTime(input.at, work.now);
    const columns = await columnsOf(work, said, lab.timeZone);
    if (!weekdays || weekdays.length === 0) {
      const need = await needMade(work, columns);
      await replanned(work, lab);
      return { needIds: [need.id], notes: [] };
    }
    const needs = await seriesMade(work, lab, { weekdays, untilDay: untilDay ?? null, said, columns });
    await replanned(work, lab);
    return { needIds: needs.map(({ id }) => id), notes: [] };
  });
}
