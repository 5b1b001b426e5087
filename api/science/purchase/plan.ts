// A plan of one item: what is ordered, which lot covers which campaign, and the lots that follow from it.
import { type Item, never, type Offer } from './model.ts';

export interface Order {
  readonly offer: Offer;
  readonly week: number;
  readonly packs: number;
}

/** A campaign's lot is an own lot by its number, or an order by the number of own lots and its own; null: uncovered. */
export interface ItemPlan {
  readonly orders: readonly Order[];
  readonly covered: readonly (number | null)[];
  /** Unbooked use by week that is not met on purpose, so that an old lot is still there for a check, or for safety. */
  readonly spare?: readonly number[];
}

/** A lot as stock: what is left of it after its check, and from when until when. */
export interface Lot {
  readonly quantity: number;
  readonly arrive: number;
  readonly release: number;
  readonly last: number;
}

export const arriveWeek = (offer: Offer, week: number): number => week + offer.lead;
export const releaseWeek = (item: Item, offer: Offer, week: number): number =>
  week + offer.lead + item.source.check.weeks;
export const lastWeek = (offer: Offer, week: number): number => Math.min(never, week + offer.lead + offer.lasts);

/** The fewest packs that leave anything after the sample. */
export const fewestPacks = (item: Item, offer: Offer): number =>
  Math.max(1, Math.ceil(item.source.check.sample / offer.pack));

export const lotsOf = (item: Item, plan: ItemPlan): Lot[] => [
  ...item.lots.map(({ quantity, from, last }) => ({ quantity, arrive: 1, release: from, last })),
  ...plan.orders.map(({ offer, week, packs }) => ({
    quantity: packs * offer.pack - item.source.check.sample,
    arrive: arriveWeek(offer, week),
    release: releaseWeek(item, offer, week),
    last: lastWeek(offer, week),
  })),
];

export const lotName = (item: Item, plan: ItemPlan, lot: number): string => {
  const own = item.lots[lot];
  if (own) return own.id;
  const order = plan.orders[lot - item.lots.length];
  return order ? `${order.offer.id}@${order.week}` : '';
};

/** Orders of one offer and week are one lot; the order of the list is that of time, then of the offers. */
export function tidy(plan: ItemPlan, own: number): ItemPlan {
  const sorted = plan.orders
    .map((order, was) => ({ order, was: was + own }))
    .sort((a, b) => a.order.week - b.order.week || a.order.offer.index - b.order.offer.index);
  const orders: Order[] = [];
  const now = new Map<number, number>();
  for (const { order, was } of sorted) {
    const before = orders.at(-1);
    if (before && before.offer === order.offer && before.week === order.week) {
      orders[orders.length - 1] = { ...before, packs: Math.min(order.offer.most, before.packs + order.packs) };
    } else orders.push(order);
    now.set(was, own + orders.length - 1);
  }
  return {
    ...plan,
    orders,
    covered: plan.covered.map((lot) => (lot === null || lot < own ? lot : (now.get(lot) ?? null))),
  };
}

export const suits = (lot: Lot, campaign: { readonly first: number; readonly last: number }): boolean =>
  lot.release <= campaign.first && lot.last >= campaign.last;
