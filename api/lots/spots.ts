// What was read of a plate or column, as it is kept. An Rf outside 0 to 1 or a front below its spot is refused. Pure.
import { z } from 'zod';
import { invalid, missing, type Refused } from '../errors.ts';
import { rfOf, rfWrong, type RfWrong } from '../science/lots/rf.ts';
import type { Retention, SpotSaid } from './said.ts';

export interface SpotRead {
  readonly compound: string;
  readonly value: number;
  readonly spotMm: number | null;
  readonly frontMm: number | null;
}

const stored = z.array(
  z.object({
    compound: z.string(),
    value: z.number(),
    spotMm: z.number().nullable(),
    frontMm: z.number().nullable(),
  }),
);
export const spotsOf = (json: unknown): SpotRead[] => stored.parse(json);

const right: Record<RfWrong, string> = {
  'not a number': 'a number',
  'below 0': '0 or more: a spot does not run below the start',
  'above 1': '1 or less: a spot does not run further than the front; the front must lie above the spot',
  'front not above the start': 'a front above the start, more than 0 mm',
  'front below the spot': 'at least as far as the spot: the front cannot lie below it',
};

/** A k or column volume beyond this is a slip of the pen. */
const mostRetention = 1000;

/** The number and where it comes from; refuses what cannot be, with its path. */
export function spotRead(said: SpotSaid, retention: Retention, path: string): SpotRead {
  const { compound, value, spotMm = null, frontMm = null } = said;
  if (retention !== 'RF') {
    if (typeof value !== 'number') throw missing(`${path}.value`, 'the retention read');
    if (!(value >= 0 && value <= mostRetention))
      throw invalid(`${path}.value`, value, `0 to ${mostRetention}; on a column it may exceed 1`);
    return { compound, value, spotMm: null, frontMm: null };
  }
  if (typeof value === 'number') {
    const wrong = rfWrong(value);
    if (wrong) throw invalid(`${path}.value`, value, right[wrong]);
    return { compound, value, spotMm, frontMm };
  }
  if (spotMm === null) throw missing(`${path}.value`, 'the Rf, or how far spot and front ran in mm');
  if (frontMm === null) throw missing(`${path}.frontMm`, 'how far the front ran, mm');
  const rf = rfOf({ spotMm, frontMm });
  if (typeof rf !== 'number') throw wrongDistance(rf, spotMm, frontMm, path);
  return { compound, value: rf, spotMm, frontMm };
}

function wrongDistance(wrong: RfWrong, spotMm: number, frontMm: number, path: string): Refused {
  if (wrong === 'below 0') return invalid(`${path}.spotMm`, spotMm, '0 mm or more above the start');
  return invalid(`${path}.frontMm`, frontMm, right[wrong]);
}

/** Tells compounds apart: names that differ in capitals or spaces only are of one. */
export const compoundKey = (compound: string): string => compound.trim().replace(/\s+/g, ' ').toLowerCase();

/** One name for each compound, as it was written first. */
export function namesIn(spots: Iterable<SpotRead>): (compound: string) => string {
  const names = new Map<string, string>();
  for (const { compound } of spots) if (!names.has(compoundKey(compound))) names.set(compoundKey(compound), compound);
  return (compound) => names.get(compoundKey(compound)) ?? compound;
}

/** Readings of a plate by compound. */
export function byCompound(spots: readonly SpotRead[], nameOf = namesIn(spots)): Record<string, number[]> {
  const read: Record<string, number[]> = {};
  for (const { compound, value } of spots) (read[nameOf(compound)] ??= []).push(value);
  return read;
}

/** The spots of one compound, however it is written. */
export const spotsOfCompound = (spots: readonly SpotRead[], compound: string): SpotRead[] =>
  spots.filter((spot) => compoundKey(spot.compound) === compoundKey(compound));

/** The mean of a compound's spots; null where it was not run. */
export function meanOf(spots: readonly SpotRead[], compound: string): number | null {
  const own = spotsOfCompound(spots, compound);
  return own.length === 0 ? null : own.reduce((sum, { value }) => sum + value, 0) / own.length;
}
