// Polishing by turns: each item plans anew beside what all others do, until none gains.
import { belowMinimums, deliveriesOf, deliveryKey, feesOf, overflowOf } from '../exact.ts';
import type { Allowance } from '../budget.ts';
import type { Model } from '../model.ts';
import { chargedOf } from './columns.ts';
import { cheapest } from '../price/cheapest.ts';
import { type Charges, noCharges } from '../price/charges.ts';
import type { Grid } from '../price/grid.ts';
import { type Settled, settle } from '../settle.ts';

export type Whole = readonly Settled[];

export function costOf(model: Model, whole: Whole): number {
  const deliveries = deliveriesOf(
    model,
    whole.map(({ plan }) => plan),
  );
  if (belowMinimums(model, deliveries) > 0) return Infinity;
  const over = overflowOf(
    model,
    whole.map(({ tally }) => tally.peak),
  );
  return (
    whole.reduce((sum, { own }) => sum + own, 0) +
    feesOf(model, deliveries) +
    over.reduce((sum, volume, group) => sum + (volume * model.problem.storage[group]!.overMicro) / 1e6, 0)
  );
}

/** What the others leave this item to pay: deliveries that are not there yet, minimums, room that is full. */
export function beside(model: Model, whole: Whole, index: number, roomShare: number): Charges {
  const { share, room } = noCharges(model);
  const spent = deliveriesOf(
    model,
    whole.flatMap(({ plan }, i) => (i === index ? [] : [plan])),
  );
  for (const offer of model.items[index]!.offers) {
    for (let week = 1; week <= model.weeks; week++) {
      const isThere = spent.has(deliveryKey(model, offer.supplier, week));
      share[offer.index]![week] = isThere ? 0 : model.fee[offer.supplier]![week]!;
    }
  }
  model.problem.storage.forEach(({ capacity, overMicro }, group) => {
    for (let week = 1; week <= model.weeks; week++) {
      const volume = model.items.reduce(
        (sum, { volume: of }, i) => sum + (i === index ? 0 : of[group]! * whole[i]!.tally.peak[week]!),
        0,
      );
      const own = model.items[index]!.volume[group]! * whole[index]!.tally.peak[week]!;
      const isFull = volume + own > capacity || volume >= capacity;
      room[group]![week] = isFull ? (roomShare * overMicro) / 1e6 : 0;
    }
  });
  const least = (offer: { readonly supplier: number }, week: number): number =>
    Math.max(0, model.minimum[offer.supplier]! - (spent.get(deliveryKey(model, offer.supplier, week)) ?? 0));
  return { share, room, least };
}

/** One turn of all items; the plans after it, never dearer. */
export function turn(
  model: Model,
  grids: readonly Grid[],
  from: Whole,
  roomShare: number,
  allowance: Allowance,
  found: (index: number, settled: Settled) => void,
): Whole {
  let now = from;
  let cost = costOf(model, now);
  for (const item of model.items) {
    const charges = beside(model, now, item.index, roomShare);
    const known = chargedOf(model, { item, settled: now[item.index]! }, charges);
    const { plan } = cheapest(model, item, grids[item.index]!, charges, known, allowance);
    if (!plan) continue;
    const settled = settle(model, item, plan);
    found(item.index, settled);
    const next = now.map((old, i) => (i === item.index ? settled : old));
    const nextCost = costOf(model, next);
    if (nextCost < cost - 1e-6) [now, cost] = [next, nextCost];
  }
  return now;
}
