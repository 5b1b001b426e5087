// A problem made ready to be planned: the model, the objective, what no plan can beat at first sight, and what was planned before.
import { aloneFigure } from './alone.ts';
import { areaBound } from './bound/area.ts';
import { keptOf, type KeptBatch } from './keep.ts';
import type { Kept } from './kept.ts';
import { type Model, modelOf } from './model.ts';
import { type Objective, type ObjectiveName, objectiveOf, type SumWeights } from './objective.ts';
import type { OvenProblem } from './problem.ts';
import type { Sequences } from './search/plan.ts';

export interface PlanTask {
  readonly problem: OvenProblem;
  readonly objective: ObjectiveName;
  readonly weights: SumWeights;
  readonly seed: number;
  /** Changes that the search may try, and work that the bound may do: counted, so that the answer is always the same. */
  readonly moves: number;
  readonly work: number;
  /** A plan to depart from as little as can be. */
  readonly before?: readonly KeptBatch[];
}

export interface Prepared {
  readonly task: PlanTask;
  readonly model: Model;
  readonly objective: Objective;
  readonly floor: number;
  readonly kept: Kept | null;
  readonly from: Sequences | null;
}

/** What seconds buy on an ordinary machine, with some to spare. */
export const budgetOf = (seconds: number): { moves: number; work: number } => ({
  moves: Math.round(seconds * 1_300_000),
  work: Math.round(seconds * 200_000_000),
});

export function prepared(task: PlanTask): Prepared {
  const model = modelOf(task.problem);
  const objective = objectiveOf(task.objective, task.weights);
  const { kept, from } = task.before ? keptOf(model, task.before) : { kept: null, from: null };
  const floor = Math.max(aloneFigure(model, objective), areaBound(model, objective));
  return { task, model, objective, floor, kept, from };
}
