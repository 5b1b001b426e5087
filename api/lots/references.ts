// Which compounds were run on which sorbents: what charts can be shown, and what a form suggests.
import type { Context } from '../context.ts';
import type { Sorbent } from '../database/generated/sqlite/client.ts';
import type { Retention } from './said.ts';
import { byCompound, compoundKey, spotsOf } from './spots.ts';

export interface Reference {
  readonly sorbent: Sorbent;
  readonly compound: string;
  readonly retention: Retention;
  readonly runs: number;
  readonly lastAt: Date;
}

/** Looked through: the newest. */
const mostRows = 3000;

export async function referencesOf({ database, lab, load }: Context): Promise<Reference[]> {
  const rows = await database.read.retentionRun.findMany({
    where: { labId: lab.id, takenBackAt: null, OR: [{ checkId: null }, { check: { takenBackAt: null } }] },
    orderBy: [{ at: 'desc' }, { id: 'desc' }],
    take: mostRows,
  });
  const found = new Map<string, Omit<Reference, 'sorbent'> & { sorbentId: string }>();
  for (const { sorbentId, retention, at, spots } of rows) {
    for (const compound of Object.keys(byCompound(spotsOf(spots)))) {
      const key = JSON.stringify([sorbentId, compoundKey(compound), retention]);
      const there = found.get(key);
      if (there) found.set(key, { ...there, runs: there.runs + 1 });
      else found.set(key, { sorbentId, compound, retention, runs: 1, lastAt: at });
    }
  }
  const named = await Promise.all(
    [...found.values()].map(async ({ sorbentId, ...one }) => {
      const sorbent = await load.sorbent.load(sorbentId);
      return sorbent ? [{ ...one, sorbent }] : [];
    }),
  );
  return named.flat();
}
