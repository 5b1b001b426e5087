// What each item used a week, for those who forecast.
import type { Context } from '../context.ts';
import { ledgerUse } from '../database/ledger.ts';
import { ledgerBroughtUp } from './current.ts';
import { usedByWeek, type Account } from './rules.ts';
import { weekNames, weeksAfter, weeksBetween } from './week.ts';

/** An item: a sorbent, loose or as plates. */
export interface ItemUse {
  readonly sorbentId: string;
  readonly isPlates: boolean;
  /** The Monday of the first week in which there was any of it, on the lab's clock, such as 2026-03-02. */
  readonly firstWeek: string;
  /** From then on to the last whole week: dry g, or plates; never below 0. */
  readonly weeks: readonly number[];
}

/**
 * What counts as use: what was taken out of drums and boxes less what was put back, and what was lost of them. Not what was
 * spent on checks or written off: a plan reckons with those itself.
 */
const use: readonly Account[] = ['TAKEN', 'PACKED', 'COMBINED', 'USED_UP', 'LOST'];

/** Use by item and week, up to the last whole week before now. */
export async function weeklyUse(context: Context): Promise<ItemUse[]> {
  await ledgerBroughtUp(context);
  const { database, lab } = context;
  const lastWhole = weeksAfter(weekNames(lab.timeZone)(context.now()), -1);
  const items = new Map<string, { sorbentId: string; isPlates: boolean; by: Map<string, number> }>();
  for (const { sorbentId, isPlates, week, dryGrams, plates } of await ledgerUse(database, lab.id, use)) {
    const key = `${sorbentId} ${isPlates}`;
    const item = items.get(key) ?? { sorbentId, isPlates, by: new Map<string, number>() };
    item.by.set(week, isPlates ? plates : dryGrams);
    items.set(key, item);
  }
  return [...items.values()].map(({ sorbentId, isPlates, by }) => {
    const [firstWeek = lastWhole] = by.keys();
    const weeks = usedByWeek(weeksBetween(firstWeek, lastWhole).map((week) => by.get(week) ?? 0));
    return { sorbentId, isPlates, firstWeek, weeks };
  });
}
