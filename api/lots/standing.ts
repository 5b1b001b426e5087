// How each lot stands: what a person decided of it, else whether its check is under way, or nobody has looked yet.
import type { Context } from '../context.ts';
import type { LotDecision } from '../database/generated/sqlite/client.ts';
import type { Transaction } from '../work.ts';

export type Standing = 'ACCEPTED' | 'REJECTED' | 'IN_CHECK' | 'UNCHECKED' | 'FIRST';

export interface LotStanding {
  readonly standing: Standing;
  /** What decided it; null where nobody did. */
  readonly decision: LotDecision | null;
}

type Reader = Pick<Transaction, 'lotDecision' | 'lotCheck' | 'lot'>;

/** The newest decision on each lot that is not taken back. */
async function decisionsOn(reader: Pick<Reader, 'lotDecision'>, labId: string): Promise<Map<string, LotDecision>> {
  const all = await reader.lotDecision.findMany({
    where: { labId, takenBackAt: null },
    orderBy: [{ at: 'asc' }, { id: 'asc' }],
  });
  return new Map(all.map((decision) => [decision.lotId, decision]));
}

/** Lots that a person rejected: never offered for a need, a campaign or an order. By id, with why. */
export async function rejectedLots(
  reader: Pick<Reader, 'lotDecision'>,
  labId: string,
): Promise<ReadonlyMap<string, string>> {
  const decisions = await decisionsOn(reader, labId);
  return new Map([...decisions].filter(([, { outcome }]) => outcome === 'REJECTED').map(([id, { why }]) => [id, why]));
}

/** How all lots of the lab stand, by id. A sorbent's first lot has none before it to be compared with. */
export async function lotStandings(reader: Reader, labId: string): Promise<ReadonlyMap<string, LotStanding>> {
  const [decisions, checks, lots] = await Promise.all([
    decisionsOn(reader, labId),
    reader.lotCheck.findMany({ where: { labId, takenBackAt: null }, select: { newLotId: true } }),
    reader.lot.findMany({
      where: { labId },
      select: { id: true, sorbentId: true },
      orderBy: [{ receivedAt: 'asc' }, { id: 'asc' }],
    }),
  ]);
  const inCheck = new Set(checks.map(({ newLotId }) => newLotId));
  const seen = new Set<string>();
  return new Map(
    lots.map(({ id, sorbentId }): [string, LotStanding] => {
      const decision = decisions.get(id) ?? null;
      const isFirst = !seen.has(sorbentId);
      seen.add(sorbentId);
      const open: Standing = inCheck.has(id) ? 'IN_CHECK' : isFirst ? 'FIRST' : 'UNCHECKED';
      return [id, { standing: decision?.outcome ?? open, decision }];
    }),
  );
}

const requests = new WeakMap<Context['load'], Promise<ReadonlyMap<string, LotStanding>>>();

/** How one lot stands, worked out once a request however many ask. */
export async function standingOf({ database, lab, load }: Context, lotId: string): Promise<LotStanding> {
  const all = requests.get(load) ?? lotStandings(database.read, lab.id);
  requests.set(load, all);
  return (await all).get(lotId) ?? { standing: 'UNCHECKED', decision: null };
}
