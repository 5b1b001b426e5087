// Tables of activity grades: the printed ones, and the lab's own over or beside them. One of each class is used.
import { z } from 'zod';
import { gradeTables as printed } from '../science/grade-tables.ts';
import { gradesOfClass, type Grades } from '../science/grades.ts';
import { onceARequest } from '../once.ts';
import type { Transaction } from '../work.ts';

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

/** The tables of the lab, read once for a request. */
export const tablesNow = onceARequest(({ database, lab }) => gradeTablesOf(database.read, lab.id));
