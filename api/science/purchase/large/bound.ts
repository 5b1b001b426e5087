// What no plan can beat: at any charges that are fair, the cheapest plans of all items with what the charges pay back.
import type { Model } from '../model.ts';
import type { Charges } from '../price/charges.ts';

/** Room no dearer than the overflow it saves; none negative. */
export function fair(model: Model, charges: Charges): Charges {
  return {
    share: charges.share.map((of) => of.map((value) => Math.max(0, value))),
    room: charges.room.map((of, group) =>
      of.map((value) => Math.min(model.problem.storage[group]!.overMicro / 1e6, Math.max(0, value))),
    ),
  };
}

/** Half of one and half of the other, or so. */
export function between(a: Charges, b: Charges, share: number): Charges {
  const mixed = (x: readonly Float64Array[], y: readonly Float64Array[]) =>
    x.map((of, i) => of.map((value, k) => value + share * (y[i]![k]! - value)));
  return { share: mixed(a.share, b.share), room: mixed(a.room, b.room) };
}

/** What deliveries and storage add to the cheapest plans: never more than they cost. */
export function backOf(model: Model, { share, room }: Charges): number {
  let sum = 0;
  for (let week = 1; week <= model.weeks; week++) {
    model.fee.forEach((fee, supplier) => {
      const paid = model.offers.reduce(
        (all, offer) => all + (offer.supplier === supplier ? share[offer.index]![week]! : 0),
        0,
      );
      sum += Math.min(0, fee[week]! - paid);
    });
    model.problem.storage.forEach(({ capacity }, group) => {
      sum -= room[group]![week]! * capacity;
    });
  }
  return sum;
}
