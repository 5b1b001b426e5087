// One oven's time, batch after batch: where the next one would start and end, past what is fixed in between.
import { stay, type Stay } from './hours.ts';
import type { Model, OvenModel } from './model.ts';

/** How an oven stands between two batches. */
export interface Clock extends Stay {
  oven: OvenModel;
  time: number;
  state: number;
  /** How many pins lie behind. */
  gap: number;
  /** Nothing to unload: no batch before. */
  empty: boolean;
  /** Oven minutes and set-up of pins passed on the way to the last batch placed, and of its own set-up. */
  setup: number;
  setupCost: number;
  pinnedMinutes: number;
  pinnedSetup: number;
  pinnedCost: number;
}

export function clockOf(model: Model, oven = 0): Clock {
  return {
    oven: model.ovens[oven]!,
    time: 0,
    state: 0,
    gap: 0,
    empty: true,
    start: 0,
    end: 0,
    setup: 0,
    setupCost: 0,
    pinnedMinutes: 0,
    pinnedSetup: 0,
    pinnedCost: 0,
  };
}

export function wind(clock: Clock, oven: OvenModel): void {
  clock.oven = oven;
  clock.time = oven.freeAt;
  clock.state = oven.state;
  clock.gap = 0;
  clock.empty = true;
}

function pass(clock: Clock): void {
  const { oven } = clock;
  const pin = oven.pins[clock.gap]!;
  if (pin.batch) {
    const at = clock.state * countOf(oven) + pin.state;
    clock.pinnedMinutes += pin.end - pin.start;
    clock.pinnedSetup += oven.setups.minutes[at]!;
    clock.pinnedCost += oven.setups.cost[at]!;
  }
  clock.time = Math.max(clock.time, pin.end);
  clock.state = pin.state;
  clock.empty = pin.batch === null;
  clock.gap += 1;
}

const countOf = (oven: OvenModel): number => Math.sqrt(oven.setups.minutes.length);

/** Passes all pins that are left: a sequence is over. */
export function unwind(clock: Clock): void {
  clock.pinnedMinutes = 0;
  clock.pinnedSetup = 0;
  clock.pinnedCost = 0;
  while (clock.gap < clock.oven.pins.length) pass(clock);
}

/**
 * Places a batch at the earliest end, `wait` openings let pass, no earlier than `notBefore`. The clock then stands after
 * it. False when the open hours hold no place for it; it then stands where it stood or past some pins.
 */
export function place(
  clock: Clock,
  states: number,
  lowest: number,
  highest: number,
  least: number,
  most: number,
  notBefore: number,
  wait: number,
): boolean {
  const { oven } = clock;
  const low = lowest > oven.lowest ? lowest : oven.lowest;
  const high = highest < oven.highest ? highest : oven.highest;
  clock.pinnedMinutes = 0;
  clock.pinnedSetup = 0;
  clock.pinnedCost = 0;
  // The stays passed over are counted across pins; `tried` counts those between the same two.
  let [left, tried] = [wait, 0];
  for (;;) {
    const target = clock.state < low ? low : clock.state > high ? high : clock.state;
    const at = clock.state * states + target;
    const setup = oven.setups.minutes[at]!;
    const free = clock.time + (clock.empty ? 0 : oven.door) + setup;
    const found = stay(oven, free > notBefore ? free : notBefore, setup, least, most, tried, clock);
    if (clock.gap < oven.pins.length) {
      const pin = oven.pins[clock.gap]!;
      const needs = pin.batch ? oven.door + oven.setups.minutes[target * states + pin.state]! : 0;
      if (!found || clock.end + needs > pin.start) {
        pass(clock);
        tried = 0;
        continue;
      }
    }
    if (!found) return false;
    if (left > 0) {
      left -= 1;
      tried += 1;
      continue;
    }
    clock.setup = setup;
    clock.setupCost = oven.setups.cost[at]!;
    clock.time = clock.end;
    clock.state = target;
    clock.empty = false;
    return true;
  }
}
