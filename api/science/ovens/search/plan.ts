// The plan under change: which batch each job is in, which oven each batch is in, and the best one seen so far.
import type { Kept } from '../kept.ts';
import type { Model } from '../model.ts';
import type { Objective } from '../objective.ts';
import { Pool } from '../pool.ts';
import { Timeline } from '../timeline.ts';
import { Draft } from './draft.ts';

/** A batch of a plan, apart from the search: jobs by index, and how many openings it lets pass. */
export interface PlannedBatch {
  readonly jobs: readonly number[];
  readonly wait: number;
}
/** The batches of each oven in their order. */
export type Sequences = readonly (readonly PlannedBatch[])[];

export class Plan {
  readonly pool: Pool;
  readonly timeline: Timeline;
  readonly draft: Draft;
  /** The batch of each job; -1 while it is in none. */
  readonly slotOf: Int32Array;
  /** The oven of each batch. */
  readonly ovenOf: Int32Array;
  /** Batches that the drafted change puts elsewhere as they are; -1: none. */
  moved = -1;
  movedTo = -1;
  alsoMoved = -1;
  alsoMovedTo = -1;

  readonly model: Model;

  constructor(model: Model, objective: Objective, kept: Kept | null) {
    this.model = model;
    this.pool = new Pool(model);
    this.timeline = new Timeline(model, objective, this.pool, kept);
    this.draft = new Draft(this.timeline);
    this.slotOf = new Int32Array(model.jobs).fill(-1);
    this.ovenOf = new Int32Array(this.pool.count.length);
  }

  begin(): void {
    this.draft.begin();
    this.moved = -1;
    this.alsoMoved = -1;
  }

  accept(): void {
    const { draft, pool } = this;
    draft.accept();
    if (this.moved >= 0) this.ovenOf[this.moved] = this.movedTo;
    if (this.alsoMoved >= 0) this.ovenOf[this.alsoMoved] = this.alsoMovedTo;
    for (const slot of draft.made) {
      for (let i = 0; i < pool.count[slot]!; i += 1) this.slotOf[pool.job(slot, i)] = slot;
    }
  }

  loads(): number {
    return this.timeline.tracks.reduce((sum, { length }) => sum + length, 0);
  }

  sequences(): Sequences {
    const { pool } = this;
    return this.timeline.tracks.map(({ slots, length }) =>
      Array.from(slots.subarray(0, length), (slot) => ({ jobs: pool.jobsOf(slot), wait: pool.wait[slot]! })),
    );
  }

  /** Takes up other sequences in place of its own. */
  load(sequences: Sequences): void {
    const { pool, timeline } = this;
    for (const { slots, length } of timeline.tracks) for (let i = 0; i < length; i += 1) pool.give(slots[i]!);
    this.slotOf.fill(-1);
    sequences.forEach((batches, oven) => {
      const slots = batches.map(({ jobs, wait }) => {
        const slot = pool.take(wait);
        for (const job of jobs) {
          pool.add(slot, job);
          this.slotOf[job] = slot;
        }
        this.ovenOf[slot] = oven;
        return slot;
      });
      timeline.commit(oven, [], 0);
      timeline.commit(oven, slots, slots.length);
    });
  }
}
