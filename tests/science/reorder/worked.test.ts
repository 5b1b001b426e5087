// Orders by the simple rules, against worked examples: Snyder & Shen 2019 (numbers beside each), Hillier & Lieberman.
import { describe, expect, it } from 'vitest';
import { leadDemand } from '../../../api/science/demand/lead.ts';
import { reorderFor } from '../../../api/science/demand/service.ts';
import { normalPolicy, poissonPolicy } from '../../../api/science/reorder/continuous.ts';
import { economicQuantity, steadyCost } from '../../../api/science/reorder/economic.ts';
import { newsvendorNormal, newsvendorPoisson, poissonCost } from '../../../api/science/reorder/newsvendor.ts';
import { poissonUpTo } from '../../../api/science/reorder/periodic.ts';

describe('steady demand', () => {
  it('is ordered as in example 3.1', () => {
    const candy = { order: 8, holding: 0.225, demand: 1300 };
    expect(economicQuantity(candy)).toBeCloseTo(304.0467800264, 9);
    expect(steadyCost(candy, economicQuantity(candy))).toBeCloseTo(68.4105255059, 9);
    expect(steadyCost(candy, 250)).toBeCloseTo(69.725, 9);
  });

  it('is ordered as the speakers of Hillier & Lieberman', () => {
    const speakers = { order: 12_000, holding: 0.3, demand: 8000 };
    expect(economicQuantity(speakers)).toBeCloseTo(25_298.2, 1);
    expect(steadyCost(speakers, economicQuantity(speakers))).toBeCloseTo(7589.5, 1);
  });
});

describe('one period of uncertain demand', () => {
  const costs = { over: 0.18, under: 0.7 };

  it('is met as in example 4.3, normal and Poisson', () => {
    const normal = newsvendorNormal(costs, { mean: 50, sd: 8 });
    expect(normal.stock).toBeCloseTo(56.6039559, 6);
    expect(normal.cost).toBeCloseTo(1.9976051932, 8);
    const poisson = newsvendorPoisson(costs, 50);
    expect(poisson.stock).toBe(56);
    expect(poisson.cost).toBeCloseTo(1.7972352118, 9);
  });

  it('is met best where one more or one less costs no less', () => {
    for (const mean of [0.3, 2, 7.5, 40]) {
      const { stock, cost } = newsvendorPoisson(costs, mean);
      expect(poissonCost(costs, mean, stock + 1)).toBeGreaterThanOrEqual(cost);
      expect(poissonCost(costs, mean, stock - 1)).toBeGreaterThanOrEqual(cost);
    }
  });
});

describe('stock that is watched', () => {
  it('is ordered as in example 5.5, with a normal lead-time demand', () => {
    const policy = normalPolicy({ order: 8, holding: 0.225, demand: 1300, backorder: 7.5, lead: 1 / 12 }, 150);
    expect(policy.point).toBeCloseTo(190.3369965716, 7);
    expect(policy.quantity).toBeCloseTo(304.04678, 5);
    expect(policy.safetyStock).toBeCloseTo(policy.point - 1300 / 12, 9);
  });

  it('is ordered as in example 5.8, exactly', () => {
    const policy = poissonPolicy({ order: 100, holding: 20, demand: 1.5, backorder: 150, lead: 2 });
    expect(policy).toMatchObject({ point: 3, quantity: 5 });
    expect(policy.cost).toBeCloseTo(107.9235806331, 8);
  });

  it('is ordered as in example 4.7 when it is counted once a period', () => {
    const policy = poissonUpTo({ order: 5, holding: 1, backorder: 4, mean: 6 });
    expect(policy).toMatchObject({ point: 4, level: 10 });
    expect(policy.cost).toBeCloseTo(8.0341115615, 8);
  });
});

describe('a wanted service', () => {
  it('needs the smallest stock whose chance reaches it: Poisson and negative binomial lead-time demand', () => {
    const point = (mean: number, variance: number, service: number) =>
      reorderFor({ mean, variance, counts: countsFor(mean, variance) }, service).point;
    expect(point(4, 4, 0.95)).toBe(8);
    expect(point(4, 4, 0.99)).toBe(9);
    expect(point(10, 10, 0.95)).toBe(15);
    expect(point(2.5, 2.5, 0.95)).toBe(5);
    expect(point(4, 8, 0.95)).toBe(9);
  });

  it('needs more safety when the lead time is a spread than when it is its mean', () => {
    const weekly = { mean: 3, variance: 4 };
    const sure = reorderFor(leadDemand([{ weeks: 3, chance: 1 }], weekly), 0.95);
    const spread = reorderFor(
      leadDemand(
        [
          { weeks: 1, chance: 0.25 },
          { weeks: 3, chance: 0.5 },
          { weeks: 5, chance: 0.25 },
        ],
        weekly,
      ),
      0.95,
    );
    expect(spread.safetyStock).toBeGreaterThan(sure.safetyStock);
  });
});

function countsFor(mean: number, variance: number) {
  return variance > mean
    ? ({ family: 'negative-binomial', mean, r: mean ** 2 / (variance - mean), p: mean / variance } as const)
    : ({ family: 'poisson', mean } as const);
}
