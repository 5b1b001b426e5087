// What GraphQL knows of columns: which one a sample wants, what it asks for, and how each was packed and conditioned.
import { builder } from '../builder.ts';
import { checked, Refused } from '../errors.ts';
import { sizingSource } from './rules.ts';
import { columnPlan, planSaid, sizingOf, sizingSaid, type Plan, type Sizing } from './service.ts';
import './packing-type.ts';

const SizingRef = builder.objectRef<Sizing>('ColumnSizing').implement({
  description: 'The narrowest flash column of the table that parts a sample. Silica 40 to 63 µm, bed 150 mm.',
  fields: (t) => ({
    innerDiameterMm: t.float({ description: 'Inner diameter, mm.', resolve: ({ diameterMm }) => diameterMm }),
    bedLengthMm: t.exposeFloat('bedLengthMm', { description: 'Length of the bed, mm.' }),
    eluentMl: t.exposeFloat('eluentMl', { description: 'Eluent to have ready, mL.' }),
    fractionMl: t.exposeFloat('fractionMl', { description: 'Size of a fraction, mL.' }),
    mostMg: t.exposeFloat('mostMg', { description: 'Sample it parts at the ΔRf read, mg.' }),
    readAtDeltaRf: t.exposeFloat('readAtDeltaRf', {
      description:
        'The column of the table that was read: ΔRf 0.2, or 0.1 for anything below; nothing is interpolated.',
    }),
    source: t.string({ description: 'Where the figures come from.', resolve: () => sizingSource }),
  }),
});

const PlanRef = builder.objectRef<Plan>('ColumnPlan').implement({
  description: 'A column in figures: what to weigh, to pour and to wait for.',
  fields: (t) => ({
    innerDiameterMm: t.exposeFloat('innerDiameterMm', { description: 'Inner diameter, mm.' }),
    bedLengthMm: t.exposeFloat('bedLengthMm', { description: 'Length of the bed, mm.' }),
    bedVolumeMl: t.exposeFloat('bedVolumeMl', { description: 'Volume of the bed, mL: π d² L / 4.' }),
    totalPorosity: t.exposeFloat('totalPorosity', {
      description: 'Pores and gaps together, of the bed volume (derived from bulk density and pore volume).',
    }),
    columnVolumeMl: t.exposeFloat('columnVolumeMl', {
      description: 'One column volume: liquid in the packed bed, mL.',
    }),
    sorbentDryGrams: t.exposeFloat('sorbentDryGrams', {
      nullable: true,
      description: 'Dry sorbent that fills it at its bulk density, g; null where that is not known.',
    }),
    columnVolumes: t.exposeFloat('columnVolumes', { description: 'Column volumes to condition with; 3 unless asked.' }),
    conditioningMl: t.exposeFloat('conditioningMl', { description: 'Mobile phase for conditioning, mL.' }),
    conditioningMinutes: t.exposeFloat('conditioningMinutes', { description: 'Minutes of it at the flow.' }),
    flowMlPerMin: t.float({ description: 'Flow, mL/min.', resolve: ({ flow }) => flow }),
    flowSource: t.exposeString('flowSource', { description: 'Where the flow comes from.' }),
    eluentMl: t.exposeFloat('eluentMl', {
      nullable: true,
      description: 'Eluent for the run by the table, mL; null for a column that was not sized by it.',
    }),
    fractionMl: t.exposeFloat('fractionMl', {
      nullable: true,
      description: 'Size of a fraction by the table, mL; null likewise.',
    }),
    solventInAllMl: t.exposeFloat('solventInAllMl', {
      nullable: true,
      description: 'Conditioning and run together, mL; null likewise.',
    }),
    restMinutes: t.exposeFloat('restMinutes', {
      nullable: true,
      description:
        'Alumina: minutes to rest after wetting until heat and bubbles are gone, growing with the bore; else null.',
    }),
    restSource: t.exposeString('restSource', { nullable: true, description: 'Where these minutes come from.' }),
    cautions: t.exposeStringList('cautions', { description: 'What to take care of, beside packing and wetting.' }),
    notes: t.exposeStringList('notes', { description: 'What is unlike the practice, each in one sentence.' }),
  }),
});

builder.queryFields((t) => ({
  columnFor: t.field({
    type: SizingRef,
    description: 'Which flash column a sample wants: the next size up of the table, or what would be right.',
    args: {
      sampleMg: t.arg.float({ required: true, description: 'The sample, mg.' }),
      deltaRf: t.arg.float({ required: true, description: 'How far apart the spots lie, in Rf, 0.1 or more.' }),
    },
    errors: {
      types: [Refused],
      union: { name: 'ColumnForResult', description: 'The column, or why there is none in the table.' },
    },
    resolve: (_, args) => {
      const { sampleMg, deltaRf } = checked(sizingSaid, args, '');
      return sizingOf(sampleMg, deltaRf);
    },
  }),
  columnPlan: t.field({
    type: PlanRef,
    description: 'A column in figures, of a size or sized for a sample. Nothing is written.',
    args: {
      sorbent: t.arg.string({ required: true, description: 'Name of the sorbent.' }),
      innerDiameterMm: t.arg.float({ description: 'Inner diameter, mm.' }),
      bedLengthMm: t.arg.float({ description: 'Length of the bed, mm; 150 of a column sized by the table.' }),
      sampleMg: t.arg.float({ description: 'Or the sample, mg, with its ΔRf.' }),
      deltaRf: t.arg.float({ description: 'How far apart the spots lie, in Rf.' }),
      columnVolumes: t.arg.float({
        description: 'Column volumes to condition with; 3 when not given, 2 to 3 is usual.',
      }),
      flowMlPerMin: t.arg.float({ description: 'Flow, mL/min; 2 in/min of the bore when not given.' }),
    },
    errors: {
      types: [Refused],
      union: { name: 'ColumnPlanResult', description: 'The plan, or what is wrong with the question.' },
    },
    resolve: (_, args, context) => columnPlan(context, checked(planSaid, args, '')),
  }),
}));
