// Stock counted once a period: up to S when it is at s or below, for Poisson demand, exactly (Zheng & Federgruen,
// Operations Research 39 (1991) 654).
import { poissonTerm } from '../distributions/saddle.ts';
import { poissonCost } from './newsvendor.ts';

export interface Period {
  /** For an order, whatever its size. */
  readonly order: number;
  /** For a unit left at the end of a period. */
  readonly holding: number;
  /** For a unit missing at its end. */
  readonly backorder: number;
  /** Units in a period. */
  readonly mean: number;
}

export interface UpTo {
  readonly point: number;
  readonly level: number;
  readonly cost: number;
}

export function poissonUpTo({ order, holding, backorder, mean }: Period): UpTo {
  const rate = (position: number) => poissonCost({ over: holding, under: backorder }, mean, position);
  const chance = (count: number) => poissonTerm(count, mean);
  // How often the stock passes a level so far below S before the next order (renewal).
  const passed = [1 / (1 - chance(0))];
  const passes = (depth: number): number => {
    for (let at = passed.length; at <= depth; at++) {
      let sum = 0;
      for (let count = 1; count <= at; count++) sum += chance(count) * passed[at - count]!;
      passed[at] = sum / (1 - chance(0));
    }
    return passed[depth]!;
  };
  const costOf = (point: number, level: number): number => {
    let [cost, time] = [order, 0];
    for (let depth = 0; depth < level - point; depth++) {
      cost += passes(depth) * rate(level - depth);
      time += passes(depth);
    }
    return cost / time;
  };
  let top = 0;
  while (rate(top + 1) < rate(top)) top += 1;
  let point = top - 1;
  while (costOf(point, top) > rate(point)) point -= 1;
  let best: UpTo = { point, level: top, cost: costOf(point, top) };
  for (let level = top + 1; rate(level) <= best.cost; level++) {
    if (costOf(point, level) >= best.cost) continue;
    while (costOf(point, level) <= rate(point + 1)) point += 1;
    best = { point, level, cost: costOf(point, level) };
  }
  return best;
}
