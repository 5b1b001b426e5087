// How much of an item's unbooked use is covered, in cells, and what being no further covered costs in safety.
import type { Item, Model } from '../model.ts';

export interface Grid {
  /** Base units in a cell; quantities are rounded up to whole cells, so that nothing costs more than it does. */
  readonly cell: number;
  /** The last cell: all use and the safety stock. */
  readonly top: number;
  /** The latest week in which more must be released, when so much is covered. */
  readonly until: Int32Array;
  /** The latest week of release that costs neither safety nor the old lot. */
  readonly calm: Int32Array;
  /** The first week that ends below safety. */
  readonly safe: Int32Array;
  /** `below[week * (top + 1) + cell]`: what the weeks up to it cost below safety, in minor units. */
  readonly below: Float64Array;
}

/** How large a cell is, and which is the last. */
export function cellsOf({ cumulative, source }: Item, mostCells: number): { cell: number; top: number } {
  const all = cumulative.at(-1)! + source.safety;
  const cell = Math.max(1, Math.ceil(all / mostCells));
  return { cell, top: Math.ceil(all / cell) };
}

export function gridOf(model: Model, item: Item, mostCells: number): Grid {
  const { weeks } = model;
  const { cumulative } = item;
  const { safety, belowSafetyMicro, check } = item.source;
  const { cell, top } = cellsOf(item, mostCells);
  const until = new Int32Array(top + 1);
  const calm = new Int32Array(top + 1);
  const safe = new Int32Array(top + 1);
  const below = new Float64Array((weeks + 1) * (top + 1));
  const rate = belowSafetyMicro / 1e6;
  const firstWeek = (is: (week: number) => boolean): number => {
    for (let week = 1; week <= weeks; week++) if (is(week)) return week;
    return weeks;
  };
  for (let at = 0; at <= top; at++) {
    const covered = at * cell;
    until[at] = firstWeek((week) => cumulative[week]! > covered);
    safe[at] = Math.min(until[at]!, rate > 0 ? firstWeek((week) => covered - cumulative[week]! < safety) : weeks);
    const kept =
      check.weeks > 0 && check.keep > 0 ? firstWeek((week) => covered - cumulative[week]! < check.keep) : weeks;
    calm[at] = Math.min(safe[at]!, kept);
    for (let week = 1; week <= weeks; week++) {
      below[week * (top + 1) + at] =
        below[(week - 1) * (top + 1) + at]! + rate * Math.max(0, safety - (covered - cumulative[week]!));
    }
  }
  return { cell, top, until, calm, safe, below };
}
