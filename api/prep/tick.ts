// Ticking a step: what it says was done is recorded on the containers of its need, and everything is planned anew.
import { z } from 'zod';
import type { Context } from '../context.ts';
import type { PrepStep, PrepStepKind } from '../database/generated/sqlite/client.ts';
import { invalid, unknown } from '../errors.ts';
import { localId, needLetGo, said, takenBack } from '../stock/service.ts';
import { write, type Work } from '../work.ts';
import { stepDone } from './done.ts';
import { replanned } from './plan.ts';
import { saidTime } from './hours.ts';
import { isWaiting } from './waiting.ts';
import { labelOf } from './words.ts';

const step = z.string('the id of a step');

const how = {
  at: z.date('an instant').nullish(),
  note: said.text,
  /** Of what is dried apart: the listed vessel that holds it. */
  vessel: said.name.nullish(),
  waterFraction: said.waterFraction.nullish(),
  temperatureC: said.celsius.nullish(),
  minutes: said.minutes.nullish(),
};

export const tickStepSaid = z.object({ id: step, ...how, clientKey: said.clientKey });
export const untickStepSaid = z.object({ id: step, clientKey: said.clientKey });

const steps = z.array(step).min(1, 'one step or more').max(500, 'at most 500 steps');

export const untickStepsSaid = z.object({ ids: steps, clientKey: said.clientKey });

export const tickStepsSaid = z.object({
  ids: steps,
  except: z.array(step).max(500, 'at most 500 steps').nullish(),
  at: how.at,
  asPlanned: z.boolean('true or false').nullish(),
  note: how.note,
  clientKey: said.clientKey,
});

export type Ticked = { stepIds: string[]; notes: string[] };

export type How = Omit<z.output<typeof tickStepSaid>, 'id' | 'clientKey'>;

async function stepOf(work: Work, id: string, path: string): Promise<PrepStep> {
  const key = localId('PrepStep', id, path);
  const row = await work.tx.prepStep.findFirst({ where: { id: key, labId: work.labId } });
  if (!row) throw unknown(path, id, 'the id of a step of this lab');
  return row;
}

/** On the way to a need, in this order. */
const order: readonly PrepStepKind[] = [
  'PRE_WASH',
  'AIR_DRY',
  'OVEN',
  'COOL',
  'KEEP',
  'EQUILIBRATE',
  'PACK',
  'CONDITION',
  'REST',
  'HAND_OVER',
];

/** Refuses what cannot be done yet: an earlier step of the same need is open. */
async function checkTurn(work: Work, row: PrepStep, path: string, timeZone: string): Promise<void> {
  if (row.goneAt) throw invalid(path, row.id, 'a step that is planned still; the sheet was planned anew since');
  const open = await work.tx.prepStep.findMany({ where: { needId: row.needId, doneAt: null, goneAt: null } });
  const before = open
    .filter(({ kind }) => !isWaiting(kind) && order.indexOf(kind) < order.indexOf(row.kind))
    .sort((a, b) => order.indexOf(a.kind) - order.indexOf(b.kind))[0];
  if (!before) return;
  throw invalid(path, labelOf(row), `${labelOf(before)} first, planned for ${saidTime(before.startAt, timeZone)}`);
}

async function ticked(context: Context, work: Work, row: PrepStep, by: How, path: string): Promise<string[]> {
  if (row.doneAt) return [];
  await checkTurn(work, row, path, context.lab.timeZone);
  const at = by.at ?? work.now;
  const { events, notes } = await stepDone(work, row, { ...by, at }, path, context);
  await work.tx.prepStep.update({
    where: { id: row.id },
    data: { doneAt: at, doneById: work.actorId, events, version: row.version + 1, changedAt: work.now },
  });
  work.changed('PrepStep', row.id, 'CHANGED');
  return notes;
}

export function stepTicked(context: Context, input: z.output<typeof tickStepSaid>): Promise<Ticked> {
  return write(context, 'tickStep', input, async (work) => {
    const { id, clientKey: _, ...by } = input;
    const row = await stepOf(work, id, 'input.id');
    const notes = await ticked(context, work, row, by, 'input.id');
    await replanned(work, context.lab);
    return { stepIds: [row.id], notes };
  });
}

/** "All done as printed, except …": each in its turn, all or none. */
export function stepsTicked(context: Context, input: z.output<typeof tickStepsSaid>): Promise<Ticked> {
  return write(context, 'tickSteps', input, async (work) => {
    const except = new Set(input.except?.map((id) => localId('PrepStep', id, 'input.except')) ?? []);
    const rows: PrepStep[] = [];
    for (const [index, id] of input.ids.entries()) {
      const row = await stepOf(work, id, `input.ids.${index}`);
      if (!except.has(row.id) && !row.goneAt) rows.push(row);
    }
    // What was not done is planned anew from now on.
    for (const id of except) {
      await work.tx.prepStep.updateMany({
        where: { id, labId: work.labId, doneAt: null },
        data: { begunAt: null, goneAt: work.now },
      });
    }
    const inTurn = rows.sort(
      (a, b) => a.startAt.getTime() - b.startAt.getTime() || order.indexOf(a.kind) - order.indexOf(b.kind),
    );
    const notes: string[] = [];
    for (const row of inTurn) {
      // What an earlier tick recorded may have changed it.
      const now = await work.tx.prepStep.findUniqueOrThrow({ where: { id: row.id } });
      const planned = input.asPlanned && row.endAt < work.now ? row.endAt : null;
      notes.push(...(await ticked(context, work, now, { at: input.at ?? planned, note: input.note }, 'input.ids')));
    }
    await replanned(work, context.lab);
    return { stepIds: inTurn.map(({ id }) => id), notes };
  });
}

async function unticked(work: Work, row: PrepStep): Promise<string[]> {
  if (!row.doneAt) return [];
  const notes = await undone(work, row);
  await work.tx.prepStep.update({
    where: { id: row.id },
    data: { doneAt: null, doneById: null, events: [], version: row.version + 1, changedAt: work.now },
  });
  work.changed('PrepStep', row.id, 'CHANGED');
  return notes;
}

/** Takes a tick back, with every event that it recorded. */
export function stepUnticked(context: Context, input: z.output<typeof untickStepSaid>): Promise<Ticked> {
  return write(context, 'untickStep', input, async (work) => {
    const row = await stepOf(work, input.id, 'input.id');
    const notes = await unticked(work, row);
    if (row.doneAt) await replanned(work, context.lab);
    return { stepIds: [row.id], notes };
  });
}

/** Takes ticks back, the last first, all or none. */
export function stepsUnticked(context: Context, input: z.output<typeof untickStepsSaid>): Promise<Ticked> {
  return write(context, 'untickSteps', input, async (work) => {
    const rows = await Promise.all(input.ids.map((id, index) => stepOf(work, id, `input.ids.${index}`)));
    const lastFirst = rows.sort(
      (a, b) => b.startAt.getTime() - a.startAt.getTime() || order.indexOf(b.kind) - order.indexOf(a.kind),
    );
    const notes: string[] = [];
    for (const { id } of lastFirst)
      notes.push(...(await unticked(work, await work.tx.prepStep.findUniqueOrThrow({ where: { id } }))));
    await replanned(work, context.lab);
    return { stepIds: rows.map(({ id }) => id), notes };
  });
}

/** What it recorded never was; what was taken apart goes back, and is kept anew by planning. */
async function undone(work: Work, row: PrepStep): Promise<string[]> {
  const ids = z.array(z.string()).catch([]).parse(row.events);
  const notes: string[] = [];
  if (ids.length > 0) await needLetGo(work, row.needId);
  for (const id of ids.reverse()) {
    // What took plates apart goes back with what was done to them.
    const gone = await work.tx.event.findFirst({ where: { correctsId: id, type: 'CORRECTED' } });
    if (!gone) notes.push(...(await takenBack(work, id, 'a tick that was taken back')).notes);
  }
  if (row.kind === 'HAND_OVER') {
    await work.tx.need.update({ where: { id: row.needId }, data: { metAt: null } });
    work.changed('Need', row.needId, 'CHANGED');
  }
  return notes;
}
