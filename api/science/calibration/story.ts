// The weighings over time beside what was expected of them, before anything was learned and now.
import type { Expected } from './expect.ts';
import { nothingHeld, varianceAlong } from './gaussian.ts';
import type { Learned } from './learn.ts';

export interface Told {
  readonly id: string;
  readonly container: string;
  readonly atS: number;
  readonly of: 'scoop' | 'whole' | 'gain';
  /** kg/kg dry; a gain in kg. So are all the rest but `sigmas`. */
  readonly found: number;
  readonly noiseSd: number;
  readonly expectedBefore: number;
  /** One sigma of what was expected, the weighing's own noise included. */
  readonly sdBefore: number;
  readonly expectedNow: number;
  /** By how many sigmas it differs from what all other weighings make one expect. */
  readonly sigmas: number | null;
  readonly counts: 'used' | 'left out' | 'confirmed' | 'unusable';
  /** Why it teaches nothing. */
  readonly why: string | null;
}

const sdBefore = ({ slopes, noise }: Expected): number =>
  Math.hypot(noise, Math.sqrt(varianceAlong(nothingHeld, slopes)));

/** In order of time. */
export function storyOf({ before, after, leftOut, sigmas }: Learned): Told[] {
  const first = new Map(before.map((row) => [row.weighing.id, row]));
  return after.map((row) => {
    const { id, container, atS, found, confirmed } = row.weighing;
    const then = first.get(id) ?? row;
    const beyond = leftOut.has(id);
    return {
      id,
      container,
      atS,
      of: found.of,
      found: row.found,
      noiseSd: row.noise,
      expectedBefore: then.expected,
      sdBefore: sdBefore(then),
      expectedNow: row.expected,
      sigmas: sigmas.get(id) ?? null,
      counts: row.unusable !== null ? 'unusable' : beyond ? 'left out' : confirmed ? 'confirmed' : 'used',
      why: row.unusable,
    };
  });
}
