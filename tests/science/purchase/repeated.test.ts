// The same purchases twice, and a plan that nobody waits for any longer.
import { describe, expect, it } from 'vitest';
import { yearOfPurchases } from '../../support/purchases.ts';
import { planned, unwatched } from './problems.ts';
import { tinyProblems } from './tiny.ts';

// Too many offers for the whole programme.
const problem = yearOfPurchases(11, { plates: 3, sorbents: 4, weeks: 22, seconds: 0.2 });

const [small] = tinyProblems(1);

describe('purchases of several items', () => {
  it('are planned alike on a machine that is five times slower: steps are counted, not seconds', () => {
    for (const same of small ? [problem, small] : []) {
      const slow = { ...unwatched, seconds: () => 5 * same.limits.seconds };
      expect(planned(structuredClone(same), slow)).toEqual(planned(same));
    }
  });

  it('are answered with the best plan so far when nobody waits any longer', () => {
    let asked = 0;
    const whole = planned(problem, { ...unwatched, cancelled: () => ++asked < 0 });
    const costs = [0.05, 0.3, 0.8].map((share) => {
      let times = 0;
      const answer = planned(problem, { ...unwatched, cancelled: () => ++times > share * asked });
      expect(answer.status).toBe('cancelled');
      // What was proven by then stays proven.
      if (answer.bound !== null) expect(answer.bound).toBeLessThanOrEqual(whole.cost);
      return answer.cost;
    });
    expect(costs.filter((cost) => cost < (whole.bound ?? Infinity))).toEqual([]);
    expect(costs.at(-1)).toBeLessThan(costs[0] ?? 0);
  });

  it('are answered with nothing ordered, and nothing proven, when nobody waited at all', () => {
    const never = { ...unwatched, cancelled: () => true };
    const { status, orders, bound, cost, costs } = planned(problem, never);
    expect({ status, orders, bound }).toEqual({ status: 'cancelled', orders: [], bound: null });
    // What is missing then is counted all the same.
    expect(costs.shortage).toBeGreaterThan(0);
    expect(cost).toBeGreaterThan(planned(problem).cost);
  });

  it('are answered with what there is once the clock says its last word', () => {
    const late = { ...unwatched, seconds: () => 1e9 };
    expect(planned(yearOfPurchases(12, { seconds: 0.5 }), late).status).toBe('time');
  });
});

describe('one sorbent over nine months, each new lot checked', () => {
  it('is proven within the steps of a second: branch and bound alone would try for ten', () => {
    const demand = Array.from({ length: 39 }, (_, week) => 55 + (week % 2));
    const { status, cost, bound } = planned({
      ...{ currency: 'EUR', minorDigits: 2, weeks: 39, campaigns: [], storage: [] },
      items: [
        {
          ...{ id: 'silica', unit: 'g', demand, safety: 325, holdingMicro: 16_582, wasteMicro: 862_245 },
          ...{ shortMicro: 43_112_245, belowSafetyMicro: 431_122, endValueMicro: 6_897_959 },
          check: { cost: 9000, weeks: 1, sample: 50, keep: 50, withoutOld: 9000 },
        },
      ],
      lots: [{ id: 'F-118', item: 'silica', quantity: 258, from: 1, lastWeek: null, status: 'accepted' }],
      suppliers: [{ id: 'Marlpit', deliveryFee: 0, minOrder: 0 }],
      offers: [
        {
          ...{ id: '1 kg', item: 'silica', supplier: 'Marlpit', pack: 980, prices: [{ from: 1, price: 8450 }] },
          ...{ leadWeeks: 2, shelfWeeks: null, maxPacks: 5 },
        },
      ],
      limits: { seconds: 1, gap: 0 },
    });
    expect({ status, gap: cost - (bound ?? 0) }).toEqual({ status: 'optimal', gap: 0 });
  });
});
