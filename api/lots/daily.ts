// The daily check: two dyes on any plate, two numbers. And a run that was a slip is taken back.
import type { z } from 'zod';
import type { Context } from '../context.ts';
import type { RetentionRun, Sorbent } from '../database/generated/sqlite/client.ts';
import { invalid, missing, unknown, type Refused } from '../errors.ts';
import { onceEach } from '../once.ts';
import { localId, lotNamed, sorbentOf } from '../stock/service.ts';
import { write, type Work } from '../work.ts';
import { placed, runsKept, toldRows, type Owner, type Placed } from './runs.ts';
import type { DailyCheckSaid, dailyTableSaid, runBackSaid, runsBackSaid } from './said.ts';
import { tableRead } from './table.ts';

export type RunsKept = { runIds: string[] };

/** Of which sorbent it is: as it was said, or what its container holds. */
async function sorbentFor(work: Work, said: string | null | undefined, { path, around }: Placed): Promise<Sorbent> {
  if (said) return sorbentOf(work, said);
  if (!around.container) throw missing(`${path}.label`, 'the label of the container, or sorbent and lot number');
  const lot = await work.tx.lot.findUniqueOrThrow({
    where: { id: around.container.lotId },
    include: { sorbent: true },
  });
  return lot.sorbent;
}

/** The lot that a run names, or its container is of; each is looked up once. */
function lotsOf({ tx, labId }: Work, sorbent: Sorbent): Owner['lotFor'] {
  const named = onceEach(
    (lotNumber: string, path: string) => lotNamed({ tx, labId }, sorbent.id, lotNumber, path),
    (lotNumber) => lotNumber,
  );
  const ofContainer = onceEach((id: string) => tx.lot.findUniqueOrThrow({ where: { id } }));
  return async ({ run, path, around: { container } }) => {
    const lot = container && (await ofContainer(container.lotId));
    if (lot && lot.sorbentId !== sorbent.id)
      throw invalid(`${path}.label`, container.label, `a container of ${sorbent.name}`);
    if (run.lotNumber) return named(run.lotNumber, `${path}.lotNumber`);
    if (lot) return lot;
    throw missing(`${path}.lotNumber`, 'the lot number, or the label of the container');
  };
}

export async function dailyCheckRecorded(context: Context, input: DailyCheckSaid): Promise<RunsKept> {
  const { sorbent: _, retention: said, clientKey: __, ...run } = input;
  const retention = said ?? 'RF';
  const all = await placed(context, retention, [{ run, path: 'input', line: null }]);
  return write(context, 'recordDailyCheck', input, async (work) => {
    const [one] = all;
    if (!one) return { runIds: [] };
    const sorbent = await sorbentFor(work, input.sorbent, one);
    const owner = { checkId: null, sorbentId: sorbent.id, retention, lotFor: lotsOf(work, sorbent) };
    return { runIds: await runsKept(work, all, owner) };
  });
}

/** Many at once, from a table. */
export async function dailyChecksRecorded(context: Context, input: z.output<typeof dailyTableSaid>): Promise<RunsKept> {
  const { table, sorbent: name, retention: said, clientKey: _, ...common } = input;
  const { lab, now } = context;
  const retention = said ?? 'RF';
  const rows = tableRead(table, retention, { timeZone: lab.timeZone, now: now() });
  const all = await placed(context, retention, toldRows(rows, common));
  return write(context, 'recordDailyChecks', input, async (work) => {
    const sorbent = await sorbentOf(work, name);
    const owner = { checkId: null, sorbentId: sorbent.id, retention, lotFor: lotsOf(work, sorbent) };
    return { runIds: await runsKept(work, all, owner) };
  });
}

/** Takes runs back together, or lets them count again: of daily checks or of lot checks. All of them or none. */
export function runsTakenBack(
  context: Context,
  input: z.output<typeof runsBackSaid>,
  back: boolean,
): Promise<RunsKept> {
  return write(context, back ? 'takeRunsBack' : 'restoreRuns', input, async (work) => {
    const ids = input.runs.map((run, i) => localId('RetentionRun', run, `input.runs.${i}`));
    await setTakenBack(work, ids, back, (id) => {
      const at = ids.indexOf(id);
      return unknown(`input.runs.${at}`, input.runs[at], 'the id of a run of this lab');
    });
    return { runIds: [...new Set(ids)] };
  });
}

/** The same of one run. */
export function runTakenBack(context: Context, input: z.output<typeof runBackSaid>, back: boolean): Promise<RunsKept> {
  return write(context, back ? 'takeRunBack' : 'restoreRun', input, async (work) => {
    const id = localId('RetentionRun', input.run, 'input.run');
    await setTakenBack(work, [id], back, () => unknown('input.run', input.run, 'the id of a run of this lab'));
    return { runIds: [id] };
  });
}

async function setTakenBack(
  work: Work,
  ids: readonly string[],
  back: boolean,
  strange: (id: string) => Refused,
): Promise<void> {
  const { tx, labId, now } = work;
  const where = { id: { in: [...ids] }, labId };
  const found = new Set((await tx.retentionRun.findMany({ where, select: { id: true } })).map(({ id }) => id));
  for (const id of ids) if (!found.has(id)) throw strange(id);
  await tx.retentionRun.updateMany({ where, data: { takenBackAt: back ? now : null } });
  for (const id of found) work.changed('RetentionRun', id, 'CHANGED');
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
  return database.read.retentionRun.findMany({
    where: { labId: lab.id, checkId: null, takenBackAt: null, ...(sorbentId ? { sorbentId } : {}) },
    orderBy: [{ at: 'desc' }, { id: 'desc' }],
    take: first ?? 30,
  });
}
