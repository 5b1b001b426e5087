// Why a line of the plan is as it is, on purchases small enough to see the reason by eye. Invented.
import { describe, expect, it } from 'vitest';
import type { PurchaseItem, PurchaseProblem } from '../../../api/science/purchase/types.ts';
import { lotSizing, planned } from './problems.ts';

const gram = 1_000_000;

/** One item of one offer, with what is said otherwise of them. */
function purchase(
  demand: readonly number[],
  {
    fees = 0,
    item = {},
    leadWeeks = 0,
    ...rest
  }: {
    fees?: number | number[];
    item?: Partial<PurchaseItem>;
    leadWeeks?: number;
  } & Partial<Pick<PurchaseProblem, 'lots' | 'campaigns'>>,
): PurchaseProblem {
  const plain = lotSizing(demand, fees, 0);
  return {
    ...plain,
    items: plain.items.map((one) => ({ ...one, ...item })),
    offers: plain.offers.map((offer) => ({ ...offer, leadWeeks })),
    ...rest,
  };
}

const stock = (quantity: number) => [
  { id: 'F-118', item: 'silica', quantity, from: 1, lastWeek: null, status: 'accepted' as const },
];

const reasons = (problem: PurchaseProblem): string[] => planned(problem).orders.map(({ reason }) => reason);

describe('the reason of a line', () => {
  it('counts only what the change itself makes missing, from the week in which that begins', () => {
    const late = purchase([5, 5, 5, 5], { fees: 1, leadWeeks: 2 });
    expect(reasons(late)).toEqual(['Ordered a week later, 5 g more would be missing from week 3 on.']);
    expect(reasons({ ...late, lots: stock(10) })).toEqual([
      'Ordered a week later, 5 g would be missing from week 3 on.',
    ]);
  });

  it('counts only the safety that the change itself takes', () => {
    const item = { safety: 3, belowSafetyMicro: gram, holdingMicro: gram / 2 };
    const late = purchase([0, 0, 0, 0], { leadWeeks: 1, item });
    expect(reasons(late)).toEqual(['Ordered a week later, stock would be below its safety of 3 g in week 2.']);
  });

  it('says that a delivery would cost more where the order comes alone', () => {
    const alone = purchase([5, 5, 5, 5], { fees: [1, 3, 3, 3], lots: stock(5) });
    expect(reasons(alone)).toEqual(['Ordered a week later, its delivery would cost more.']);
  });

  it('names the one week of a campaign of one week', () => {
    const campaigns = [{ id: 'HN-21', item: 'silica', uses: [{ week: 3, quantity: 4 }], uncovered: 1000 }];
    expect(reasons(purchase([0, 0, 0, 0], { campaigns, item: { holdingMicro: gram } }))).toEqual([
      'Ordered a week later, it would not cover campaign HN-21, which needs 4 g of one lot in week 3.',
    ]);
  });

  it('sees what the plan spares for a check, and by when the next lot must be there for it', () => {
    const check = { cost: 0, weeks: 1, sample: 0, keep: 1, withoutOld: 100 };
    const item = { check, shortMicro: 10 * gram, holdingMicro: 1 };
    const answer = planned(purchase([2, 2, 2, 0], { leadWeeks: 1, lots: stock(4), item }));
    expect(answer.costs).toMatchObject({ shortage: 10, withoutOld: 0 });
    expect(answer.orders.map(({ orderWeek, reason }) => [orderWeek, reason])).toEqual([
      [1, 'Ordered a week later, lot F-118 ends in week 3 before the check, which takes 1 week, is done.'],
    ]);
    expect(answer.nextLotBy).toEqual([{ item: 'silica', arriveBy: 2, releasedBy: 3 }]);
    expect(answer.warnings).toEqual(['silica: 1 g of what is needed will be missing in week 2.']);
  });
});
