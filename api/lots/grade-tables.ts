// Tables of activity grades: the printed ones, and the lab's own over or beside them. One of each class is used.
import { z } from 'zod';
import type { Context } from '../context.ts';
import { invalid, missing, unknown } from '../errors.ts';
import { gradeTables as printed } from '../science/grade-tables.ts';
import { gradeOf, type Grades } from '../science/grades.ts';
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
export async function gradeTablesOf(reader: Pick<Transaction, 'gradeTable'>, labId: string): Promise<GradeTable[]> {
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
  for (const row of own) tables.set(keyOf(row), { ...row, grades: stored.parse(row.grades), isOwn: true });
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

const requests = new WeakMap<Context['load'], Promise<GradeTable[]>>();

/** The lab's own tables that are used; read once for a request. */
function ownTables({ database, lab, load }: Context): Promise<GradeTable[]> {
  const before = requests.get(load);
  if (before) return before;
  const own = gradeTablesOf(database.read, lab.id).then((all) => all.filter(({ isOwn, isUsed }) => isOwn && isUsed));
  requests.set(load, own);
  return own;
}

/** The grade by the lab's own table; null where it has none of that class, so that the estimate's own counts. */
export async function ownGradeOf(context: Context, containerId: string, waterFraction: number): Promise<string | null> {
  const tables = await ownTables(context);
  // Most labs have none, and then nothing more is read.
  if (tables.length === 0) return null;
  const container = await context.load.container.load(containerId);
  const lot = container && (await context.load.lot.load(container.lotId));
  const sorbent = lot && (await context.load.sorbent.load(lot.sorbentId));
  const table = tables.find(({ sorbentClass }) => sorbentClass === sorbent?.sorbentClass);
  return table ? gradeOf(table.grades, waterFraction) : null;
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
    if (!there && !input.source) throw missing('input.source', 'where it is printed, or who measured it');
    if (input.grades) checkRising(input.grades);
    const data = {
      source: input.source ?? there?.source ?? '',
      grades: (input.grades ?? there?.grades ?? []).map((one) => ({ ...one })),
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
