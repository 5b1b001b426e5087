// A lot check is begun, gets more runs, is taken back.
import type { z } from 'zod';
import type { Context } from '../context.ts';
import type { LotCheck } from '../database/generated/sqlite/client.ts';
import { invalid, missing, unknown } from '../errors.ts';
import { localId, lotNamed, sorbentOf } from '../stock/service.ts';
import { newId, write, type Work } from '../work.ts';
import { placed, runsKept, withCommon, type Told } from './runs.ts';
import type { checkBackSaid, LotCheckSaid, Retention, RunSaid } from './said.ts';
import { tableRead } from './table.ts';

export type CheckKept = { checkId: string; runIds: string[] };

export async function checkOf({ tx, labId }: Pick<Work, 'tx' | 'labId'>, said: string): Promise<LotCheck> {
  const found = await tx.lotCheck.findFirst({ where: { id: localId('LotCheck', said, 'input.check'), labId } });
  if (!found) throw unknown('input.check', said, 'the id of a lot check of this lab');
  return found;
}

/** The check that more runs are for, or a new one. */
async function begun(work: Work, input: LotCheckSaid): Promise<LotCheck> {
  const { tx, labId } = work;
  if (input.check) {
    const check = await checkOf(work, input.check);
    if (check.takenBackAt) throw invalid('input.check', input.check, 'a check that was not taken back');
    return check;
  }
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
  return check;
}

/** Runs of the form and rows of the table, in one list. */
function toldOf(input: LotCheckSaid, retention: Retention, timeZone: string): Told[] {
  const { runs, table, ...common } = input;
  const shared: Partial<RunSaid> = {
    ...{ chamber: common.chamber, isLined: common.isLined, saturationMinutes: common.saturationMinutes },
    ...{ eluent: common.eluent, eluentBatch: common.eluentBatch, stabiliser: common.stabiliser },
    ...{ temperatureC: common.temperatureC, distanceMm: common.distanceMm, room: common.room },
    ...{ humidityPercent: common.humidityPercent, regime: common.regime, by: common.by, at: common.at },
  };
  const typed = (runs ?? []).map((run, i) => ({ run: withCommon(run, shared), path: `input.runs.${i}` }));
  const pasted = table
    ? tableRead(table, retention, timeZone).map(({ line, ...run }) => ({
        run: withCommon(run, shared),
        path: `input.table.line ${line}`,
      }))
    : [];
  return [...typed, ...pasted];
}

export async function lotCheckRecorded(context: Context, input: LotCheckSaid): Promise<CheckKept> {
  const { database, lab } = context;
  const place = { tx: database.read, labId: lab.id };
  const there = input.check ? await checkOf(place, input.check) : null;
  if (there && input.retention && input.retention !== there.retention)
    throw invalid('input.retention', input.retention, `${there.retention}, as the check was begun`);
  const all = await placed(context, toldOf(input, there?.retention ?? input.retention ?? 'RF', lab.timeZone));
  return write(context, 'recordLotCheck', input, async (work) => {
    const check = await begun(work, input);
    if (there && input.margin !== undefined && input.margin !== check.margin) {
      await work.tx.lotCheck.update({ where: { id: check.id }, data: { margin: input.margin } });
      work.changed('LotCheck', check.id, 'CHANGED');
    }
    const lots = await work.tx.lot.findMany({ where: { id: { in: [check.oldLotId, check.newLotId] } } });
    const [oldLot, newLot] = [check.oldLotId, check.newLotId].map((id) => lots.find((lot) => lot.id === id));
    if (!oldLot || !newLot) throw new Error('a lot of the check is gone');
    const named = (said: string) => {
      const word = said.trim().toLowerCase();
      return word === 'old'
        ? oldLot
        : word === 'new'
          ? newLot
          : lots.find((lot) => lot.lotNumber.toLowerCase() === word);
    };
    const runIds = await runsKept(work, all, {
      ...{ checkId: check.id, sorbentId: check.sorbentId, retention: check.retention },
      lotFor: async ({ run, path, around }) => {
        const right = `old (${oldLot.lotNumber}) or new (${newLot.lotNumber})`;
        if (!run.lotNumber && !around.container) throw missing(`${path}.lotNumber`, right);
        const lot = run.lotNumber ? named(run.lotNumber) : lots.find(({ id }) => id === around.container?.lotId);
        if (!lot) throw invalid(`${path}.lotNumber`, run.lotNumber ?? around.container?.label, right);
        return lot;
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
