// Who uses which lot when: first what expires first; what can be met is met, unless it is spared.
import type { Item, Model } from './model.ts';
import { type ItemPlan, type Lot, lotsOf, suits } from './plan.ts';

/** Unbooked use by lot and week, `use[lot][week]`; campaigns beside. */
export type Use = readonly (readonly number[])[];

/** What a lot has for unbooked use when it keeps what its campaigns need. */
export function freeOf(item: Item, plan: ItemPlan, lots: readonly Lot[]): number[] {
  const free = lots.map(({ quantity }) => quantity);
  plan.covered.forEach((lot, i) => {
    if (lot !== null) free[lot]! -= item.campaigns[i]!.quantity;
  });
  return free;
}

/** No lot gives more to campaigns than it has, and each is there from the first use to the last. */
export function fits(item: Item, plan: ItemPlan): boolean {
  const lots = lotsOf(item, plan);
  return (
    freeOf(item, plan, lots).every((quantity) => quantity >= 0) &&
    plan.covered.every((lot, i) => lot === null || suits(lots[lot]!, item.campaigns[i]!))
  );
}

export function firstExpiryFirst(model: Model, item: Item, plan: ItemPlan): number[][] {
  const lots = lotsOf(item, plan);
  const free = freeOf(item, plan, lots);
  const use = lots.map(() => new Array<number>(model.weeks + 1).fill(0));
  const order = lots
    .map((_, lot) => lot)
    .sort((a, b) => lots[a]!.last - lots[b]!.last || lots[a]!.release - lots[b]!.release || a - b);
  for (let week = 1; week <= model.weeks; week++) {
    let wanted = Math.max(0, item.demand[week]! - (plan.spare?.[week] ?? 0));
    for (const lot of order) {
      if (wanted === 0) break;
      const { release, last } = lots[lot]!;
      if (week < release || week > last) continue;
      const taken = Math.min(wanted, free[lot]!);
      use[lot]![week] = taken;
      free[lot]! -= taken;
      wanted -= taken;
    }
  }
  return use;
}
