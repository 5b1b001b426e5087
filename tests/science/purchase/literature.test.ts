// Lot sizes from the literature, found by the programme itself.
import { describe, expect, it } from 'vitest';
import { gridOf } from '../../../api/science/purchase/price/grid.ts';
import { cheapest } from '../../../api/science/purchase/price/cheapest.ts';
import { noCharges } from '../../../api/science/purchase/price/charges.ts';
import { modelOf } from '../../../api/science/purchase/model.ts';
import type { PurchaseProblem } from '../../../api/science/purchase/types.ts';
import { lotSizing, planned } from './problems.ts';

// Wagner & Whitin, Management Science 5 (1958) 89.
const demand = [69, 29, 36, 61, 61, 26, 34, 67, 45, 67, 79, 56];
const setUp = [85, 102, 102, 101, 98, 114, 105, 86, 119, 110, 98, 114];
const leastByHorizon = [85, 114, 186, 277, 348, 400, 469, 555, 600, 710, 789, 864];

/** The item by itself, its set-ups charged to it: the dynamic programme that the bound rests on. */
function alone(problem: PurchaseProblem): number {
  const model = modelOf(problem);
  const item = model.items[0]!;
  const charges = noCharges(model);
  for (let week = 1; week <= model.weeks; week++) charges.share[0]![week] = model.fee[0]![week]!;
  return cheapest(model, item, gridOf(model, item, 10_000), charges, 1e12).figure;
}

describe('the lot sizes of Wagner and Whitin', () => {
  it('cost 864 over twelve months, ordered in 1, 3, 5, 8, 10 and 11', () => {
    const { status, cost, bound, orders } = planned(lotSizing(demand, setUp, 1));
    expect({ status, cost, bound }).toEqual({ status: 'optimal', cost: 864, bound: 864 });
    expect(orders.map(({ orderWeek, packs }) => [orderWeek, packs])).toEqual([
      [1, 98],
      [3, 97],
      [5, 121],
      [8, 112],
      [10, 67],
      [11, 135],
    ]);
  });

  it('cost as published at every horizon', () => {
    const horizons = leastByHorizon.map((_, i) => lotSizing(demand.slice(0, i + 1), setUp.slice(0, i + 1), 1));
    expect(horizons.map((problem) => Math.round(alone(problem)))).toEqual(leastByHorizon);
    expect(horizons.slice(0, 6).map((problem) => planned(problem).cost)).toEqual(leastByHorizon.slice(0, 6));
  });
});

describe('lot sizes of textbooks', () => {
  it('four periods cost 1380, ordered as 210 and 150 (Snyder & Shen 2019, example 3.9)', () => {
    const { status, cost, orders } = planned(lotSizing([90, 120, 80, 70], 500, 2));
    expect({ status, cost }).toEqual({ status: 'optimal', cost: 1380 });
    expect(orders.map(({ orderWeek, packs }) => [orderWeek, packs])).toEqual([
      [1, 210],
      [3, 150],
    ]);
  });

  it('the case of Silver and Meal costs 310, 48 being ordered first (Nahmias; the last 20 may come with the 47)', () => {
    const { status, cost, orders } = planned(lotSizing([18, 30, 42, 5, 20], 80, 2));
    expect({ status, cost }).toEqual({ status: 'optimal', cost: 310 });
    expect(orders[0]).toMatchObject({ orderWeek: 1, packs: 48 });
  });
});
