// What a plan of one item comes to, counted in whole units before any price: money and rates come after.
import { freeOf, type Use } from './allocate.ts';
import type { Item, Model } from './model.ts';
import { type ItemPlan, type Lot, lotsOf } from './plan.ts';

export interface Tally {
  /** Minor units. */
  readonly goods: number;
  readonly checks: number;
  readonly withoutOld: number;
  /** Checks without enough of an old lot. */
  readonly alone: number;
  readonly uncovered: number;
  /** Base units times weeks. */
  readonly holding: number;
  readonly belowSafety: number;
  /** Base units. */
  readonly waste: number;
  readonly shortage: number;
  readonly end: number;
  /** Base units in the house after a week's arrivals, by week. */
  readonly peak: readonly number[];
  readonly wasteOf: readonly number[];
  /** Released stock at the end of each week that will still be used unbooked or is there at the end; [0] is before week 1. */
  readonly reserve: readonly number[];
  /** Unbooked use that is not met, by week. */
  readonly missing: readonly number[];
}

function reserveOf(weeks: number, lots: readonly Lot[], use: Use, kept: readonly number[]): number[] {
  const reserve = new Array<number>(weeks + 1).fill(0);
  lots.forEach(({ release }, lot) => {
    let left = kept[lot]!;
    for (let week = weeks; week >= release; week--) {
      reserve[week]! += left;
      left += use[lot]![week]!;
    }
  });
  return reserve;
}

export function tallyOf(model: Model, item: Item, plan: ItemPlan, use: Use): Tally {
  const { weeks } = model;
  const { check, safety } = item.source;
  const lots = lotsOf(item, plan);
  const left = freeOf(item, plan, lots).map(
    (free, lot) => free - use[lot]!.reduce((sum, quantity) => sum + quantity, 0),
  );
  const wasteOf = left.map((quantity, lot) => (lots[lot]!.last <= weeks ? quantity : 0));
  const kept = left.map((quantity, lot) => (lots[lot]!.last <= weeks ? 0 : quantity));
  const reserve = reserveOf(weeks, lots, use, kept);

  const taken = lots.map((_, lot) => [...use[lot]!]);
  plan.covered.forEach((lot, i) => {
    if (lot !== null) for (const { week, quantity } of item.campaigns[i]!.uses) taken[lot]![week]! += quantity;
  });
  const peak = new Array<number>(weeks + 1).fill(0);
  let holding = 0;
  lots.forEach(({ quantity, arrive, last }, lot) => {
    let stock = quantity;
    for (let week = arrive; week <= Math.min(last, weeks); week++) {
      peak[week]! += stock;
      stock -= taken[lot]![week]!;
      if (week < last) holding += stock;
    }
  });

  const missing = item.demand.map((wanted, week) => wanted - use.reduce((sum, of) => sum + of[week]!, 0));
  let belowSafety = 0;
  for (let week = 1; week <= weeks; week++) belowSafety += Math.max(0, safety - reserve[week]!);
  // What will stand beside a check that ends after the last week is not known: nothing is charged for it.
  const alone = lots
    .slice(item.lots.length)
    .filter(({ release }) => check.weeks > 0 && release - 1 <= weeks && reserve[release - 1]! < check.keep).length;
  return {
    goods: plan.orders.reduce((sum, { offer, packs }) => sum + packs * offer.priceOf[packs]!, 0),
    checks: plan.orders.length * check.cost,
    withoutOld: alone * check.withoutOld,
    alone,
    uncovered: plan.covered.reduce<number>((sum, lot, i) => sum + (lot === null ? item.campaigns[i]!.uncovered : 0), 0),
    holding,
    belowSafety,
    waste: wasteOf.reduce((sum, quantity) => sum + quantity, 0),
    shortage: missing.reduce((sum, quantity) => sum + quantity, 0),
    end: kept.reduce((sum, quantity) => sum + quantity, 0),
    peak,
    wasteOf,
    reserve,
    missing,
  };
}

/** Millionths of a minor unit: what an item's plan costs by itself, without fees and overflow. */
export function ownMicro(item: Item, tally: Tally): number {
  const { holdingMicro, wasteMicro, shortMicro, belowSafetyMicro, endValueMicro } = item.source;
  return (
    (tally.goods + tally.checks + tally.withoutOld + tally.uncovered) * 1e6 +
    tally.holding * holdingMicro +
    tally.waste * wasteMicro +
    tally.shortage * shortMicro +
    tally.belowSafety * belowSafetyMicro -
    tally.end * endValueMicro
  );
}
