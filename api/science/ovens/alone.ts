// What each job costs when it has the ovens to itself: the earliest it can end, and so a first lower bound of any plan.
import { clockOf, place, wind } from './clock.ts';
import { type Model, never, type OvenModel } from './model.ts';
import type { Objective } from './objective.ts';

/**
 * An oven that is set up only while somebody is there may be hot already from the batches of another day: a job alone
 * would then be later than in company, so that its own set-up must not count.
 */
function easiest(oven: OvenModel): OvenModel {
  if (oven.unattended) return oven;
  return { ...oven, setups: { ...oven.setups, minutes: new Int32Array(oven.setups.minutes.length) } };
}

/** No plan ends the job sooner in this oven; `never` where it fits nowhere. */
export function earliestEnd(model: Model, job: number, oven: number): number {
  if (((model.allowed[job]! >> oven) & 1) === 0) return never;
  const clock = clockOf(model, oven);
  wind(clock, easiest(model.ovens[oven]!));
  const [low, high] = [model.lowest[job]!, model.highest[job]!];
  const [least, most] = [model.least[job]!, model.most[job]!];
  return place(clock, model.states.count, low, high, least, most, model.ready[job]!, 0) ? clock.end : never;
}

export function earliestEnds(model: Model): Float64Array {
  return Float64Array.from({ length: model.jobs }, (_, job) =>
    model.ovens.reduce((best, _oven, oven) => Math.min(best, earliestEnd(model, job, oven)), never),
  );
}

/** What the fixed batches cost, whatever is planned around them: their jobs' share of the objective. */
export function fixedFigure({ problem }: Model, objective: Objective): number {
  const ends = new Map(problem.fixed.flatMap(({ jobs, end }) => jobs.map((id) => [id, end] as const)));
  const figures = problem.jobs.flatMap(({ id, dueAt, weight }) => {
    const end = ends.get(id);
    return end === undefined ? [] : [objective.ofJob(end, dueAt ?? never, weight)];
  });
  return objective.isLargest ? Math.max(-never, ...figures) : figures.reduce((sum, figure) => sum + figure, 0);
}

/** No plan's jobs cost less than this together, fixed ones left out. */
export function aloneFigure(model: Model, objective: Objective): number {
  const figures = Array.from(earliestEnds(model), (end, job) =>
    objective.ofJob(end, model.due[job]!, model.weight[job]!),
  );
  return objective.isLargest ? Math.max(-never, ...figures) : figures.reduce((sum, figure) => sum + figure, 0);
}
