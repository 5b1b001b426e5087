// What a shelf count tells the API, in one act.
import { act } from '../act/told.ts';
import { many, maybe, number, text, word } from '../shape.ts';

export const recordShelfCountAct = act(
  'recordShelfCount',
  'ShelfCounted',
  {
    room: text,
    found: maybe(many({ label: text, grams: maybe(number), plates: maybe(number), grossGrams: maybe(number) })),
    missed: maybe(
      many({ label: text, as: word<'NOT_FOUND' | 'USED_UP' | 'MOVED'>(), room: maybe(text), note: maybe(text) }),
    ),
  },
  { events: many({ id: text, sentence: text, container: { label: text } }), notes: many(text) },
);
