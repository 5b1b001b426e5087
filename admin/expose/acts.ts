// What a container's page tells the API beside events: what is kept for somebody.
import { act } from '../act/told.ts';
import { instant, maybe, number, text } from '../shape.ts';

const held = { hold: { id: text } };
export const holdAct = act(
  'holdStock',
  'Held',
  { label: text, dryGrams: maybe(number), plates: maybe(number), forWhat: text, until: maybe(instant) },
  held,
);
export const releaseAct = act('releaseHold', 'Held', { hold: text }, held);
