// A campaign's uses, and what of them is to come beside the needs that it has already.
import { z } from 'zod';
import type { Campaign } from '../database/generated/sqlite/client.ts';
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

export const total = (some: readonly Wanted[]): number => some.reduce((sum, { amount }) => sum + amount, 0);

/** What of its uses is to come beside its needs, by week from this one on. */
export async function toComeOf(
  reader: Pick<Transaction, 'need' | 'hold'>,
  campaign: Campaign,
  today: string,
): Promise<Wanted[]> {
  const monday = mondayOf(today);
  const needs = await reader.need.findMany({ where: { campaignId: campaign.id, droppedAt: null } });
  const ofColumns = needs.filter(({ kind }) => kind === 'COLUMN').map(({ id }) => id);
  // A column's grams are those that it is kept.
  const holds = ofColumns.length > 0 ? await reader.hold.findMany({ where: { needId: { in: ofColumns } } }) : [];
  const columnGrams = (needId: string) =>
    Math.max(0, ...holds.filter((hold) => hold.needId === needId).map(({ dryGrams }) => dryGrams ?? 0));
  const amountOf = (need: (typeof needs)[number]) =>
    need.kind === 'COLUMN' ? columnGrams(need.id) : (need.plates ?? need.dryGrams ?? 0);
  return stillToCome(
    usesOf(campaign).map(({ day, amount }) => ({ week: weekOf(monday, day), amount })),
    needs.map((need) => ({ week: weekOf(monday, need.day), amount: amountOf(need) })),
    1,
  );
}
