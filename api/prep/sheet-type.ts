// The prep sheet and its ticks, as GraphQL shows them.
import { builder } from '../builder.ts';
import { checked } from '../errors.ts';
import { addMutation } from '../mutation.ts';
import { fresh } from '../stock/schema.ts';
import { PrepPartEnum, SinceEnum, WasteStreamEnum } from './enums.ts';
import { NeedRef, PrepStepRef, SolventBatchRef } from './refs.ts';
import {
  nextSheetAfter,
  notePrintedSaid,
  sheetOf,
  sheetPrinted,
  sheetSaid,
  type PrintedStep,
  type Sheet,
  type SheetOn,
  type SheetStep,
} from './sheet.ts';
import {
  stepsTicked,
  stepsUnticked,
  stepTicked,
  stepUnticked,
  tickStepSaid,
  tickStepsSaid,
  untickStepSaid,
  untickStepsSaid,
  type Ticked,
} from './tick.ts';

const PrintedRef = builder.objectRef<PrintedStep>('PrintedStep').implement({
  description: 'A step as it stands on the printed sheet.',
  fields: (t) => ({
    sentence: t.exposeString('says', { description: 'What it says.' }),
    forWhom: t.exposeString('forWhom', { description: 'For whom.' }),
    startAt: t.field({
      type: 'DateTime',
      description: 'When it began there.',
      resolve: ({ startMs }) => new Date(startMs),
    }),
    endAt: t.field({ type: 'DateTime', description: 'When it ended there.', resolve: ({ endMs }) => new Date(endMs) }),
  }),
});

const SheetStepRef = builder.objectRef<SheetStep>('SheetStep').implement({
  description: 'A line of a prep sheet.',
  fields: (t) => ({
    step: t.field({ type: PrepStepRef, description: 'The step.', resolve: ({ step }) => step }),
    need: t.field({ type: NeedRef, description: 'What it is for.', resolve: ({ need }) => need }),
    sentence: t.exposeString('sentence', { description: 'What is done, in one sentence without time and place.' }),
    since: t.field({
      type: SinceEnum,
      nullable: true,
      description: 'What became of it since the sheet was printed; null when nothing did, or nothing was printed.',
      resolve: ({ since }) => since,
    }),
    printed: t.field({
      type: PrintedRef,
      nullable: true,
      description: 'What the printed sheet says instead; null when it says the same, or nothing.',
      resolve: ({ printed }) => printed,
    }),
  }),
});

const SolventTotalRef = builder.objectRef<Sheet['solvents'][number]>('SolventTotal').implement({
  description: 'A solvent in all open steps of a sheet.',
  fields: (t) => ({
    solvent: t.string({ description: 'Its name.', resolve: ({ total }) => total.name }),
    ml: t.float({ description: 'Volume in all, mL.', resolve: ({ total }) => total.ml }),
    formsPeroxides: t.exposeBoolean('formsPeroxides', { description: 'It forms peroxides: its test date matters.' }),
    batch: t.field({
      type: SolventBatchRef,
      nullable: true,
      description: 'The bottle in use; null when none is noted.',
      resolve: ({ batch }) => batch,
    }),
  }),
});

const WasteTotalRef = builder.objectRef<Sheet['waste'][number]>('WasteTotal').implement({
  description: 'Used solvent in all open steps of a sheet.',
  fields: (t) => ({
    stream: t.field({
      type: WasteStreamEnum,
      description: 'Where it goes.',
      resolve: ({ name }) => name as 'HALOGENATED',
    }),
    ml: t.exposeFloat('ml', { description: 'Volume in all, mL.' }),
  }),
});

const SheetOnRef = builder.objectRef<SheetOn>('PrepSheetOn').implement({
  description: 'A prep sheet by its day and part.',
  fields: (t) => ({
    on: t.exposeString('on', { description: 'The day on the lab’s clock.' }),
    part: t.field({ type: PrepPartEnum, description: 'Its part.', resolve: ({ part }) => part }),
  }),
});

const SheetRef = builder.objectRef<Sheet>('PrepSheet').implement({
  description: 'What is to be done on a day, or in its morning or evening, so that needs are met.',
  fields: (t) => ({
    on: t.exposeString('on', { description: 'The day on the lab’s clock.' }),
    part: t.field({
      type: PrepPartEnum,
      nullable: true,
      description: 'Its part; null for the whole day.',
      resolve: ({ part }) => part,
    }),
    from: t.expose('from', { type: 'DateTime', description: 'From when.' }),
    to: t.expose('to', { type: 'DateTime', description: 'Until when.' }),
    steps: t.field({
      type: [SheetStepRef],
      description: 'Its lines, in the order of time.',
      resolve: ({ steps }) => steps,
    }),
    printedAt: t.expose('printedAt', {
      type: 'DateTime',
      nullable: true,
      description: 'When it was printed last; null when it was not.',
    }),
    gone: t.field({
      type: [PrintedRef],
      description: 'What stands on the printed sheet and is planned no longer, or on another day.',
      resolve: ({ gone }) => gone,
    }),
    solvents: t.field({
      type: [SolventTotalRef],
      description: 'Solvents in all, of open steps.',
      resolve: ({ solvents }) => solvents,
    }),
    waste: t.field({
      type: [WasteTotalRef],
      description: 'Waste in all, of open steps.',
      resolve: ({ waste }) => waste,
    }),
    next: t.field({
      type: SheetOnRef,
      nullable: true,
      description: 'The first sheet after it on which something is to be done; null when nothing is planned.',
      resolve: ({ to }, _, context) => nextSheetAfter(context, to),
    }),
  }),
});

builder.queryField('prepSheet', (t) =>
  t.field({
    type: SheetRef,
    description: 'The prep sheet of a day, or of its morning or evening.',
    complexity: 50,
    args: {
      on: t.arg.string({ description: 'The day on the lab’s clock, such as 2026-11-27; today when not given.' }),
      part: t.arg({ type: PrepPartEnum, description: 'Morning or evening; the whole day when not given.' }),
    },
    resolve: (_, args, context) => sheetOf(context, checked(sheetSaid, args, 'prepSheet')),
  }),
);

const TickedRef = builder.objectRef<Ticked>('StepsTicked').implement({
  description: 'Steps were ticked, or a tick was taken back.',
  fields: (t) => ({
    steps: t.field({
      type: [PrepStepRef],
      description: 'The steps.',
      resolve: async ({ stepIds }, _, { load }) => {
        const all = await load.prepStep.loadMany(stepIds);
        return all.flatMap((one) => (one && !(one instanceof Error) ? [one] : []));
      },
    }),
    notes: t.exposeStringList('notes', { description: 'What disagreed with the book and was kept all the same.' }),
  }),
});

addMutation('tickStep', {
  description:
    'A step was done: the event that belongs to it is recorded on what is kept for its need. What cannot be done yet is refused: solvent-wet plates keep the oven closed.',
  check: tickStepSaid,
  success: TickedRef,
  run: (input, context) => fresh(context, stepTicked(context, input)),
  fields: (t) => ({
    id: t.id({ required: true, description: 'Which step.' }),
    at: t.field({ type: 'DateTime', description: 'When it was done; now when not given.' }),
    note: t.string({ description: 'A note beside it.' }),
    vessel: t.string({ description: 'Of sorbent that is dried apart: name of the listed vessel that holds it.' }),
    waterFraction: t.float({ description: 'Water measured after the oven, kg per kg dry sorbent.' }),
    temperatureC: t.float({ description: 'Temperature of the oven, or of the air, °C; as planned when not given.' }),
    minutes: t.float({ description: 'Minutes in the oven; as planned when not given.' }),
  }),
});

addMutation('tickSteps', {
  description: '“All done as printed, except …”: all of them in their turn, or none.',
  check: tickStepsSaid,
  success: TickedRef,
  run: (input, context) => fresh(context, stepsTicked(context, input)),
  fields: (t) => ({
    ids: t.idList({ required: true, description: 'Which steps.' }),
    except: t.idList({ description: 'But not these.' }),
    at: t.field({ type: 'DateTime', description: 'When they were done; now when not given.' }),
    asPlanned: t.boolean({
      description: 'Each at the end of its planned time, or now where that is to come; `at` counts before it.',
    }),
    note: t.string({ description: 'A note beside them.' }),
  }),
});

addMutation('untickStep', {
  description: 'Takes a tick back, with what it recorded.',
  check: untickStepSaid,
  success: TickedRef,
  run: (input, context) => fresh(context, stepUnticked(context, input)),
  fields: (t) => ({ id: t.id({ required: true, description: 'Which step.' }) }),
});

addMutation('untickSteps', {
  description: 'Takes ticks back, with what they recorded, the last first: all of them, or none.',
  check: untickStepsSaid,
  success: TickedRef,
  run: (input, context) => fresh(context, stepsUnticked(context, input)),
  fields: (t) => ({ ids: t.idList({ required: true, description: 'Which steps.' }) }),
});

const PrintedNoted = builder.objectRef<{ on: string }>('PrintNoted').implement({
  description: 'It was noted that a sheet was printed.',
  fields: (t) => ({
    on: t.exposeString('on', { description: 'The day of the sheet.' }),
  }),
});

addMutation('notePrinted', {
  description: 'A sheet was printed as it stands now; what changes from then on is marked.',
  check: notePrintedSaid,
  success: PrintedNoted,
  run: (input, context) => sheetPrinted(context, input),
  fields: (t) => ({
    on: t.string({ required: true, description: 'The day on the lab’s clock, such as 2026-11-27.' }),
    part: t.field({ type: PrepPartEnum, description: 'Morning or evening; the whole day when not given.' }),
  }),
});
