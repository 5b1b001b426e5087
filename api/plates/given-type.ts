// What every act on plates is given.
import type { addMutation } from '../mutation.ts';
import { ClosureEnum } from '../stock/schema.ts';

type Fields = Parameters<typeof addMutation>[1]['fields'];

export const batchFields: Fields = (t) => ({
  label: t.string({ required: true, description: 'Label of the plate box, such as `4M7-2XK`.' }),
  plates: t.int({
    description:
      'How many of its plates: they become a batch with a label of its own. All, where they are, when not given.',
  }),
  room: t.string({ description: 'Room in which they stand from then on; as before when not given.' }),
  at: t.field({
    type: 'DateTime',
    description: 'When it happened; now when not given. Earlier is normal, later than five minutes ahead is refused.',
  }),
  note: t.string({ description: 'A note beside it.' }),
});

export const closureField =
  (description: string): Fields =>
  (t) => ({ closure: t.field({ type: ClosureEnum, description }) });
