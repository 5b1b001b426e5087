// Every lot that may come next: an offer, a number of packs, the campaigns it covers; and in which week it costs least.
import { type Item, type Model, mostOneByOne, mostTogether, type Offer } from '../model.ts';
import { fewestPacks, lastWeek, releaseWeek, suits } from '../plan.ts';
import type { Charges, Rates } from './charges.ts';
import type { Grid } from './grid.ts';

export interface Option {
  readonly offer: Offer;
  readonly packs: number;
  /** The campaigns it covers, a bit each. */
  readonly mask: number;
  /** Cells of unbooked use that it covers. */
  readonly cells: number;
  /** Cells that one pack less would cover, where that has the same price; −1 where it has another. */
  readonly fewer: number;
  /** No base unit of it is worth more than it costs, whatever becomes of it. */
  readonly paysItself: boolean;
  /** Weeks from order to release. */
  readonly delay: number;
  /** The rank of its shelf life among those of the item's offers. */
  readonly shelf: number;
  /** Use up to the end of what expires, by week of order; Infinity: it does not expire within the plan. */
  readonly reach: Float64Array;
  /** What there is of own lots that live longer: so much may stay back for use after it. */
  readonly longer: Float64Array;
  /** Minor units for a base unit that is written off, by week of order. */
  readonly writeOff: Float64Array;
  readonly from: number;
  readonly to: number;
  /** Minor units when ordered in a week. */
  readonly cost: Float64Array;
  /** The least of the weeks up to this one, and which it is. */
  readonly least: Float64Array;
  readonly when: Int32Array;
}

/** Weeks in which an order of an offer is written off within the plan, or is not. */
function spansOf(model: Model, item: Item, offer: Offer): { from: number; to: number; cap: number }[] {
  const { weeks } = model;
  const latest = Math.min(offer.latest, weeks - offer.lead - item.source.check.weeks);
  const expiring = Math.min(latest, weeks - offer.lead - offer.lasts);
  let cap = 0;
  for (let week = 1; week <= expiring; week++) {
    const [release, last] = [releaseWeek(item, offer, week), lastWeek(offer, week)];
    if (release <= last) cap = Math.max(cap, item.cumulative[last]! - item.cumulative[release - 1]!);
  }
  return [
    { from: 1, to: expiring, cap },
    { from: Math.max(1, expiring + 1), to: latest, cap: Infinity },
  ].filter(({ from, to }) => from <= to);
}

/** What own lots may still be used for after a week, at the most. */
function usedAfter({ weeks }: Model, { lots, cumulative }: Item, week: number): number {
  return lots.reduce((sum, { quantity, last }) => {
    if (last <= week) return sum;
    return sum + (last > weeks ? quantity : Math.min(quantity, cumulative[last]! - cumulative[week]!));
  }, 0);
}

/** Every number of packs up to a thousand, then in steps of two in a thousand. */
function* packsOf(item: Item, offer: Offer): Generator<number> {
  const fewest = fewestPacks(item, offer);
  for (let packs = fewest; packs <= offer.most; packs += Math.max(1, Math.floor((2 * packs) / mostOneByOne)))
    yield packs;
}

export const shelvesOf = (item: Item): number[] =>
  [...new Set(item.offers.map(({ lasts }) => lasts))].sort((a, b) => a - b);

/** `left`: what a base unit pays that is not used, at the least. */
export function optionsOf(
  model: Model,
  item: Item,
  grid: Grid,
  rates: Rates,
  charges: Charges,
  left: number,
): Option[] {
  const { source } = item;
  const campaigns = item.campaigns.slice(0, mostTogether);
  const all: Option[] = [];
  const shelves = shelvesOf(item);
  for (const offer of item.offers) {
    if (offer.most < 1) continue;
    const delay = offer.lead + source.check.weeks;
    const reach = new Float64Array(model.weeks + 1).fill(Infinity);
    const longer = new Float64Array(model.weeks + 1);
    const writeOff = new Float64Array(model.weeks + 1);
    for (let week = 1; week <= offer.latest; week++) {
      const last = lastWeek(offer, week);
      if (last > model.weeks) continue;
      reach[week] = item.cumulative[last]!;
      longer[week] = usedAfter(model, item, last);
      writeOff[week] = rates.writeOff[last]!;
    }
    for (const span of spansOf(model, item, offer)) {
      for (let mask = 0; mask < 1 << campaigns.length; mask++) {
        const own = campaigns.filter((_, i) => (mask >> i) & 1);
        const kept = own.reduce((sum, { quantity }) => sum + quantity, 0);
        const used = own.reduce(
          (sum, { uses }) => sum + uses.reduce((of, { week, quantity }) => of + quantity * rates.use[week]!, 0),
          0,
        );
        for (const packs of packsOf(item, offer)) {
          const got = packs * offer.pack - source.check.sample;
          const free = got - kept;
          if (free < 0) continue;
          const useful = Math.min(free, span.cap);
          const price = packs * offer.priceOf[packs]!;
          const cost = new Float64Array(model.weeks + 1).fill(Infinity);
          const least = new Float64Array(model.weeks + 1).fill(Infinity);
          const when = new Int32Array(model.weeks + 1);
          let isDearer = true;
          for (let week = span.from; week <= span.to; week++) {
            isDearer &&= offer.priceOf[packs]! + offer.pack * (left - rates.credit[week + offer.lead]!) >= 0;
            const lot = {
              quantity: got,
              arrive: week + offer.lead,
              release: week + delay,
              last: lastWeek(offer, week),
            };
            const spends = charges.least ? price >= charges.least(offer, week) : true;
            if (spends && own.every((campaign) => suits(lot, campaign))) {
              cost[week] =
                charges.share[offer.index]![week]! +
                source.check.cost +
                price +
                used -
                got * rates.credit[lot.arrive]! +
                (free > useful ? (free - useful) * rates.writeOff[lot.last]! : 0);
            }
            const isLess = week === span.from || cost[week]! <= least[week - 1]!;
            least[week] = isLess ? cost[week]! : least[week - 1]!;
            when[week] = isLess ? week : when[week - 1]!;
          }
          const isNext = packs > fewestPacks(item, offer) && packs <= mostOneByOne;
          const samePrice = isNext && offer.priceOf[packs - 1] === offer.priceOf[packs];
          all.push({
            offer,
            packs,
            mask,
            cells: Math.ceil(useful / grid.cell),
            fewer: samePrice && isDearer && free >= offer.pack ? Math.floor((free - offer.pack) / grid.cell) : -1,
            paysItself: isDearer,
            delay,
            shelf: shelves.indexOf(offer.lasts),
            reach,
            longer,
            writeOff,
            from: span.from,
            to: span.to,
            cost,
            least,
            when,
          });
        }
      }
    }
  }
  return all;
}
