// A campaign's uses, and what of them is to come beside what its needs have already.
import { z } from 'zod';
import type { Campaign } from '../database/generated/sqlite/client.ts';
import { needAmounts } from '../prep/service.ts';
import type { Transaction } from '../work.ts';
import { stillToCome, type Use } from './rules.ts';
import { mondayOf, weekOf } from './weeks.ts';

const storedUses = z.array(z.object({ day: z.string(), amount: z.number() }));

/** Its uses by day. */
export const usesOf = ({ uses }: { uses: unknown }): Use[] => storedUses.parse(uses);

export interface Wanted {
  /** This week is 1. */
  readonly week: number;
  readonly amount: number;
}

export const total = (some: readonly { readonly amount: number }[]): number =>
  some.reduce((sum, { amount }) => sum + amount, 0);

/** A need of a campaign, with what of which lot is kept for it. */
interface Booked {
  readonly day: string;
  readonly amount: number;
  readonly isMet: boolean;
  readonly lotId: string | null;
  readonly held: readonly { readonly lotId: string; readonly amount: number }[];
}

/** Kept for a campaign itself: dry grams or plates of a container. */
export interface Share {
  readonly id: string;
  readonly containerId: string;
  readonly plates: number | null;
  readonly amount: number;
}

/** What a campaign's needs have, and what is kept for it beside them. */
export interface Booking {
  readonly needs: readonly Booked[];
  readonly shares: readonly Share[];
}

const nothing: Booking = { needs: [], shares: [] };

function by<Row, Key>(rows: readonly Row[], keyOf: (row: Row) => Key): Map<Key, Row[]> {
  const groups = new Map<Key, Row[]>();
  for (const row of rows) groups.set(keyOf(row), [...(groups.get(keyOf(row)) ?? []), row]);
  return groups;
}

/** Of many campaigns, in as many queries as of one. */
export async function bookingsOf(
  reader: Pick<Transaction, 'need' | 'hold' | 'sorbent'>,
  lab: { settings: unknown },
  campaignIds: readonly string[],
): Promise<(campaignId: string) => Booking> {
  if (campaignIds.length === 0) return () => nothing;
  const needs = await reader.need.findMany({ where: { campaignId: { in: [...campaignIds] }, droppedAt: null } });
  const open = needs.filter(({ metAt }) => metAt === null).map(({ id }) => id);
  const [amountOf, holds] = await Promise.all([
    needAmounts(reader, lab, needs),
    reader.hold.findMany({
      where: {
        releasedAt: null,
        OR: [
          { campaignId: { in: [...campaignIds] }, needId: null },
          ...(open.length > 0 ? [{ needId: { in: open } }] : []),
        ],
      },
      include: { container: { select: { lotId: true } } },
      orderBy: { id: 'asc' },
    }),
  ]);
  const rows = holds.map(({ id, containerId, campaignId, needId, plates, dryGrams, container: { lotId } }) => ({
    ...{ id, containerId, campaignId, needId, plates, lotId, amount: plates ?? dryGrams ?? 0 },
  }));
  const ofNeed = by(rows, ({ needId }) => needId);
  const sharesOf = by(ofNeed.get(null) ?? [], ({ campaignId }) => campaignId);
  const needsOf = by(needs, ({ campaignId }) => campaignId);
  return (campaignId) => ({
    shares: sharesOf.get(campaignId) ?? [],
    needs: (needsOf.get(campaignId) ?? []).map((need) => ({
      day: need.day,
      amount: amountOf(need),
      isMet: need.metAt !== null,
      lotId: need.lotId,
      held: ofNeed.get(need.id) ?? [],
    })),
  });
}

/**
 * What of its uses is to come, by week from this one on, beside what its needs had: those that are met, and what others
 * keep of a lot, its own when none is named; what they keep of other lots they must let go.
 */
export function toComeOf(
  campaign: Pick<Campaign, 'uses' | 'lotId'>,
  { needs }: Booking,
  today: string,
  lotId: string | null = campaign.lotId,
): Wanted[] {
  const monday = mondayOf(today);
  return stillToCome(
    usesOf(campaign).map(({ day, amount }) => ({ week: weekOf(monday, day), amount })),
    needs.map(({ day, amount, isMet, held }) => ({
      week: weekOf(monday, day),
      amount,
      had: isMet ? amount : Math.min(amount, total(held.filter((of) => of.lotId === lotId))),
    })),
    1,
  );
}
