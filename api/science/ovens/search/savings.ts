// What a plan would save without each of its jobs: a first guess at what the jobs are worth to a lower bound.
import type { Model } from '../model.ts';
import type { Objective } from '../objective.ts';
import { Plan, type Sequences } from './plan.ts';

export function savings(model: Model, objective: Objective, sequences: Sequences): Float64Array {
  const plan = new Plan(model, objective, null);
  plan.load(sequences);
  const whole = { figure: 0, hours: 0, guide: 0 };
  plan.timeline.total(whole);
  return Float64Array.from({ length: model.jobs }, (_, job) => {
    const slot = plan.slotOf[job]!;
    const oven = plan.ovenOf[slot]!;
    plan.begin();
    if (plan.pool.count[slot] === 1) plan.draft.remove(oven, slot);
    else {
      const made = plan.pool.changed(slot, job, -1);
      plan.draft.made.push(made);
      plan.draft.replace(oven, slot, made);
    }
    const saved = whole.figure - plan.draft.value().figure;
    plan.draft.reject();
    return Math.max(0, saved);
  });
}
