// By when the next lot of an item must be in the house, so that its check is done before what is there now runs out.
import type { Item, Model } from './model.ts';
import type { ItemPlan } from './plan.ts';
import { countedOf } from './settle.ts';
import type { PurchaseAnswer } from './types.ts';

/** Null: what is there lasts to the end. */
export function nextLotBy(model: Model, item: Item, plan: ItemPlan): PurchaseAnswer['nextLotBy'][number] | null {
  const own = item.lots.length;
  const covered = plan.covered.map((lot) => (lot !== null && lot < own ? lot : null));
  const { reserve, missing } = countedOf(model, item, { ...plan, orders: [], covered }).tally;
  const { check, safety } = item.source;
  const weeks = Array.from({ length: model.weeks }, (_, i) => i + 1);
  // In the first week that is short or ends below safety it must be released; the week before its release is the last
  // that may hold what the check is made beside.
  // What is spared on purpose is still there at the end of the week; what is missing is not.
  const needed = weeks.find((week) => missing[week]! > reserve[week]! || reserve[week]! < safety);
  const gone = check.weeks > 0 ? weeks.find((week) => reserve[week]! < check.keep) : undefined;
  const campaign = item.campaigns.reduce<number | undefined>((first, { first: use1 }, i) => {
    const lot = plan.covered[i];
    return typeof lot === 'number' && lot >= own ? Math.min(first ?? use1, use1) : first;
  }, undefined);
  const all = [needed, needed === undefined ? undefined : gone, campaign].filter((week) => week !== undefined);
  if (all.length === 0) return null;
  const releasedBy = Math.min(...all);
  return { item: item.id, arriveBy: Math.max(1, releasedBy - check.weeks), releasedBy };
}
