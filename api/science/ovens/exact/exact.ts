// The best plan for a few jobs, proven: each oven's best for each set of jobs, then the sets shared out among the ovens.
import { earliestEnds } from '../alone.ts';
import type { Model } from '../model.ts';
import type { Objective } from '../objective.ts';
import type { Best } from '../search/anneal.ts';
import type { PlannedBatch } from '../search/plan.ts';
import { setsOf } from './batches.ts';
import { type Ceiling, type Label, ovenBests, type OvenBest } from './labels.ts';

/** Up to this many jobs a plan is proven best. */
export const mostExact = 12;

/** The best plan, or null when it was stopped before it was proven; `ceiling` is what a plan that was found comes to. */
export function exactPlan(
  model: Model,
  objective: Objective,
  ceiling: Ceiling,
  watch: { stopped: () => boolean; progress: (share: number) => void },
): Best | null {
  const size = 1 << model.jobs;
  const alone = Array.from(earliestEnds(model), (end, job) =>
    objective.ofJob(end, model.due[job]!, model.weight[job]!),
  );
  const restOf = new Float64Array(size);
  for (let set = 0; set < size; set += 1) {
    const out = alone.filter((_, job) => ((set >> job) & 1) === 0);
    restOf[set] = objective.isLargest ? Math.max(-Infinity, ...out) : out.reduce((sum, one) => sum + one, 0);
  }
  // What was found is reckoned in another order than here: a grain above it.
  const grain = Number.isInteger(ceiling.figure) ? 0 : 1e-9 * Math.abs(ceiling.figure);
  const task = {
    model,
    objective,
    sets: setsOf(model),
    ceiling: { figure: ceiling.figure + grain, hours: objective.isLargest ? Infinity : ceiling.hours },
    rest: (set: number) => restOf[set]!,
    stopped: watch.stopped,
  };
  let sums: (Sum | null)[] = Array.from({ length: size }, (_, set) => (set === 0 ? empty(objective) : null));
  for (let oven = 0; oven < model.ovens.length; oven += 1) {
    const bests = ovenBests(task, oven);
    if (bests === null) return null;
    watch.progress((oven + 1) / model.ovens.length);
    sums = added(sums, bests, objective);
  }
  const whole = sums[size - 1];
  if (!whole) return null;
  const parts: (OvenBest | null)[] = [];
  for (let at: Sum | null = whole; at; at = at.before) if (at.best) parts.unshift(at.best);
  return {
    figure: whole.figure,
    hours: whole.hours,
    loads: whole.loads,
    sequences: parts.map((best) => sequenceOf(best?.last ?? null)),
  };
}

interface Sum {
  readonly figure: number;
  readonly hours: number;
  readonly loads: number;
  readonly best: OvenBest | null;
  readonly before: Sum | null;
}

const empty = ({ isLargest }: Objective): Sum => ({
  figure: isLargest ? -Infinity : 0,
  hours: 0,
  loads: 0,
  best: null,
  before: null,
});

/** Each set split between the ovens so far and one more, the best split of each. */
function added(
  sums: readonly (Sum | null)[],
  bests: readonly (OvenBest | null)[],
  { isLargest }: Objective,
): (Sum | null)[] {
  return sums.map((_, set) => {
    let found: Sum | null = null;
    for (let own = set; ; own = (own - 1) & set) {
      const [before, best] = [sums[set ^ own]!, bests[own]!];
      if (before !== null && best !== null) {
        const figure = isLargest ? Math.max(before.figure, best.figure) : before.figure + best.figure;
        const hours = before.hours + best.hours;
        const loads = before.loads + best.loads;
        const isBetter =
          found === null ||
          (figure !== found.figure
            ? figure < found.figure
            : hours !== found.hours
              ? hours < found.hours
              : loads < found.loads);
        if (isBetter) found = { figure, hours, loads, best, before };
      }
      if (own === 0) return found;
    }
  });
}

function sequenceOf(last: Label | null): PlannedBatch[] {
  const batches: PlannedBatch[] = [];
  for (let label = last; label?.before; label = label.before) {
    const jobs = Array.from({ length: 31 }, (_, job) => job).filter((job) => ((label.batch >> job) & 1) === 1);
    batches.unshift({ jobs, wait: label.wait });
  }
  return batches;
}
