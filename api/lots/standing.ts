// How each lot stands: what a person decided of it, else whether its check is under way, or nobody has looked yet.
import type { Context } from '../context.ts';
import type { LotCheck, LotDecision } from '../database/generated/sqlite/client.ts';
import { onceARequest } from '../once.ts';
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
    reader.lotCheck.findMany({
      where: { labId, takenBackAt: null },
      select: { newLotId: true, madeAt: true },
      orderBy: { madeAt: 'asc' },
    }),
    reader.lot.findMany({
      where: { labId },
      select: { id: true, sorbentId: true },
      orderBy: [{ receivedAt: 'asc' }, { id: 'asc' }],
    }),
  ]);
  const begun = new Map(checks.map(({ newLotId, madeAt }) => [newLotId, madeAt]));
  const seen = new Set<string>();
  return new Map(
    lots.map(({ id, sorbentId }): [string, LotStanding] => {
      const decision = decisions.get(id) ?? null;
      const isFirst = !seen.has(sorbentId);
      seen.add(sorbentId);
      const check = begun.get(id);
      const open: Standing = check ? 'IN_CHECK' : isFirst ? 'FIRST' : 'UNCHECKED';
      // A check begun after a lot was accepted is open; what was rejected stays so until somebody decides again.
      const isOpen = !decision || (decision.outcome === 'ACCEPTED' && check !== undefined && decision.at < check);
      return [id, { standing: isOpen ? open : decision.outcome, decision }];
    }),
  );
}

const standingsNow = onceARequest(({ database, lab }) => lotStandings(database.read, lab.id));

/** How one lot stands, worked out once a request however many ask. */
export const standingOf = async (context: Context, lotId: string): Promise<LotStanding> =>
  (await standingsNow(context)).get(lotId) ?? { standing: 'UNCHECKED', decision: null };

/** What was decided of a check's new lot since it was begun; null while nobody has. */
export async function decisionOn(context: Context, { newLotId, madeAt }: LotCheck): Promise<LotDecision | null> {
  const { decision } = await standingOf(context, newLotId);
  return decision && decision.at >= madeAt ? decision : null;
}
