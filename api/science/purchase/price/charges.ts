// What the other items make one item pay: its share of a delivery, room on the shelf.
import type { Item, Model, Offer } from '../model.ts';

/** In minor units. `share[offer][week]`, `room[group][week]` a volume unit. */
export interface Charges {
  readonly share: readonly Float64Array[];
  readonly room: readonly Float64Array[];
  /** What an order must come to by itself; absent: nothing. */
  readonly least?: (offer: Offer, week: number) => number;
}

export const noCharges = (model: Model): Charges => {
  const rows = (count: number) => Array.from({ length: count }, () => new Float64Array(model.weeks + 1));
  return {
    share: rows(model.offers.length),
    room: rows(model.problem.storage.length),
  };
};

/** What a base unit pays, in minor units: by the week of its use, of its lot's arrival (taken off), of its writing off, at the end. */
export interface Rates {
  readonly use: Float64Array;
  readonly credit: Float64Array;
  readonly writeOff: Float64Array;
  readonly end: number;
  readonly short: number;
}

/**
 * Holding and room counted from week 1, so that what a use pays does not depend on the lot, and the lot takes off what
 * passed before it came: Σ over weeks arrival..use = use − credit.
 */
export function ratesOf(model: Model, item: Item, { room }: Charges): Rates {
  const { holdingMicro, wasteMicro, shortMicro, endValueMicro } = item.source;
  const { weeks } = model;
  const held = holdingMicro / 1e6;
  const stored = new Float64Array(weeks + 1);
  for (let week = 1; week <= weeks; week++) {
    stored[week] = stored[week - 1]! + item.volume.reduce((sum, of, group) => sum + of * room[group]![week]!, 0);
  }
  const by = (of: (week: number) => number) => Float64Array.from({ length: weeks + 1 }, (_, week) => of(week));
  return {
    use: by((week) => held * (week - 1) + stored[week]!),
    credit: by((week) => held * (week - 1) + stored[Math.max(0, week - 1)]!),
    writeOff: by((week) => held * (week - 1) + stored[week]! + wasteMicro / 1e6),
    end: held * weeks + stored[weeks]! - endValueMicro / 1e6,
    short: shortMicro / 1e6,
  };
}
