// Batches of prepared plates as GraphQL shows them.
import { builder } from '../builder.ts';
import { ContainerRef, PlateRegimeEnum } from '../stock/schema.ts';
import { sentenceOf, useWithin, type Batch } from './service.ts';
import { regimeWords } from './rules.ts';
import { PreWashRef } from './wash-type.ts';
import { SolventGoneRef, ActivationRef, EquilibrationRef } from './done-type.ts';
import { UseWithinRef } from './within-type.ts';

export const BatchStateEnum = builder.enumType('PlateBatchState', {
  description: 'Where a batch of plates is between the tank and the bench.',
  values: {
    WET: { description: 'Wet with solvent: in the tank, or nobody said that it hangs in the hood.' },
    DRYING: { description: 'Drying in the hood, until the solvent is recorded as gone.' },
    DRY: { description: 'Dry of solvent, neither activated nor equilibrated since.' },
    ACTIVATED: { description: 'Activated in an oven: dry until spotted.' },
    EQUILIBRATED: { description: 'Equilibrated at one humidity.' },
  },
});

export const PlateBatchRef = builder.objectRef<Batch>('PlateBatch').implement({
  description: 'Plates that were prepared together and stand on the shelf under one label.',
  fields: (t) => ({
    label: t.string({ description: 'Its label.', resolve: ({ container }) => container.label }),
    container: t.field({ type: ContainerRef, description: 'The box.', resolve: ({ container }) => container }),
    state: t.field({ type: BatchStateEnum, description: 'Where it is.', resolve: ({ state }) => state }),
    regime: t.field({
      type: PlateRegimeEnum,
      nullable: true,
      description: 'How they are kept until spotted; null while they are not ready for it.',
      resolve: ({ regime }) => regime,
    }),
    regimeWords: t.string({
      nullable: true,
      description: 'The regime in words, such as `equilibrated at 45 % RH`; null without one.',
      resolve: ({ regime, container }) => regime && regimeWords(regime, container.regimeHumidityPercent),
    }),
    humidityPercent: t.float({
      nullable: true,
      description: 'The air that they were equilibrated in, % RH; null of every other regime.',
      resolve: ({ container }) => container.regimeHumidityPercent,
    }),
    preparedAt: t.field({
      type: 'DateTime',
      nullable: true,
      description: 'When they were activated or equilibrated; null while they are neither.',
      resolve: ({ container }) => container.preparedAt,
    }),
    ready: t.exposeBoolean('ready', { description: 'They can be spotted now.' }),
    whyNot: t.string({
      nullable: true,
      description: 'Why they cannot be spotted now; null when they can.',
      resolve: ({ whyNot }) => whyNot || null,
    }),
    goodUntil: t.expose('goodUntil', {
      type: 'DateTime',
      nullable: true,
      description: 'Until when they are good as they stand; null when they are not ready, or no end is in sight.',
    }),
    plates: t.int({ description: 'Plates left.', resolve: ({ container }) => container.plates ?? 0 }),
    solventWetAt: t.field({
      type: 'DateTime',
      nullable: true,
      description: 'Since when they are wet with solvent; null while they are not.',
      resolve: ({ container }) => container.wettedAt,
    }),
    inHoodAt: t.field({
      type: 'DateTime',
      nullable: true,
      description: 'Wet ones: when they were set in the hood, or will be when the tank is done; null when nobody said.',
      resolve: ({ container }) => container.hoodAt,
    }),
    solventGoneFrom: t.expose('solventGoneFrom', {
      type: 'DateTime',
      nullable: true,
      description: 'When recordSolventGone is taken at the earliest; null while they are not wet.',
    }),
    preWash: t.field({
      type: PreWashRef,
      nullable: true,
      description: 'The last pre-wash; null without one.',
      resolve: ({ of }) => of?.preWash ?? null,
    }),
    solventGone: t.field({
      type: SolventGoneRef,
      nullable: true,
      description: 'When its solvent was gone; null while it is not.',
      resolve: ({ of }) => of?.solventGone ?? null,
    }),
    activation: t.field({
      type: ActivationRef,
      nullable: true,
      description: 'The last activation since they were wet; null without one.',
      resolve: ({ of }) => of?.activation ?? null,
    }),
    equilibration: t.field({
      type: EquilibrationRef,
      nullable: true,
      description: 'The last equilibration since they were activated; null without one.',
      resolve: ({ of }) => of?.equilibration ?? null,
    }),
    usableForExtraction: t.boolean({
      description:
        'Pre-washed with the mobile phase of the extraction, full length, dirty edge out of the way, and not wet.',
      resolve: ({ use }) => use.extraction,
    }),
    usableFor: t.string({
      description: 'What extraction they are for, or why they are for none.',
      resolve: ({ use }) => use.why,
    }),
    useWithin: t.field({
      type: [UseWithinRef],
      complexity: 30,
      args: { room: t.arg.string({ description: 'Name of a room; each room that people work in when not given.' }) },
      description: 'How long they last once taken out; empty where nothing can be said.',
      resolve: ({ container }, { room }, context) => useWithin(context, container.id, room),
    }),
    sentence: t.string({
      description: 'It in one sentence, such as `12 plates dry until spotted; good until 3 Mar 14:00`.',
      resolve: (batch, _, context) => sentenceOf(context, batch),
    }),
  }),
});
