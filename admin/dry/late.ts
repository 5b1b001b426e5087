// How much is to be dried, and by when, in words.
import { spokenTime } from '../say/time.ts';
import { grams, plates } from '../say/water.ts';
import type { Clock } from '../say/state.ts';
import type { Request } from './questions.ts';

export const amountWords = ({ dryGrams, plates: count }: Pick<Request, 'dryGrams' | 'plates'>): string =>
  count !== null ? plates(count) : dryGrams !== null ? `${grams(dryGrams)} (dry)` : 'all of it';

/** It should have been there already. */
export const isLate = (wantedBy: string | null, now: Date): boolean => wantedBy !== null && new Date(wantedBy) < now;

/** When it is wanted; what is past says so. */
export function wantedWords(wantedBy: string | null, { now, zone }: Clock): string {
  if (wantedBy === null) return 'no hurry given';
  const at = new Date(wantedBy);
  const when = spokenTime(at, now, zone);
  return isLate(wantedBy, now) ? `late: was wanted by ${when}` : `wanted by ${when}`;
}
