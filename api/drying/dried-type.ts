// What a request waited for was dried, in GraphQL.
import { addMutation } from '../mutation.ts';
import { BasisEnum, ClosureEnum, fresh, inOvenFields, RecordedRef } from '../stock/schema.ts';
import { driedSaid, requestDried } from './dried.ts';

addMutation('recordRequestedDrying', {
  description:
    'What a request waited for was dried: all of the container, or some of it, which goes into a container of its own and is dried there.',
  check: driedSaid,
  success: RecordedRef,
  run: (input, context) => fresh(context, requestDried(context, input)),
  fields: (t) => ({
    id: t.id({ required: true, description: 'Which request.' }),
    grams: t.float({ description: 'How much of it was dried, g; all of it when not given.' }),
    basis: t.field({ type: BasisEnum, description: 'What the grams are counted on; as received when not given.' }),
    plates: t.int({ description: 'How many plates of a box were dried; all when not given.' }),
    vessel: t.string({ description: 'With grams: name of the listed vessel that holds what was dried.' }),
    closure: t.field({
      type: ClosureEnum,
      description: 'With some of it: how what was dried stands from then on; well closed when not given.',
    }),
    temperatureC: t.float({ description: 'Temperature of the oven, °C.' }),
    minutes: t.float({ description: 'Minutes at that temperature.' }),
    vacuum: t.boolean({ description: 'Under vacuum; not when not given.' }),
    waterFraction: t.float({
      description: 'Water measured afterwards, kg per kg dry sorbent; left to the recipe when not given.',
    }),
    ...inOvenFields(t),
    at: t.field({ type: 'DateTime', description: 'When it was dry; now when not given.' }),
    note: t.string({ description: 'A note beside it.' }),
  }),
});
