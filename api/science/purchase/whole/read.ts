// The plan that a solved programme stands for, in whole numbers.
import type { Model } from '../model.ts';
import { type ItemPlan, type Order, tidy } from '../plan.ts';
import type { WholeProgramme } from './rows.ts';

export interface WholePlan {
  readonly plans: readonly ItemPlan[];
  readonly uses: readonly (readonly (readonly number[])[])[];
}

export function wholePlan(model: Model, { lots }: WholeProgramme, values: ArrayLike<number>): WholePlan {
  const rounded = (at: number) => Math.round(values[at]!);
  const plans: ItemPlan[] = [];
  const uses: number[][][] = [];
  for (const item of model.items) {
    const orders: Order[] = [];
    const covered = item.campaigns.map((): number | null => null);
    const use: number[][] = [];
    const taken = lots
      .filter((lot) => lot.item === item)
      .map((lot) => ({ lot, packs: lot.packs.reduce((sum, at) => sum + rounded(at), 0) }))
      .filter(({ lot, packs }) => lot.own !== null || packs > 0)
      .sort((a, b) => a.lot.week - b.lot.week || a.lot.offer - b.lot.offer);
    taken.forEach(({ lot, packs }, i) => {
      if (lot.own === null) orders.push({ offer: model.offers[lot.offer]!, week: lot.week, packs });
      for (const [campaign, at] of lot.covers) if (rounded(at) === 1) covered[campaign] = i;
      const weeks = new Array<number>(model.weeks + 1).fill(0);
      for (const [week, at] of lot.use) weeks[week] = rounded(at);
      use.push(weeks);
    });
    const spare = item.demand.map((wanted, week) => wanted - use.reduce((sum, of) => sum + of[week]!, 0));
    plans.push(tidy({ orders, covered, spare }, item.lots.length));
    uses.push(use);
  }
  return { plans, uses };
}
