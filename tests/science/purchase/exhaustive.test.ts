// Small purchases against every plan there is: breaks, fees, minimums, checks, campaigns that need one lot, shelf lives
// that cross, two deliveries of one supplier in a week.
import { describe, expect, it } from 'vitest';
import { largePlan } from '../../../api/science/purchase/large/large.ts';
import { pricedOf } from '../../../api/science/purchase/exact.ts';
import { type Model, modelOf } from '../../../api/science/purchase/model.ts';
import { noCharges } from '../../../api/science/purchase/price/charges.ts';
import { cheapest } from '../../../api/science/purchase/price/cheapest.ts';
import { gridOf } from '../../../api/science/purchase/price/grid.ts';
import type { PurchaseProblem } from '../../../api/science/purchase/types.ts';
import { smallPlan } from '../../../api/science/purchase/whole/small.ts';
import { amount } from '../../support/amount.ts';
import { leastByTrying } from './every-plan.ts';
import { highs, planned, unwatched } from './problems.ts';
import { tinyProblems } from './tiny.ts';

/** The same purchase with one of its items. */
const onlyOf = (problem: PurchaseProblem, id: string): PurchaseProblem => ({
  ...problem,
  items: problem.items.filter((item) => item.id === id),
  lots: problem.lots.filter(({ item }) => item === id),
  campaigns: problem.campaigns.filter(({ item }) => item === id),
  offers: problem.offers.filter(({ item }) => item === id),
});

/** What the dynamic programme says of a purchase of one item, by so many cells; fees are charged where no two offers share them. */
function figureOf(model: Model, cells: number, known: number): number {
  const item = model.items[0]!;
  const charges = noCharges(model);
  const isApart = new Set(model.offers.map(({ supplier }) => supplier)).size === model.offers.length;
  for (const { index, supplier } of isApart ? model.offers : []) charges.share[index]!.set(model.fee[supplier]!);
  return cheapest(model, item, gridOf(model, item, cells), charges, known).figure;
}

const cases = tinyProblems(amount(45, 220)).map((problem) => ({ problem, least: leastByTrying(problem) / 1e6 }));

describe('a small purchase', () => {
  it('costs as little as the cheapest of all plans, and says that it is proven', () => {
    const off = cases.map(({ problem, least }) => {
      const { status, cost, bound } = planned(problem);
      // Half to even: never further from the exact sum than a half.
      return { status, isLeast: Math.abs(cost - least) <= 0.5, isTight: bound === cost };
    });
    expect(off).toEqual(cases.map(() => ({ status: 'optimal', isLeast: true, isTight: true })));
  });

  it('is not all alike: shelf lives cross, a supplier delivers twice in a week, campaigns, minimums, breaks', () => {
    const share = (is: (problem: (typeof cases)[number]['problem']) => boolean) =>
      cases.filter(({ problem }) => is(problem)).length / cases.length;
    const pairs = ({ offers }: (typeof cases)[number]['problem']) =>
      offers.flatMap((a) => offers.filter((b) => a !== b && a.item === b.item).map((b) => [a, b] as const));
    expect(share((problem) => pairs(problem).some(([a, b]) => a.supplier === b.supplier))).toBeGreaterThan(0.02);
    expect(
      share((problem) =>
        pairs(problem).some(
          ([a, b]) => b.shelfWeeks !== null && a.leadWeeks < b.leadWeeks && (a.shelfWeeks ?? 99) > b.shelfWeeks + 1,
        ),
      ),
    ).toBeGreaterThan(0.02);
    expect(share(({ campaigns }) => campaigns.length > 0)).toBeGreaterThan(0.2);
    expect(share(({ suppliers }) => suppliers.some(({ minOrder }) => minOrder > 0))).toBeGreaterThan(0.2);
    expect(share(({ offers }) => offers.some(({ prices }) => prices.length > 1))).toBeGreaterThan(0.2);
  });
});

describe('a small purchase, one of its offers cheaper', () => {
  it('costs no more than before, where no minimum order stands against it', () => {
    const free = cases.slice(0, amount(25, 120)).map(({ problem }) => ({
      ...problem,
      suppliers: problem.suppliers.map((supplier) => ({ ...supplier, minOrder: 0 })),
      items: problem.items.map((item) => ({ ...item, endValueMicro: 0 })),
    }));
    const cheaper = free.flatMap((problem) => {
      const before = planned(problem);
      return problem.offers.map(({ id }) => {
        const offers = problem.offers.map((offer) =>
          offer.id === id
            ? { ...offer, prices: offer.prices.map(({ from, price }) => ({ from, price: price - 1 })) }
            : offer,
        );
        const after = planned({ ...problem, offers });
        return { proven: [before.status, after.status], saves: before.cost - after.cost };
      });
    });
    expect(cheaper.filter(({ proven }) => proven.some((status) => status !== 'optimal'))).toEqual([]);
    expect(cheaper.filter(({ saves }) => saves < 0)).toEqual([]);
    expect(cheaper.filter(({ saves }) => saves > 0).length).toBeGreaterThan(cheaper.length / 4);
  });
});

describe('branch and bound, on small purchases', () => {
  it('finds the least cost by itself, and proves it', () => {
    const wrong = cases.slice(0, amount(15, 220)).filter(({ problem, least }) => {
      const model = modelOf(problem);
      const small = smallPlan(model, highs, unwatched);
      if (small?.status !== 'optimal') return true;
      const cost = Number(pricedOf(model, small.plans, small.uses).micro) / 1e6;
      return Math.abs(cost - least) > 1e-6 || small.bound === null || small.bound > least + 1e-6;
    });
    expect(wrong).toEqual([]);
  });
});

describe('the way of many items, on small purchases', () => {
  it('never claims a bound above the least cost, nor a plan below it', () => {
    const wrong = cases.filter(({ problem, least }) => {
      const model = modelOf({ ...problem, limits: { seconds: 1e9, gap: 0 } });
      const { bound, plans, uses } = largePlan(model, highs, unwatched);
      const cost = Number(pricedOf(model, plans, uses).micro) / 1e6;
      return bound === null || bound > least + 1e-6 || cost < least - 1e-6;
    });
    expect(wrong).toEqual([]);
  });

  it('never claims one above it either where quantities are counted in cells', () => {
    const alone = cases.flatMap(({ problem }) => problem.items.map((item) => onlyOf(problem, item.id)));
    const claims = alone.flatMap((problem) => {
      const model = modelOf(problem);
      const least = leastByTrying(problem) / 1e6;
      return [2, 3, 4].flatMap((cells) =>
        [least, 1e12].map((known) => ({ figure: figureOf(model, cells, known), least, problem })),
      );
    });
    expect(claims.filter(({ figure, least }) => figure > least + 1e-6)).toEqual([]);
    // And is worth something: often near the least.
    expect(claims.filter(({ figure, least }) => figure > 0.8 * least).length).toBeGreaterThan(claims.length / 4);
  });
});
