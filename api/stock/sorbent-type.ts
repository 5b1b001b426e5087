// Sorbents and their numbers, as GraphQL shows them.
import { builder } from '../builder.ts';
import type { SorbentProperty } from '../database/generated/sqlite/client.ts';
import { sorbentClass } from '../science/properties.ts';
import { cautionsOf } from './cautions.ts';
import { ConfidenceEnum, NumberOriginEnum, ReactionEnum, TargetPolicyEnum } from './enums.ts';
import { tablesNow } from './grade-tables.ts';
import { LotRef, SorbentRef } from './refs.ts';

const SorbentPropertyRef = builder.objectRef<SorbentProperty>('SorbentProperty').implement({
  description: 'A number of a sorbent, with where it comes from.',
  fields: (t) => ({
    name: t.exposeString('name', { description: 'Which number, such as `bulkDensityKgPerM3` or `filmCapacity`.' }),
    value: t.exposeFloat('value', { nullable: true, description: 'The number, in `unit`; null where nobody knows.' }),
    unit: t.exposeString('unit', { description: 'Its unit; `1` for a pure number.' }),
    origin: t.field({ type: NumberOriginEnum, description: 'Where it comes from.', resolve: ({ origin }) => origin }),
    confidence: t.field({
      type: ConfidenceEnum,
      description: 'How sure it is.',
      resolve: ({ confidence }) => confidence,
    }),
    source: t.exposeString('source', { description: 'Its source in words.' }),
  }),
});

const ActivityGradeRef = builder.objectRef<{ grade: string; waterOfTotal: number }>('ActivityGrade').implement({
  description: 'An activity grade of the table that the lab uses: a printed one, from memory, or its own.',
  fields: (t) => ({
    grade: t.exposeString('grade', { description: 'Its name; I to V in the printed tables.' }),
    waterAsReceivedFraction: t.float({
      description: 'Water that makes it, kg per kg of the whole.',
      resolve: ({ waterOfTotal }) => waterOfTotal,
    }),
  }),
});

builder.node(SorbentRef, {
  name: 'Sorbent',
  description: 'A sorbent as the lab keeps it: its class, its sizes, its numbers, and the water it should have.',
  id: { resolve: ({ id }) => id },
  loadWithoutCache: (id, { load }) => load.sorbent.load(id),
  fields: (t) => ({
    name: t.exposeString('name', { description: 'Its name, once in the lab.' }),
    sorbentClass: t.exposeString('sorbentClass', {
      description: 'A class of the property table (`silica`, `alumina`, `c18`, …) or the lab’s own.',
    }),
    particleSizeLowUm: t.exposeFloat('particleSizeLowUm', { nullable: true, description: 'Smallest particles, µm.' }),
    particleSizeHighUm: t.exposeFloat('particleSizeHighUm', { nullable: true, description: 'Largest particles, µm.' }),
    meshLow: t.exposeInt('meshLow', { nullable: true, description: 'Coarser sieve, mesh number.' }),
    meshHigh: t.exposeInt('meshHigh', { nullable: true, description: 'Finer sieve, mesh number.' }),
    poreSizeNm: t.exposeFloat('poreSizeNm', { nullable: true, description: 'Pore size, nm.' }),
    bondedPhase: t.exposeString('bondedPhase', { nullable: true, description: 'Bonded phase, such as `C18`.' }),
    reaction: t.field({
      type: ReactionEnum,
      nullable: true,
      description: 'Acidic, neutral or basic; null when nobody said.',
      resolve: ({ reaction }) => reaction,
    }),
    targetPolicy: t.field({
      type: TargetPolicyEnum,
      description: 'What its water should be for its use.',
      resolve: ({ targetPolicy }) => targetPolicy,
    }),
    targetUpperWaterFraction: t.exposeFloat('targetUpperWaterFraction', {
      nullable: true,
      description: 'Upper end of the band, kg water per kg dry sorbent; null: the default of its class.',
    }),
    targetLowerWaterFraction: t.exposeFloat('targetLowerWaterFraction', {
      nullable: true,
      description: 'Lower end of the band, kg water per kg dry sorbent; null: none.',
    }),
    targetBandWaterFraction: t.exposeFloat('targetBandWaterFraction', {
      nullable: true,
      description:
        'As received: how far either side of each lot’s own water, kg per kg dry sorbent; null: half a percent.',
    }),
    classUpperWaterFraction: t.float({
      nullable: true,
      description: 'The upper end that its class gives when it is kept dry and none is set; an invented default.',
      resolve: (of) => sorbentClass(of.sorbentClass)?.upperWaterFraction ?? null,
    }),
    grades: t.field({
      type: [ActivityGradeRef],
      description:
        'Activity grades of its class by the table that the lab uses, most active first; none where no table exists.',
      resolve: async (of, _, context) => {
        const tables = await tablesNow(context);
        return [...(tables.find((one) => one.isUsed && one.sorbentClass === of.sorbentClass)?.grades ?? [])];
      },
    }),
    properties: t.field({
      type: [SorbentPropertyRef],
      description: 'The numbers behind its estimates, by name, unknown ones too.',
      resolve: ({ id }, _, { load }) => load.properties.load(id),
    }),
    lots: t.field({
      type: [LotRef],
      description: 'Its lots, oldest first.',
      resolve: ({ id }, _, { load }) => load.lotsOfSorbent.load(id),
    }),
    cautions: t.stringList({
      description: 'What to mind with it, each in one sentence.',
      resolve: ({ sorbentClass }) => cautionsOf(sorbentClass),
    }),
  }),
});

builder.queryField('sorbent', (t) =>
  t.field({
    type: SorbentRef,
    nullable: true,
    description: 'The sorbent of this name, in any case; null when there is none.',
    args: { name: t.arg.string({ required: true, description: 'Its name.' }) },
    resolve: async (_, { name }, { database, lab }) => {
      const wanted = name.trim().toLowerCase();
      const all = await database.read.sorbent.findMany({ where: { labId: lab.id } });
      return all.find((one) => one.name.toLowerCase() === wanted) ?? null;
    },
  }),
);
