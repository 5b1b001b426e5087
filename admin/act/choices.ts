// What one chooses among, wherever it is asked: how a lid stands, what figures are counted on, how water was found.
import { closureWord, type Closure } from '../say/words.ts';
import type { Choice } from './field.ts';

const closure = (value: Closure): Choice => ({ value, words: closureWord[value] });

export const open = closure('OPEN');
/** A lid of some kind, the most usual first. */
export const lids: readonly Choice[] = (['WELL_CLOSED', 'TIGHT', 'LOOSELY_COVERED', 'SEALED'] as const).map(closure);
export const bases: readonly Choice[] = [
  { value: 'AS_RECEIVED', words: 'as received' },
  { value: 'DRY', words: 'dry basis' },
];
export const weighedParts: readonly Choice[] = [
  { value: 'SCOOP', words: 'a scoop' },
  { value: 'WHOLE', words: 'all of it' },
];
export const weighingMethods: readonly Choice[] = [
  { value: 'LOSS_ON_DRYING', words: 'loss on drying' },
  { value: 'KARL_FISCHER', words: 'Karl Fischer' },
];
export const packingMethods: readonly Choice[] = [
  { value: 'DRY', words: 'dry, with tapping' },
  { value: 'SLURRY', words: 'as a slurry' },
];
