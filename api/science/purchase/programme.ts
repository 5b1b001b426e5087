// The purchase programme whole: small problems as one mixed programme, exactly; others item by item with a bound.
import type { Highs } from 'highs';
import { answerOf, type Found } from './answer.ts';
import { isTight, pricedOf } from './exact.ts';
import { largePlan } from './large/large.ts';
import { type Model, modelOf } from './model.ts';
import type { PurchaseAnswer, PurchaseProblem, PurchaseWatch } from './types.ts';
import { isSmall, smallPlan } from './whole/small.ts';

/** Of what it may take, so much for a small problem item by item, before it is solved whole. */
const itemByItem = 0.3;

const costOf = (model: Model, { plans, uses }: Found): number => Number(pricedOf(model, plans, uses).micro) / 1e6;

/** The cheaper of two plans, held against the higher of their bounds. */
function better(model: Model, one: Found, other: Found): Found {
  const [least, dearer] = costOf(model, one) < costOf(model, other) ? [one, other] : [other, one];
  const bound = Math.max(least.bound ?? -Infinity, dearer.bound ?? -Infinity);
  const isLeast = isTight(costOf(model, least), bound) || least.status === 'optimal' || dearer.status === 'optimal';
  return { ...least, bound, status: isLeast ? 'optimal' : other.status };
}

/**
 * Item by item first, also where it is small: mostly that proves itself the least at once, where branch and bound over
 * many weeks takes long.
 */
function found(model: Model, highs: Highs, watch: PurchaseWatch): Found {
  if (!isSmall(model)) return largePlan(model, highs, watch);
  const quick = largePlan(model, highs, watch, itemByItem);
  const [cost, bound] = [costOf(model, quick), quick.bound ?? -Infinity];
  if (isTight(cost, bound)) return { ...quick, status: 'optimal' };
  if (watch.cancelled() || cost - bound <= model.problem.limits.gap * Math.abs(cost)) return quick;
  const small = smallPlan(model, highs, watch);
  return small ? better(model, quick, small) : quick;
}

export function planPurchase(problem: PurchaseProblem, highs: Highs, watch: PurchaseWatch): PurchaseAnswer {
  const model = modelOf(problem);
  const answer = answerOf(model, found(model, highs, watch));
  watch.progress(1);
  return answer;
}
