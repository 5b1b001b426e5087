// A request that waits no longer leaves the runs that have not begun; a run without loads is gone.
import { onRequestEnded } from '../drying/service.ts';
import type { Work } from '../work.ts';

async function left(work: Work, requestId: string): Promise<void> {
  const { tx, labId } = work;
  const loads = await tx.dryingLoad.findMany({
    where: { labId, requestId, run: { state: 'PLANNED' } },
    select: { id: true, runId: true },
  });
  if (loads.length === 0) return;
  await tx.dryingLoad.deleteMany({ where: { id: { in: loads.map(({ id }) => id) } } });
  for (const runId of new Set(loads.flatMap(({ runId }) => runId ?? []))) {
    const others = await tx.dryingLoad.count({ where: { runId } });
    if (others === 0) await tx.dryingRun.delete({ where: { id: runId } });
    work.changed('DryingRun', runId, others === 0 ? 'GONE' : 'CHANGED');
  }
}

onRequestEnded(left);
