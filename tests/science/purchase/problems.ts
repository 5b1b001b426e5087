// Purchases from the literature put as problems of the programme, and the programme run on them.
import loadHighs from 'highs';
import { planPurchase } from '../../../api/science/purchase/programme.ts';
import type { PurchaseAnswer, PurchaseProblem, PurchaseWatch } from '../../../api/science/purchase/types.ts';

export const highs = await loadHighs();

/** Nobody waits: what ends a plan is its proof. */
export const unwatched: PurchaseWatch = { seconds: () => 0, cancelled: () => false, progress: () => undefined };

export const planned = (problem: PurchaseProblem, watch = unwatched): PurchaseAnswer =>
  planPurchase(problem, highs, watch);

/** One item, ordered for the week it comes in, at a set-up by week and a holding cost for a unit and week. */
export function lotSizing(
  demand: readonly number[],
  setUp: number | readonly number[],
  holding: number,
): PurchaseProblem {
  return {
    currency: 'EUR',
    minorDigits: 2,
    weeks: demand.length,
    items: [
      {
        id: 'silica',
        unit: 'g',
        demand,
        safety: 0,
        check: { cost: 0, weeks: 0, sample: 0, keep: 0, withoutOld: 0 },
        holdingMicro: holding * 1_000_000,
        wasteMicro: 0,
        shortMicro: 1_000_000_000,
        belowSafetyMicro: 0,
        endValueMicro: 0,
      },
    ],
    lots: [],
    campaigns: [],
    suppliers: [{ id: 'Marlpit Chemicals', deliveryFee: setUp, minOrder: 0 }],
    offers: [
      {
        id: 'bag',
        item: 'silica',
        supplier: 'Marlpit Chemicals',
        pack: 1,
        prices: [{ from: 1, price: 0 }],
        leadWeeks: 0,
        shelfWeeks: null,
        maxPacks: 10_000,
      },
    ],
    storage: [],
    limits: { seconds: 30, gap: 0 },
  };
}
