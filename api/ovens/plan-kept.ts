// A plan written down: what is planned and has not begun is laid out anew, what has begun or was fixed stays.
import { isUnplaced } from '../science/ovens/schedule.ts';
import { newId, type Work } from '../work.ts';
import type { RunRow } from './facts.ts';
import type { Laid } from './plan-laid.ts';
import { fixedKept, sameBatch } from './plan-fixed.ts';
import { matched } from './plan-matched.ts';
import { batchKept } from './plan-batch.ts';
import { changesSaid } from './plan-changes.ts';
import { leftOutOf } from './plan-left.ts';

/** Writes the plan: runs that hold most of the same loads keep their key, so that who points at one finds it again. */
export async function kept(work: Work, laid: Laid, because: string): Promise<string> {
  const { tx, labId } = work;
  const { facts, posed: of, answer } = laid;
  const at = (minute: number) => new Date(of.originMs + minute * 60_000);
  const batches = (answer?.batches ?? []).filter((batch) => !isUnplaced(batch));
  const free = batches.filter(({ isFixed }) => !isFixed);
  const old = facts.runs.filter(({ state, isPinned }) => state === 'PLANNED' && !isPinned);
  const laying = { work, laid, at };

  for (const { run, batch } of of.fixedRuns)
    await fixedKept(
      laying,
      run,
      batches.find((one) => sameBatch(one, batch)),
      batch,
    );
  const runOf = matched(free, old, of);
  const gone = old.filter((run) => ![...runOf.values()].includes(run));
  // Loads of runs that are laid out anew are made anew; those of started or fixed ones stay.
  await tx.dryingLoad.deleteMany({ where: { labId, runId: { in: old.map(({ id }) => id) } } });
  await tx.dryingRun.deleteMany({ where: { labId, id: { in: gone.map(({ id }) => id) } } });
  for (const { id } of gone) work.changed('DryingRun', id, 'GONE');
  const loadIds = new Map<string, string>([...of.fixedLoads].map(([name, { id }]) => [name, id]));
  for (const batch of free) await batchKept(laying, batch, runOf.get(batch) ?? null, loadIds);

  const planId = newId();
  await tx.ovenPlan.create({
    data: {
      id: planId,
      labId,
      madeAt: work.now,
      because,
      words: answer?.words ?? 'nothing waits to be planned',
      gapMinutes: answer?.gap.minutes ?? 0,
      gapRelative: answer?.gap.relative ?? 0,
      gapOvenHours: answer?.gap.ovenHours ?? null,
      isProven: answer?.provenOptimal ?? true,
      stopped: answer?.stopped ?? 'proof',
      weightedLatenessHours: answer?.objective.weightedLatenessHours ?? 0,
      ovenHours: answer?.objective.ovenHours ?? 0,
      runs: batches.length,
      seconds: laid.seconds,
      changes: changesSaid(laid, at, loadIds).map((change) => ({ ...change })),
      leftOut: leftOutOf(laid).map((left) => ({ ...left })),
      before: snapshotOf(old),
    },
  });
  work.changed('OvenPlan', planId, 'MADE');
  return planId;
}

/** The unstarted runs as they stand, for taking a plan back. */
const snapshotOf = (runs: readonly RunRow[]) =>
  runs.map(({ loads, oven: _, ...run }) => ({
    ...run,
    loads: loads.map(({ request: __, ...load }) => load),
  }));
