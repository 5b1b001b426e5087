// Which jobs to take out of a plan together: those dried at about the same time, those much alike, or those one after the other
// in one oven. Only jobs that are near each other can change places.
import type { Dice } from '../dice.ts';
import type { Plan } from './plan.ts';

const mostJobs = 10;
/** A batch may bring a few more than were wanted. */
const mostTaken = 14;

/** Batches by when their oven is free for them, nearest to that of `slot` first. */
function batchesAround(plan: Plan, slot: number): number[] {
  const { tracks } = plan.timeline;
  const all = tracks.flatMap(({ slots, length, time }) =>
    Array.from({ length }, (_, i) => ({ slot: slots[i]!, time: time[i]! })),
  );
  const time = all.find((batch) => batch.slot === slot)?.time ?? 0;
  return all
    .sort((a, b) => Math.abs(a.time - time) - Math.abs(b.time - time) || a.slot - b.slot)
    .map((batch) => batch.slot);
}

function jobsOf(plan: Plan, slots: readonly number[], count: number): number[] {
  const jobs: number[] = [];
  for (const slot of slots) {
    if (jobs.length >= count) break;
    jobs.push(...plan.pool.jobsOf(slot));
  }
  return jobs.slice(0, mostTaken);
}

const sameTime = (plan: Plan, dice: Dice, job: number, count: number): number[] =>
  jobsOf(
    plan,
    batchesAround(plan, plan.slotOf[job]!).filter(() => dice.below(3) > 0),
    count,
  );

/** An hour between two dues parts jobs a quarter as much as that they may not share a batch. */
function alike(plan: Plan, dice: Dice, job: number, count: number): number[] {
  const { model } = plan;
  const apartness = (other: number) =>
    Math.abs(model.due[other]! - model.due[job]!) / 60 + 4 * model.apart[other * model.jobs + job]! + 4 * dice.unit();
  return Array.from({ length: model.jobs }, (_, other) => ({ other, by: other === job ? -1 : apartness(other) }))
    .sort((a, b) => a.by - b.by || a.other - b.other)
    .slice(0, count)
    .map(({ other }) => other);
}

function inARow(plan: Plan, dice: Dice, job: number, count: number): number[] {
  const slot = plan.slotOf[job]!;
  const { slots, length } = plan.timeline.tracks[plan.ovenOf[slot]!]!;
  const row = Array.from(slots.subarray(0, length));
  return jobsOf(plan, row.slice(Math.max(0, row.indexOf(slot) - dice.below(3))), count);
}

const ways = [sameTime, alike, inARow];

export function nearby(plan: Plan, dice: Dice): number[] {
  const job = dice.below(plan.model.jobs);
  const count = 1 + dice.below(mostJobs);
  return ways[dice.below(ways.length)]!(plan, dice, job, count);
}
