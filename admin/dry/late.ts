// How much is to be dried, and by when, in words.
import { spokenTime } from '../say/time.ts';
import { grams, plates } from '../say/water.ts';
import type { Clock } from '../say/state.ts';
import type { Request } from './questions.ts';

export const amountWords = ({ dryGrams, plates: count }: Pick<Request, 'dryGrams' | 'plates'>): string =>
  count !== null ? plates(count) : dryGrams !== null ? `${grams(dryGrams)} (dry)` : 'all of it';

/** When it is wanted; what is past says so. */
export function wantedWords(wantedBy: string | null, { now, zone }: Clock): string {
  if (wantedBy === null) return 'no hurry given';
  const at = new Date(wantedBy);
  const when = spokenTime(at, now, zone);
  return at < now ? `was wanted by ${when}` : `wanted by ${when}`;
}
