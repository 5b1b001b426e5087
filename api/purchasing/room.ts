// The room that storage groups have left for what is planned. Pure.
import type { PurchaseProblem } from '../science/purchase/types.ts';
import type { ItemFacts } from './items.ts';
import { freeUsable } from './keep.ts';
import type { PlanFacts } from './problem.ts';

/** In tenths of a millilitre, of a dry gram or a plate. */
const volumeOf = ({ item, rule }: ItemFacts): number =>
  Math.round((rule.litres ?? 0) * (item.backing === null ? 10 : 100));

export function storageOf(
  facts: Pick<PlanFacts, 'items' | 'storage'>,
  planned: ReadonlyMap<string, ItemFacts>,
): PurchaseProblem['storage'] {
  const own = new Set([...planned.values()].map(({ key }) => key));
  return facts.storage.map(({ id, name, capacityL, overMinor }) => {
    const inside = (of: ItemFacts) => of.rule.storageId === id && of.rule.litres !== null;
    // What is there and not planned takes its room all the same; so does what is kept.
    const others = facts.items.filter(inside).reduce((sum, of) => {
      const all = (of.stock?.lots ?? []).reduce((total, lot) => total + lot.amount, 0);
      const free = (of.stock?.lots ?? []).reduce((total, lot) => total + freeUsable(lot), 0);
      return sum + volumeOf(of) * (own.has(of.key) ? all - free : all);
    }, 0);
    return {
      id: name,
      capacity: Math.max(0, Math.floor(capacityL * 10_000 - others)),
      overMicro: overMinor * 100,
      volume: Object.fromEntries([...planned].filter(([, of]) => inside(of)).map(([id, of]) => [id, volumeOf(of)])),
    };
  });
}
