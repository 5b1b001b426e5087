// What the lots that are there already cover at best, for every way to give them to campaigns.
import { firstExpiryFirst, freeOf } from '../allocate.ts';
import { type Item, type Model, mostTogether } from '../model.ts';
import { type ItemPlan, lotsOf, suits } from '../plan.ts';
import type { Rates } from './charges.ts';

export interface Opening {
  readonly covered: ItemPlan['covered'];
  readonly mask: number;
  /** Base units for unbooked use, at the most. */
  readonly useful: number;
  /** Minor units: campaigns, and what must be written off. */
  readonly cost: number;
  /** Base units of what is useful that expire within the plan, and what one that is given up costs at the least. */
  readonly perishing: number;
  readonly rate: number;
}

export function openingsOf(model: Model, item: Item, rates: Rates): Opening[] {
  const campaigns = item.campaigns.slice(0, mostTogether);
  let ways: (number | null)[][] = [[]];
  const lots = lotsOf(item, { orders: [], covered: [] });
  for (const campaign of campaigns) {
    ways = ways.flatMap((way) => [
      [...way, null],
      ...lots.flatMap((lot, i) => (suits(lot, campaign) ? [[...way, i]] : [])),
    ]);
  }
  return ways.flatMap((covered) => {
    const plan = { orders: [], covered: [...covered, ...item.campaigns.slice(mostTogether).map(() => null)] };
    const free = freeOf(item, plan, lots);
    if (free.some((quantity) => quantity < 0)) return [];
    const use = firstExpiryFirst(model, item, plan);
    let [useful, wasted, perishing, rate] = [0, 0, 0, Infinity];
    lots.forEach(({ last }, lot) => {
      const used = use[lot]!.reduce((sum, quantity) => sum + quantity, 0);
      if (last > model.weeks) useful += free[lot]!;
      else {
        useful += used;
        perishing += used;
        wasted += free[lot]! - used;
        rate = Math.min(rate, rates.writeOff[last]!);
      }
    });
    let [mask, cost] = [0, wasted > 0 ? wasted * rate : 0];
    covered.forEach((lot, i) => {
      if (lot === null) return;
      mask |= 1 << i;
      for (const { week, quantity } of campaigns[i]!.uses) cost += quantity * rates.use[week]!;
    });
    return [{ covered, mask, useful, cost, perishing, rate: perishing > 0 ? rate : 0 }];
  });
}
