// What stands on the shelf, by item and lot: sealed, opened, to be redried first, lost to that, and kept for whom. What was
// poured or taken from it before counts as used, as the ledger has it.
import type { Container, Exposure, Hold, Lot, Prisma, Sorbent } from '../database/generated/sqlite/client.ts';
import { howClassIsDried, ownRecipes } from '../drying/service.ts';
import { lotStandings, type Standing } from '../lots/service.ts';
import type { Transaction } from '../work.ts';
import { type Item, itemKey, itemOf } from './item.ts';
import { purchaseSettingsOf } from './settings.ts';

type ShelfReader = Pick<Transaction, 'container' | 'recipe' | 'lotDecision' | 'lotCheck' | 'lot'>;

const withAll = {
  include: { lot: { include: { sorbent: true } }, exposure: true, holds: { where: { releasedAt: null } } },
} satisfies Prisma.ContainerDefaultArgs;

type Row = Prisma.ContainerGetPayload<typeof withAll>;

export interface OnShelf {
  readonly container: Container;
  /** Dry grams, or plates. */
  readonly amount: number;
  /** What of it may be used, after what drying loses. */
  readonly usable: number;
  readonly isOpened: boolean;
  readonly mustRedry: boolean;
  /** Lost on trays and scoops when it is redried. */
  readonly lost: number;
  readonly holds: readonly Hold[];
}

export interface LotStock {
  readonly lot: Lot;
  readonly item: Item;
  readonly standing: Standing;
  readonly containers: readonly OnShelf[];
  readonly amount: number;
  readonly usable: number;
  readonly opened: number;
  readonly mustRedry: number;
  readonly lost: number;
  /** Touched solvent, or too wet with no way to dry it. */
  readonly unusable: number;
  /** Of the usable: kept for needs and people, and for campaigns. */
  readonly kept: number;
  readonly keptForCampaigns: ReadonlyMap<string, number>;
}

export interface ItemStock {
  readonly key: string;
  readonly item: Item;
  readonly sorbent: Sorbent;
  /** Oldest first. */
  readonly lots: readonly LotStock[];
}

type Judged = Pick<OnShelf, 'usable' | 'mustRedry' | 'lost'>;

/** What of a container may be used: as it is, or after a drying that loses a little; a wider limit spares the drying. */
export function usableOf(
  of: Pick<Container, 'kind' | 'touchedSolventAt'> & {
    exposure: Pick<Exposure, 'state' | 'scoopWaterFraction'> | null;
  },
  amount: number,
  by: { canDry: boolean; lossFraction: number; limitWaterFraction: number | null },
): Judged {
  const isPlates = of.kind === 'PLATE_BOX';
  if (!isPlates && of.touchedSolventAt !== null) return { usable: 0, mustRedry: false, lost: 0 };
  const water = of.exposure?.scoopWaterFraction ?? null;
  const { limitWaterFraction: limit } = by;
  const isWet = limit !== null && water !== null ? water > limit : of.exposure?.state === 'REDRY';
  // Plates are activated before use in any case, and none is lost to it.
  if (isPlates || !isWet) return { usable: amount, mustRedry: isPlates && isWet, lost: 0 };
  if (!by.canDry) return { usable: 0, mustRedry: false, lost: 0 };
  const lost = amount * by.lossFraction;
  return { usable: amount - lost, mustRedry: true, lost };
}

export const keptOf = ({ dryGrams, plates }: Pick<Hold, 'dryGrams' | 'plates'>): number => plates ?? dryGrams ?? 0;

const sum = <Of>(some: readonly Of[], of: (one: Of) => number): number =>
  some.reduce((total, one) => total + of(one), 0);

function lotStockOf(item: Item, lot: Lot, standing: Standing, containers: OnShelf[]): LotStock {
  const holds = containers.flatMap(({ holds }) => holds);
  const campaigns = new Map<string, number>();
  for (const hold of holds)
    if (hold.campaignId && !hold.needId)
      campaigns.set(hold.campaignId, (campaigns.get(hold.campaignId) ?? 0) + keptOf(hold));
  return {
    lot,
    item,
    standing,
    containers,
    amount: sum(containers, ({ amount }) => amount),
    usable: sum(containers, ({ usable }) => usable),
    opened: sum(containers, ({ isOpened, amount }) => (isOpened ? amount : 0)),
    mustRedry: sum(containers, ({ mustRedry, amount }) => (mustRedry ? amount : 0)),
    lost: sum(containers, ({ lost }) => lost),
    unusable: sum(containers, ({ usable, amount }) => (usable === 0 ? amount : 0)),
    kept: sum(
      holds.filter(({ campaignId, needId }) => !campaignId || needId),
      keptOf,
    ),
    keptForCampaigns: campaigns,
  };
}

/** Everything on the shelf, or all of one sorbent; a limit of one's own is judged by instead of the bands. */
export async function shelfOf(
  reader: ShelfReader,
  lab: { id: string; settings: unknown },
  only: { sorbentId?: string; limitWaterFraction?: number | null } = {},
): Promise<ItemStock[]> {
  const { sorbentId, limitWaterFraction = null } = only;
  const labId = lab.id;
  const { redryLossFraction: lossFraction } = purchaseSettingsOf(lab.settings);
  const [rows, standings, own] = await Promise.all([
    reader.container.findMany({
      where: {
        ...{ labId, finishedAt: null, isVoid: false, takenFromId: null, kind: { not: 'COLUMN' as const } },
        ...(sorbentId === undefined ? {} : { lot: { sorbentId } }),
      },
      ...withAll,
      orderBy: { cameInAt: 'asc' },
    }),
    lotStandings(reader, labId),
    ownRecipes(reader, labId),
  ]);
  const onShelf = (row: Row, item: Item): OnShelf => {
    const { lot, exposure, holds, ...container } = row;
    const amount = item.backing === null ? container.dryGrams : (container.plates ?? 0);
    const canDry = howClassIsDried(own, lot.sorbent.sorbentClass, item.backing).recipe !== null;
    const judged = usableOf({ ...container, exposure }, amount, { canDry, lossFraction, limitWaterFraction });
    return { container, amount, ...judged, isOpened: container.closure !== 'SEALED', holds };
  };
  const items = new Map<string, { item: Item; sorbent: Sorbent; lots: Map<string, { lot: Lot; some: OnShelf[] }> }>();
  for (const row of rows) {
    const item = itemOf(row, row.lot.sorbentId);
    const key = itemKey(item);
    const { sorbent, ...lot } = row.lot;
    const there = items.get(key) ?? { item, sorbent, lots: new Map<string, { lot: Lot; some: OnShelf[] }>() };
    items.set(key, there);
    const ofLot = there.lots.get(lot.id) ?? { lot, some: [] };
    there.lots.set(lot.id, ofLot);
    ofLot.some.push(onShelf(row, item));
  }
  return [...items].map(([key, { item, sorbent, lots }]) => ({
    key,
    item,
    sorbent,
    lots: [...lots.values()]
      .sort((a, b) => a.lot.receivedAt.getTime() - b.lot.receivedAt.getTime() || (a.lot.id < b.lot.id ? -1 : 1))
      .map(({ lot, some }) => lotStockOf(item, lot, standings.get(lot.id)?.standing ?? 'UNCHECKED', some)),
  }));
}
