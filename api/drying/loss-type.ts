// The query `lossOnDrying`: weighings in, water out, with the arithmetic between them.
import { builder } from '../builder.ts';
import type { LossOnDrying, WeighingStep } from '../science/weighings.ts';
import { lossOf } from './loss.ts';

type Impossible = Extract<LossOnDrying, { kind: 'impossible' }>;
type Walked = Extract<LossOnDrying, { kind: 'walked' }>;
const walked = (loss: LossOnDrying): Walked | null => (loss.kind === 'walked' ? loss : null);

const StepRef = builder.objectRef<WeighingStep>('WeighingStep').implement({
  description: 'One weighing after drying.',
  fields: (t) => ({
    grossGrams: t.float({ description: 'Bottle and sample, g.', resolve: ({ grossG }) => grossG }),
    lostMgPerG: t.exposeFloat('lostMgPerG', {
      description: 'Lost since the weighing before, mg per g of sample; below 0 for a gain.',
    }),
    waterFraction: t.exposeFloat('waterFraction', { description: 'Loss so far, kg per kg dry.' }),
    asReceivedFraction: t.exposeFloat('asReceivedFraction', { description: 'Loss so far, kg per kg as weighed in.' }),
    constant: t.exposeBoolean('constant', {
      description:
        'It agrees with the one before: at most 0.5 mg per g apart, after at least 30 min where minutes are told.',
    }),
  }),
});

const ImpossibleRef = builder.objectRef<Impossible>('ImpossibleWeighing').implement({
  description: 'A weighing that cannot be.',
  fields: (t) => ({
    path: t.exposeString('path', { description: 'Which one, such as `after.1.grossGrams`.' }),
    message: t.exposeString('message', { description: 'What is wrong.' }),
    expected: t.exposeString('expected', { description: 'What would be right.' }),
  }),
});

const LossRef = builder.objectRef<LossOnDrying>('LossOnDrying').implement({
  description:
    'Loss on drying, of the first constant mass or of the last weighing. It counts solvent too. Water fractions are null when a weighing cannot be.',
  fields: (t) => ({
    steps: t.field({
      type: [StepRef],
      description: 'Each weighing in order.',
      resolve: (loss) => [...(walked(loss)?.steps ?? [])],
    }),
    constantAt: t.int({
      nullable: true,
      description: 'Which weighing, from 0, is the first at constant mass; null while it still dries.',
      resolve: (loss) => walked(loss)?.constantAt ?? null,
    }),
    waterFraction: t.float({
      nullable: true,
      description: 'Loss over the mass left, kg per kg dry.',
      resolve: (loss) => walked(loss)?.waterFraction ?? null,
    }),
    asReceivedFraction: t.float({
      nullable: true,
      description: 'Loss over the mass weighed in, kg per kg.',
      resolve: (loss) => walked(loss)?.asReceivedFraction ?? null,
    }),
    sd: t.float({
      nullable: true,
      description: 'One sigma of the dry-basis fraction from the balance alone, kg per kg.',
      resolve: (loss) => walked(loss)?.sd ?? null,
    }),
    advice: t.string({
      nullable: true,
      description: 'What to do next, in a sentence.',
      resolve: (loss) => walked(loss)?.advice ?? null,
    }),
    impossible: t.field({
      type: ImpossibleRef,
      nullable: true,
      description: 'The first weighing that cannot be; null when all can.',
      resolve: (loss) => (loss.kind === 'impossible' ? loss : null),
    }),
  }),
});

const AfterInput = builder.inputType('WeighingAfterInput', {
  description: 'A weighing after drying.',
  fields: (t) => ({
    grossGrams: t.float({ required: true, description: 'Bottle and sample, g.' }),
    minutes: t.float({ description: 'Drying in all until then, min.' }),
  }),
});

builder.queryField('lossOnDrying', (t) =>
  t.field({
    type: LossRef,
    description: 'Water from the weighings of a loss on drying, to constant mass. Nothing is recorded.',
    args: {
      tareGrams: t.arg.float({ required: true, description: 'The empty bottle, g.' }),
      beforeGrams: t.arg.float({ required: true, description: 'Bottle and sample before drying, g.' }),
      after: t.arg({ type: [AfterInput], required: true, description: 'Each weighing after drying, in order.' }),
      resolutionGrams: t.arg.float({ description: 'Last digit of the balance, g; 0.001 unless given.' }),
    },
    resolve: (_, args) => lossOf(args),
  }),
);
