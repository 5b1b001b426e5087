// The problem made ready for reckoning: everything by number, each item with its lots, campaigns and offers.
import type { PurchaseItem, PurchaseOffer, PurchaseProblem } from './types.ts';

/** The end of a lot that does not expire. */
export const never = 1_000_000;

/** A lot that is there or on its way, accepted or in check. */
export interface OwnLot {
  readonly id: string;
  readonly quantity: number;
  readonly from: number;
  readonly last: number;
}

export interface Campaign {
  readonly id: string;
  readonly uses: readonly { readonly week: number; readonly quantity: number }[];
  readonly quantity: number;
  readonly first: number;
  readonly last: number;
  readonly uncovered: number;
}

export interface Offer {
  readonly id: string;
  readonly index: number;
  readonly supplier: number;
  readonly pack: number;
  readonly lead: number;
  /** Weeks from arrival to the last week of use; `never` where it does not expire. */
  readonly lasts: number;
  readonly most: number;
  /** The latest week in which an order still arrives within the horizon; below 1: none. */
  readonly latest: number;
  /** Minor units for one pack when so many are ordered: `priceOf[packs]`. */
  readonly priceOf: readonly number[];
}

/** Campaigns of one item that are planned together; more are covered one by one, and then nothing is proven. */
export const mostTogether = 4;

/** Packs of one order that are looked at one by one; of more only some numbers are, and then nothing is proven. */
export const mostOneByOne = 1000;

export interface Item {
  readonly id: string;
  readonly index: number;
  readonly source: PurchaseItem;
  /** Unbooked use by week; [0] is unused. */
  readonly demand: readonly number[];
  /** Unbooked use up to the end of a week. */
  readonly cumulative: readonly number[];
  readonly lots: readonly OwnLot[];
  readonly campaigns: readonly Campaign[];
  readonly offers: readonly Offer[];
  /** Volume units of a base unit, by storage group. */
  readonly volume: readonly number[];
}

export interface Model {
  readonly problem: PurchaseProblem;
  readonly weeks: number;
  readonly items: readonly Item[];
  readonly offers: readonly Offer[];
  readonly itemOf: readonly Item[];
  /** Minor units for a delivery, `fee[supplier][week]`. */
  readonly fee: readonly (readonly number[])[];
  readonly minimum: readonly number[];
}

/**
 * More packs than for everything an item needs, for the last price break or for the minimum order cost more than they
 * are worth at the end, so they are never looked at.
 */
function worthwhile(problem: PurchaseProblem, { item, supplier, pack, prices }: PurchaseOffer): number {
  const { demand, safety, check } = problem.items.find(({ id }) => id === item)!;
  const booked = problem.campaigns.filter((campaign) => campaign.item === item).flatMap(({ uses }) => uses);
  const needed =
    demand.reduce((sum, quantity) => sum + quantity, 0) +
    booked.reduce((sum, { quantity }) => sum + quantity, 0) +
    Math.max(safety, check.keep) +
    check.sample;
  const minimum = problem.suppliers.find(({ id }) => id === supplier)!.minOrder;
  const cheapest = Math.min(...prices.map(({ price }) => price));
  return Math.max(
    1,
    Math.ceil(needed / pack),
    prices.at(-1)!.from,
    minimum > 0 && cheapest > 0 ? Math.ceil(minimum / cheapest) : 0,
  );
}

function offerOf(problem: PurchaseProblem, offer: PurchaseOffer, index: number, sampled: number): Offer {
  const most = Math.min(offer.maxPacks, worthwhile(problem, offer));
  const priceOf = Array.from({ length: most + 1 }, (_, packs) =>
    offer.prices.reduce((price, tier) => (tier.from <= packs ? tier.price : price), offer.prices[0]!.price ?? 0),
  );
  const usable = offer.shelfWeeks === null || offer.shelfWeeks >= 1;
  return {
    id: offer.id,
    index,
    supplier: problem.suppliers.findIndex(({ id }) => id === offer.supplier),
    pack: offer.pack,
    lead: offer.leadWeeks,
    lasts: offer.shelfWeeks === null ? never : offer.shelfWeeks - 1,
    most: most * offer.pack >= sampled ? most : 0,
    latest: usable ? problem.weeks - offer.leadWeeks : 0,
    priceOf,
  };
}

function campaignsOf(problem: PurchaseProblem, item: string): Campaign[] {
  return problem.campaigns
    .filter((campaign) => campaign.item === item)
    .map(({ id, uses, uncovered }) => ({
      id,
      uses,
      quantity: uses.reduce((sum, { quantity }) => sum + quantity, 0),
      first: Math.min(...uses.map(({ week }) => week)),
      last: Math.max(...uses.map(({ week }) => week)),
      uncovered,
    }));
}

function lotsOf(problem: PurchaseProblem, item: string): OwnLot[] {
  return problem.lots
    .filter((lot) => lot.item === item && lot.status !== 'rejected')
    .map(({ id, quantity, from, lastWeek }) => ({ id, quantity, from: Math.max(1, from), last: lastWeek ?? never }));
}

export function modelOf(problem: PurchaseProblem): Model {
  const offers = problem.offers.map((offer, index) =>
    offerOf(problem, offer, index, problem.items.find(({ id }) => id === offer.item)?.check.sample ?? 0),
  );
  const items = problem.items.map((source, index): Item => {
    const demand = [0, ...source.demand];
    let sum = 0;
    return {
      id: source.id,
      index,
      source,
      demand,
      cumulative: demand.map((quantity) => (sum += quantity)),
      lots: lotsOf(problem, source.id),
      campaigns: campaignsOf(problem, source.id),
      offers: offers.filter((_, i) => problem.offers[i]?.item === source.id),
      volume: problem.storage.map(({ volume }) => volume[source.id] ?? 0),
    };
  });
  return {
    problem,
    weeks: problem.weeks,
    items,
    offers,
    itemOf: problem.offers.map(({ item }) => items.find(({ id }) => id === item)!),
    fee: problem.suppliers.map(({ deliveryFee }) =>
      Array.from({ length: problem.weeks + 1 }, (_, week) =>
        typeof deliveryFee === 'number' ? deliveryFee : (deliveryFee[week - 1] ?? 0),
      ),
    ),
    minimum: problem.suppliers.map(({ minOrder }) => minOrder),
  };
}
