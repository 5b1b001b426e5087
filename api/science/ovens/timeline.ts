// The plan that the search works on: a sequence of batches in each oven, and what a changed sequence would come to.
import { type Clock, clockOf, place, unwind, wind } from './clock.ts';
import { departure, type Kept } from './kept.ts';
import { type Model, never } from './model.ts';
import type { Objective } from './objective.ts';
import type { Pool } from './pool.ts';

/** What a plan comes to: the objective's figure, oven minutes (with departures from the plan before), a guiding figure. */
export interface Sum {
  figure: number;
  hours: number;
  guide: number;
}

/** How each oven stands before each of its batches and after the last, and what it came to so far. */
class Track {
  length = 0;
  readonly slots: Int32Array;
  readonly time: Float64Array;
  readonly state: Int32Array;
  readonly gap: Int32Array;
  readonly figure: Float64Array;
  /** The largest figure from here on, where the largest counts. */
  readonly tail: Float64Array;
  readonly hours: Float64Array;
  readonly guide: Float64Array;
  sum: Sum = { figure: 0, hours: 0, guide: 0 };

  constructor(size: number) {
    this.slots = new Int32Array(size);
    this.time = new Float64Array(size);
    this.state = new Int32Array(size);
    this.gap = new Int32Array(size);
    this.figure = new Float64Array(size);
    this.tail = new Float64Array(size);
    this.hours = new Float64Array(size);
    this.guide = new Float64Array(size);
  }
}

export class Timeline {
  readonly tracks: readonly Track[];
  readonly #clock: Clock;
  readonly #states: number;

  readonly model: Model;
  readonly objective: Objective;
  readonly pool: Pool;
  readonly kept: Kept | null;

  constructor(model: Model, objective: Objective, pool: Pool, kept: Kept | null) {
    this.model = model;
    this.objective = objective;
    this.pool = pool;
    this.kept = kept;
    this.#clock = clockOf(model);
    this.#states = model.states.count;
    this.tracks = model.ovens.map(() => new Track(model.jobs + 2));
    for (let oven = 0; oven < this.tracks.length; oven += 1) this.commit(oven, [], 0);
  }

  /**
   * What the oven would come to with this sequence. Once its figure is past `most` the rest is not looked at: figures only
   * grow along a sequence.
   */
  value(oven: number, slots: ArrayLike<number>, length: number, into: Sum, most = Infinity): void {
    this.#walk(oven, slots, length, into, false, most);
  }

  /** Makes the sequence the oven's own. */
  commit(oven: number, slots: ArrayLike<number>, length: number): void {
    const track = this.tracks[oven]!;
    this.#walk(oven, slots, length, track.sum, true, Infinity);
    for (let i = 0; i < length; i += 1) track.slots[i] = slots[i]!;
    track.length = length;
  }

  /** The whole plan's, one oven or two replaced by what is given. */
  total(into: Sum, oven = -1, sum: Sum | null = null, other = -1, otherSum: Sum | null = null): void {
    const { isLargest } = this.objective;
    into.figure = isLargest ? -never : 0;
    into.hours = 0;
    into.guide = 0;
    for (let i = 0; i < this.tracks.length; i += 1) {
      const own = i === oven && sum ? sum : i === other && otherSum ? otherSum : this.tracks[i]!.sum;
      if (isLargest) into.figure = Math.max(into.figure, own.figure);
      else into.figure += own.figure;
      into.hours += own.hours;
      into.guide += own.guide;
    }
  }

  #walk(oven: number, slots: ArrayLike<number>, length: number, into: Sum, isCommit: boolean, most: number): void {
    const { objective, pool, kept, model } = this;
    const { isLargest } = objective;
    const track = this.tracks[oven]!;
    const clock = this.#clock;
    let i = 0;
    if (!isCommit || !isLargest) while (i < length && i < track.length && slots[i] === track.slots[i]) i += 1;
    let same = 0;
    while (
      same < length - i &&
      same < track.length - i &&
      slots[length - 1 - same] === track.slots[track.length - 1 - same]
    )
      same += 1;
    const shift = track.length - length;

    wind(clock, model.ovens[oven]!);
    let figure = isLargest ? -never : 0;
    let [hours, guide] = [0, 0];
    if (i > 0) {
      clock.time = track.time[i]!;
      clock.state = track.state[i]!;
      clock.gap = track.gap[i]!;
      clock.empty = false;
      figure = track.figure[i]!;
      hours = track.hours[i]!;
      guide = track.guide[i]!;
    }
    for (; i < length; i += 1) {
      if (!isCommit && i >= length - same && i > 0) {
        const old = i + shift;
        if (
          old > 0 &&
          clock.time === track.time[old] &&
          clock.state === track.state[old] &&
          clock.gap === track.gap[old] &&
          track.length > 0
        ) {
          into.figure = isLargest ? Math.max(figure, track.tail[old]!) : figure + track.sum.figure - track.figure[old]!;
          into.hours = hours + track.sum.hours - track.hours[old]!;
          into.guide = guide + track.sum.guide - track.guide[old]!;
          return;
        }
      }
      if (isCommit) this.#note(track, i, figure, hours, guide);
      const slot = slots[i]!;
      const wait = pool.wait[slot]!;
      const first = slot * pool.stride;
      let notBefore = pool.ready[slot]!;
      if (wait < 0 && kept) notBefore = Math.max(notBefore, this.#keptStart(slot, oven));
      const isPlaced = place(
        clock,
        this.#states,
        pool.lowest[slot]!,
        pool.highest[slot]!,
        pool.least[slot]!,
        pool.most[slot]!,
        notBefore,
        wait > 0 ? wait : 0,
      );
      if (!isPlaced) {
        clock.start = Math.max(clock.time, never);
        clock.end = clock.start + pool.least[slot]!;
        clock.time = clock.end;
        clock.setup = 0;
        clock.setupCost = 0;
        clock.empty = false;
      }
      const setup = clock.setup + clock.pinnedSetup;
      const minutes = clock.end - clock.start + clock.pinnedMinutes;
      hours += minutes + setup;
      if (!isLargest)
        figure +=
          objective.perBatchMinute * minutes +
          objective.perSetupMinute * setup +
          objective.perSetupCost * (clock.setupCost + clock.pinnedCost);
      let largest = -never;
      for (let k = 0; k < pool.count[slot]!; k += 1) {
        const job = pool.members[first + k]!;
        const own = objective.ofJob(clock.end, model.due[job]!, model.weight[job]!);
        if (isLargest) largest = own > largest ? own : largest;
        else figure += own;
        guide += objective.guide(clock.end, model.due[job]!, model.weight[job]!);
        if (kept) hours += departure(kept, job, oven, clock.start);
      }
      if (isLargest) {
        if (isCommit) track.tail[i] = largest;
        if (largest > figure) figure = largest;
      }
      if (figure > most) break;
    }
    if (isCommit) this.#note(track, length, figure, hours, guide);
    unwind(clock);
    hours += clock.pinnedMinutes + clock.pinnedSetup;
    if (!isLargest)
      figure +=
        objective.perBatchMinute * clock.pinnedMinutes +
        objective.perSetupMinute * clock.pinnedSetup +
        objective.perSetupCost * clock.pinnedCost;
    into.figure = figure;
    into.hours = hours;
    into.guide = guide;
    if (isCommit && isLargest) {
      track.tail[length] = -never;
      for (let k = length - 1; k >= 0; k -= 1) track.tail[k] = Math.max(track.tail[k]!, track.tail[k + 1]!);
    }
  }

  /** The latest start that the plan before gave one of its jobs in this oven. */
  #keptStart(slot: number, oven: number): number {
    const { kept, pool } = this;
    let start = -never;
    for (let k = 0; k < pool.count[slot]!; k += 1) {
      const job = pool.job(slot, k);
      if (kept && kept.oven[job] === oven) start = Math.max(start, kept.start[job]!);
    }
    return start;
  }

  #note(track: Track, at: number, figure: number, hours: number, guide: number): void {
    track.time[at] = this.#clock.time;
    track.state[at] = this.#clock.state;
    track.gap[at] = this.#clock.gap;
    track.figure[at] = figure;
    track.hours[at] = hours;
    track.guide[at] = guide;
  }
}
