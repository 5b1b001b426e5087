// Tables of activity grades: the printed ones, and the lab's own over or beside them. One of each class is used.
import { z } from 'zod';
import type { Context } from '../context.ts';
import { invalid, missing, unknown } from '../errors.ts';
import { gradeTables as printed } from '../science/grade-tables.ts';
import { gradeOf, gradesOfClass, type Grades } from '../science/grades.ts';
import { onceARequest } from '../once.ts';
import { newId, write, type Transaction } from '../work.ts';
import type { gradeTableBackSaid, gradeTableSaid } from './grade-said.ts';

export interface GradeTable {
  readonly sorbentClass: string;
  readonly variant: string;
  readonly source: string;
  readonly grades: Grades;
  /** The lab has written it, or put it over a printed one. */
  readonly isOwn: boolean;
  /** Grades of this class are told by it. */
  readonly isUsed: boolean;
}

const stored = z.array(z.object({ grade: z.string(), waterOfTotal: z.number() }));

/** All tables, class by class; what the lab has said lies over what is printed. */
async function gradeTablesOf(reader: Pick<Transaction, 'gradeTable'>, labId: string): Promise<GradeTable[]> {
  const own = await reader.gradeTable.findMany({
    where: { labId },
    orderBy: [{ sorbentClass: 'asc' }, { variant: 'asc' }],
  });
  const keyOf = (of: { sorbentClass: string; variant: string }): string =>
    JSON.stringify([of.sorbentClass, of.variant]);
  const tables = new Map<string, GradeTable>();
  for (const { sorbent: sorbentClass, variant, source, grades } of printed)
    tables.set(keyOf({ sorbentClass, variant }), {
      sorbentClass,
      variant,
      source,
      grades,
      isOwn: false,
      isUsed: false,
    });
  for (const row of own) {
    const grades = gradesOfClass(row.sorbentClass, stored.parse(row.grades));
    tables.set(keyOf(row), { ...row, grades, isOwn: true });
  }
  const used = new Map<string, GradeTable>();
  for (const table of tables.values()) {
    const there = used.get(table.sorbentClass);
    if (!there || (table.isUsed && !there.isUsed)) used.set(table.sorbentClass, table);
  }
  return [...tables.values()].map((table) => ({ ...table, isUsed: used.get(table.sorbentClass) === table }));
}

/** The one that grades of a class are told by, or the variant asked for; null where there is none. */
export async function gradeTableFor(
  reader: Pick<Transaction, 'gradeTable'>,
  labId: string,
  sorbentClass: string,
  variant: string | null = null,
): Promise<GradeTable | null> {
  const ofClass = (await gradeTablesOf(reader, labId)).filter((table) => table.sorbentClass === sorbentClass);
  if (variant === null) return ofClass.find(({ isUsed }) => isUsed) ?? null;
  return ofClass.find((table) => table.variant.toLowerCase() === variant.toLowerCase()) ?? null;
}

/** Told only where it decides, since it takes a look at what was estimated: how hot it was last dried, °C. */
export type DriedAt = () => Promise<number | null>;

/** The grade by a table; where heat decides it, a drying that was not hot enough holds it back. */
export async function gradeBy({ grades }: GradeTable, waterFraction: number, driedAt: DriedAt): Promise<string | null> {
  const hot = gradeOf(grades, waterFraction);
  return hot === gradeOf(grades, waterFraction, -Infinity) ? hot : gradeOf(grades, waterFraction, await driedAt());
}

/** The tables of the lab, read once for a request. */
export const tablesNow = onceARequest(({ database, lab }) => gradeTablesOf(database.read, lab.id));

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
