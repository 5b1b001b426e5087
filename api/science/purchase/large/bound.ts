// What no plan can beat: at any charges that are fair, the cheapest plans of all items with what the charges pay back.
import type { Model } from '../model.ts';
import type { Charges } from '../price/charges.ts';

/** Relief below what would make goods worth more than they cost; room no dearer than the overflow it saves; none negative. */
export function fair(model: Model, charges: Charges): Charges {
  const most = model.minimum.map(() => 1);
  for (const offer of model.offers) {
    const worth = (model.itemOf[offer.index]!.source.endValueMicro / 1e6) * offer.pack;
    for (const price of offer.priceOf.slice(1)) {
      if (worth > 0)
        most[offer.supplier] = Math.max(0, Math.min(most[offer.supplier]!, 1 - worth / Math.max(price, 1e-9)));
    }
  }
  return {
    share: charges.share.map((of) => of.map((value) => Math.max(0, value))),
    relief: charges.relief.map((of, supplier) => of.map((value) => Math.min(most[supplier]!, Math.max(0, value)))),
    room: charges.room.map((of, group) =>
      of.map((value) => Math.min(model.problem.storage[group]!.overMicro / 1e6, Math.max(0, value))),
    ),
  };
}

/** Half of one and half of the other, or so. */
export function between(a: Charges, b: Charges, share: number): Charges {
  const mixed = (x: readonly Float64Array[], y: readonly Float64Array[]) =>
    x.map((of, i) => of.map((value, k) => value + share * (y[i]![k]! - value)));
  return { share: mixed(a.share, b.share), relief: mixed(a.relief, b.relief), room: mixed(a.room, b.room) };
}

/** What deliveries and storage add to the cheapest plans: never more than they cost. */
export function backOf(model: Model, { share, relief, room }: Charges): number {
  let sum = 0;
  for (let week = 1; week <= model.weeks; week++) {
    model.minimum.forEach((minimum, supplier) => {
      const paid = model.offers.reduce(
        (all, offer) => all + (offer.supplier === supplier ? share[offer.index]![week]! : 0),
        0,
      );
      sum += Math.min(0, model.fee[supplier]![week]! + relief[supplier]![week]! * minimum - paid);
    });
    model.problem.storage.forEach(({ capacity }, group) => {
      sum -= room[group]![week]! * capacity;
    });
  }
  return sum;
}
