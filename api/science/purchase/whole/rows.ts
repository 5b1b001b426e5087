// The purchase plan as one mixed programme, all its rows: exact, but only for few items and weeks.
import { deliveryKey, supplierOf } from '../exact.ts';
import type { Item, Model } from '../model.ts';
import { column, emptyLinear, type Linear, row } from '../linear.ts';
import { arriveWeek, fewestPacks, lastWeek, type Lot, releaseWeek, suits } from '../plan.ts';

type Term = readonly [column: number, value: number];

export interface LotColumns {
  readonly item: Item;
  /** The number of an own lot, or the offer and week of a possible one. */
  readonly own: number | null;
  readonly offer: number;
  readonly week: number;
  readonly release: number;
  /** Packs by price tier. */
  readonly packs: readonly number[];
  readonly use: readonly Term[];
  /** Campaign and column. */
  readonly covers: readonly Term[];
}

export interface WholeProgramme {
  readonly linear: Linear;
  readonly lots: readonly LotColumns[];
  /** What no column changes, in minor units: holding the own lots whole. */
  readonly constant: number;
}

const million = 1e6;

interface Possible extends Lot {
  readonly item: Item;
  readonly own: number | null;
  readonly offer: number;
  readonly week: number;
}

function possibleLots(model: Model): Possible[] {
  return model.items.flatMap((item) => [
    ...item.lots.map(({ quantity, from, last }, own) => ({
      item,
      own,
      offer: -1,
      week: 0,
      quantity,
      arrive: 1,
      release: from,
      last,
    })),
    ...item.offers.flatMap((offer) =>
      Array.from({ length: offer.most > 0 ? Math.max(0, offer.latest) : 0 }, (_, i) => ({
        item,
        own: null,
        offer: offer.index,
        week: i + 1,
        quantity: 0,
        arrive: arriveWeek(offer, i + 1),
        release: releaseWeek(item, offer, i + 1),
        last: lastWeek(offer, i + 1),
      })),
    ),
  ]);
}

export const possibleOrders = (model: Model): number =>
  model.offers.reduce((sum, { latest, most }) => sum + (most > 0 ? Math.max(0, latest) : 0), 0);

export function wholeProgramme(model: Model): WholeProgramme {
  const linear = emptyLinear();
  const { weeks } = model;
  const { storage } = model.problem;
  const delivery = new Map<number, { column: number; goods: Term[] }>();
  const deliveryOf = (supplier: number, week: number) => {
    const key = deliveryKey(model, supplier, week);
    const known = delivery.get(key);
    if (known) return known;
    const added = { column: column(linear, model.fee[supplier]![week]!, 1, true), goods: [] };
    delivery.set(key, added);
    return added;
  };
  const volume = storage.map(() => Array.from({ length: weeks + 1 }, (): Term[] => []));
  const room = storage.map(({ capacity }) => new Array<number>(weeks + 1).fill(capacity));
  const met = model.items.map(({ demand, source }) =>
    demand.map((): Term[] => [[column(linear, source.shortMicro / million), 1]]),
  );
  const reserve = model.items.map(({ source }) =>
    Array.from({ length: weeks + 1 }, (_, week): Term[] =>
      week === 0 ? [] : [[column(linear, source.belowSafetyMicro / million), 1]],
    ),
  );
  const covered = model.items.map(({ campaigns }) =>
    campaigns.map(({ uncovered }): Term[] => [[column(linear, uncovered, 1), 1]]),
  );
  let constant = 0;
  const withoutOld: { item: Item; week: number; terms: Term[] }[] = [];

  const lots = possibleLots(model).map((lot): LotColumns => {
    const { item, own, arrive, release, last } = lot;
    const { source, index } = item;
    const until = Math.min(last, weeks);
    // The lot's quantity: a constant of an own lot, packs less the sample of a possible one.
    const quantity: Term[] = [];
    const there: Term[] = [];
    const packs: number[] = [];
    if (own === null) {
      const offer = model.offers[lot.offer]!;
      const { column: delivered, goods } = deliveryOf(offer.supplier, lot.week);
      const tiers = model.problem.offers[lot.offer]!.prices;
      const taken: Term[] = [];
      tiers.forEach(({ from, price }, k) => {
        const low = Math.max(from, fewestPacks(item, offer));
        const high = Math.min(offer.most, (tiers[k + 1]?.from ?? Infinity) - 1);
        if (low > high) return;
        const tier = column(linear, source.check.cost, 1, true);
        const count = column(linear, price, high, true);
        packs.push(count);
        row(linear, 0, Infinity, [[count, 1], [tier, -low]]); // prettier-ignore
        row(linear, -Infinity, 0, [[count, 1], [tier, -high]]); // prettier-ignore
        quantity.push([count, offer.pack], [tier, -source.check.sample]);
        goods.push([count, price]);
        taken.push([tier, 1]);
      });
      there.push(...taken);
      row(linear, -Infinity, 0, [...taken, [delivered, -1]]);
      row(linear, -Infinity, 1, taken);
      // What will stand beside a check that ends after the last week is not known: nothing is charged for it.
      if (source.check.weeks > 0 && source.check.keep > 0 && release - 1 <= weeks) {
        const without = column(linear, source.check.withoutOld, 1, true);
        withoutOld.push({ item, week: release - 1, terms: [...taken, [without, -1]] });
      }
    }
    const use: Term[] = [];
    const uses: { week: number; term: Term }[] = [];
    for (let week = release; week <= until; week++) {
      if (item.demand[week] === 0) continue;
      const used = column(linear, 0, item.demand[week], true);
      use.push([week, used]);
      uses.push({ week, term: [used, 1] });
      met[index]![week]!.push([used, 1]);
    }
    const covers: Term[] = [];
    item.campaigns.forEach((campaign, i) => {
      if (!suits(lot, campaign)) return;
      const cover = column(linear, 0, 1, true);
      covers.push([i, cover]);
      covered[index]![i]!.push([cover, 1]);
      for (const { week, quantity: amount } of campaign.uses) uses.push({ week, term: [cover, amount] });
      if (own === null) row(linear, -Infinity, 0, [[cover, 1], ...there.map(([at]): Term => [at, -1])]);
    });
    const left = column(linear, last <= weeks ? source.wasteMicro / million : -source.endValueMicro / million);
    row(linear, lot.quantity, lot.quantity, [
      ...uses.map(({ term }) => term),
      [left, 1],
      ...quantity.map(([at, value]): Term => [at, -value]),
    ]);
    // Stock before use in a week, and what remains of it at its end.
    const stock = (before: number): Term[] => [
      ...quantity,
      ...uses.filter(({ week }) => week < before).map(({ term: [at, value] }): Term => [at, -value]),
    ];
    const held = new Map<number, number>();
    for (let week = arrive; week <= until; week++) {
      if (week < last) {
        constant += (lot.quantity * source.holdingMicro) / million;
        for (const [at, value] of stock(week + 1)) held.set(at, (held.get(at) ?? 0) + value);
      }
      storage.forEach((_, group) => {
        const of = item.volume[group]!;
        if (of === 0) return;
        volume[group]![week]!.push(...stock(week).map(([at, value]): Term => [at, of * value]));
        room[group]![week]! -= of * lot.quantity;
      });
    }
    for (const [at, value] of held) linear.cost[at]! += (value * source.holdingMicro) / million;
    for (let week = release; week <= weeks; week++) {
      for (const [used, at] of use) if (used > week) reserve[index]![week]!.push([at, 1]);
      if (last > weeks) reserve[index]![week]!.push([left, 1]);
    }
    return { item, own, offer: lot.offer, week: lot.week, release, packs, use, covers };
  });

  for (const { index, demand, source } of model.items) {
    for (let week = 1; week <= weeks; week++) {
      row(linear, demand[week]!, demand[week]!, met[index]![week]!);
      row(linear, source.safety, Infinity, reserve[index]![week]!);
    }
    for (const terms of covered[index]!) row(linear, 1, 1, terms);
  }
  for (const { item, week, terms } of withoutOld) {
    // Without the column for what is missing below safety, which comes first.
    const old = reserve[item.index]![week]!.slice(1);
    const { keep } = item.source.check;
    row(linear, 0, Infinity, [...old, ...terms.map(([at, value]): Term => [at, -keep * value])]);
  }
  for (const [key, { column: delivered, goods }] of delivery) {
    const minimum = model.minimum[supplierOf(model, key)]!;
    if (minimum > 0) row(linear, 0, Infinity, [...goods, [delivered, -minimum]]);
  }
  storage.forEach(({ overMicro }, group) => {
    for (let week = 1; week <= weeks; week++) {
      const terms = volume[group]![week]!;
      if (terms.length === 0 && room[group]![week]! >= 0) continue;
      row(linear, -Infinity, room[group]![week]!, [...terms, [column(linear, overMicro / million), -1]]);
    }
  });
  return { linear, lots, constant };
}
