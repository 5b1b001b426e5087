// A run fixed by hand in an oven at a time, and let go again. Refused where it cannot be, with what would be right.
import { z } from 'zod';
import type { Context } from '../context.ts';
import { invalid } from '../errors.ts';
import { said } from '../stock/service.ts';
import { write, type Work } from '../work.ts';
import { saidTime } from './hours.ts';
import { openingsOf, outages } from './oven-hours.ts';
import { usedOven } from './ovens.ts';
import { checkMay, lateAfterMinutes } from './rules.ts';
import { runOf, type WholeRun } from './run-rows.ts';
import { ovenAreaCm2 } from './shares.ts';

export const pinSaid = z.object({
  run: z.string('the id of a run'),
  oven: z.string('the id of an oven').nullish(),
  start: z.date('an instant').nullish(),
  clientKey: said.clientKey,
});

export const unpinSaid = z.object({ run: z.string('the id of a run'), clientKey: said.clientKey });

export type Pinned = { runId: string; notes: string[]; moved: boolean };

const minuteMs = 60_000;
const weekMs = 7 * 86_400_000;

type Place = Awaited<ReturnType<typeof usedOven>>;

function checkFits(run: WholeRun, oven: Place): void {
  const area = run.loads.reduce((sum, { areaCm2 }) => sum + areaCm2, 0);
  const room = ovenAreaCm2(oven);
  if (area > room + 1e-6) {
    throw invalid(
      'input.oven',
      oven.name,
      `an oven of at least ${Math.ceil(area)} cm²; it has ${Math.floor(room)} cm²`,
    );
  }
  if (run.isVacuum && oven.kind !== 'VACUUM') throw invalid('input.oven', oven.name, 'a vacuum oven');
  if (run.temperatureC < oven.lowestC || run.temperatureC > oven.highestC) {
    throw invalid('input.oven', oven.name, `an oven that holds ${run.temperatureC} °C`);
  }
}

/** When it ends: after its least minutes, or when somebody is there again if it stands so long. */
function endOf(context: Context, run: WholeRun, oven: Place, start: Date): Date {
  const open = openingsOf(oven, context.lab, start.getTime() - weekMs, start.getTime() + 2 * weekMs);
  const at = start.getTime();
  const here = open.find(({ fromMs, toMs }) => fromMs <= at && at <= toMs);
  const refuse = (why: string) => invalid('input.start', start.toISOString(), why);
  if (!here) {
    const next = open.find(({ fromMs }) => fromMs > at);
    const first = next ? `; next at ${saidTime(new Date(next.fromMs), context.lab.timeZone)}` : '';
    throw refuse(`a time when somebody is there to load it${first}`);
  }
  const done = at + run.leastMinutes * minuteMs;
  if (done <= here.toMs) return new Date(done);
  const latest = saidTime(new Date(here.toMs - run.leastMinutes * minuteMs), context.lab.timeZone);
  if (!oven.isUnattended) throw refuse(`${latest} at the latest: it never runs while nobody is there`);
  const next = open.find(({ toMs }) => toMs >= done);
  const ends = next ? Math.max(done, next.fromMs) : null;
  if (ends === null || ends - at > run.mostMinutes * minuteMs) {
    throw refuse(`${latest} at the latest: nobody would be there to take it out in time`);
  }
  return new Date(ends);
}

async function checkFree(
  work: Work,
  context: Context,
  run: WholeRun,
  oven: Place,
  start: Date,
  end: Date,
): Promise<void> {
  const doorMs = oven.doorMinutes * minuteMs;
  const refuse = (why: string) => invalid('input.start', start.toISOString(), why);
  const others = await work.tx.dryingRun.findMany({
    where: { ovenId: oven.id, id: { not: run.id }, OR: [{ state: 'IN_OVEN' }, { state: 'PLANNED', isPinned: true }] },
  });
  for (const other of others) {
    const from = other.startedAt ?? other.plannedStart;
    const to = other.state === 'IN_OVEN' ? (other.dueOutAt ?? other.plannedEnd) : other.plannedEnd;
    if (start.getTime() < to.getTime() + doorMs && end.getTime() + doorMs > from.getTime()) {
      const said = `${saidTime(from, context.lab.timeZone)} to ${saidTime(to, context.lab.timeZone)}`;
      throw refuse(`a time when ${oven.name} is free: a run that has begun or is fixed is in it ${said}`);
    }
  }
  const care = await work.tx.ovenCare.findMany({ where: { ovenId: oven.id, takenBackAt: null } });
  const broken = outages({ care }, end.getTime() + weekMs).find(
    ({ fromMs, toMs }) => fromMs < end.getTime() && toMs > start.getTime(),
  );
  if (broken) throw refuse(`a time when ${oven.name} is not out of order`);
}

export function batchPinned(context: Context, input: z.output<typeof pinSaid>): Promise<Pinned> {
  return write(context, 'pinBatch', input, async (work) => {
    const run = await runOf(work, input.run);
    checkMay('pin', input.run, run.state);
    const oven = await usedOven(work, input.oven ?? run.ovenId);
    const start = input.start ?? run.plannedStart;
    if (start.getTime() < work.now.getTime() - lateAfterMinutes * minuteMs) {
      throw invalid('input.start', start.toISOString(), `not before now, ${work.now.toISOString()}`);
    }
    checkFits(run, oven);
    const end = endOf(context, run, oven, start);
    await checkFree(work, context, run, oven, start, end);
    const moved = oven.id !== run.ovenId || start.getTime() !== run.plannedStart.getTime();
    await work.tx.dryingRun.update({
      where: { id: run.id },
      data: { ovenId: oven.id, plannedStart: start, plannedEnd: end, isPinned: true },
    });
    work.changed('DryingRun', run.id, 'CHANGED');
    return { runId: run.id, notes: [], moved };
  });
}

export function batchUnpinned(context: Context, input: z.output<typeof unpinSaid>): Promise<Pinned> {
  return write(context, 'unpinBatch', input, async (work) => {
    const run = await runOf(work, input.run);
    checkMay('pin', input.run, run.state);
    await work.tx.dryingRun.update({ where: { id: run.id }, data: { isPinned: false } });
    work.changed('DryingRun', run.id, 'CHANGED');
    return { runId: run.id, notes: [], moved: false };
  });
}
