// The API's names in plain English: one word a value, the same everywhere on the screen.
import { grams, plates } from './water.ts';

export type Closure = 'OPEN' | 'LOOSELY_COVERED' | 'WELL_CLOSED' | 'TIGHT' | 'SEALED';
export type Kind = 'DRUM' | 'PORTION' | 'PLATE_BOX' | 'COLUMN';

export const closureWord: Record<Closure, string> = {
  OPEN: 'open',
  LOOSELY_COVERED: 'loosely covered',
  WELL_CLOSED: 'well closed',
  TIGHT: 'tight',
  SEALED: 'sealed',
};

export const kindWord: Record<Kind, string> = {
  DRUM: 'drum',
  PORTION: 'portion',
  PLATE_BOX: 'plate box',
  COLUMN: 'column',
};

export const policyWord = { DRY: 'dry', AS_RECEIVED: 'as received', SET: 'set to a value' } as const;

export const originWord = {
  TABLE: 'table',
  CERTIFICATE: 'certificate',
  MEASURED: 'measured here',
  DEFAULT: 'default',
  UNKNOWN: 'unknown',
} as const;

export const confidenceWord = {
  CONFIRMED: 'confirmed',
  FROM_MEMORY: 'from memory',
  DERIVED: 'derived',
  GUESS: 'a guess',
} as const;

export const roomKindWord = { ROOM: 'room', COLD_STORE: 'cold store', DESICCATOR: 'desiccator' } as const;

/** What is in it: plates for a box, grams as received for the rest. */
export function contents(of: { asReceivedGrams: number; plates?: number | null | undefined }): string {
  return of.plates === null || of.plates === undefined ? grams(of.asReceivedGrams) : plates(of.plates);
}

/** A first letter made large. */
export const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** "3 containers", "1 container". */
export const count = (n: number, one: string, many = `${one}s`): string => `${n} ${n === 1 ? one : many}`;

/** What its figure speaks of: plates and columns are judged as a whole, the rest by what one scoops next. */
export const judgedBy = (kind: Kind): string => (kind === 'PLATE_BOX' || kind === 'COLUMN' ? 'water' : 'next scoop');
