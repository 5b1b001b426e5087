// A bound for objectives that are the largest of something: ovens offer only so much area in so many minutes.
import type { Model } from '../model.ts';
import type { Objective } from '../objective.ts';

/** Jobs ready from some time on fill all ovens no faster than area times minutes allows; the last of them ends no sooner. */
export function areaBound(model: Model, objective: Objective): number {
  if (!objective.isLargest) return -Infinity;
  const area = model.ovens.reduce((sum, oven) => sum + oven.area, 0);
  const free = Math.min(...model.ovens.map(({ freeAt }) => freeAt));
  const jobs = Array.from({ length: model.jobs }, (_, job) => job);
  const size = (job: number) => model.area[job]! * model.least[job]!;
  let bound = -Infinity;
  for (const ready of new Set(model.ready)) {
    const later = jobs.filter((job) => model.ready[job]! >= ready).sort((a, b) => model.due[a]! - model.due[b]!);
    let filled = 0;
    for (const job of later) {
      filled += size(job);
      const end = Math.max(ready, free) + Math.ceil(filled / area - 1e-9);
      // Of the jobs due by then, one ends no sooner than that.
      bound = Math.max(bound, objective.ofJob(end, model.due[job]!, 1));
    }
  }
  return bound;
}
