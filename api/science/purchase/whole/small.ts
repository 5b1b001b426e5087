// A small problem, solved whole: the least cost, proven by branch and bound.
import type { Highs } from 'highs';
import { firstExpiryFirst, type Use } from '../allocate.ts';
import type { Found } from '../answer.ts';
import { Budget } from '../budget.ts';
import { isTight, pricedOf } from '../exact.ts';
import { solve } from '../linear.ts';
import type { Model } from '../model.ts';
import type { ItemPlan } from '../plan.ts';
import type { PurchaseWatch } from '../types.ts';
import { wholePlan } from './read.ts';
import { possibleOrders, wholeProgramme } from './rows.ts';

/** Offers times weeks: beyond it branch and bound takes too long. */
const mostOrders = 60;

export const isSmall = (model: Model): boolean => possibleOrders(model) <= mostOrders;

/** What expires first is used first, item by item, wherever that costs no more. */
function restated(model: Model, plans: readonly ItemPlan[], uses: readonly Use[]): { uses: Use[]; micro: bigint } {
  let now = [...uses];
  let { micro } = pricedOf(model, plans, now);
  for (const item of model.items) {
    const other = now.map((use, i) => (i === item.index ? firstExpiryFirst(model, item, plans[i]!) : use));
    const next = pricedOf(model, plans, other).micro;
    if (next <= micro) [now, micro] = [other, next];
  }
  return { uses: now, micro };
}

/** Branches that a second buys on an ordinary machine: counted, so that the answer is always the same. */
const nodesPerSecond = 200;
const mostNodes = 1_000_000;

/** Null when there was no time for any plan. */
export function smallPlan(model: Model, highs: Highs, watch: PurchaseWatch): Found | null {
  const { seconds, gap } = model.problem.limits;
  const budget = new Budget(model, watch);
  const stopped = () => {
    watch.progress(Math.min(1, watch.seconds() / seconds));
    return budget.isStopped;
  };
  const programme = wholeProgramme(model);
  const nodes = Math.min(mostNodes, Math.ceil(seconds * nodesPerSecond));
  const solved = solve(highs, programme.linear, { seconds: budget.secondsOfSolver, nodes, gap, stopped });
  if (solved === null) return null;
  const { plans, uses: solvers } = wholePlan(model, programme, solved.values);
  const { uses, micro } = restated(model, plans, solvers);
  const cost = Number(micro) / 1e6;
  const bound = solved.bound + programme.constant;
  const proven = isTight(cost, bound) ? 'optimal' : 'gap';
  return { plans, uses, bound, status: solved.proven ? proven : watch.cancelled() ? 'cancelled' : 'time' };
}
