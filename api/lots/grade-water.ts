// How much water brings a batch to a grade: of a container as it is estimated now, or of plain figures.
import type { z } from 'zod';
import type { Context } from '../context.ts';
import { invalid, missing, unknown } from '../errors.ts';
import { deactivationCautions, waterToAddG } from '../science/grade-water.ts';
import { gradeOf } from '../science/grades.ts';
import { containerOf, grams as gramsWords, percent } from '../stock/service.ts';
import { gradeTableFor, type GradeTable } from './grade-tables.ts';
import type { waterForGradeSaid } from './grade-said.ts';

export interface WaterForGrade {
  readonly table: GradeTable;
  readonly grams: number;
  readonly waterFraction: number;
  readonly gradeNow: string | null;
  readonly grade: string;
  /** Null when it is wetter already. */
  readonly waterGrams: number | null;
  readonly sentence: string;
  readonly cautions: readonly string[];
}

type Said = z.output<typeof waterForGradeSaid>;

/** As received, with its water now. */
async function batchOf(context: Context, said: Said) {
  const { database, lab } = context;
  const place = { tx: database.read, labId: lab.id };
  if (said.label) {
    const container = await containerOf(place, said.label, 'waterForGrade.label');
    const [lot, exposure] = await Promise.all([
      database.read.lot.findUniqueOrThrow({ where: { id: container.lotId }, include: { sorbent: true } }),
      database.read.exposure.findUnique({ where: { containerId: container.id } }),
    ]);
    const waterFraction = said.waterFraction ?? exposure?.meanWaterFraction ?? null;
    if (waterFraction === null)
      throw missing('waterForGrade.waterFraction', 'its water now: nothing is estimated of this container yet');
    const grams = said.grams ?? container.dryGrams * (1 + waterFraction);
    if (!(grams > 0)) throw invalid('waterForGrade.label', said.label, 'a container with something in it');
    return { grams, waterFraction, sorbentClass: lot.sorbent.sorbentClass };
  }
  if (!said.sorbentClass) throw missing('waterForGrade.sorbentClass', 'the label of a container, or a sorbent class');
  if (!said.grams) throw missing('waterForGrade.grams', 'how much as it stands, g');
  return { grams: said.grams, waterFraction: said.waterFraction ?? 0, sorbentClass: said.sorbentClass };
}

export async function waterForGrade(context: Context, said: Said): Promise<WaterForGrade> {
  const { database, lab } = context;
  const { grams, waterFraction, sorbentClass } = await batchOf(context, said);
  const table = await gradeTableFor(database.read, lab.id, sorbentClass, said.variant ?? null);
  if (!table) throw unknown('waterForGrade.sorbentClass', sorbentClass, 'a class (and variant) with a table of grades');
  const wanted = table.grades.find(({ grade }) => grade.toLowerCase() === said.grade.toLowerCase());
  if (!wanted)
    throw unknown('waterForGrade.grade', said.grade, `one of ${table.grades.map(({ grade }) => grade).join(', ')}`);
  const waterGrams = waterToAddG(grams, waterFraction / (1 + waterFraction), wanted.waterOfTotal);
  const gradeNow = gradeOf(table.grades, waterFraction);
  const now = `${gramsWords(grams)} with ${percent(waterFraction)} water`;
  const sentence =
    waterGrams === null
      ? `${now} is wetter than grade ${wanted.grade} already: dry it first.`
      : `${now}, now nearest to grade ${gradeNow ?? '?'}: ${gramsWords(waterGrams)} of water make it grade ${wanted.grade}.`;
  const cautions = waterGrams === null || waterGrams === 0 ? [] : deactivationCautions;
  return { table, grams, waterFraction, gradeNow, grade: wanted.grade, waterGrams, sentence, cautions };
}
