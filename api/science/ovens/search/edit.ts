// Jobs taken out of a plan and put back where they cost least; the whole change is kept or undone at once.
import type { Dice } from '../dice.ts';
import type { Sum } from '../timeline.ts';
import type { Cost } from './anneal.ts';
import type { Plan } from './plan.ts';

/** One place in so many is not looked at, so that the same jobs do not always come back to the same places. */
const overlooked = 50;
/** The batches of an oven's sequence that make one move in the counting. */
const batchesAMove = 10;
/** Sums of figures differ by no more than this with the order they are summed in. */
const grain = 1e-6;

export class Edit {
  readonly #plan: Plan;
  readonly #cost: Cost;
  /** The sequences before, and which batches they are made of. */
  readonly #before: readonly Int32Array[];
  readonly #lengths: Int32Array;
  readonly #isBefore: Uint8Array;
  readonly #page: Int32Array;
  readonly #own: Sum = { figure: 0, hours: 0, guide: 0 };
  readonly #sum: Sum = { figure: 0, hours: 0, guide: 0 };
  /** The figure before a job is put back, where figures add up. */
  #figure = 0;
  #place = { oven: -1, at: -1, slot: -1, cost: Infinity };
  /** How many plans were reckoned in all, by how many batches their ovens hold. */
  tried = 0;

  constructor(plan: Plan, cost: Cost) {
    const size = plan.model.jobs + 2;
    this.#plan = plan;
    this.#cost = cost;
    this.#before = plan.model.ovens.map(() => new Int32Array(size));
    this.#lengths = new Int32Array(plan.model.ovens.length);
    this.#isBefore = new Uint8Array(plan.pool.count.length);
    this.#page = new Int32Array(size);
  }

  begin(): void {
    this.#isBefore.fill(0);
    this.#plan.timeline.tracks.forEach(({ slots, length }, oven) => {
      this.#lengths[oven] = length;
      for (let i = 0; i < length; i += 1) {
        this.#before[oven]![i] = slots[i]!;
        this.#isBefore[slots[i]!] = 1;
      }
    });
  }

  takeOut(job: number): void {
    const { pool, slotOf, ovenOf } = this.#plan;
    const slot = slotOf[job]!;
    const oven = ovenOf[slot]!;
    const length = this.#copy(oven);
    const at = this.#page.indexOf(slot);
    slotOf[job] = -1;
    if (pool.count[slot] === 1) {
      this.#page.copyWithin(at, at + 1, length);
      this.#set(oven, length - 1, slot);
    } else {
      this.#page[at] = this.#housed(pool.changed(slot, job, -1), oven);
      this.#set(oven, length, slot);
    }
  }

  /** Puts the job where the plan costs least, places overlooked now and then left out. */
  putBack(job: number, dice: Dice): void {
    const { pool, model } = this.#plan;
    const alone = pool.take();
    pool.add(alone, job);
    const loads = this.#plan.loads();
    this.#plan.timeline.total(this.#sum);
    this.#figure = this.#plan.timeline.objective.isLargest ? 0 : this.#sum.figure;
    this.#place = { oven: -1, at: -1, slot: -1, cost: Infinity };
    while (this.#place.oven < 0) {
      for (let oven = 0; oven < model.ovens.length; oven += 1) {
        if (((model.allowed[job]! >> oven) & 1) === 0) continue;
        this.#tryAlone(alone, job, oven, loads, dice);
        this.#tryWith(job, oven, loads, dice);
      }
    }
    const { oven, at, slot } = this.#place;
    const length = this.#copy(oven);
    if (slot < 0) {
      this.#page.copyWithin(at + 1, at, length);
      this.#page[at] = this.#housed(alone, oven);
      this.#set(oven, length + 1, -1);
    } else {
      pool.give(alone);
      this.#page[at] = this.#housed(pool.changed(slot, -1, job), oven);
      this.#set(oven, length, slot);
    }
  }

  keep(): void {
    const { tracks, pool } = this.#plan.timeline;
    for (const { slots, length } of tracks) for (let i = 0; i < length; i += 1) this.#isBefore[slots[i]!] = 0;
    this.#before.forEach((slots, oven) => {
      for (let i = 0; i < this.#lengths[oven]!; i += 1) if (this.#isBefore[slots[i]!] === 1) pool.give(slots[i]!);
    });
  }

  undo(): void {
    const { timeline, pool } = this.#plan;
    timeline.tracks.forEach(({ slots, length }) => {
      for (let i = 0; i < length; i += 1) if (this.#isBefore[slots[i]!] === 0) pool.give(slots[i]!);
    });
    this.#before.forEach((slots, oven) => {
      timeline.commit(oven, slots, this.#lengths[oven]!);
      for (let i = 0; i < this.#lengths[oven]!; i += 1) this.#housed(slots[i]!, oven);
    });
  }

  /** The batch alone, at each place in the oven's sequence. */
  #tryAlone(alone: number, job: number, oven: number, loads: number, dice: Dice): void {
    const page = this.#page;
    const length = this.#copy(oven);
    page.copyWithin(1, 0, length);
    for (let at = 0; at <= length; at += 1) {
      if (this.#isTooLate(job, oven, at)) return;
      if (at > 0) page[at - 1] = page[at]!;
      page[at] = alone;
      if (dice.below(overlooked) > 0) this.#try(oven, at, -1, length + 1, loads + 1);
    }
  }

  /** The job in each of the oven's batches that bears it. */
  #tryWith(job: number, oven: number, loads: number, dice: Dice): void {
    const { pool, model } = this.#plan;
    const page = this.#page;
    const length = this.#copy(oven);
    for (let at = 0; at < length; at += 1) {
      const slot = page[at]!;
      if (this.#isTooLate(job, oven, at)) return;
      if (!pool.bears(slot, job, -1, model.ovens[oven]!.area) || dice.below(overlooked) === 0) continue;
      page[at] = pool.changed(slot, -1, job);
      this.#try(oven, at, slot, length, loads);
      pool.give(page[at]!);
      page[at] = slot;
    }
  }

  /** Whatever comes of it, a job that begins so late costs more than the best place seen so far. */
  #isTooLate(job: number, oven: number, at: number): boolean {
    const { model, timeline } = this.#plan;
    const end = timeline.tracks[oven]!.time[at]! + model.least[job]!;
    const own = timeline.objective.ofJob(end, model.due[job]!, model.weight[job]!);
    return this.#figure + own > this.#cost.mostFigure(this.#place.cost);
  }

  #try(oven: number, at: number, slot: number, length: number, loads: number): void {
    const { timeline } = this.#plan;
    const { objective, tracks } = timeline;
    const others = objective.isLargest ? 0 : this.#figure - tracks[oven]!.sum.figure;
    const most = this.#cost.mostFigure(this.#place.cost) - others + grain;
    timeline.value(oven, this.#page, length, this.#own, most);
    timeline.total(this.#sum, oven, this.#own);
    this.tried += length / batchesAMove;
    const cost = this.#cost.of(this.#sum, loads);
    if (cost < this.#place.cost) this.#place = { oven, at, slot, cost };
  }

  #copy(oven: number): number {
    const { slots, length } = this.#plan.timeline.tracks[oven]!;
    for (let i = 0; i < length; i += 1) this.#page[i] = slots[i]!;
    return length;
  }

  /** Makes the page the oven's sequence; a batch it no longer holds is given back unless the plan before needs it. */
  #set(oven: number, length: number, dropped: number): void {
    this.#plan.timeline.commit(oven, this.#page, length);
    if (dropped >= 0 && this.#isBefore[dropped] === 0) this.#plan.pool.give(dropped);
  }

  #housed(slot: number, oven: number): number {
    const { pool, ovenOf, slotOf } = this.#plan;
    ovenOf[slot] = oven;
    for (let i = 0; i < pool.count[slot]!; i += 1) slotOf[pool.job(slot, i)] = slot;
    return slot;
  }
}
