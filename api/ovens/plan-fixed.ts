// A run that was fixed, as the plan keeps it.
import type { AnswerBatch } from '../science/ovens/answer.ts';
import type { RunRow } from './facts.ts';
import type { Laying } from './plan-batch.ts';

export const sameBatch = (one: AnswerBatch, batch: { oven: string; jobs: readonly string[] }): boolean =>
  one.isFixed && one.oven === batch.oven && one.jobs.some((job) => batch.jobs.includes(job));

export async function fixedKept(
  { work, at }: Laying,
  run: RunRow,
  found: AnswerBatch | undefined,
  batch: { start: number; end: number },
): Promise<void> {
  const data = {
    plannedStart: at(batch.start),
    plannedEnd: at(batch.end),
    ...(found ? { setupMinutes: found.setupMinutes, reason: found.reason } : {}),
  };
  await work.tx.dryingRun.update({ where: { id: run.id }, data });
  work.changed('DryingRun', run.id, 'CHANGED');
}
