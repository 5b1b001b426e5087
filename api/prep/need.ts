// Needs as they are told: added, changed, dropped, brought back, copied to another day. Each plans everything anew.
import { DateTime } from 'luxon';
import type { z } from 'zod';
import type { Context } from '../context.ts';
import type { Need, Prisma } from '../database/generated/sqlite/client.ts';
import { invalid, missing, unknown } from '../errors.ts';
import { roomNamed } from '../climate/service.ts';
import { localId, needLetGo, sorbentOf, lotNamed } from '../stock/service.ts';
import { newId, write, type Work } from '../work.ts';
import { checkSample } from './column.ts';
import { clockOf, dayOf, instantOn } from './hours.ts';
import { replanned } from './plan.ts';
import { checkNeed, checkUnbegun } from './rules.ts';
import type { copyNeedsSaid, dropNeedSaid, NeedSaid, setNeedSaid, whichNeedSaid } from './said.ts';
import { seriesMade, seriesToppedUp } from './series.ts';

export type NeedsKept = { needIds: string[]; notes: string[] };

type Columns = Omit<Prisma.NeedUncheckedCreateInput, 'id' | 'labId' | 'madeAt' | 'changedAt'>;

/** What is said of a need, as it is kept; refuses what does not go together. */
export async function columnsOf(
  work: Pick<Work, 'tx' | 'labId'>,
  said: Omit<NeedSaid, 'weekdays' | 'untilDay' | 'clientKey'>,
  timeZone: string,
  under = 'input',
): Promise<Columns> {
  const { tx, labId } = work;
  const sorbent = await sorbentOf({ tx, labId }, said.sorbent, `${under}.sorbent`);
  const lot = said.lotNumber ? await lotNamed({ tx, labId }, sorbent.id, said.lotNumber, `${under}.lotNumber`) : null;
  const room = said.room ? await roomNamed(tx, labId, said.room, `${under}.room`) : null;
  const isPlates = said.kind === 'PLATES';
  const facts = {
    kind: said.kind,
    plates: said.plates ?? null,
    backing: said.backing ?? null,
    isForExtraction: said.isForExtraction ?? false,
    mobilePhase: said.mobilePhase ?? null,
    isPreWashed: isPlates ? (said.isPreWashed ?? true) : false,
    regime: isPlates ? (said.regime ?? ('DRY_UNTIL_SPOTTED' as const)) : (said.regime ?? null),
    regimeHumidityPercent: said.regimeHumidityPercent ?? null,
    dryGrams: said.dryGrams ?? null,
    limitWaterFraction: said.limitWaterFraction ?? null,
    diameterMm: said.diameterMm ?? null,
    bedLengthMm: said.bedLengthMm ?? null,
    sampleMg: said.sampleMg ?? null,
    deltaRf: said.deltaRf ?? null,
    columnVolumes: said.columnVolumes ?? null,
    flowMlPerMin: said.flowMlPerMin ?? null,
  };
  checkNeed(facts, under);
  checkSample(facts, under);
  return {
    ...facts,
    sorbentId: sorbent.id,
    lotId: lot?.id ?? null,
    isLotWished: lot !== null,
    at: said.at,
    day: dayOf(said.at, timeZone),
    roomId: room?.id ?? null,
    forWhom: said.forWhom,
    note: said.note || null,
    weight: said.priority ?? 1,
  };
}

/** Refuses a time that is over, or further than plans reach. */
export function checkTime(at: Date, now: Date, path = 'input.at'): void {
  if (at <= now) throw invalid(path, at.toISOString(), `later than now (${now.toISOString()})`);
  if (at.getTime() > now.getTime() + 370 * 86_400_000) throw invalid(path, at.toISOString(), 'within a year');
}

/** Writes one need, within a larger act. */
export async function needMade(work: Work, columns: Columns, seriesId: string | null = null): Promise<Need> {
  const need = await work.tx.need.create({
    data: { id: newId(), labId: work.labId, ...columns, seriesId, madeAt: work.now, changedAt: work.now },
  });
  work.changed('Need', need.id, 'MADE');
  return need;
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

/** Told again with what is different. */
async function saidOf(work: Work, need: Need): Promise<Omit<NeedSaid, 'weekdays' | 'untilDay' | 'clientKey'>> {
  const { tx } = work;
  const sorbent = await tx.sorbent.findUniqueOrThrow({ where: { id: need.sorbentId } });
  const lot = need.isLotWished && need.lotId ? await tx.lot.findUnique({ where: { id: need.lotId } }) : null;
  const room = need.roomId ? await tx.room.findUnique({ where: { id: need.roomId } }) : null;
  const { lotId: _, sorbentId: __, roomId: ___, obstacle: ____, weight, ...rest } = need;
  return {
    ...rest,
    priority: weight as 1 | 2 | 4 | 8,
    sorbent: sorbent.name,
    lotNumber: lot?.lotNumber ?? null,
    room: room?.name ?? null,
  };
}

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

export { seriesToppedUp };
