// What a plan of all items costs, exactly: whole quantities times whole rates, added up as big integers.
import type { Use } from './allocate.ts';
import type { Model } from './model.ts';
import { microOf, roundedMinor } from './money.ts';
import type { ItemPlan } from './plan.ts';
import { type Tally, tallyOf } from './tally.ts';
import type { PurchaseCosts } from './types.ts';

export interface Priced {
  /** Millionths of a minor unit. */
  readonly micro: bigint;
  readonly parts: Readonly<Record<keyof PurchaseCosts, bigint>>;
  readonly tallies: readonly Tally[];
}

/** Supplier and week of each delivery, as one number, with what its goods come to. */
export function deliveriesOf(model: Model, plans: readonly ItemPlan[]): Map<number, number> {
  const spent = new Map<number, number>();
  for (const { orders } of plans) {
    for (const { offer, week, packs } of orders) {
      const key = deliveryKey(model, offer.supplier, week);
      spent.set(key, (spent.get(key) ?? 0) + packs * offer.priceOf[packs]!);
    }
  }
  return spent;
}

export const deliveryKey = (model: Model, supplier: number, week: number): number =>
  supplier * (model.weeks + 1) + week;
export const supplierOf = (model: Model, key: number): number => Math.floor(key / (model.weeks + 1));
export const weekOf = (model: Model, key: number): number => key % (model.weeks + 1);

/** Minor units for these deliveries. */
export const feesOf = (model: Model, deliveries: ReadonlyMap<number, number>): number =>
  [...deliveries.keys()].reduce((sum, key) => sum + model.fee[supplierOf(model, key)]![weekOf(model, key)]!, 0);

/** What these deliveries lack of their suppliers' minimums, minor units. */
export const belowMinimums = (model: Model, deliveries: ReadonlyMap<number, number>): number =>
  [...deliveries].reduce((sum, [key, spent]) => sum + Math.max(0, model.minimum[supplierOf(model, key)]! - spent), 0);

/** Volume units above a group's capacity, added up over the weeks, by group. */
export function overflowOf(model: Model, peaks: readonly (readonly number[])[]): number[] {
  return model.problem.storage.map(({ capacity }, group) => {
    let over = 0;
    for (let week = 1; week <= model.weeks; week++) {
      const volume = model.items.reduce((sum, { volume: of, index }) => sum + of[group]! * peaks[index]![week]!, 0);
      over += Math.max(0, volume - capacity);
    }
    return over;
  });
}

export function pricedOf(model: Model, plans: readonly ItemPlan[], uses: readonly Use[]): Priced {
  const tallies = model.items.map((item) => tallyOf(model, item, plans[item.index]!, uses[item.index]!));
  const money = (of: (tally: Tally) => number): bigint => tallies.reduce((sum, tally) => sum + microOf(of(tally)), 0n);
  const rated = (of: (tally: Tally) => number, rate: keyof (typeof model.items)[number]['source']): bigint =>
    model.items.reduce(
      (sum, { source, index }) => sum + BigInt(of(tallies[index]!)) * BigInt(Number(source[rate])),
      0n,
    );
  const over = overflowOf(
    model,
    tallies.map(({ peak }) => peak),
  );
  const parts = {
    goods: money(({ goods }) => goods),
    fees: microOf(feesOf(model, deliveriesOf(model, plans))),
    checks: money(({ checks }) => checks),
    withoutOld: money(({ withoutOld }) => withoutOld),
    holding: rated(({ holding }) => holding, 'holdingMicro'),
    waste: rated(({ waste }) => waste, 'wasteMicro'),
    shortage: rated(({ shortage }) => shortage, 'shortMicro'),
    belowSafety: rated(({ belowSafety }) => belowSafety, 'belowSafetyMicro'),
    uncovered: money(({ uncovered }) => uncovered),
    overflow: over.reduce((sum, volume, i) => sum + BigInt(volume) * BigInt(model.problem.storage[i]!.overMicro), 0n),
    endValue: rated(({ end }) => end, 'endValueMicro'),
  };
  const { endValue, ...rest } = parts;
  return { micro: Object.values(rest).reduce((sum, part) => sum + part, -endValue), parts, tallies };
}

export function costsOf({ parts }: Priced): PurchaseCosts {
  const { goods, fees, checks, withoutOld, holding, waste, shortage, belowSafety, uncovered, overflow, endValue } =
    parts;
  return {
    goods: roundedMinor(goods),
    fees: roundedMinor(fees),
    checks: roundedMinor(checks),
    withoutOld: roundedMinor(withoutOld),
    holding: roundedMinor(holding),
    waste: roundedMinor(waste),
    shortage: roundedMinor(shortage),
    belowSafety: roundedMinor(belowSafety),
    uncovered: roundedMinor(uncovered),
    overflow: roundedMinor(overflow),
    endValue: roundedMinor(endValue),
  };
}

/** What a solver may lose in floating point, as a share of the cost. */
const lost = 1e-6;

/** A plan costs no more than any could, but for what floating point lost of the bound. */
export const isTight = (cost: number, bound: number): boolean => cost - bound <= lost * Math.max(1, Math.abs(cost));
