// What goes with sorbent or plates from one container into another: that it met solvent, and how it was prepared.
import { z } from 'zod';
import { prepared } from './prepared.ts';
import type { Stand } from './stand.ts';

export const carried = z.object({
  touchedSolventAt: z.string().nullable(),
  wettedAt: z.string().nullable(),
  hoodAt: z.string().nullable(),
  prepared: prepared.nullable(),
});
export type Carried = z.infer<typeof carried>;

const text = (at: Date | null): string | null => at?.toISOString() ?? null;
const instant = (at: string | null | undefined): Date | null => (at ? new Date(at) : null);

/** Null where there is nothing to tell. */
export function carriedOf(stand: Stand): Carried | null {
  const { touchedSolventAt, wettedAt, hoodAt } = stand;
  if (!touchedSolventAt && !wettedAt && !stand.prepared) return null;
  return {
    touchedSolventAt: text(touchedSolventAt),
    wettedAt: text(wettedAt),
    hoodAt: text(hoodAt),
    prepared: stand.prepared,
  };
}

/** How what came from another container stands at its beginning. */
export const begunWith = (of: Carried | null | undefined) => ({
  touchedSolventAt: instant(of?.touchedSolventAt),
  wettedAt: instant(of?.wettedAt),
  hoodAt: instant(of?.hoodAt),
  prepared: of?.prepared ?? null,
});

/** As it lies in the database, where nothing was written too. */
export const storedCarried = carried.nullish().transform((of) => of ?? null);

/** Whether what is stored says the same; keys may lie in another order there. */
export const sameCarried = (one: Carried | null, stored: unknown): boolean =>
  JSON.stringify(storedCarried.parse(one)) === JSON.stringify(storedCarried.parse(stored));
