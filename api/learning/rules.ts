// What a timeline's weighings say, ready to be learned from: samples as they are, the whole on the balance against itself.
import { weighingNoise, type Found } from '../science/calibration/weighing.ts';

/** As much of an event as deciding takes. */
export interface Weighed {
  readonly eventId: string;
  readonly at: number;
  readonly type: string;
  readonly role: 'own' | 'filled';
  /** Of a weighing of the whole with its vessel, g. */
  readonly gross: { readonly grossGrams: number; readonly tareGrams: number } | null;
}

export interface Sample {
  readonly of: 'whole' | 'scoop';
  readonly waterFraction: number;
  readonly sd: number;
}

export interface Said {
  readonly eventId: string;
  readonly at: number;
  readonly of: 'scoop' | 'whole' | 'gain';
  /** Null where it says nothing by itself, and why. */
  readonly found: Found | null;
  readonly why: string | null;
}

/** After these what lies in the vessel, or how it lies there, is not what was weighed before. */
const changing: ReadonlySet<string> = new Set([
  'CAME_IN',
  'PORTION_TAKEN',
  'PLATES_TAKEN',
  'COLUMN_PACKED',
  'COMBINED',
  'LOST',
  'SPENT_ON_CHECK',
  'DISCARDED',
  'COUNTED',
  'USED_UP',
  'DRIED',
  'EQUILIBRATED',
  'TOUCHED_SOLVENT',
]);

export const words = {
  first: 'the first time on the balance: later ones are held against it',
  anew: 'nothing was known of its water before: it counts from this weighing on',
  unsaid: 'it says nothing of water',
} as const;

/** What each weighing of a timeline (in order) found; `samples` by their events. */
export function saidBy(
  events: readonly Weighed[],
  samples: ReadonlyMap<string, Sample>,
  anew: ReadonlySet<string>,
): Said[] {
  let reference: { grossGrams: number; tareGrams: number; at: number } | null = null;
  return events.flatMap((event): Said[] => {
    const { eventId, at, type, role, gross } = event;
    if (changing.has(type) || role === 'filled') reference = null;
    if (type !== 'WEIGHED' || role !== 'own') return [];
    if (gross) {
      const before: typeof reference = reference;
      if (!before || before.tareGrams !== gross.tareGrams) {
        reference = { ...gross, at };
        return [{ eventId, at, of: 'gain', found: null, why: words.first }];
      }
      const gainKg = (gross.grossGrams - before.grossGrams) / 1000;
      const found: Found = { of: 'gain', gainKg, sinceS: before.at / 1000, sdKg: weighingNoise.wholeKg };
      return [{ eventId, at, of: 'gain', found, why: null }];
    }
    const sample = samples.get(eventId);
    if (!sample) return [{ eventId, at, of: 'whole', found: null, why: words.unsaid }];
    const { of, waterFraction, sd } = sample;
    const isAnew = anew.has(eventId);
    return [{ eventId, at, of, found: { of, waterFraction, sd }, why: isAnew ? words.anew : null }];
  });
}
