// What the list of what waits to be dried tells the API.
import { act } from '../act/told.ts';
import { recordedFields } from '../fields.ts';
import type { Closure } from '../say/words.ts';
import { flag, instant, maybe, number, text, word } from '../shape.ts';

const asked = { id: text };
export const requestDryingAct = act(
  'requestDrying',
  'DryingRequest',
  {
    label: text,
    dryGrams: maybe(number),
    plates: maybe(number),
    why: text,
    wantedBy: maybe(instant),
    temperatureC: maybe(number),
    minutes: maybe(number),
    depthMm: maybe(number),
    priority: maybe(number),
  },
  asked,
);
export const withdrawAct = act('withdrawDrying', 'DryingRequest', { id: text }, asked);
export const restoreAct = act('restoreDrying', 'DryingRequest', { id: text }, asked);
/** What waits was dried: all of it, or some of it in a vessel of its own. */
export const driedAct = act(
  'recordRequestedDrying',
  'Recorded',
  {
    id: text,
    grams: maybe(number),
    basis: maybe(word<'DRY' | 'AS_RECEIVED'>()),
    plates: maybe(number),
    vessel: maybe(text),
    closure: maybe(word<Closure>()),
    temperatureC: maybe(number),
    minutes: maybe(number),
    vacuum: maybe(flag),
    waterFraction: maybe(number),
    depthMm: maybe(number),
    minutesToClosed: maybe(number),
    fan: maybe(flag),
    at: maybe(instant),
    note: maybe(text),
  },
  recordedFields,
);
export const moveAct = act('moveDryingRequest', 'DryingRequest', { id: text, before: maybe(text) }, asked);
/** Null takes what was said away again. */
export const setRequestAct = act(
  'setDryingRequest',
  'DryingRequest',
  { id: text, wantedBy: maybe(instant), priority: maybe(number), depthMm: maybe(number) },
  asked,
);
