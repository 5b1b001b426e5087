// A grade as dyes showed it on a column or a plate, kept beside what was estimated in its container then.
import { z } from 'zod';
import type { Context } from '../context.ts';
import type { GradeMeasured } from '../database/generated/sqlite/client.ts';
import { invalid, missing, unknown } from '../errors.ts';
import { driedAtBefore } from '../exposure/service.ts';
import { gradeOfColumn, gradeOfPlate } from '../science/grade-observed.ts';
import { checkNotFuture, containerOf, localId, percent, tablesNow, waterAt } from '../stock/service.ts';
import { newId, write } from '../work.ts';
import type { gradeBackSaid, recordGradeSaid } from './grade-said.ts';
import { onceARequest } from '../once.ts';
import { gradeBy } from './grade-tables.ts';

type Said = z.output<typeof recordGradeSaid>;
export type GradeKept = { measuredId: string };

const seenColumn = z.object({ upper: z.string(), lower: z.string().nullable(), eluate: z.string().nullable() });
const seenPlate = z.record(z.string(), z.number());

/** What was seen, and the grade that it shows; refuses a picture that is in no table. */
function shown({ grade, column, plate }: Said) {
  const given = [grade, column, plate].filter((one) => one != null).length;
  if (given !== 1) throw missing('input.grade', 'one of: the grade itself, the picture of a column, Rf on a plate');
  if (column) {
    const seen = { upper: column.upper, lower: column.lower ?? null, eluate: column.eluate ?? null };
    const found = gradeOfColumn(seen);
    if (!found)
      throw invalid(
        'input.column',
        seen,
        'a picture of the dye rule: azobenzene below p-methoxyazobenzene is grade I, and so on',
      );
    return { by: 'COLUMN_DYES' as const, grade: found, seen };
  }
  if (plate) {
    const seen = Object.fromEntries(plate.map(({ dye, rf }) => [dye, rf]));
    const found = gradeOfPlate(seen);
    if (!found) throw invalid('input.plate', seen, 'at least one dye of the table for plates');
    return { by: 'PLATE_DYES' as const, grade: found, seen };
  }
  return { by: 'OTHER' as const, grade: grade ?? '', seen: {} };
}

export function gradeRecorded(context: Context, input: Said): Promise<GradeKept> {
  const what = shown(input);
  return write(context, 'recordGrade', input, async (work) => {
    const { tx, labId, now: madeAt, actorId } = work;
    const container = await containerOf(work, input.label);
    const at = input.at ?? work.now;
    checkNotFuture(at, work.now, 'input.at');
    const lot = await tx.lot.findUniqueOrThrow({ where: { id: container.lotId }, include: { sorbent: true } });
    if (what.by !== 'OTHER' && lot.sorbent.sorbentClass !== 'alumina')
      throw invalid('input.label', container.label, 'a container of alumina: the dye rules are for it alone');
    const water = await waterAt(tx, container, at);
    const row = { id: newId(), labId, containerId: container.id, at, ...what, note: input.note, actorId, madeAt };
    const { id } = await tx.gradeMeasured.create({
      data: { ...row, waterFraction: water.assumed ? null : water.waterFraction },
    });
    work.changed('GradeMeasured', id, 'MADE');
    return { measuredId: id };
  });
}

export function gradeTakenBack(
  context: Context,
  input: z.output<typeof gradeBackSaid>,
  back: boolean,
): Promise<GradeKept> {
  return write(context, back ? 'takeGradeBack' : 'restoreGrade', input, async (work) => {
    const { tx, labId } = work;
    const id = localId('GradeMeasured', input.measured, 'input.measured');
    const found = await tx.gradeMeasured.findFirst({ where: { id, labId } });
    if (!found) throw unknown('input.measured', input.measured, 'the id of a measured grade of this lab');
    await tx.gradeMeasured.update({ where: { id }, data: { takenBackAt: back ? work.now : null } });
    work.changed('GradeMeasured', id, 'CHANGED');
    return { measuredId: id };
  });
}

/** Measured grades, the newest first. */
export function gradesMeasured({ database, lab }: Context, containerId: string | null, first: number) {
  return database.read.gradeMeasured.findMany({
    where: { labId: lab.id, takenBackAt: null, ...(containerId ? { containerId } : {}) },
    orderBy: [{ at: 'desc' }, { id: 'desc' }],
    take: first,
  });
}

/** The grade that the estimate gave then; null where it gave none. However many fields of it ask, it is found once. */
export const estimatedThen = onceARequest(
  async (context: Context, { containerId, at, waterFraction }: GradeMeasured): Promise<string | null> => {
    if (waterFraction === null) return null;
    const { load } = context;
    const container = await load.container.load(containerId);
    const lot = container && (await load.lot.load(container.lotId));
    const sorbent = lot && (await load.sorbent.load(lot.sorbentId));
    const table = (await tablesNow(context)).find((one) => one.isUsed && one.sorbentClass === sorbent?.sorbentClass);
    if (!table) return null;
    return gradeBy(table, waterFraction, () => driedAtBefore(context, containerId, at));
  },
  ({ id }) => id,
);

const dyesSeen = (of: GradeMeasured): string => {
  const column = of.by === 'COLUMN_DYES' ? seenColumn.safeParse(of.seen).data : undefined;
  if (column) {
    const { upper, lower, eluate } = column;
    return `${upper} above${lower ? `, ${lower} below` : ''}${eluate ? `, ${eluate} ran through` : ''}`;
  }
  const plate = of.by === 'PLATE_DYES' ? seenPlate.safeParse(of.seen).data : undefined;
  return Object.entries(plate ?? {})
    .map(([dye, rf]) => `${dye} at Rf ${rf}`)
    .join(', ');
};

/** What was seen and what it says, beside what was estimated. */
export function measuredWords(of: GradeMeasured, estimated: string | null): string {
  const seen = dyesSeen(of);
  const beside =
    of.waterFraction === null
      ? ''
      : ` Estimated then: ${percent(of.waterFraction)} water${estimated ? `, grade ${estimated}` : ''}.`;
  return `Grade ${of.grade}${seen ? `: ${seen}` : ''}.${beside}`;
}
