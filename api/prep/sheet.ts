// The prep sheet of an evening or a morning: steps in order, what changed since it was printed, and its printing.
import { z } from 'zod';
import type { Context } from '../context.ts';
import type { Need, PrepPart, PrepStep, SolventBatch } from '../database/generated/sqlite/client.ts';
import { solventNamed } from '../science/prep/solvents.ts';
import { said } from '../stock/service.ts';
import { newId, write } from '../work.ts';
import { planBroughtUp } from './current.ts';
import { detailOf } from './detail.ts';
import { dayOf, daysAfter, instantOn } from './hours.ts';
import { daySaid } from './said.ts';
import { prepSettingsOf } from './settings.ts';
import { waiting } from './waiting.ts';
import { sayStep } from './words.ts';

export const sheetSaid = z.object({
  on: daySaid.nullish(),
  part: z.enum(['MORNING', 'EVENING'], 'MORNING or EVENING').nullish(),
});

export const notePrintedSaid = z.object({
  on: daySaid,
  part: z.enum(['MORNING', 'EVENING'], 'MORNING or EVENING').nullish(),
  clientKey: said.clientKey,
});

const printed = z.array(
  z.object({ stepId: z.string(), startMs: z.number(), endMs: z.number(), says: z.string(), forWhom: z.string() }),
);
export type PrintedStep = z.infer<typeof printed>[number];

export type SinceMark = 'NEW' | 'CHANGED';

export interface SheetStep {
  step: PrepStep;
  need: Need;
  sentence: string;
  since: SinceMark | null;
  /** What the printed sheet says instead. */
  printed: PrintedStep | null;
}

interface Total {
  name: string;
  ml: number;
}

export interface Sheet {
  on: string;
  part: PrepPart | null;
  from: Date;
  to: Date;
  steps: SheetStep[];
  /** Printed, and planned no longer. */
  gone: PrintedStep[];
  printedAt: Date | null;
  solvents: { total: Total; batch: SolventBatch | null; formsPeroxides: boolean }[];
  waste: Total[];
}

/** A sheet by its day and part. */
export interface SheetOn {
  on: string;
  part: PrepPart;
}

type StepRow = PrepStep & { need: Need };

/** From when to when a part of a day lasts; the evening ends with the day. */
export function spanOf(
  on: string,
  part: PrepPart | null,
  eveningFrom: string,
  timeZone: string,
): { from: Date; to: Date } {
  const begins = instantOn(on, '00:00', timeZone);
  const turns = instantOn(on, eveningFrom, timeZone);
  const ends = instantOn(daysAfter(on, 1), '00:00', timeZone);
  return { from: part === 'EVENING' ? turns : begins, to: part === 'MORNING' ? turns : ends };
}

const summed = (liquids: readonly Total[]): Total[] => {
  const sums = new Map<string, number>();
  for (const { name, ml } of liquids) sums.set(name, (sums.get(name) ?? 0) + ml);
  return [...sums].map(([name, ml]) => ({ name, ml }));
};

/** Somebody does something at its start; waiting by itself is told by the step before. */
function lines(rows: readonly StepRow[]): StepRow[] {
  return [...rows].sort(
    (a, b) =>
      a.startAt.getTime() - b.startAt.getTime() || a.endAt.getTime() - b.endAt.getTime() || (a.id < b.id ? -1 : 1),
  );
}

function marked(row: StepRow, before: readonly PrintedStep[] | null): SheetStep {
  const sentence = sayStep(row, row.need.forWhom);
  const was = before?.find(({ stepId }) => stepId === row.id) ?? null;
  const isSame =
    was !== null && was.startMs === row.startAt.getTime() && was.endMs === row.endAt.getTime() && was.says === sentence;
  const since = before === null || row.doneAt || isSame ? null : was ? 'CHANGED' : 'NEW';
  return { step: row, need: row.need, sentence, since, printed: since === 'CHANGED' ? was : null };
}

/** What begins then; and what somebody takes out of the hood then, which began on the sheet before. */
const within = (labId: string, from: Date, to: Date | null) => {
  const span = { gte: from, ...(to ? { lt: to } : {}) };
  return {
    labId,
    goneAt: null,
    need: { droppedAt: null },
    OR: [{ startAt: span }, { kind: 'AIR_DRY' as const, endAt: span }],
  };
};

async function stepsIn(context: Context, from: Date, to: Date): Promise<StepRow[]> {
  const rows = await context.database.read.prepStep.findMany({
    where: within(context.lab.id, from, to),
    include: { need: true },
  });
  return lines(rows);
}

/** The first sheet after an instant on which something is to be done; null when nothing is planned. */
export async function nextSheetAfter({ database, lab }: Context, after: Date): Promise<SheetOn | null> {
  const where = { ...within(lab.id, after, null), doneAt: null, need: { droppedAt: null, metAt: null } };
  const [begins, ends] = await Promise.all([
    database.read.prepStep.findFirst({
      where: { ...where, kind: { notIn: [...waiting, 'AIR_DRY'] } },
      orderBy: { startAt: 'asc' },
    }),
    // Drying in the hood begins by itself; somebody takes them out at its end.
    database.read.prepStep.findFirst({ where: { ...where, kind: 'AIR_DRY' }, orderBy: { endAt: 'asc' } }),
  ]);
  const times = [begins?.startAt, ends?.endAt].filter((at) => at !== undefined);
  const first = times.sort((a, b) => a.getTime() - b.getTime())[0];
  if (!first) return null;
  const on = dayOf(first, lab.timeZone);
  const { eveningFrom } = prepSettingsOf(lab.settings);
  return { on, part: first < instantOn(on, eveningFrom, lab.timeZone) ? 'MORNING' : 'EVENING' };
}

/** The sheet of a day, or of its evening or morning. */
export async function sheetOf(context: Context, input: z.output<typeof sheetSaid>): Promise<Sheet> {
  await planBroughtUp(context);
  const { database, lab } = context;
  const settings = prepSettingsOf(lab.settings);
  const on = input.on ?? dayOf(context.now(), lab.timeZone);
  const part = input.part ?? null;
  const { from, to } = spanOf(on, part, settings.eveningFrom, lab.timeZone);
  const rows = await stepsIn(context, from, to);
  const sheets = await database.read.prepSheet.findMany({
    where: { labId: lab.id, day: on, ...(part ? { part } : {}) },
    orderBy: { printedAt: 'asc' },
  });
  const lastOf = (which: PrepPart) => sheets.filter((sheet) => sheet.part === which).at(-1);
  const last = (part ? [lastOf(part)] : [lastOf('MORNING'), lastOf('EVENING')]).filter((sheet) => sheet !== undefined);
  const before = last.length > 0 ? last.flatMap((sheet) => printed.parse(sheet.steps)) : null;
  const steps = rows.map((row) => marked(row, before));
  const here = new Set(rows.map(({ id }) => id));
  const details = steps.filter(({ step }) => !step.doneAt).map(({ step }) => detailOf(step.detail));
  const batches = await database.read.solventBatch.findMany({
    where: { labId: lab.id, finishedAt: null },
    orderBy: { openedOn: 'desc' },
  });
  const solvents = summed(details.flatMap((of) => of.solvents.map(({ solvent, ml }) => ({ name: solvent, ml }))));
  return {
    on,
    part,
    from,
    to,
    steps,
    gone: before?.filter(({ stepId }) => !here.has(stepId)) ?? [],
    printedAt: last.at(-1)?.printedAt ?? null,
    solvents: solvents.map((total) => ({
      total,
      batch: batches.find(({ solvent }) => solventNamed(solvent).name === total.name) ?? null,
      formsPeroxides: solventNamed(total.name).formsPeroxides,
    })),
    waste: summed(details.flatMap((of) => of.waste.map(({ stream, ml }) => ({ name: stream, ml })))),
  };
}

/** Notes that a sheet was printed as it stands now. */
export async function sheetPrinted(context: Context, input: z.output<typeof notePrintedSaid>): Promise<{ on: string }> {
  const { lab } = context;
  const { eveningFrom } = prepSettingsOf(lab.settings);
  const parts: PrepPart[] = input.part ? [input.part] : ['MORNING', 'EVENING'];
  return write(context, 'notePrinted', input, async (work) => {
    for (const part of parts) {
      const { from, to } = spanOf(input.on, part, eveningFrom, lab.timeZone);
      const rows = await work.tx.prepStep.findMany({
        where: within(lab.id, from, to),
        include: { need: true },
      });
      const steps = lines(rows).map((row) => ({
        stepId: row.id,
        startMs: row.startAt.getTime(),
        endMs: row.endAt.getTime(),
        says: sayStep(row, row.need.forWhom),
        forWhom: row.need.forWhom,
      }));
      const id = newId();
      await work.tx.prepSheet.create({
        data: { id, labId: lab.id, day: input.on, part, printedAt: work.now, steps },
      });
      work.changed('PrepSheet', id, 'MADE');
    }
    return { on: input.on };
  });
}
