// What the list of what waits to be dried tells the API.
import { act } from '../act/told.ts';
import { instant, maybe, number, text } from '../shape.ts';

const asked = { id: text };
export const requestDryingAct = act(
  'requestDrying',
  'DryingRequest',
  { label: text, dryGrams: maybe(number), plates: maybe(number), why: text, wantedBy: maybe(instant) },
  asked,
);
export const withdrawAct = act('withdrawDrying', 'DryingRequest', { id: text }, asked);
export const moveAct = act('moveDryingRequest', 'DryingRequest', { id: text, before: maybe(text) }, asked);
