// What a script asks before it books: can this be had by then?
import { builder } from '../builder.ts';
import { checked, Refused } from '../errors.ts';
import { ContainerRef } from '../stock/schema.ts';
import { available, availabilityOf, availableSaid, previewSaid, type Availability } from './available.ts';
import { NeedKindEnum, PrepStepKindEnum } from './enums.ts';
import { instantOf } from './hours.ts';
import { needInput } from './need-told-type.ts';
import { ObstacleRef } from './need-type.ts';

const ShareRef = builder.objectRef<Availability['shares'][number]>('AvailableFrom').implement({
  description: 'So much of a container.',
  fields: (t) => ({
    container: t.field({ type: ContainerRef, description: 'The container.', resolve: ({ container }) => container }),
    dryGrams: t.float({
      nullable: true,
      description: 'So much of it, dry g; null for plates.',
      resolve: ({ amount, isPlates }) => (isPlates ? null : amount),
    }),
    plates: t.int({
      nullable: true,
      description: 'So many plates of it; null for sorbent.',
      resolve: ({ amount, isPlates }) => (isPlates ? amount : null),
    }),
    mustDry: t.exposeBoolean('mustDry', { description: 'It must be dried first.' }),
  }),
});

const StepRef = builder.objectRef<Availability['steps'][number]>('AvailableStep').implement({
  description: 'A step as it would be planned.',
  fields: (t) => ({
    kind: t.field({ type: PrepStepKindEnum, description: 'What is done.', resolve: ({ kind }) => kind }),
    startAt: t.field({
      type: 'DateTime',
      description: 'When it would begin.',
      resolve: ({ start }) => instantOf(start),
    }),
    endAt: t.field({ type: 'DateTime', description: 'When it would end.', resolve: ({ end }) => instantOf(end) }),
  }),
});

const AvailableRef = builder.objectRef<Availability>('Available').implement({
  description: 'Whether something can be had by a time, beside all that is promised. Nothing is kept by asking.',
  fields: (t) => ({
    can: t.exposeBoolean('can', { description: 'It can be.' }),
    by: t.expose('by', { type: 'DateTime', description: 'By when it was asked.' }),
    dryGrams: t.exposeFloat('dryGrams', { nullable: true, description: 'Dry sorbent, g; null for plates.' }),
    plates: t.exposeInt('plates', { nullable: true, description: 'Plates; null for sorbent.' }),
    from: t.field({
      type: [ShareRef],
      description: 'From which containers; empty where there is not enough.',
      resolve: ({ shares }) => shares,
    }),
    steps: t.field({
      type: [StepRef],
      description: 'What would be done for it, in order.',
      resolve: ({ steps }) => [...steps],
    }),
    obstacle: t.field({
      type: ObstacleRef,
      nullable: true,
      description: 'What stands in the way; null when it can be.',
      resolve: ({ obstacle }) => obstacle,
    }),
    firstPossibleAt: t.field({
      type: 'DateTime',
      nullable: true,
      description:
        'The first time it could be, in quarter hours; null when it can be by then, or within four weeks cannot.',
      resolve: ({ firstPossible }) => firstPossible,
    }),
  }),
});

const result = (name: string) => ({
  types: [Refused],
  union: { name: `${name}Result`, description: 'The answer, or what is wrong with the question.' },
});

const PreviewInput = builder.inputType('NeedPreviewInput', {
  description: 'A need that is only supposed.',
  fields: (t) => ({
    kind: t.field({ type: NeedKindEnum, required: true, description: 'What is needed.' }),
    ...needInput(t, true),
  }),
});

builder.queryFields((t) => ({
  available: t.field({
    type: AvailableRef,
    description:
      'Can so much dry sorbent be had by a time? Yes, from these containers after this drying; or no, with the first time it could be.',
    complexity: 100,
    args: {
      sorbent: t.arg.string({ required: true, description: 'Name of the sorbent.' }),
      grams: t.arg.float({ required: true, description: 'How much, dry g.' }),
      by: t.arg({ type: 'DateTime', required: true, description: 'By when.' }),
      limit: t.arg.float({ description: 'Most water, kg per kg dry sorbent; its band when not given.' }),
      lotNumber: t.arg.string({ description: 'Only of this lot; any when not given.' }),
    },
    errors: result('Available'),
    resolve: (_, { sorbent, grams: dryGrams, by, limit: limitWaterFraction, lotNumber }, context) =>
      available(context, checked(availableSaid, { sorbent, dryGrams, by, limitWaterFraction, lotNumber }, 'available')),
  }),
  needPreview: t.field({
    type: AvailableRef,
    description: 'What would come of a need, with nothing written: for a form that is being filled in.',
    complexity: 100,
    args: { input: t.arg({ type: PreviewInput, required: true, description: 'The need.' }) },
    errors: result('NeedPreview'),
    resolve: (_, { input }, context) => availabilityOf(context, checked(previewSaid, input)),
  }),
}));
