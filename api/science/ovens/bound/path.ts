// The cheapest way through one oven's time when each job pays its price: a backward programme over cells of time and states.
import type { Model, OvenModel } from '../model.ts';
import { bucketsOf, type Buckets } from './buckets.ts';
import type { BoundCost } from './cost.ts';
import { Sacks } from './sacks.ts';
import { type Grid, joined, type Stays, staysOf } from './stays.ts';

const [over, cross] = [-1, -2];

function endsOf({ endCell }: Stays, cells: number): Uint8Array {
  const isEnd = new Uint8Array(cells + 1);
  for (const cell of endCell) isEnd[cell] = 1;
  return isEnd;
}

/** One stretch between two pins: what it costs from a batch's end in a cell, and from the best start in or after a cell. */
interface Stretch {
  /** Those of all buckets: of a cell and a bucket from `first[cell * buckets + bucket]` on. */
  readonly stays: Stays;
  /** Known for the cells in which some stay ends. */
  readonly afterEnd: Float64Array;
  readonly isEnd: Uint8Array;
  readonly fromStart: Float64Array;
  /** The stay that is best from a cell on; -1: none. */
  readonly stay: Int32Array;
}

export class OvenPath {
  readonly #oven: OvenModel;
  readonly #grid: Grid;
  readonly #buckets: Buckets;
  readonly #sacks: Sacks;
  readonly #stretches: readonly Stretch[];
  readonly #setupCost: Float64Array;
  /** Cells from a batch's end to the next start, door and set-up between. */
  readonly #later: Int32Array;
  readonly #count: number;
  #values: Float64Array = new Float64Array(0);

  constructor(model: Model, oven: number, grid: Grid, cost: BoundCost) {
    this.#oven = model.ovens[oven]!;
    this.#grid = grid;
    this.#buckets = bucketsOf(model, oven);
    this.#count = this.#buckets.all.length;
    this.#sacks = new Sacks(model.area, this.#oven.area, cost.ofJob);
    const { minutes, cost: money } = this.#buckets;
    this.#setupCost = Float64Array.from(minutes, (one, at) => {
      const setup = cost.perSetupMinute * one + cost.perSetupCost * money[at]!;
      return Number.isNaN(setup) ? 0 : setup;
    });
    this.#later = Int32Array.from(minutes, (one) =>
      Math.min(grid.cells, Math.floor((this.#oven.door + one) / grid.step)),
    );
    const { pins } = this.#oven;
    this.#stretches = Array.from({ length: pins.length + 1 }, (_, gap) => {
      const between = [pins[gap - 1]?.end ?? this.#oven.freeAt, pins[gap]?.start ?? Infinity] as const;
      const stays = joined(
        this.#buckets.all.map((_bucket, at) =>
          staysOf(model, this.#oven, this.#buckets, at, between, grid, cost, this.#sacks),
        ),
        grid.cells,
      );
      const size = this.#count * (grid.cells + 1);
      return {
        stays,
        afterEnd: new Float64Array(size),
        isEnd: endsOf(stays, grid.cells),
        fromStart: new Float64Array(size).fill(Infinity),
        stay: new Int32Array(size).fill(-1),
      };
    });
  }

  /** How much work one pricing is, in stays and knapsacks. */
  get work(): number {
    const stays = this.#stretches.reduce((sum, stretch) => sum + stretch.stays.sack.length, 0);
    return stays + 40 * this.#sacks.count + this.#stretches.length * this.#grid.cells * this.#count ** 2;
  }

  /** The least that this oven adds when a job in a batch pays what it is worth there. */
  price(price: Float64Array): number {
    this.#values = this.#sacks.solve(price);
    for (let gap = this.#stretches.length - 1; gap >= 0; gap -= 1) this.#fill(gap);
    return this.#leave(0, this.#buckets.of(this.#oven.state), this.#oven.freeAt, 0).value;
  }

  #fill(gap: number): void {
    const { cells } = this.#grid;
    const count = this.#count;
    const stretch = this.#stretches[gap]!;
    const { fromStart, afterEnd, isEnd, stay } = stretch;
    const { first, sack, then, cost } = stretch.stays;
    const base = Float64Array.from({ length: count }, (_, bucket) => this.#without(gap, bucket));
    const values = this.#values;
    for (let cell = cells - 1; cell >= 0; cell -= 1) {
      for (let bucket = 0; bucket < count; bucket += 1) {
        const at = cell * count + bucket;
        let best = fromStart[at + count]!;
        let bestStay = stay[at + count]!;
        const last = first[at + 1]!;
        for (let i = first[at]!; i < last; i += 1) {
          const value = cost[i]! - values[sack[i]!]! + afterEnd[then[i]!]!;
          if (value < best) {
            best = value;
            bestStay = i;
          }
        }
        fromStart[at] = best;
        stay[at] = bestStay;
      }
      if (isEnd[cell] === 1) this.#end(cell, base, stretch);
    }
  }

  /** What follows a batch that ends in the cell, whatever the oven then stands at. */
  #end(cell: number, base: Float64Array, { fromStart, afterEnd }: Stretch): void {
    const { cells } = this.#grid;
    const count = this.#count;
    for (let bucket = 0; bucket < count; bucket += 1) {
      let value = base[bucket]!;
      for (let to = 0; to < count; to += 1) {
        const at = bucket * count + to;
        const start = cell + this.#later[at]!;
        if (start >= cells) continue;
        const then = this.#setupCost[at]! + fromStart[start * count + to]!;
        if (then < value) value = then;
      }
      afterEnd[cell * count + bucket] = value;
    }
  }

  /** With no more batches before the next pin, or at all. */
  #without(gap: number, bucket: number): number {
    const pin = this.#oven.pins[gap];
    if (!pin) return 0;
    const state = this.#buckets.of(pin.state);
    const setup = pin.batch ? this.#setupCost[bucket * this.#count + state]! : 0;
    return setup + this.#leave(gap + 1, state, pin.end, pin.batch ? this.#oven.door : 0).value;
  }

  readonly #left = { value: 0, next: over };

  /** From a state at a time on: the next batch at the best state, the next pin, or nothing more. */
  #leave(gap: number, bucket: number, time: number, door: number): { value: number; next: number } {
    const { origin, step, cells } = this.#grid;
    const count = this.#count;
    const stretch = this.#stretches[gap]!;
    const { minutes } = this.#buckets;
    const pin = this.#oven.pins[gap];
    let value = this.#without(gap, bucket);
    let next = pin ? cross : over;
    for (let to = 0; to < count; to += 1) {
      const at = bucket * count + to;
      const cell = Math.max(0, Math.floor((time + door + minutes[at]! - origin) / step));
      if (cell >= cells) continue;
      const then = this.#setupCost[at]! + stretch.fromStart[cell * count + to]!;
      if (then < value) {
        value = then;
        next = to;
      }
    }
    this.#left.value = value;
    this.#left.next = next;
    return this.#left;
  }

  /** The jobs on the cheapest way, once for each batch that holds them. */
  taken(price: Float64Array, visit: (job: number) => void): void {
    const count = this.#count;
    let gap = 0;
    let bucket = this.#buckets.of(this.#oven.state);
    let [time, door] = [this.#oven.freeAt, 0];
    for (;;) {
      const { next } = this.#leave(gap, bucket, time, door);
      if (next === over) return;
      if (next === cross) {
        const pin = this.#oven.pins[gap]!;
        bucket = this.#buckets.of(pin.state);
        [time, door] = [pin.end, pin.batch ? this.#oven.door : 0];
        gap += 1;
        continue;
      }
      const { origin, step } = this.#grid;
      const stretch = this.#stretches[gap]!;
      const setup = this.#buckets.minutes[bucket * count + next]!;
      const cell = Math.max(0, Math.floor((time + door + setup - origin) / step));
      const stay = stretch.stay[cell * count + next]!;
      const { sack, endCell } = stretch.stays;
      this.#sacks.packed(sack[stay]!, price).forEach(visit);
      time = origin + endCell[stay]! * step;
      door = this.#oven.door;
      bucket = next;
    }
  }
}
