// How much water brings a batch to a grade: of a container as it is estimated now, or of plain figures.
import type { z } from 'zod';
import type { Context } from '../context.ts';
import { invalid, missing, unknown } from '../errors.ts';
import { lastDriedAt } from '../exposure/service.ts';
import { deactivationCautions, waterToAddG } from '../science/grade-water.ts';
import { containerOf, gradeTableFor, grams as gramsWords, percent, type GradeTable } from '../stock/service.ts';
import { gradeBy, type DriedAt } from './grade-tables.ts';
import type { waterForGradeSaid } from './grade-said.ts';

export interface WaterForGrade {
  readonly table: GradeTable;
  readonly grams: number;
  readonly waterFraction: number;
  readonly gradeNow: string | null;
  readonly grade: string;
  /** Null when it is wetter already, or was not dried hot enough for that grade. */
  readonly waterGrams: number | null;
  readonly sentence: string;
  readonly cautions: readonly string[];
}

type Said = z.output<typeof waterForGradeSaid>;

/** What is brought to a grade, as received. */
interface Batch {
  readonly grams: number;
  readonly sorbentClass: string;
  /** Of the whole: what water is added to. */
  readonly waterFraction: number;
  /** Of the next scoop: what a grade is told by. */
  readonly scoopWaterFraction: number;
  readonly driedAt: DriedAt;
}

async function batchOf(context: Context, said: Said): Promise<Batch> {
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
    return {
      ...{ grams, waterFraction, sorbentClass: lot.sorbent.sorbentClass },
      scoopWaterFraction: said.waterFraction ?? exposure?.scoopWaterFraction ?? waterFraction,
      driedAt: () => lastDriedAt(context, { containerId: container.id, asOf: exposure?.asOf ?? context.now() }),
    };
  }
  if (!said.sorbentClass) throw missing('waterForGrade.sorbentClass', 'the label of a container, or a sorbent class');
  if (!said.grams) throw missing('waterForGrade.grams', 'how much as it stands, g');
  const waterFraction = said.waterFraction ?? 0;
  return {
    ...{ grams: said.grams, sorbentClass: said.sorbentClass, waterFraction },
    scoopWaterFraction: waterFraction,
    driedAt: () => Promise.resolve(null),
  };
}

export async function waterForGrade(context: Context, said: Said): Promise<WaterForGrade> {
  const { database, lab } = context;
  const batch = await batchOf(context, said);
  const { grams, waterFraction, sorbentClass } = batch;
  const table = await gradeTableFor(database.read, lab.id, sorbentClass, said.variant ?? null);
  if (!table) throw unknown('waterForGrade.sorbentClass', sorbentClass, 'a class (and variant) with a table of grades');
  const wanted = table.grades.find(({ grade }) => grade.toLowerCase() === said.grade.toLowerCase());
  if (!wanted)
    throw unknown('waterForGrade.grade', said.grade, `one of ${table.grades.map(({ grade }) => grade).join(', ')}`);
  const { fromC = -Infinity } = wanted;
  const driedAtC = fromC === -Infinity ? null : await batch.driedAt();
  const isTooCold = driedAtC !== null && driedAtC < fromC;
  const enough = waterToAddG(grams, waterFraction / (1 + waterFraction), wanted.waterOfTotal);
  const waterGrams = isTooCold ? null : enough;
  const gradeNow = await gradeBy(table, batch.scoopWaterFraction, batch.driedAt);
  const now = `${gramsWords(grams)} with ${percent(waterFraction)} water`;
  const sentence = isTooCold
    ? `${now} was last dried at ${driedAtC} °C: grade ${wanted.grade} takes ${fromC} °C or more. Dry it hotter first.`
    : waterGrams === null
      ? `${now} is wetter than grade ${wanted.grade} already: dry it first.`
      : `${now}${gradeNow === null ? '' : `, now nearest to grade ${gradeNow}`}: ${gramsWords(waterGrams)} of water make it grade ${wanted.grade}.`;
  const cautions = waterGrams === null || waterGrams === 0 ? [] : deactivationCautions;
  return { table, grams, waterFraction, gradeNow, grade: wanted.grade, waterGrams, sentence, cautions };
}
