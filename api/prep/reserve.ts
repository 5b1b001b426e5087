// Stock for a need: chosen by lot, state and age, and kept, so that the same grams or plates are never promised twice.
import type { Need } from '../database/generated/sqlite/client.ts';
import { rejectedLots } from '../lots/service.ts';
import { chosen, type Candidate, type Choice } from '../science/prep/choose.ts';
import { campaignShares, freeDryGrams, freePlates, holdMade, holdsMade } from '../stock/service.ts';
import type { Work } from '../work.ts';
import { amountOf, preparedOf, type NeedFacts, type Reader, type Stocked, withStock } from './facts.ts';
import { isGoodAt } from './rules.ts';
import { isWashedFor } from './washed-in.ts';

/** More containers of one sorbent are not looked at. */
const mostCandidates = 2_000;

/** What of a sorbent is there that could serve. */
async function stockOf(reader: Reader, labId: string, need: Need): Promise<Stocked[]> {
  const isPlates = need.kind === 'PLATES';
  return reader.container.findMany({
    where: {
      labId,
      finishedAt: null,
      isVoid: false,
      lot: { sorbentId: need.sorbentId },
      kind: isPlates ? 'PLATE_BOX' : { in: ['DRUM', 'PORTION'] },
      ...(isPlates
        ? { wettedAt: null, ...(need.backing ? { backing: need.backing } : {}) }
        : { touchedSolventAt: null }),
    },
    ...withStock,
    orderBy: { cameInAt: 'asc' },
    take: mostCandidates,
  });
}

/** A box as a need sees it. Plates are activated before use in any case; bulk only where it is too wet. */
function candidateOf(one: Stocked, { need, how }: Pick<NeedFacts, 'need' | 'how'>): Candidate {
  const isPlates = need.kind === 'PLATES';
  const isPrepared = isPlates && isWashedFor(need, preparedOf(one)) && preparedOf(one)?.preWash != null;
  const isGood = isGoodAt(one.exposure, need.at, need.limitWaterFraction);
  return {
    containerId: one.id,
    lotId: one.lotId,
    lotReceivedAt: one.lot.receivedAt.getTime(),
    retestAt: one.lot.retestOn?.getTime() ?? null,
    cameInAt: one.cameInAt.getTime(),
    isOpen: one.closure !== 'SEALED',
    free: isPlates ? freePlates(one) : freeDryGrams(one),
    isGood: isPlates ? isPrepared || isGood : isGood,
    canDry: how.recipe !== null && one.exposure?.state !== 'TOO_DRY',
    isPrepared,
  };
}

/** What of a sorbent is there, asked of the database once in one planning, with what is promised meanwhile taken off. */
export class Shelf {
  private readonly stock = new Map<string, Promise<Stocked[]>>();
  private readonly promised = new Map<string, number>();
  private rejected: Promise<ReadonlyMap<string, string>> | null = null;
  private readonly reader: Reader;
  private readonly labId: string;

  constructor(reader: Reader, labId: string) {
    this.reader = reader;
    this.labId = labId;
  }

  /** What would serve; nothing is kept by asking. */
  async choiceFor(facts: NeedFacts): Promise<Choice> {
    const { need } = facts;
    const key = `${need.sorbentId} ${need.kind === 'PLATES'} ${need.backing ?? ''}`;
    const stock = this.stock.get(key) ?? stockOf(this.reader, this.labId, need);
    this.stock.set(key, stock);
    const rejected = await this.rejectedLots();
    // What is kept for a campaign is there for its own needs, and for nobody else's.
    const ours = need.campaignId ? await campaignShares(this.reader, need.campaignId) : null;
    const candidates = (await stock).map((one) => {
      const candidate = candidateOf(one, facts);
      const promised = this.promised.get(one.id) ?? 0;
      const free = candidate.free + (ours?.get(one.id) ?? 0) - promised;
      return { ...candidate, free, isRejected: rejected.has(one.lotId) };
    });
    return chosen(candidates, {
      amount: amountOf(facts),
      at: need.at.getTime(),
      lotId: need.isLotWished ? need.lotId : null,
    });
  }

  /** By lot, why it was rejected: never offered. */
  rejectedLots(): Promise<ReadonlyMap<string, string>> {
    return (this.rejected ??= rejectedLots(this.reader, this.labId));
  }

  take(containerId: string, amount: number): void {
    this.promised.set(containerId, (this.promised.get(containerId) ?? 0) + amount);
  }
}

/** What is kept for a need of no campaign, written with that of others. */
export type Keeps = Parameters<typeof holdsMade>[1][number];

/** Keeps what serves now; null where there is not enough. What is of no campaign is put with `keeps`, to be written at once. */
export async function reserved(work: Work, shelf: Shelf, facts: NeedFacts, keeps: Keeps[]): Promise<Choice> {
  const { need } = facts;
  const choice = await shelf.choiceFor(facts);
  if (choice.shares === null) return choice;
  const { campaignId } = need;
  const ours = campaignId ? await campaignShares(work.tx, campaignId) : null;
  for (const { containerId, amount } of choice.shares) {
    const isPlates = need.kind === 'PLATES';
    shelf.take(containerId, Math.max(0, amount - (ours?.get(containerId) ?? 0)));
    const amounts = { dryGrams: isPlates ? null : amount, plates: isPlates ? amount : null };
    const of = { containerId, ...amounts, forWhat: need.forWhom, until: need.at, needId: need.id };
    if (campaignId) await holdMade(work, { ...of, campaignId });
    else keeps.push(of);
  }
  return choice;
}
