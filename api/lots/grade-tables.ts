// Grades by the lab's tables, and the tables written, put over printed ones, and taken back.
import type { z } from 'zod';
import type { Context } from '../context.ts';
import { invalid, missing, unknown } from '../errors.ts';
import { gradeOf, type Grades } from '../science/grades.ts';
import { gradeTableFor, tablesNow, type GradeTable } from '../stock/service.ts';
import { newId, write } from '../work.ts';
import type { gradeTableBackSaid, gradeTableSaid } from './grade-said.ts';

/** Told only where it decides, since it takes a look at what was estimated: how hot it was last dried, °C. */
export type DriedAt = () => Promise<number | null>;

/** The grade by a table; where heat decides it, a drying that was not hot enough holds it back. */
export async function gradeBy({ grades }: GradeTable, waterFraction: number, driedAt: DriedAt): Promise<string | null> {
  const hot = gradeOf(grades, waterFraction);
  return hot === gradeOf(grades, waterFraction, -Infinity) ? hot : gradeOf(grades, waterFraction, await driedAt());
}

/** The grade by the lab's own table; null where it has none of that class, so that the estimate's own counts. */
export async function ownGradeOf(
  context: Context,
  containerId: string,
  waterFraction: number,
  driedAt: DriedAt,
): Promise<string | null> {
  const tables = (await tablesNow(context)).filter(({ isOwn, isUsed }) => isOwn && isUsed);
  // Most labs have none, and then nothing more is read.
  if (tables.length === 0) return null;
  const container = await context.load.container.load(containerId);
  const lot = container && (await context.load.lot.load(container.lotId));
  const sorbent = lot && (await context.load.sorbent.load(lot.sorbentId));
  const table = tables.find(({ sorbentClass }) => sorbentClass === sorbent?.sorbentClass);
  return table ? gradeBy(table, waterFraction, driedAt) : null;
}

export type TableKept = { sorbentClass: string; variant: string };

/** Refuses grades that do not rise in water, or come twice. */
function checkRising(grades: Grades): void {
  grades.forEach(({ grade, waterOfTotal }, i) => {
    const before = grades[i - 1];
    if (before && !(waterOfTotal > before.waterOfTotal))
      throw invalid(
        `input.grades.${i}.waterOfTotal`,
        waterOfTotal,
        `more than ${before.waterOfTotal} of grade ${before.grade}`,
      );
    if (grades.findIndex((one) => one.grade === grade) < i)
      throw invalid(`input.grades.${i}.grade`, grade, 'each grade once');
  });
}

export function gradeTableSet(context: Context, input: z.output<typeof gradeTableSaid>): Promise<TableKept> {
  return write(context, 'setGradeTable', input, async (work) => {
    const { tx, labId, now: changedAt } = work;
    const { sorbentClass } = input;
    const there = await gradeTableFor(tx, labId, sorbentClass, input.variant);
    const variant = there?.variant ?? input.variant;
    if (!there && !input.grades) throw missing('input.grades', 'its grades, each with its water');
    // New figures are not where the printed ones were found.
    if (input.grades && !input.source) throw missing('input.source', 'where it is printed, or who measured it');
    if (input.grades) checkRising(input.grades);
    const data = {
      source: input.source ?? there?.source ?? '',
      grades: (input.grades ?? there?.grades ?? []).map(({ grade, waterOfTotal }) => ({ grade, waterOfTotal })),
      isUsed: input.isUsed ?? there?.isUsed ?? false,
      changedAt,
    };
    if (data.isUsed) await tx.gradeTable.updateMany({ where: { labId, sorbentClass }, data: { isUsed: false } });
    const where = { labId_sorbentClass_variant: { labId, sorbentClass, variant } };
    const id = newId();
    const kept = await tx.gradeTable.upsert({
      where,
      create: { id, labId, sorbentClass, variant, ...data },
      update: data,
    });
    work.changed('GradeTable', kept.id, kept.id === id ? 'MADE' : 'CHANGED');
    return { sorbentClass, variant };
  });
}

/** The lab's own goes; a printed one of that name is back. */
export function gradeTableReset(context: Context, input: z.output<typeof gradeTableBackSaid>): Promise<TableKept> {
  return write(context, 'resetGradeTable', input, async (work) => {
    const { tx, labId } = work;
    const { sorbentClass, variant } = input;
    const own = await tx.gradeTable.findUnique({
      where: { labId_sorbentClass_variant: { labId, sorbentClass, variant } },
    });
    if (!own) throw unknown('input.variant', variant, `a table of ${sorbentClass} that the lab has written`);
    await tx.gradeTable.delete({ where: { id: own.id } });
    work.changed('GradeTable', own.id, 'GONE');
    return { sorbentClass, variant };
  });
}
