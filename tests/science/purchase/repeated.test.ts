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

  it('are answered in little more than the time there is', () => {
    const from = performance.now();
    const seconds = () => (performance.now() - from) / 1000;
    const large = yearOfPurchases(12, { seconds: 0.5 });
    const answer = planned(large, { ...unwatched, seconds });
    expect(seconds()).toBeLessThan(5);
    expect(answer.status).toBe('time');
  });
});
