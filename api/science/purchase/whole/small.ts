// A small problem, solved whole: the least cost, proven by branch and bound.
import type { Highs } from 'highs';
import { firstExpiryFirst } from '../allocate.ts';
import type { Found } from '../answer.ts';
import { pricedOf } from '../exact.ts';
import { solve } from '../linear.ts';
import type { Model } from '../model.ts';
import type { PurchaseWatch } from '../types.ts';
import { wholePlan } from './read.ts';
import { possibleOrders, wholeProgramme } from './rows.ts';

/** Offers times weeks: beyond it branch and bound takes too long. */
const mostOrders = 60;

export const isSmall = (model: Model): boolean => possibleOrders(model) <= mostOrders;

/** Null when there was no time for any plan. */
export function smallPlan(model: Model, highs: Highs, watch: PurchaseWatch): Found | null {
  const { limits } = model.problem;
  const stopped = () => watch.cancelled() || watch.seconds() > limits.seconds;
  const programme = wholeProgramme(model);
  const solved = solve(highs, programme.linear, { seconds: limits.seconds, gap: 0, stopped });
  if (solved === null) return null;
  const { plans, uses } = wholePlan(model, programme, solved.values);
  const restated = model.items.map((item) => firstExpiryFirst(model, item, plans[item.index]!));
  const isCheaper = pricedOf(model, plans, restated).micro < pricedOf(model, plans, uses).micro;
  return {
    plans,
    uses: isCheaper ? restated : uses,
    bound: solved.bound + programme.constant,
    status: solved.proven ? 'optimal' : watch.cancelled() ? 'cancelled' : 'time',
  };
}
