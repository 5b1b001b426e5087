// A need that is told again with what is different.
import type { z } from 'zod';
import type { Context } from '../context.ts';
import type { Need } from '../database/generated/sqlite/client.ts';
import { invalid, missing } from '../errors.ts';
import { needLetGo } from '../stock/service.ts';
import { write, type Work } from '../work.ts';
import { replanned } from './plan.ts';
import { checkUnbegun } from './rules.ts';
import type { setNeedSaid } from './said.ts';
import { type NeedsKept, needOf } from './need.ts';
import { saidOf } from './need-again.ts';
import { columnsOf, checkTime } from './need-columns.ts';

/** What was begun of it: then only when, where, for whom and how much it counts may change. */
async function isBegun(work: Work, { id }: Need): Promise<boolean> {
  const steps = await work.tx.prepStep.count({
    where: { needId: id, OR: [{ doneAt: { not: null } }, { begunAt: { not: null } }] },
  });
  return steps > 0;
}

const defining = [
  'plates',
  'dryGrams',
  'diameterMm',
  'bedLengthMm',
  'sampleMg',
  'deltaRf',
  'sorbentId',
  'backing',
] as const;

export function needSet(context: Context, input: z.output<typeof setNeedSaid>): Promise<NeedsKept> {
  const { lab } = context;
  return write(context, 'setNeed', input, async (work) => {
    const need = await needOf(work, input.id);
    if (need.droppedAt) throw invalid('input.id', input.id, 'one that was not dropped; bring it back first');
    if (need.metAt) throw invalid('input.id', input.id, 'one that was not handed over yet');
    const { id: _, clientKey: __, ...changes } = input;
    const given = Object.fromEntries(Object.entries(changes).filter(([, value]) => value !== undefined));
    for (const name of ['sorbent', 'at', 'forWhom'])
      if (given[name] === null) throw missing(`input.${name}`, 'something');
    const before = await saidOf(work, need);
    const columns = await columnsOf(work, { ...before, ...given }, lab.timeZone);
    if (input.at) checkTime(input.at, work.now);
    const changed = defining.filter((name) => columns[name] !== need[name]);
    checkUnbegun(await isBegun(work, need), changed);
    await work.tx.need.update({ where: { id: need.id }, data: { ...columns, changedAt: work.now } });
    work.changed('Need', need.id, 'CHANGED');
    const isOther = changed.length > 0 || columns.isLotWished !== need.isLotWished || columns.lotId !== need.lotId;
    if (isOther && columns.isLotWished !== need.isLotWished) await needLetGo(work, need.id);
    if (changed.length > 0) await needLetGo(work, need.id);
    await replanned(work, lab);
    return { needIds: [need.id], notes: [] };
  });
}
