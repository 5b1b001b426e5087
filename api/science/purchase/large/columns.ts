// The plans of one item that are known so far, each with what it shares with the others: a column of the master programme.
import { deliveriesOf } from '../exact.ts';
import type { Item, Model } from '../model.ts';
import type { Charges } from '../price/charges.ts';
import type { Settled } from '../settle.ts';

export interface Column {
  readonly item: Item;
  readonly settled: Settled;
  /** Deliveries by key, with what is spent in them. */
  readonly spent: ReadonlyMap<number, number>;
}

export function columnOf(model: Model, item: Item, settled: Settled): Column {
  return { item, settled, spent: deliveriesOf(model, [settled.plan]) };
}

/** What a plan costs at given charges, in minor units. */
export function chargedOf(model: Model, { item, settled }: { item: Item; settled: Settled }, charges: Charges): number {
  let sum = settled.own;
  for (const { offer, week } of settled.plan.orders) sum += charges.share[offer.index]![week]!;
  item.volume.forEach((of, group) => {
    if (of === 0) return;
    for (let week = 1; week <= model.weeks; week++) sum += of * settled.tally.peak[week]! * charges.room[group]![week]!;
  });
  return sum;
}

/** The columns of each item, each plan once. */
export class Pool {
  readonly columns: Column[] = [];
  readonly #known = new Set<string>();
  readonly #model: Model;

  constructor(model: Model) {
    this.#model = model;
  }

  /** False where the plan was known. */
  add(item: Item, settled: Settled): boolean {
    const { orders, covered, spare } = settled.plan;
    const key = JSON.stringify([
      item.index,
      orders.map(({ offer, week, packs }) => [offer.index, week, packs]),
      covered,
      spare?.some((quantity) => quantity > 0) ? spare : null,
    ]);
    if (this.#known.has(key)) return false;
    this.#known.add(key);
    this.columns.push(columnOf(this.#model, item, settled));
    return true;
  }
}
