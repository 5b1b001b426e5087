// What the programme answers, from a plan and a bound: costs exactly, every line with its reason, what to look at.
import type { Use } from './allocate.ts';
import { costsOf, pricedOf } from './exact.ts';
import { goodsFloor } from './floor.ts';
import type { Model } from './model.ts';
import { roundedMinor } from './money.ts';
import { nextLotBy } from './next-lot.ts';
import { arriveWeek, type ItemPlan, lotName, releaseWeek } from './plan.ts';
import { reasonOf } from './reasons.ts';
import type { PurchaseAnswer } from './types.ts';
import { warningsOf } from './warnings.ts';
import { plain } from './words.ts';

export interface Found {
  readonly plans: readonly ItemPlan[];
  readonly uses: readonly Use[];
  /** Minor units, not rounded; null: nothing is proven. */
  readonly bound: number | null;
  readonly status: PurchaseAnswer['status'];
}

export function answerOf(model: Model, found: Found): PurchaseAnswer {
  const { plans, uses } = found;
  const priced = pricedOf(model, plans, uses);
  const cost = roundedMinor(priced.micro);
  const warnings = warningsOf(model, plans, priced.tallies);
  // A solver that has proven nothing yet says so with an infinite bound.
  const proven = found.bound ?? -Infinity;
  const bound = found.status === 'optimal' ? cost : Number.isFinite(proven) ? Math.min(cost, Math.floor(proven)) : null;
  const share = (of: number): number | null =>
    bound === null ? null : cost === bound ? 0 : of > 0 ? (cost - bound) / of : 1;
  return {
    status: found.status,
    cost,
    bound,
    gap: share(Math.abs(cost)),
    gapControllable: share(cost - goodsFloor(model)),
    costs: costsOf(priced),
    orders: model.items
      .flatMap((item) =>
        plans[item.index]!.orders.map(({ offer, week, packs }, at) => {
          const reason = reasonOf(model, plans, item, at);
          return {
            offer: offer.id,
            orderWeek: week,
            arriveWeek: arriveWeek(offer, week),
            releaseWeek: releaseWeek(item, offer, week),
            packs,
            price: offer.priceOf[packs]!,
            reason: plain(reason),
            reasonParts: reason,
          };
        }),
      )
      .sort((a, b) => a.orderWeek - b.orderWeek),
    campaigns: model.problem.campaigns.map(({ id, item: of }) => {
      const item = model.items.find((one) => one.id === of)!;
      const lot = plans[item.index]!.covered[item.campaigns.findIndex((one) => one.id === id)];
      return { id, lot: typeof lot === 'number' ? lotName(item, plans[item.index]!, lot) : null };
    }),
    lots: model.items.flatMap((item) => {
      const plan = plans[item.index]!;
      return uses[item.index]!.map((use, lot) => {
        const campaigns = item.campaigns.flatMap((one, i) => (plan.covered[i] === lot ? [one.last] : []));
        const last = Math.max(
          use.findLastIndex((quantity) => quantity > 0),
          ...campaigns,
        );
        return {
          id: lotName(item, plan, lot),
          lastUse: last > 0 ? last : null,
          waste: priced.tallies[item.index]!.wasteOf[lot]!,
        };
      });
    }),
    nextLotBy: model.items.map((item) => nextLotBy(model, item, plans[item.index]!)).filter((next) => next !== null),
    warnings: warnings.map(plain),
    warningParts: warnings,
  };
}
