// Batches as the search makes and drops them by the million: slots of numbers, taken and given back.
import type { Model } from './model.ts';

export class Pool {
  readonly #model: Model;
  readonly #free: number[] = [];
  #used = 0;
  readonly members: Int32Array;
  readonly stride: number;
  readonly count: Int32Array;
  readonly area: Float64Array;
  readonly least: Int32Array;
  readonly most: Int32Array;
  readonly ready: Int32Array;
  /** The window of states that all its jobs bear. */
  readonly lowest: Int32Array;
  readonly highest: Int32Array;
  readonly allowed: Int32Array;
  /** How many openings it lets pass; -1: it starts no earlier than it did in the plan before. */
  readonly wait: Int32Array;

  constructor(model: Model) {
    this.#model = model;
    const size = 2 * model.jobs + 16;
    this.stride = Math.max(1, model.jobs);
    this.members = new Int32Array(size * this.stride);
    this.count = new Int32Array(size);
    this.area = new Float64Array(size);
    this.least = new Int32Array(size);
    this.most = new Int32Array(size);
    this.ready = new Int32Array(size);
    this.lowest = new Int32Array(size);
    this.highest = new Int32Array(size);
    this.allowed = new Int32Array(size);
    this.wait = new Int32Array(size);
  }

  /** An empty batch. */
  take(wait = 0): number {
    const slot = this.#free.pop() ?? this.#used++;
    this.count[slot] = 0;
    this.area[slot] = 0;
    this.least[slot] = 0;
    this.most[slot] = 0x7fffffff;
    this.ready[slot] = -0x7fffffff;
    this.lowest[slot] = 0;
    this.highest[slot] = 0x7fffffff;
    this.allowed[slot] = -1;
    this.wait[slot] = wait;
    return slot;
  }

  give(slot: number): void {
    this.#free.push(slot);
  }

  add(slot: number, job: number): void {
    const model = this.#model;
    this.members[slot * this.stride + this.count[slot]!++] = job;
    this.area[slot]! += model.area[job]!;
    if (model.least[job]! > this.least[slot]!) this.least[slot] = model.least[job]!;
    if (model.most[job]! < this.most[slot]!) this.most[slot] = model.most[job]!;
    if (model.ready[job]! > this.ready[slot]!) this.ready[slot] = model.ready[job]!;
    if (model.lowest[job]! > this.lowest[slot]!) this.lowest[slot] = model.lowest[job]!;
    if (model.highest[job]! < this.highest[slot]!) this.highest[slot] = model.highest[job]!;
    this.allowed[slot]! &= model.allowed[job]!;
  }

  /** The same batch with one job left out (-1: none) and another put in (-1: none). */
  changed(slot: number, without: number, withJob: number): number {
    const made = this.take(this.wait[slot]);
    for (let i = 0; i < this.count[slot]!; i += 1) {
      const job = this.members[slot * this.stride + i]!;
      if (job !== without) this.add(made, job);
    }
    if (withJob >= 0) this.add(made, withJob);
    return made;
  }

  job(slot: number, at: number): number {
    return this.members[slot * this.stride + at]!;
  }

  /** May the job join, one member left out (-1: none), so that some oven that holds `area` takes all of it? */
  bears(slot: number, job: number, without: number, area: number): boolean {
    const { apart, jobs } = this.#model;
    const taken = without < 0 ? 0 : this.#model.area[without]!;
    if (this.area[slot]! - taken + this.#model.area[job]! > area + 1e-9) return false;
    for (let i = 0; i < this.count[slot]!; i += 1) {
      const member = this.members[slot * this.stride + i]!;
      if (member !== without && apart[member * jobs + job] === 1) return false;
    }
    return true;
  }

  fits(slot: number, oven: number): boolean {
    return ((this.allowed[slot]! >> oven) & 1) === 1 && this.area[slot]! <= this.#model.ovens[oven]!.area + 1e-9;
  }

  jobsOf(slot: number): number[] {
    return Array.from(this.members.subarray(slot * this.stride, slot * this.stride + this.count[slot]!)).sort(
      (a, b) => a - b,
    );
  }
}
