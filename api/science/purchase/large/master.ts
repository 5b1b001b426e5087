// The master programme: one plan an item, deliveries and their minimum, storage; and what its prices charge each item.
import type { Highs } from 'highs';
import { deliveryKey, supplierOf, weekOf } from '../exact.ts';
import { column, emptyLinear, row, solve, type Solved, type SolveOptions } from '../linear.ts';
import type { Model } from '../model.ts';
import { type Charges, noCharges } from '../price/charges.ts';
import type { Column } from './columns.ts';

type Term = readonly [column: number, value: number];

interface Master {
  readonly solved: Solved;
  readonly charges: Charges;
}

function terms<K>(map: Map<K, Term[]>, key: K): Term[] {
  const known = map.get(key);
  if (known) return known;
  const added: Term[] = [];
  map.set(key, added);
  return added;
}

/** Null when there was no time. `isWhole`: one plan each, else shares of plans. */
export function master(
  model: Model,
  highs: Highs,
  columns: readonly Column[],
  isWhole: boolean,
  options: SolveOptions,
): Master | null {
  const linear = emptyLinear();
  const chosen = model.items.map((): Term[] => []);
  const linked = new Map<number, Term[]>();
  const spending = new Map<number, Term[]>();
  const { weeks } = model;
  const peaks = model.problem.storage.map(() => Array.from({ length: weeks + 1 }, (): Term[] => []));
  for (const { item, settled, spent } of columns) {
    const at = column(linear, settled.own, 1, isWhole);
    chosen[item.index]!.push([at, 1]);
    for (const { offer, week } of settled.plan.orders) {
      terms(linked, offer.index * (weeks + 1) + week).push([at, 1]);
    }
    for (const [key, money] of spent) terms(spending, key).push([at, money]);
    item.volume.forEach((of, group) => {
      if (of === 0) return;
      for (let week = 1; week <= weeks; week++) {
        const peak = settled.tally.peak[week]!;
        if (peak > 0) peaks[group]![week]!.push([at, of * peak]);
      }
    });
  }
  const delivered = new Map<number, number>();
  for (const key of spending.keys()) {
    delivered.set(key, column(linear, model.fee[supplierOf(model, key)]![weekOf(model, key)]!, 1, isWhole));
  }
  for (const of of chosen) row(linear, 1, 1, of);
  const linkRows = [...linked].map(([key, of]) => {
    const offer = model.offers[Math.floor(key / (weeks + 1))]!;
    const week = key % (weeks + 1);
    const delivery = delivered.get(deliveryKey(model, offer.supplier, week))!;
    return { offer, week, at: row(linear, -Infinity, 0, [...of, [delivery, -1]]) };
  });
  // Left out where prices are asked for: no item is charged for a minimum, and without it the bound only falls.
  for (const [key, of] of spending) {
    const minimum = model.minimum[supplierOf(model, key)]!;
    if (minimum > 0 && isWhole) row(linear, 0, Infinity, [...of, [delivered.get(key)!, -minimum]]);
  }
  const roomRows = model.problem.storage.flatMap(({ capacity, overMicro }, group) =>
    Array.from({ length: weeks }, (_, i) => {
      const over = column(linear, overMicro / 1e6);
      return { group, week: i + 1, at: row(linear, -Infinity, capacity, [...peaks[group]![i + 1]!, [over, -1]]) };
    }),
  );
  const solved = solve(highs, linear, options);
  if (!solved) return null;
  const charges = noCharges(model);
  if (!isWhole) {
    const dual = (at: number) => Math.abs(solved.rowDual[at]!);
    for (const { offer, week, at } of linkRows) charges.share[offer.index]![week] = dual(at);
    for (const { group, week, at } of roomRows) charges.room[group]![week] = dual(at);
  }
  return { solved, charges };
}
