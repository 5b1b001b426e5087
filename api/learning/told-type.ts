// What can be told of weighings: many at once, and that one is right or wrong.
import { builder } from '../builder.ts';
import { addMutation } from '../mutation.ts';
import { BasisEnum, fresh, there, WaterMethodEnum, WeighedPartEnum } from '../stock/schema.ts';
import { confirmed, confirmSaid } from './confirm.ts';
import { weighingSeen, type WeighingSeen } from './learned.ts';
import { recordedMany, recordManySaid } from './record-many.ts';
import { WeighingRef } from './refs.ts';

const LineInput = builder.inputType('WeighingInput', {
  description: 'One weighing: water found, or the weight with the vessel.',
  fields: (t) => ({
    label: t.string({ required: true, description: 'Label of the container.' }),
    at: t.field({ type: 'DateTime', description: 'When; now when not given.' }),
    method: t.field({
      type: WaterMethodEnum,
      description: 'How; `GROSS` when only a weight with the vessel is given.',
    }),
    temperatureC: t.float({ description: 'Temperature of the drying, °C.' }),
    of: t.field({ type: WeighedPartEnum, description: 'Of the whole, or of a scoop; not for `GROSS`.' }),
    waterFraction: t.float({ description: 'Water found, a mass fraction (0.041 for 4.1 %) on `basis`.' }),
    basis: t.field({ type: BasisEnum, description: 'What it is counted on; as received when not given.' }),
    grossGrams: t.float({ description: 'Weight with the vessel, g.' }),
    tareGrams: t.float({ description: 'Weight of the empty vessel, g, where it is not known yet.' }),
    note: t.string({ description: 'A note beside it.' }),
  }),
});

const ManyRef = builder.objectRef<{ weighings: WeighingSeen[] }>('WeighingsRecorded').implement({
  description: 'Weighings were recorded.',
  fields: (t) => ({
    weighings: t.field({
      type: [WeighingRef],
      description: 'The weighings, in the order given.',
      resolve: ({ weighings }) => weighings,
    }),
  }),
});

addMutation('recordWeighings', {
  description:
    'Many weighings at once, from a script or a pasted table: all of them, or none. A refusal names everything that is wrong in `problems`, by line. They are learned from within seconds.',
  check: recordManySaid,
  success: ManyRef,
  run: async (input, context) => {
    const { eventIds } = await fresh(context, recordedMany(context, input));
    const weighings = await Promise.all(eventIds.map((id) => weighingSeen(context, id)));
    return { weighings: weighings.map((one) => there(one, 'weighing')) };
  },
  fields: (t) => ({
    weighings: t.field({ type: [LineInput], required: true, description: 'The weighings, 2,000 at most.' }),
  }),
});

const ConfirmedRef = builder
  .objectRef<{ weighing: WeighingSeen; before: boolean | null }>('WeighingConfirmed')
  .implement({
    description: 'Somebody said what is to be thought of a weighing.',
    fields: (t) => ({
      weighing: t.field({ type: WeighingRef, description: 'The weighing.', resolve: ({ weighing }) => weighing }),
      before: t.exposeBoolean('before', {
        nullable: true,
        description: 'What had been said before; give it to `confirmWeighing` to take this back.',
      }),
    }),
  });

addMutation('confirmWeighing', {
  description:
    'A weighing is right and counts, however far it lies from what was expected; or it is wrong and counts for nothing. Learned from within seconds. Nothing is deleted.',
  check: confirmSaid,
  success: ConfirmedRef,
  run: async (input, context) => {
    const { eventId, before } = await fresh(context, confirmed(context, input));
    return { weighing: there(await weighingSeen(context, eventId), 'weighing'), before };
  },
  fields: (t) => ({
    event: t.id({ required: true, description: 'The event of the weighing.' }),
    isRight: t.boolean({ description: 'True: it is right. False: it is wrong. Null takes back what was said.' }),
  }),
});
