// A lot check is begun, gets more runs, is taken back.
import type { z } from 'zod';
import type { Context } from '../context.ts';
import type { Lot, LotCheck } from '../database/generated/sqlite/client.ts';
import { invalid, missing, unknown } from '../errors.ts';
import { localId, lotNamed, sorbentOf } from '../stock/service.ts';
import { newId, write, type Work } from '../work.ts';
import { placed, runsKept, toldRows, toldRuns, type Told } from './runs.ts';
import type { checkBackSaid, LotCheckSaid, Retention, RunSaid } from './said.ts';
import { tableRead } from './table.ts';

export type CheckKept = { checkId: string; runIds: string[] };

export async function checkOf({ tx, labId }: Pick<Work, 'tx' | 'labId'>, said: string): Promise<LotCheck> {
  const found = await tx.lotCheck.findFirst({ where: { id: localId('LotCheck', said, 'input.check'), labId } });
  if (!found) throw unknown('input.check', said, 'the id of a lot check of this lab');
  return found;
}

/** Nobody takes an Rf for the same that lies further off. */
export const mostRfMargin = 0.5;

function checkMargin(margin: number | null | undefined, retention: Retention): void {
  if (retention === 'RF' && margin != null && margin > mostRfMargin)
    throw invalid('input.margin', margin, `at most ${mostRfMargin}: it is a difference of Rf`);
}

interface Begun {
  readonly check: LotCheck;
  readonly oldLot: Lot;
  readonly newLot: Lot;
}

const sameWord = (one: string, other: string): boolean => one.trim().toLowerCase() === other.trim().toLowerCase();

/** The check that more runs are for. What is said of it again must be so; a note and a margin are set anew. */
async function begunBefore(work: Work, said: string, input: LotCheckSaid): Promise<Begun> {
  const { tx } = work;
  const check = await checkOf(work, said);
  if (check.takenBackAt) throw invalid('input.check', said, 'a check that was not taken back');
  const [sorbent, oldLot, newLot] = await Promise.all([
    tx.sorbent.findUniqueOrThrow({ where: { id: check.sorbentId } }),
    tx.lot.findUniqueOrThrow({ where: { id: check.oldLotId } }),
    tx.lot.findUniqueOrThrow({ where: { id: check.newLotId } }),
  ]);
  const is = { sorbent: sorbent.name, oldLotNumber: oldLot.lotNumber, newLotNumber: newLot.lotNumber };
  for (const name of ['sorbent', 'oldLotNumber', 'newLotNumber'] as const) {
    const told = input[name];
    if (told && !sameWord(told, is[name])) throw invalid(`input.${name}`, told, `${is[name]}, as the check was begun`);
  }
  return { check, oldLot, newLot };
}

async function begun(work: Work, input: LotCheckSaid): Promise<Begun> {
  const { tx, labId } = work;
  if (!input.sorbent) throw missing('input.sorbent', 'the name of the sorbent');
  if (!input.oldLotNumber) throw missing('input.oldLotNumber', 'the lot that is known');
  if (!input.newLotNumber) throw missing('input.newLotNumber', 'the lot that is to be checked');
  const sorbent = await sorbentOf(work, input.sorbent);
  const oldLot = await lotNamed(work, sorbent.id, input.oldLotNumber, 'input.oldLotNumber');
  const newLot = await lotNamed(work, sorbent.id, input.newLotNumber, 'input.newLotNumber');
  if (oldLot.id === newLot.id) throw invalid('input.newLotNumber', input.newLotNumber, 'another lot than the old one');
  const check = await tx.lotCheck.create({
    data: {
      ...{ id: newId(), labId, sorbentId: sorbent.id, oldLotId: oldLot.id, newLotId: newLot.id },
      ...{ retention: input.retention ?? 'RF', margin: input.margin ?? null, note: input.note, madeAt: work.now },
    },
  });
  work.changed('LotCheck', check.id, 'MADE');
  return { check, oldLot, newLot };
}

async function wentOn(work: Work, said: string, input: LotCheckSaid): Promise<Begun> {
  const of = await begunBefore(work, said, input);
  const data = {
    ...(input.margin !== undefined && input.margin !== of.check.margin && { margin: input.margin }),
    ...(input.note !== null && input.note !== of.check.note && { note: input.note }),
  };
  if (Object.keys(data).length === 0) return of;
  work.changed('LotCheck', of.check.id, 'CHANGED');
  return { ...of, check: await work.tx.lotCheck.update({ where: { id: of.check.id }, data }) };
}

/** Runs of the form and rows of the table, in one list. */
function toldOf(input: LotCheckSaid, retention: Retention, { lab, now }: Context): Told[] {
  const { runs, table, ...common } = input;
  const shared: Partial<RunSaid> = {
    ...{ chamber: common.chamber, isLined: common.isLined, saturationMinutes: common.saturationMinutes },
    ...{ eluent: common.eluent, eluentBatch: common.eluentBatch, stabiliser: common.stabiliser },
    ...{ temperatureC: common.temperatureC, distanceMm: common.distanceMm, room: common.room },
    ...{ humidityPercent: common.humidityPercent, regime: common.regime, by: common.by, at: common.at },
  };
  const rows = table ? tableRead(table, retention, { timeZone: lab.timeZone, now: now() }) : [];
  return [...toldRuns(runs ?? [], shared), ...toldRows(rows, shared)];
}

export async function lotCheckRecorded(context: Context, input: LotCheckSaid): Promise<CheckKept> {
  const { database, lab } = context;
  const there = input.check ? await checkOf({ tx: database.read, labId: lab.id }, input.check) : null;
  if (there && input.retention && input.retention !== there.retention)
    throw invalid('input.retention', input.retention, `${there.retention}, as the check was begun`);
  const retention = there?.retention ?? input.retention ?? 'RF';
  checkMargin(input.margin, retention);
  const all = await placed(context, retention, toldOf(input, retention, context));
  return write(context, 'recordLotCheck', input, async (work) => {
    const { check, oldLot, newLot } = input.check ? await wentOn(work, input.check, input) : await begun(work, input);
    const lots = [oldLot, newLot];
    const named = (word: string): Lot | undefined =>
      sameWord(word, 'old')
        ? oldLot
        : sameWord(word, 'new')
          ? newLot
          : lots.find(({ lotNumber }) => sameWord(lotNumber, word));
    const right = `old (${oldLot.lotNumber}) or new (${newLot.lotNumber})`;
    const runIds = await runsKept(work, all, {
      ...{ checkId: check.id, sorbentId: check.sorbentId, retention: check.retention },
      lotFor: ({ run, path, around }) => {
        if (!run.lotNumber && !around.container) throw missing(`${path}.lotNumber`, right);
        const lot = run.lotNumber ? named(run.lotNumber) : lots.find(({ id }) => id === around.container?.lotId);
        if (!lot) throw invalid(`${path}.lotNumber`, run.lotNumber ?? around.container?.label, right);
        return Promise.resolve(lot);
      },
    });
    return { checkId: check.id, runIds };
  });
}

/** Takes a whole check back, or lets it count again. */
export function checkTakenBack(
  context: Context,
  input: z.output<typeof checkBackSaid>,
  back: boolean,
): Promise<CheckKept> {
  return write(context, back ? 'takeLotCheckBack' : 'restoreLotCheck', input, async (work) => {
    const { id } = await checkOf(work, input.check);
    await work.tx.lotCheck.update({ where: { id }, data: { takenBackAt: back ? work.now : null } });
    work.changed('LotCheck', id, 'CHANGED');
    return { checkId: id, runIds: [] };
  });
}
