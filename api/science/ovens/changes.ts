// What moved between a plan and the one before it, and why, a sentence each.
import type { OvenAnswer } from './answer.ts';
import type { KeptBatch } from './keep.ts';
import type { OvenProblem } from './problem.ts';

export interface Change {
  readonly job: string;
  readonly from: { readonly oven: string; readonly start: number } | null;
  readonly to: { readonly oven: string; readonly start: number };
  readonly why: string;
}

function why(problem: OvenProblem, answer: OvenAnswer, id: string, before: KeptBatch): string {
  const job = problem.jobs.find((one) => one.id === id);
  const oven = problem.ovens.find((one) => one.id === before.oven);
  const end = before.start + (job?.minutes[0] ?? 0);
  if (!oven) return `${before.oven} is gone`;
  if (oven.outOfOrder.some(([from, to]) => from < end && to > before.start)) return `${oven.id} is out of order then`;
  if (job && job.readyAt > before.start) return `${id} is ready only later`;
  if (before.start < oven.freeAt) return `${oven.id} is free only later`;
  const other = answer.batches.find(
    (batch) => batch.oven === oven.id && batch.start < end && batch.end > before.start && !batch.jobs.includes(id),
  );
  if (other?.isFixed) return `${other.jobs.join(', ')} is fixed in ${oven.id} then`;
  if (other) return `${other.jobs.join(', ')} takes its place, which makes what is late fewer or shorter`;
  return 'what goes before it in the oven has changed';
}

/** Every job that is not where and when it was; new ones come from nowhere. */
export function changesOf(problem: OvenProblem, before: readonly KeptBatch[], answer: OvenAnswer): Change[] {
  const was = new Map(before.flatMap((batch) => batch.jobs.map((job) => [job, batch] as const)));
  return answer.batches.flatMap(({ oven, start, jobs }) =>
    jobs.flatMap((job): Change[] => {
      const from = was.get(job);
      if (from === undefined) return [{ job, from: null, to: { oven, start }, why: 'it is new' }];
      if (from.oven === oven && from.start === start) return [];
      return [
        {
          job,
          from: { oven: from.oven, start: from.start },
          to: { oven, start },
          why: why(problem, answer, job, from),
        },
      ];
    }),
  );
}
