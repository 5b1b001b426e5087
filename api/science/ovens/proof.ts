// The proof that goes with a plan: a bound on what is late, or on oven hours once nothing is.
import type { Proof } from './answer.ts';
import { wholeUp } from './answer.ts';
import { figureCost, hoursCost } from './bound/cost.ts';
import { type BoundWatch, lowerBound } from './bound/lagrange.ts';
import type { Model } from './model.ts';
import type { Prepared } from './prepared.ts';
import type { Best } from './search/anneal.ts';
import { savings } from './search/savings.ts';

/** The cells of time, in minutes: what hours, recipes and doors are usually told in, so that little is lost by rounding. */
const step = 5;

/** Each job's part of the largest oven's minutes. */
function shares(model: Model): Float64Array {
  const largest = Math.max(...model.ovens.map(({ area }) => area));
  return Float64Array.from({ length: model.jobs }, (_, job) => (model.least[job]! * model.area[job]!) / largest);
}

const pinnedMinutes = (model: Model): number =>
  model.ovens.reduce(
    (sum, { pins }) => sum + pins.reduce((all, { batch, start, end }) => all + (batch ? end - start : 0), 0),
    0,
  );

export interface Proven extends Proof {
  readonly isCut: boolean;
}

export const isAtFloor = ({ floor }: Prepared, best: Best): boolean => best.figure <= floor + 1e-6;

/** Of oven hours when the plan's figure cannot be beaten as it is, else of the figure. */
export function proofOf(ready: Prepared, best: Best, watch: BoundWatch): Proven {
  const { model, objective, floor, task } = ready;
  const { work } = task;
  if (objective.isLargest || model.jobs === 0) return { figure: floor, hours: null, isWhole: false, isCut: false };
  if (!isAtFloor(ready, best)) {
    const starts = [savings(model, objective, best.sequences)];
    const cost = figureCost(model, objective);
    const bound = lowerBound(model, { work, target: best.figure, cost, starts, step }, watch);
    const figure = Math.max(floor, objective.perBatchMinute > 0 ? bound.value : wholeUp(model, bound.value));
    return { figure, hours: null, isWhole: false, isCut: !bound.isWhole };
  }
  if (objective.name !== 'lateness' || best.figure > 1e-6) {
    return { figure: floor, hours: null, isWhole: false, isCut: false };
  }
  const cost = hoursCost(model);
  const bound = lowerBound(model, { work, target: best.hours, cost, starts: [shares(model)], step }, watch);
  const hours = Math.ceil(bound.value - 1e-6) + pinnedMinutes(model);
  return { figure: floor, hours, isWhole: false, isCut: !bound.isWhole };
}
