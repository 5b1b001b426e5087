// The lot checks that are asked for.
import type { Context } from '../context.ts';
import type { LotCheck } from '../database/generated/sqlite/client.ts';
import { sorbentOf } from '../stock/service.ts';
import { decisionOn } from './standing.ts';

const usualFirst = 50;
/** Looked through at most. */
const most = 1000;

export interface ChecksAsked {
  readonly sorbent?: string | null | undefined;
  readonly isOpen?: boolean | null | undefined;
  readonly first?: number | null | undefined;
}

/** The newest first; open ones are those on whose new lot nobody has decided since. */
export async function lotChecksOf(context: Context, { sorbent, isOpen, first }: ChecksAsked): Promise<LotCheck[]> {
  const { database, lab } = context;
  const place = { tx: database.read, labId: lab.id };
  const sorbentId = sorbent ? (await sorbentOf(place, sorbent, 'lotChecks.sorbent')).id : null;
  const all = await database.read.lotCheck.findMany({
    where: { labId: lab.id, takenBackAt: null, ...(sorbentId ? { sorbentId } : {}) },
    orderBy: { id: 'desc' },
    take: most,
  });
  const kept: LotCheck[] = [];
  for (const check of all) {
    if (isOpen == null || ((await decisionOn(context, check)) === null) === isOpen) kept.push(check);
  }
  return kept.slice(0, first ?? usualFirst);
}
