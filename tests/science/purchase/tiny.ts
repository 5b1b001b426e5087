// Seeded purchases of a handful of units: breaks, shelf lives that cross, fees, minimums, one-lot campaigns. Invented.
import { diceOf } from '../../../api/science/ovens/dice.ts';
import type { PurchaseProblem } from '../../../api/science/purchase/types.ts';

const limits = { seconds: 20, gap: 0 };

function tinyProblem(seed: number): PurchaseProblem {
  const { below } = diceOf(seed * 7919 + 1);
  const between = (low: number, high: number) => low + below(high - low + 1);
  const weeks = between(3, 4);
  const items = Array.from({ length: between(1, 2) }, (_, i) => ({
    id: `sorbent ${i}`,
    unit: 'g',
    demand: Array.from({ length: weeks }, () => (below(3) === 0 ? 0 : between(1, 2))),
    safety: below(2),
    check: { cost: below(8), weeks: below(4), sample: below(2), keep: below(2), withoutOld: between(1, 9) },
    holdingMicro: between(0, 4) * 250_000,
    wasteMicro: below(3) * 1_000_000,
    shortMicro: between(5, 30) * 1_000_000,
    belowSafetyMicro: between(0, 3) * 700_000,
    endValueMicro: below(2) * 500_000,
  }));
  const suppliers = Array.from({ length: between(1, 2) }, (_, i) => ({
    id: `supplier ${i}`,
    deliveryFee: below(3) === 0 ? Array.from({ length: weeks }, () => between(0, 9)) : between(0, 9),
    minOrder: below(2) * between(1, 12),
  }));
  // Two offers of an item come from one supplier now and then, and one is sooner there and sooner over.
  const offers = items.flatMap((item, i) =>
    Array.from({ length: items.length === 1 && seed % 2 === 0 ? 2 : 1 }, (_, k) => {
      const price = between(4, 12);
      return {
        id: `offer ${i}${k}`,
        item: item.id,
        supplier: suppliers[below(suppliers.length)]!.id,
        pack: between(1, 3),
        prices: below(2) === 0 ? [{ from: 1, price }] : [{ from: 1, price }, { from: 2, price: price - between(1, 2) }], // prettier-ignore
        leadWeeks: below(2) + k,
        shelfWeeks: below(3) === 0 ? null : between(2, 4) - k,
        maxPacks: between(1, 2),
      };
    }),
  );
  return {
    currency: 'EUR',
    minorDigits: 2,
    weeks,
    items,
    lots: items.flatMap((item, i) =>
      Array.from({ length: below(3) }, (_, k) => ({
        id: `lot ${i}${k}`,
        item: item.id,
        quantity: between(1, 3),
        from: between(1, 2),
        lastWeek: below(2) === 0 ? null : between(2, weeks),
        status: (['accepted', 'in-check', 'accepted', 'rejected'] as const)[below(4)]!,
      })),
    ),
    campaigns: items.flatMap((item, i) =>
      Array.from({ length: below(2) }, () => {
        const week = between(2, weeks);
        return {
          id: `campaign ${i}`,
          item: item.id,
          uses: [
            { week, quantity: 1 },
            { week: Math.min(weeks, week + below(2)), quantity: between(1, 2) },
          ],
          uncovered: between(5, 60),
        };
      }),
    ),
    suppliers,
    offers,
    storage:
      below(2) === 0
        ? []
        : [{ id: 'shelf', capacity: between(2, 6), overMicro: 900_000, volume: { [items[0]!.id]: between(1, 2) } }],
    limits,
  };
}

/** Ways to order, so that every plan can be tried. */
const mostWays = 300;

const waysOf = ({ weeks, items, offers }: PurchaseProblem): number =>
  items.reduce(
    (sum, { id }) =>
      sum +
      offers
        .filter(({ item }) => item === id)
        .reduce((ways, { maxPacks, leadWeeks }) => ways * (maxPacks + 1) ** Math.max(0, weeks - leadWeeks), 1),
    0,
  );

/** The first so many that are small enough to try every plan of. */
export function tinyProblems(count: number): PurchaseProblem[] {
  const found: PurchaseProblem[] = [];
  for (let seed = 0; found.length < count; seed++) {
    const problem = tinyProblem(seed);
    if (waysOf(problem) <= mostWays) found.push(problem);
  }
  return found;
}
