// What moved from the plan before, and why, in a sentence each.
import { changesOf } from '../science/ovens/changes.ts';
import { isUnplaced } from '../science/ovens/schedule.ts';
import { saidTime } from './hours.ts';
import type { Laid } from './plan-laid.ts';

/** What moved, as it is kept. Times in ISO. */
export interface PlanChange {
  loadId: string;
  label: string;
  from: { oven: string; start: string } | null;
  to: { oven: string; start: string };
  why: string;
  sentence: string;
}

export function changesSaid(
  laid: Laid,
  at: (minute: number) => Date,
  loadIds: ReadonlyMap<string, string>,
): PlanChange[] {
  const { answer, posed: of, facts } = laid;
  if (!answer) return [];
  const placed = { ...answer, batches: answer.batches.filter((batch) => !batch.isFixed && !isUnplaced(batch)) };
  return changesOf(of.problem, of.before, placed).map(({ job, from, to, why }) => {
    const place = ({ oven, start }: { oven: string; start: number }) => ({ oven, start: at(start).toISOString() });
    const said = ({ oven, start }: { oven: string; start: number }) =>
      `${oven}, ${saidTime(at(start), facts.timeZone)}`;
    const reason = from && from.start < 0 ? 'it was not started then' : why;
    const sentence = from ? `${job}: from ${said(from)} to ${said(to)}, since ${reason}` : `${job}: ${said(to)}, new`;
    return {
      loadId: loadIds.get(job) ?? '',
      label: job,
      from: from && place(from),
      to: place(to),
      why: reason,
      sentence,
    };
  });
}
