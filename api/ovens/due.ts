// Why a plan no longer holds, in sentences: something waits in no run, a start has passed, an oven cannot, a request has gone.
import type { Context } from '../context.ts';
import type { OvenPlan } from '../database/generated/sqlite/client.ts';
import { saidTime } from './hours.ts';
import { outages } from './oven-hours.ts';
import { lateAfterMinutes } from './rules.ts';

const minuteMs = 60_000;

const several = (count: number, one: string, more: string): string => (count === 1 ? one : `${count} ${more}`);

/** Requests that were left out for a reason do not make a plan due. */
const leftOutIds = (plan: OvenPlan | null): ReadonlySet<string> => {
  const out = plan?.leftOut;
  const rows = Array.isArray(out) ? out : [];
  return new Set(
    rows.flatMap((row) =>
      row !== null && typeof row === 'object' && 'requestId' in row && typeof row.requestId === 'string'
        ? row.requestId
        : [],
    ),
  );
};

export async function dueReasons({ database: { read }, lab, now }: Context, plan: OvenPlan | null): Promise<string[]> {
  const labId = lab.id;
  const at = now();
  const [runs, requests, gone] = await Promise.all([
    read.dryingRun.findMany({
      where: { labId, state: { in: ['PLANNED', 'IN_OVEN'] } },
      include: { oven: { include: { care: { where: { takenBackAt: null } } } } },
      orderBy: { plannedStart: 'asc' },
    }),
    read.dryingRequest.findMany({
      where: { labId, state: 'WAITING', loads: { none: { run: { state: { notIn: ['FINISHED', 'INTERRUPTED'] } } } } },
      select: { id: true },
    }),
    plan
      ? read.dryingRequest.count({ where: { labId, state: 'WITHDRAWN', endedAt: { gte: plan.madeAt } } })
      : Promise.resolve(0),
  ]);
  const known = leftOutIds(plan);
  const waiting = requests.filter(({ id }) => !known.has(id)).length;
  const reasons: string[] = [];
  if (waiting > 0) reasons.push(`${several(waiting, 'a request waits', 'requests wait')} in no run`);
  if (gone > 0) reasons.push(`${several(gone, 'a request was', 'requests were')} withdrawn since`);
  for (const run of runs) {
    const { oven } = run;
    if (run.state === 'IN_OVEN') continue;
    const said = `${oven.name}, ${saidTime(run.plannedStart, lab.timeZone)}`;
    if (at.getTime() > run.plannedStart.getTime() + lateAfterMinutes * minuteMs)
      reasons.push(`${said}: it has not begun`);
    else if (oven.removedAt) reasons.push(`${said}: the oven was removed`);
    else if (
      outages(oven, Infinity).some(
        ({ fromMs, toMs }) => fromMs < run.plannedEnd.getTime() && toMs > run.plannedStart.getTime(),
      )
    ) {
      reasons.push(`${said}: the oven is out of order then`);
    } else {
      const inIt = runs.find((other) => other.ovenId === run.ovenId && other.state === 'IN_OVEN');
      const free = Math.max(inIt?.dueOutAt?.getTime() ?? 0, inIt ? at.getTime() : 0) + oven.doorMinutes * minuteMs;
      if (inIt && free > run.plannedStart.getTime()) reasons.push(`${said}: the run before it is not out by then`);
    }
  }
  return reasons;
}
