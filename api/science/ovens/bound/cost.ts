// What the bound adds up: for an objective's figure what jobs cost by their end; for oven hours minutes, late jobs forbidden.
import { type Model, never } from '../model.ts';
import type { Objective } from '../objective.ts';

export interface BoundCost {
  /** What a job costs that ends then; infinite where it may not. */
  readonly ofJob: (job: number, end: number) => number;
  readonly perBatchMinute: number;
  readonly perSetupMinute: number;
  readonly perSetupCost: number;
  /** A job that ends after the horizon costs at least this. */
  readonly after: (job: number, horizon: number) => number;
}

export const figureCost = (model: Model, objective: Objective): BoundCost => ({
  ofJob: (job, end) => objective.ofJob(end, model.due[job]!, model.weight[job]!),
  perBatchMinute: objective.perBatchMinute,
  perSetupMinute: objective.perSetupMinute,
  perSetupCost: objective.perSetupCost,
  after: (job, horizon) => objective.ofJob(horizon, model.due[job]!, model.weight[job]!),
});

/** Oven minutes of plans in which no job is late. */
export const hoursCost = (model: Model): BoundCost => ({
  ofJob: (job, end) => (end > model.due[job]! ? Infinity : 0),
  perBatchMinute: 1,
  perSetupMinute: 1,
  perSetupCost: 0,
  // Jobs that fill a batch share its minutes by their area; none can cost less than its share of the largest oven.
  after: (job, horizon) =>
    horizon >= model.due[job]! ? never : (model.least[job]! * model.area[job]!) / largestOven(model, job),
});

const largestOven = (model: Model, job: number): number =>
  model.ovens.reduce((most, { area }, oven) => ((model.allowed[job]! >> oven) & 1 ? Math.max(most, area) : most), 1e-9);
