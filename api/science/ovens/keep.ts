// A plan made before, taken up again: what of it still can be, in its order, and what each job departs from.
import type { Kept } from './kept.ts';
import type { Model } from './model.ts';
import { Pool } from './pool.ts';
import type { PlannedBatch, Sequences } from './search/plan.ts';

/** A batch as a plan before had it. */
export interface KeptBatch {
  readonly oven: string;
  readonly jobs: readonly string[];
  readonly start: number;
}

export function keptOf(model: Model, before: readonly KeptBatch[]): { kept: Kept; from: Sequences } {
  const index = new Map(model.id.map((id, job) => [id, job]));
  const kept = { oven: new Int32Array(model.jobs).fill(-1), start: new Int32Array(model.jobs) };
  const from: PlannedBatch[][] = model.ovens.map(() => []);
  const pool = new Pool(model);
  for (const batch of [...before].sort((a, b) => a.start - b.start)) {
    const oven = model.ovenId.indexOf(batch.oven);
    const jobs = batch.jobs.flatMap((id) => index.get(id) ?? []);
    for (const job of jobs) {
      // An oven that is gone is no oven to stay in: its jobs have moved whatever happens.
      kept.oven[job] = oven < 0 ? model.ovens.length : oven;
      kept.start[job] = batch.start;
    }
    if (oven < 0) continue;
    const slot = pool.take();
    const { area } = model.ovens[oven]!;
    for (const job of jobs) {
      if (((model.allowed[job]! >> oven) & 1) === 1 && pool.bears(slot, job, -1, area)) pool.add(slot, job);
    }
    if (pool.count[slot]! > 0) from[oven]!.push({ jobs: pool.jobsOf(slot), wait: -1 });
    pool.give(slot);
  }
  return { kept, from };
}
