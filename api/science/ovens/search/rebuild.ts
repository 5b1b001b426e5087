// Large-neighbourhood search: a few jobs near each other are taken out and put back where they cost least, and what comes of it
// is taken as in annealing (Shaw 1998; Schrimpf et al. 2000; Christiaens & Vanden Berghe 2020). It moves several jobs at
// once where single moves would have to pass through plans much worse.
import type { Dice } from '../dice.ts';
import type { Model } from '../model.ts';
import { type Best, bestOf, costOf, type Done, isBetter, type Stage, totalOf } from './anneal.ts';
import { Edit } from './edit.ts';
import { nearby } from './nearby.ts';
import type { Plan } from './plan.ts';

/** In what order jobs are put back: at random, soonest due, largest, heaviest among those due about together. */
const orders: readonly ((model: Model, job: number, dice: Dice) => number)[] = [
  (_model, _job, dice) => dice.unit(),
  (model, job) => model.due[job]! - model.least[job]!,
  (model, job) => -model.area[job]! * model.least[job]!,
  (model, job) => model.due[job]! / 60 - 4 * model.weight[job]!,
];

function ordered(model: Model, dice: Dice, jobs: readonly number[]): number[] {
  const order = orders[dice.below(orders.length)]!;
  return jobs
    .map((job) => ({ job, key: order(model, job, dice) }))
    .sort((a, b) => a.key - b.key || a.job - b.job)
    .map(({ job }) => job);
}

/** From where the plan stands; `best` is kept up to date. A move is a plan reckoned. */
export function rebuild(plan: Plan, dice: Dice, stage: Stage, best: Best, stopped: (done: number) => boolean): Done {
  const { model, timeline } = plan;
  const cost = costOf(stage, timeline.objective, () => best.figure);
  const edit = new Edit(plan, cost);
  const cooling = Math.log(stage.cold / stage.warm) / Math.max(1, stage.moves);
  let current = cost.of(totalOf(plan), plan.loads());
  while (edit.tried < stage.moves && model.jobs > 0) {
    if (stopped(edit.tried)) return { isWhole: false, moves: edit.tried };
    if (stage.of === 'figure' && best.figure <= stage.floor) break;
    edit.begin();
    const jobs = nearby(plan, dice);
    for (const job of jobs) edit.takeOut(job);
    for (const job of ordered(model, dice, jobs)) edit.putBack(job, dice);
    const sum = totalOf(plan);
    const loads = plan.loads();
    const then = cost.of(sum, loads);
    const temperature = stage.warm * Math.exp(cooling * edit.tried);
    const isOver = stage.of === 'hours' && sum.figure > best.figure + 1e-9;
    if (isOver || then > current - temperature * Math.log(dice.unit() + 1e-12)) {
      edit.undo();
      continue;
    }
    edit.keep();
    current = then;
    if (isBetter(sum.figure, sum.hours, loads, best)) Object.assign(best, bestOf(plan));
  }
  return { isWhole: true, moves: edit.tried };
}
