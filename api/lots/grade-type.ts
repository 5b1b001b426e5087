// Activity grades as GraphQL shows and takes them: tables, water to reach one, what dyes showed.
import { z } from 'zod';
import { builder } from '../builder.ts';
import type { GradeMeasured } from '../database/generated/sqlite/client.ts';
import { checked, Refused } from '../errors.ts';
import { addMutation } from '../mutation.ts';
import { ContainerRef, fresh, there } from '../stock/schema.ts';
import { PersonRef } from '../stock/refs.ts';
import {
  estimatedThen,
  gradeRecorded,
  gradesMeasured,
  gradeTakenBack,
  measuredWords,
  type GradeKept,
} from './grade-measured.ts';
import { gradeBackSaid, gradeTableBackSaid, gradeTableSaid, recordGradeSaid, waterForGradeSaid } from './grade-said.ts';
import { tablesNow, type GradeTable } from '../stock/service.ts';
import { gradeTableReset, gradeTableSet, type TableKept } from './grade-tables.ts';
import { waterForGrade, type WaterForGrade } from './grade-water.ts';

const GradeWaterRef = builder.objectRef<GradeTable['grades'][number]>('GradeWater').implement({
  description: 'A grade with its water.',
  fields: (t) => ({
    grade: t.exposeString('grade', { description: 'The grade, such as `II`.' }),
    waterOfTotal: t.exposeFloat('waterOfTotal', { description: 'Water, kg per kg of the total, as tables print it.' }),
    waterFraction: t.float({
      description: 'The same, kg per kg dry sorbent.',
      resolve: ({ waterOfTotal }) => waterOfTotal / (1 - waterOfTotal),
    }),
  }),
});

const GradeTableRef = builder.objectRef<GradeTable>('GradeTable').implement({
  description: 'A table of activity grades. Printed ones disagree; a lab may write its own over or beside them.',
  fields: (t) => ({
    sorbentClass: t.exposeString('sorbentClass', { description: 'Of which class of sorbents.' }),
    variant: t.exposeString('variant', { description: 'Which variant.' }),
    source: t.exposeString('source', { description: 'Where it comes from.' }),
    isOwn: t.exposeBoolean('isOwn', { description: 'The lab has written it, or put it over a printed one.' }),
    isUsed: t.exposeBoolean('isUsed', { description: 'Grades of this class are told by it.' }),
    grades: t.field({
      type: [GradeWaterRef],
      description: 'Its grades, most active first.',
      resolve: ({ grades }) => [...grades],
    }),
  }),
});

const WaterForGradeRef = builder.objectRef<WaterForGrade>('WaterForGrade').implement({
  description: 'How much water brings a batch to a grade, and what to mind.',
  fields: (t) => ({
    table: t.field({ type: GradeTableRef, description: 'By which table.', resolve: ({ table }) => table }),
    grams: t.exposeFloat('grams', { description: 'Of so much as it stands, g.' }),
    waterFraction: t.exposeFloat('waterFraction', { description: 'Its water now, kg per kg dry sorbent.' }),
    gradeNow: t.exposeString('gradeNow', { nullable: true, description: 'The grade it is nearest to now.' }),
    grade: t.exposeString('grade', { description: 'The grade wanted.' }),
    waterGrams: t.exposeFloat('waterGrams', {
      nullable: true,
      description: 'Water to add, g; null when it is wetter already, or was not dried hot enough for that grade.',
    }),
    sentence: t.exposeString('sentence', { description: 'In words.' }),
    cautions: t.stringList({ description: 'What to mind.', resolve: ({ cautions }) => [...cautions] }),
  }),
});

const GradeByEnum = builder.enumType('GradeBy', {
  description: 'How a grade was found.',
  values: {
    COLUMN_DYES: { description: 'By two dyes on a column.' },
    PLATE_DYES: { description: 'By the Rf of dyes on a plate.' },
    OTHER: { description: 'Otherwise; the grade was said.' },
  },
});

const GradeMeasuredRef = builder.objectRef<GradeMeasured>('GradeMeasured');
builder.node(GradeMeasuredRef, {
  name: 'GradeMeasured',
  description: 'A grade as dyes showed it, beside what was estimated then.',
  id: { resolve: ({ id }) => id },
  loadWithoutCache: (id, { database, lab }) => database.read.gradeMeasured.findFirst({ where: { id, labId: lab.id } }),
  fields: (t) => ({
    container: t.field({
      type: ContainerRef,
      description: 'Of which container.',
      resolve: async ({ containerId }, _, { load }) => there(await load.container.load(containerId), 'container'),
    }),
    at: t.expose('at', { type: 'DateTime', description: 'When.' }),
    by: t.field({ type: GradeByEnum, description: 'How.', resolve: ({ by }) => by }),
    grade: t.exposeString('grade', { description: 'The grade.' }),
    waterFraction: t.exposeFloat('waterFraction', {
      nullable: true,
      description: 'Water estimated then, kg per kg dry sorbent; null where nothing was.',
    }),
    estimatedGrade: t.string({
      nullable: true,
      description: 'The grade by that estimate.',
      resolve: (of, _, context) => estimatedThen(context, of),
    }),
    sentence: t.string({
      description: 'What was seen, what it says, and what was estimated.',
      resolve: async (of, _, context) => measuredWords(of, await estimatedThen(context, of)),
    }),
    ranBy: t.field({
      type: PersonRef,
      nullable: true,
      description: 'Who; null where nobody said.',
      resolve: ({ actorId }, _, { load }) => (actorId ? load.person.load(actorId) : null),
    }),
    note: t.exposeString('note', { nullable: true, description: 'A note.' }),
  }),
});

builder.interfaceField(ContainerRef, 'gradesMeasured', (t) =>
  t.field({
    type: [GradeMeasuredRef],
    description: 'Grades that were measured of it, the newest first.',
    complexity: { field: 5, multiplier: 5 },
    resolve: ({ id }, _, context) => gradesMeasured(context, id, 50),
  }),
);

const listSaid = z.object({ first: z.int('a whole number').min(1, '1 or more').max(200, 'at most 200').nullish() });

builder.queryFields((t) => ({
  gradeTables: t.field({
    type: [GradeTableRef],
    description: 'Tables of activity grades, with source and variant.',
    resolve: (_, __, context) => tablesNow(context),
  }),
  waterForGrade: t.field({
    type: WaterForGradeRef,
    description: 'How much water brings a batch to a grade. Nothing is written.',
    args: {
      label: t.arg.string({ description: 'A container: its grams and its estimated water are taken.' }),
      sorbentClass: t.arg.string({ description: 'Or a class of sorbents, such as `alumina`.' }),
      variant: t.arg.string({ description: 'By which table; the one in use when not given.' }),
      grams: t.arg.float({ description: 'Of so much as it stands, g.' }),
      waterFraction: t.arg.float({ description: 'Its water now, kg per kg dry sorbent; 0 without a container.' }),
      grade: t.arg.string({ required: true, description: 'The grade wanted, such as `III`.' }),
    },
    errors: {
      types: [Refused],
      union: { name: 'WaterForGradeResult', description: 'The answer, or what is wrong with the question.' },
    },
    resolve: (_, args, context) => waterForGrade(context, checked(waterForGradeSaid, args, 'waterForGrade')),
  }),
  gradesMeasured: t.field({
    type: [GradeMeasuredRef],
    description: 'Measured grades, the newest first.',
    complexity: { field: 5, multiplier: 20 },
    args: { first: t.arg.int({ description: 'How many at most; 30 when not given.' }) },
    resolve: (_, args, context) => gradesMeasured(context, null, checked(listSaid, args, 'gradesMeasured').first ?? 30),
  }),
}));

const TableKeptRef = builder.objectRef<TableKept>('GradeTableKept').implement({
  description: 'A table of grades was written or taken back.',
  fields: (t) => ({
    tables: t.field({
      type: [GradeTableRef],
      description: 'The tables of its class as they now stand.',
      resolve: async ({ sorbentClass }, _, context) =>
        (await tablesNow(context)).filter((table) => table.sorbentClass === sorbentClass),
    }),
  }),
});

const GradeWaterInput = builder.inputType('GradeWaterInput', {
  description: 'A grade with its water.',
  fields: (t) => ({
    grade: t.string({ required: true, description: 'The grade, such as `II`.' }),
    waterOfTotal: t.float({ required: true, description: 'Water, kg per kg of the total: 0.03 for 3 %.' }),
  }),
});

addMutation('setGradeTable', {
  description: 'Writes a table of activity grades, over a printed one or beside it, or says that it is the one to use.',
  check: gradeTableSaid,
  success: TableKeptRef,
  run: (input, context) => fresh(context, gradeTableSet(context, input)),
  fields: (t) => ({
    sorbentClass: t.string({ required: true, description: 'Of which class, such as `alumina`.' }),
    variant: t.string({ required: true, description: 'Which variant; a printed one’s name puts it over that.' }),
    source: t.string({ description: 'Where it is printed, or who measured it; with grades it must be given.' }),
    grades: t.field({ type: [GradeWaterInput], description: 'Its grades, most active first; stay when not given.' }),
    isUsed: t.boolean({ description: 'Grades of this class are told by it from now on.' }),
  }),
});
addMutation('resetGradeTable', {
  description: 'Takes the lab’s own table away; a printed one of that name is back.',
  check: gradeTableBackSaid,
  success: TableKeptRef,
  run: (input, context) => fresh(context, gradeTableReset(context, input)),
  fields: (t) => ({
    sorbentClass: t.string({ required: true, description: 'Of which class.' }),
    variant: t.string({ required: true, description: 'Which variant.' }),
  }),
});

const GradeKeptRef = builder.objectRef<GradeKept>('GradeKept').implement({
  description: 'A measured grade was written, taken back, or counts again.',
  fields: (t) => ({
    measured: t.field({
      type: GradeMeasuredRef,
      description: 'The measured grade.',
      resolve: ({ measuredId }, _, { database }) =>
        database.read.gradeMeasured.findUniqueOrThrow({ where: { id: measuredId } }),
    }),
  }),
});

const DyeColumnInput = builder.inputType('DyeColumnInput', {
  description: 'What two dyes look like on a column of 5 cm by 1.5 cm.',
  fields: (t) => ({
    upper: t.string({ required: true, description: 'The dye that is held above, such as `Sudan yellow`.' }),
    lower: t.string({ description: 'The dye that is held below; none when it ran through.' }),
    eluate: t.string({ description: 'The dye that ran through; none when not given.' }),
  }),
});
const DyeRfInput = builder.inputType('DyeRfInput', {
  description: 'The Rf of a dye on a plate of the sorbent, in carbon tetrachloride.',
  fields: (t) => ({
    dye: t.string({ required: true, description: 'The dye, such as `azobenzene`.' }),
    rf: t.float({ required: true, description: 'Its Rf, 0 to 1.' }),
  }),
});

addMutation('recordGrade', {
  description:
    'Records a grade as it was measured: by the two dyes of a column, by Rf on a plate (alumina only), or as said. It stands beside the estimate.',
  check: recordGradeSaid,
  success: GradeKeptRef,
  run: (input, context) => fresh(context, gradeRecorded(context, input)),
  fields: (t) => ({
    label: t.string({ required: true, description: 'Label of the container.' }),
    at: t.field({ type: 'DateTime', description: 'When; now when not given.' }),
    column: t.field({ type: DyeColumnInput, description: 'The picture of a column.' }),
    plate: t.field({ type: [DyeRfInput], description: 'Or dyes on a plate.' }),
    grade: t.string({ description: 'Or the grade itself, found otherwise.' }),
    note: t.string({ description: 'A note.' }),
  }),
});
const measuredField = (t: Parameters<Parameters<typeof builder.inputType>[1]['fields']>[0]) => ({
  measured: t.id({ required: true, description: 'Which measured grade.' }),
});
addMutation('takeGradeBack', {
  description: 'Takes a measured grade back; `restoreGrade` lets it count again.',
  check: gradeBackSaid,
  success: GradeKeptRef,
  run: (input, context) => fresh(context, gradeTakenBack(context, input, true)),
  fields: measuredField,
});
addMutation('restoreGrade', {
  description: 'Lets a measured grade that was taken back count again.',
  check: gradeBackSaid,
  success: GradeKeptRef,
  run: (input, context) => fresh(context, gradeTakenBack(context, input, false)),
  fields: measuredField,
});
