// The daily check: two dyes on any plate, two numbers. And a run that was a slip is taken back.
import type { z } from 'zod';
import type { Context } from '../context.ts';
import type { Lot, RetentionRun, Sorbent } from '../database/generated/sqlite/client.ts';
import { invalid, missing, unknown } from '../errors.ts';
import { localId, lotNamed, sorbentOf } from '../stock/service.ts';
import { write, type Work } from '../work.ts';
import { placed, runsKept, withCommon, type Placed } from './runs.ts';
import type { DailyCheckSaid, dailyTableSaid, runBackSaid } from './said.ts';
import { tableRead } from './table.ts';

export type RunsKept = { runIds: string[] };

/** Of which sorbent it is: as it was said, or what its container holds. */
async function sorbentFor(work: Work, said: string | null | undefined, one: Placed): Promise<Sorbent> {
  const { container } = one.around;
  const lot = container ? await work.tx.lot.findUniqueOrThrow({ where: { id: container.lotId } }) : null;
  if (!said) {
    if (!lot) throw missing(`${one.path}.label`, 'the label of the container, or sorbent and lot number');
    return work.tx.sorbent.findUniqueOrThrow({ where: { id: lot.sorbentId } });
  }
  const sorbent = await sorbentOf(work, said);
  if (lot && lot.sorbentId !== sorbent.id)
    throw invalid(`${one.path}.label`, container?.label, `a container of ${sorbent.name}`);
  return sorbent;
}

async function lotFor(work: Work, sorbentId: string, { run, path, around }: Placed): Promise<Lot> {
  if (run.lotNumber) return lotNamed(work, sorbentId, run.lotNumber, `${path}.lotNumber`);
  if (around.container) return work.tx.lot.findUniqueOrThrow({ where: { id: around.container.lotId } });
  throw missing(`${path}.lotNumber`, 'the lot number, or the label of the container');
}

export async function dailyCheckRecorded(context: Context, input: DailyCheckSaid): Promise<RunsKept> {
  const { sorbent: _, retention: __, clientKey: ___, ...run } = input;
  const all = await placed(context, [{ run, path: 'input' }]);
  return write(context, 'recordDailyCheck', input, async (work) => {
    const [one] = all;
    if (!one) return { runIds: [] };
    const sorbent = await sorbentFor(work, input.sorbent, one);
    const retention = input.retention ?? 'RF';
    const owner = { checkId: null, sorbentId: sorbent.id, retention };
    return { runIds: await runsKept(work, all, { ...owner, lotFor: (each) => lotFor(work, sorbent.id, each) }) };
  });
}

/** Many at once, from a table. */
export async function dailyChecksRecorded(context: Context, input: z.output<typeof dailyTableSaid>): Promise<RunsKept> {
  const { table, sorbent: name, retention: said, clientKey: _, ...common } = input;
  const retention = said ?? 'RF';
  const told = tableRead(table, retention, context.lab.timeZone).map(({ line, ...run }) => ({
    run: withCommon(run, common),
    path: `input.table.line ${line}`,
  }));
  const all = await placed(context, told);
  return write(context, 'recordDailyChecks', input, async (work) => {
    const sorbent = await sorbentOf(work, name);
    const owner = { checkId: null, sorbentId: sorbent.id, retention };
    return { runIds: await runsKept(work, all, { ...owner, lotFor: (each) => lotFor(work, sorbent.id, each) }) };
  });
}

/** Takes a run back, or lets it count again: of a daily check or of a lot check. */
export function runTakenBack(context: Context, input: z.output<typeof runBackSaid>, back: boolean): Promise<RunsKept> {
  return write(context, back ? 'takeRunBack' : 'restoreRun', input, async (work) => {
    const { tx, labId } = work;
    const id = localId('RetentionRun', input.run, 'input.run');
    const found = await tx.retentionRun.findFirst({ where: { id, labId } });
    if (!found) throw unknown('input.run', input.run, 'the id of a run of this lab');
    await tx.retentionRun.update({ where: { id }, data: { takenBackAt: back ? work.now : null } });
    work.changed('RetentionRun', id, 'CHANGED');
    return { runIds: [id] };
  });
}

export interface Asked {
  readonly sorbent?: string | null | undefined;
  readonly first?: number | null | undefined;
}

/** Daily checks, the newest first. */
export async function dailyChecksOf(context: Context, { sorbent, first }: Asked): Promise<RetentionRun[]> {
  const { database, lab } = context;
  const place = { tx: database.read, labId: lab.id };
  const sorbentId = sorbent ? (await sorbentOf(place, sorbent, 'sorbent')).id : null;
  const take = Math.min(Math.max(first ?? 30, 0), 500);
  return database.read.retentionRun.findMany({
    where: { labId: lab.id, checkId: null, takenBackAt: null, ...(sorbentId ? { sorbentId } : {}) },
    orderBy: [{ at: 'desc' }, { id: 'desc' }],
    take,
  });
}
