// Goods that no plan can do without, at their lowest price: what planning cannot change.
import type { Item, Model } from './model.ts';
import { fewestPacks } from './plan.ts';

/** Minor units for one base unit where it is cheapest; Infinity: nobody offers it. */
const unitPrice = (item: Item): number =>
  Math.min(
    ...item.offers.map((offer) =>
      offer.latest < 1 || offer.most < 1
        ? Infinity
        : Math.min(...offer.priceOf.slice(fewestPacks(item, offer)).map((price) => price / offer.pack)),
    ),
  );

/** Use that what is there does not cover, each unit at the lowest price there is. */
export function goodsFloor(model: Model): number {
  return model.items.reduce((sum, item) => {
    const wanted = item.cumulative.at(-1)! + item.campaigns.reduce((of, { quantity }) => of + quantity, 0);
    const there = item.lots.reduce((of, { quantity }) => of + quantity, 0);
    const price = unitPrice(item);
    return sum + (Number.isFinite(price) ? Math.max(0, wanted - there) * price : 0);
  }, 0);
}
