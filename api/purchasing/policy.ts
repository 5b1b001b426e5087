// What the simple rule would cost in the same weeks: order again at the reorder point, from the cheapest offer; priced by the
// same exact reckoning as the plan. Pure.
import { firstExpiryFirst } from '../science/purchase/allocate.ts';
import { answerOf } from '../science/purchase/answer.ts';
import { type Item, type Model, modelOf, type Offer } from '../science/purchase/model.ts';
import { fewestPacks, type ItemPlan, lotsOf, type Order, suits } from '../science/purchase/plan.ts';
import type { PurchaseAnswer, PurchaseProblem } from '../science/purchase/types.ts';

/** An order covers so many weeks' use, where no price or pack says otherwise; common practice. */
export const coverWeeks = 8;

const cheapest = (item: Item): Offer | null =>
  [...item.offers]
    .filter(({ latest, most }) => latest >= 1 && most >= 1)
    .sort((a, b) => (a.priceOf[1] ?? 0) / a.pack - (b.priceOf[1] ?? 0) / b.pack)[0] ?? null;

const sum = (of: readonly number[], from: number, to: number): number =>
  of.slice(from, to + 1).reduce((total, one) => total + one, 0);

/** Stock that is free each week, and what is on its way, when use goes as expected. */
function reordered(item: Item, offer: Offer, point: number, weeks: number): Order[] {
  const orders: Order[] = [];
  const mean = sum(item.demand, 1, weeks) / weeks;
  const packs = Math.min(
    offer.most,
    Math.max(fewestPacks(item, offer), Math.ceil((mean * coverWeeks + item.source.check.sample) / offer.pack)),
  );
  let position = item.lots.reduce((total, { quantity }) => total + quantity, 0);
  for (let week = 1; week <= offer.latest; week++) {
    if (position <= point) {
      orders.push({ offer, week, packs });
      position += packs * offer.pack - item.source.check.sample;
    }
    position -= item.demand[week] ?? 0;
  }
  return orders;
}

/** A campaign that no lot in the house covers gets a lot of its own, ordered as late as it may be. */
function withCampaigns(item: Item, offer: Offer | null, orders: readonly Order[]): ItemPlan {
  const more: Order[] = [...orders];
  const own = item.lots.map(({ quantity }) => quantity);
  const covered = item.campaigns.map((campaign): number | null => {
    const lots = lotsOf(item, { orders: [], covered: [] });
    const at = lots.findIndex((lot, i) => suits(lot, campaign) && (own[i] ?? 0) >= campaign.quantity);
    if (at >= 0) {
      own[at] = (own[at] ?? 0) - campaign.quantity;
      return at;
    }
    if (!offer) return null;
    const week = campaign.first - offer.lead - item.source.check.weeks;
    const packs = Math.ceil((campaign.quantity + item.source.check.sample) / offer.pack);
    if (week < 1 || packs > offer.most || more.some((order) => order.offer === offer && order.week === week))
      return null;
    more.push({ offer, week, packs });
    return item.lots.length + more.length - 1;
  });
  return { orders: more, covered };
}

/** `points`: the reorder point of each item by name; an item without one is never ordered again. */
export function reorderAnswer(problem: PurchaseProblem, points: Readonly<Record<string, number>>): PurchaseAnswer {
  const model: Model = modelOf(problem);
  const plans = model.items.map((item) => {
    const offer = cheapest(item);
    const point = points[item.id];
    const orders = offer && point !== undefined ? reordered(item, offer, point, model.weeks) : [];
    return withCampaigns(item, offer, orders);
  });
  const uses = model.items.map((item, at) => firstExpiryFirst(model, item, plans[at] ?? { orders: [], covered: [] }));
  return answerOf(model, { plans, uses, bound: null, status: 'gap' });
}

/** Where time ran out before anything cheaper than the simple rule was found, that is the plan; what was proven stays. */
export function noDearer(answer: PurchaseAnswer, simple: PurchaseAnswer): PurchaseAnswer {
  if (simple.cost >= answer.cost) return answer;
  const { status, bound } = answer;
  const gap = bound === null || simple.cost === 0 ? null : (simple.cost - bound) / Math.abs(simple.cost);
  return { ...simple, status, bound, gap, gapControllable: null };
}
