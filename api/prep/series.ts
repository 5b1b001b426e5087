// Needs that come again on some weekdays: written out some days ahead, each at the same time of the lab's clock.
import type { NeedSeries, Prisma } from '../database/generated/sqlite/client.ts';
import { z } from 'zod';
import type { Need } from '../database/generated/sqlite/client.ts';
import { invalid } from '../errors.ts';
import { newId, type Work } from '../work.ts';
import type { LabFacts } from './facts.ts';
import { clockOf, dayOf, daysAfter, instantOn, weekdayOf } from './hours.ts';

/** So many days ahead they are written out. */
const aheadDays = 14;

type Columns = Omit<Prisma.NeedUncheckedCreateInput, 'id' | 'labId' | 'madeAt' | 'changedAt'>;

interface Again {
  weekdays: number[];
  untilDay: string | null;
  said: object;
  columns: Columns;
}

const kept = z.record(z.string(), z.unknown());

/** Days of a series from one day to another. */
export function daysOf(weekdays: readonly number[], fromDay: string, toDay: string): string[] {
  const days: string[] = [];
  for (let day = fromDay; day <= toDay; day = daysAfter(day, 1)) if (weekdays.includes(weekdayOf(day))) days.push(day);
  return days;
}

async function writtenOut(work: Work, lab: LabFacts, series: NeedSeries, columns: Columns): Promise<Need[]> {
  const { tx, now } = work;
  const weekdays = z.array(z.number()).parse(series.weekdays);
  const today = dayOf(now, lab.timeZone);
  const from = series.fromDay > today ? series.fromDay : today;
  const ahead = daysAfter(today, aheadDays);
  const last = series.untilDay !== null && series.untilDay < ahead ? series.untilDay : ahead;
  const there = new Set(
    (await tx.need.findMany({ where: { seriesId: series.id }, select: { day: true } })).map(({ day }) => day),
  );
  const made: Need[] = [];
  for (const day of daysOf(weekdays, from, last)) {
    const at = instantOn(day, series.clock, lab.timeZone);
    if (there.has(day) || at <= now) continue;
    const need = await tx.need.create({
      data: { ...columns, id: newId(), labId: work.labId, at, day, seriesId: series.id, madeAt: now, changedAt: now },
    });
    work.changed('Need', need.id, 'MADE');
    made.push(need);
  }
  return made;
}

/** A new series with the needs of its first days. */
export async function seriesMade(work: Work, lab: LabFacts, { weekdays, untilDay, columns }: Again): Promise<Need[]> {
  const at = new Date(columns.at);
  const fromDay = dayOf(at, lab.timeZone);
  if (untilDay !== null && untilDay < fromDay) throw invalid('input.untilDay', untilDay, `${fromDay} or later`);
  const series = await work.tx.needSeries.create({
    data: {
      id: newId(),
      labId: work.labId,
      weekdays: [...new Set(weekdays)].sort((one, other) => one - other),
      clock: clockOf(at, lab.timeZone),
      fromDay,
      untilDay,
      said: { ...columns, at: at.toISOString() } as Prisma.InputJsonObject,
      madeAt: work.now,
    },
  });
  const needs = await writtenOut(work, lab, series, columns);
  if (needs.length > 0) return needs;
  // None falls on the days to come: the first is written out all the same.
  const first = daysOf(weekdays, fromDay, daysAfter(fromDay, 7))[0] ?? fromDay;
  const need = await work.tx.need.create({
    data: {
      ...columns,
      id: newId(),
      labId: work.labId,
      at: instantOn(first, series.clock, lab.timeZone),
      day: first,
      seriesId: series.id,
      madeAt: work.now,
      changedAt: work.now,
    },
  });
  work.changed('Need', need.id, 'MADE');
  return [need];
}

/** Writes out what has come within reach since. */
export async function seriesToppedUp(work: Work, lab: LabFacts): Promise<void> {
  const all = await work.tx.needSeries.findMany({ where: { labId: work.labId, endedAt: null } });
  for (const series of all) {
    const columns = kept.parse(series.said) as unknown as Columns;
    await writtenOut(work, lab, series, columns);
  }
}
