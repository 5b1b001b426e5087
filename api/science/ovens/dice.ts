// Dice that always fall the same way from the same seed (mulberry32, Tommy Ettinger, public domain).

export interface Dice {
  /** A number of at least 0 and below 1. */
  unit: () => number;
  /** A whole number of at least 0 and below `sides`. */
  below: (sides: number) => number;
}

export function diceOf(seed: number): Dice {
  let state = seed | 0;
  const unit = () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  return { unit, below: (sides) => Math.floor(unit() * sides) };
}
