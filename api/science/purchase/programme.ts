// The purchase programme whole: small problems as one mixed programme, exactly; others item by item with a bound.
import type { Highs } from 'highs';
import { answerOf, type Found } from './answer.ts';
import { largePlan } from './large/large.ts';
import { type Model, modelOf } from './model.ts';
import type { PurchaseAnswer, PurchaseProblem, PurchaseWatch } from './types.ts';
import { isSmall, smallPlan } from './whole/small.ts';

function found(model: Model, highs: Highs, watch: PurchaseWatch): Found {
  if (isSmall(model)) {
    const small = smallPlan(model, highs, watch);
    if (small) return small;
  }
  return largePlan(model, highs, watch);
}

export function planPurchase(problem: PurchaseProblem, highs: Highs, watch: PurchaseWatch): PurchaseAnswer {
  const model = modelOf(problem);
  const answer = answerOf(model, found(model, highs, watch));
  watch.progress(1);
  return answer;
}
