// Which families may not share an oven: the lab's own pairs, else common practice.
import { z } from 'zod';
import { families, usualApart, type Family, type FamilyPair } from './rules.ts';

const family = z.enum(families);
const stored = z.object({ ovensApart: z.array(z.tuple([family, family])) });

/** Among a lab's settings. */
export function apartOf(settings: unknown): readonly FamilyPair[] {
  const read = stored.safeParse(settings);
  return read.success ? read.data.ovensApart : usualApart;
}

export const isOwnApart = (settings: unknown): boolean => stored.safeParse(settings).success;

export const familyWords: Record<Family, string> = {
  BULK: 'bulk sorbents',
  BONDED: 'bonded phases',
  PLATES: 'plates',
};
