// What is asked of runs: a stretch of time, the next step, how long a load cools.
import type { Context } from '../context.ts';
import type { DryingRun, DryingRunState, OvenPlan } from '../database/generated/sqlite/client.ts';
import { invalid } from '../errors.ts';
import { coolMinutes } from './cooling.ts';
import { earliest, stepOf, type NextStep } from './next-step.ts';
import { loadName } from './run-rows.ts';

const minuteMs = 60_000;
const dayMs = 86_400_000;
const mostDays = 366;

/** When a run takes up its oven: what happened where it did, else what is planned. */
export const startOf = (run: DryingRun): Date => run.startedAt ?? run.plannedStart;
export const endOf = (run: DryingRun): Date => run.outAt ?? run.endedAt ?? run.dueOutAt ?? run.plannedEnd;

export async function runsBetween(
  { database: { read }, lab, now }: Pick<Context, 'database' | 'lab' | 'now'>,
  from: Date | null,
  to: Date | null,
  states: readonly DryingRunState[] | null,
): Promise<DryingRun[]> {
  const begins = from ?? new Date(now().getTime() - dayMs);
  const ends = to ?? new Date(begins.getTime() + 8 * dayMs);
  if (ends <= begins) throw invalid('to', ends.toISOString(), `after ${begins.toISOString()}`);
  if (ends.getTime() - begins.getTime() > mostDays * dayMs) {
    throw invalid('to', ends.toISOString(), `at most ${mostDays} days after ${begins.toISOString()}`);
  }
  // A run that began late or stayed long is looked for a little wider, then by what really happened.
  const rows = await read.dryingRun.findMany({
    where: {
      labId: lab.id,
      ...(states ? { state: { in: [...states] } } : {}),
      OR: [
        { plannedStart: { lt: ends }, plannedEnd: { gt: begins } },
        { startedAt: { lt: ends }, outAt: { gt: begins } },
        { startedAt: { lt: ends }, endedAt: { gt: begins } },
        { startedAt: { lt: ends }, state: 'IN_OVEN' },
      ],
    },
    orderBy: [{ plannedStart: 'asc' }, { id: 'asc' }],
  });
  const until = now();
  const inOven = (run: DryingRun) => (run.state === 'IN_OVEN' && endOf(run) < until ? until : endOf(run));
  return rows
    .filter((run) => startOf(run) < ends && inOven(run) > begins)
    .sort((a, b) => startOf(a).getTime() - startOf(b).getTime());
}

export async function stepOfRun(context: Context, run: DryingRun): Promise<NextStep | null> {
  if (run.state === 'FINISHED' || run.state === 'INTERRUPTED') return null;
  const { read } = context.database;
  const oven = await read.oven.findUniqueOrThrow({ where: { id: run.ovenId } });
  const loads = await read.dryingLoad.findMany({
    where: { runId: run.id },
    include: { request: { include: { container: { select: { label: true } } } } },
    orderBy: { id: 'asc' },
  });
  const cool = run.state === 'COOLING' ? await coolMinutes(context, run.id) : 0;
  const of = { ...run, ovenName: oven.name, loads: loads.map(loadName) };
  return stepOf(of, context.now(), context.lab.timeZone, cool);
}

/** Runs that have gone cold on the screen long ago do not come first for ever. */
const mostOverdueDays = 3;

/** What is to be done first at any oven; null when nothing is planned and nothing runs. */
export async function nextOvenStep(context: Context): Promise<NextStep | null> {
  const {
    database: { read },
    lab,
    now,
  } = context;
  const runs = await read.dryingRun.findMany({
    where: {
      labId: lab.id,
      state: { in: ['PLANNED', 'IN_OVEN', 'COOLING', 'COOLED'] },
      plannedEnd: { gt: new Date(now().getTime() - mostOverdueDays * dayMs) },
    },
    orderBy: { plannedStart: 'asc' },
    take: 20,
  });
  const steps: (NextStep | null)[] = [];
  for (const run of runs) steps.push(await stepOfRun(context, run));
  return earliest(steps);
}

/** How much later than planned it begins or began, min; 0 when it does not. */
export function minutesLate(run: DryingRun, now: Date): number {
  const began = run.startedAt ?? (run.state === 'PLANNED' ? now : run.plannedStart);
  return Math.max(0, Math.round((began.getTime() - run.plannedStart.getTime()) / minuteMs));
}

/** The plan that counts: the newest that nobody took back. */
export const currentPlan = ({ database: { read }, lab }: Pick<Context, 'database' | 'lab'>): Promise<OvenPlan | null> =>
  read.ovenPlan.findFirst({
    where: { labId: lab.id, takenBackAt: null },
    orderBy: [{ madeAt: 'desc' }, { id: 'desc' }],
  });
