// A run in progress, one click each: into the oven, the door, out of the oven, cooled.
import { z } from 'zod';
import type { Context } from '../context.ts';
import { invalid } from '../errors.ts';
import { howDried } from '../drying/service.ts';
import { checkNotFuture, ovenCaution, said } from '../stock/service.ts';
import { write, type Work } from '../work.ts';
import { whenSomebody } from './hours.ts';
import { openingsOf, outages } from './oven-hours.ts';
import { checkAfter, checkMay, lateAfterMinutes } from './rules.ts';
import { doorsOf, loadName, runOf, type WholeRun } from './run-rows.ts';

export const stepSaid = z.object({ run: z.string('the id of a run'), at: said.at, clientKey: said.clientKey });
export const startSaid = stepSaid.extend({ temperatureC: said.celsius.nullish() });

export type Stepped = { runId: string; notes: string[]; moved: boolean };

type Step = z.output<typeof stepSaid>;

const minuteMs = 60_000;
const dayMs = 86_400_000;

/** Refuses whatever may not go into an oven now, though it might when it was asked for. */
async function checkLoads(work: Work, run: WholeRun, temperatureC: number): Promise<void> {
  for (const load of run.loads) {
    const { container } = load.request;
    const name = loadName(load);
    if (container.finishedAt) throw invalid('input.run', name, 'nothing is left in it; withdraw its request');
    const caution = ovenCaution(container, container);
    if (caution) throw invalid('input.run', name, `${caution}; withdraw its request, or let the solvent go first`);
    const hot = (await howDried(work.tx, container)).refusal(temperatureC);
    if (hot) throw invalid('input.temperatureC', temperatureC, `${hot} (${name})`);
  }
}

async function checkOven(work: Work, run: WholeRun, at: Date, temperatureC: number): Promise<void> {
  const { oven } = run;
  if (oven.removedAt) throw invalid('input.run', oven.name, 'it was removed; plan again');
  if (temperatureC < oven.lowestC || temperatureC > oven.highestC) {
    throw invalid(
      'input.temperatureC',
      temperatureC,
      `${oven.lowestC} to ${oven.highestC} °C, which ${oven.name} holds`,
    );
  }
  const other = await work.tx.dryingRun.findFirst({ where: { ovenId: oven.id, state: 'IN_OVEN' } });
  if (other) throw invalid('input.run', oven.name, 'a run is in it still; take that out first');
  const care = await work.tx.ovenCare.findMany({ where: { ovenId: oven.id, takenBackAt: null } });
  const broken = outages({ care }, at.getTime() + dayMs).some(
    ({ fromMs, toMs }) => fromMs <= at.getTime() && at.getTime() < toMs,
  );
  if (broken) throw invalid('input.run', oven.name, 'it is out of order then; plan again, or say that it works');
}

/** When it is expected out: after the minutes it was planned for, or when somebody is there again. */
export function dueOut(context: Context, run: WholeRun, from: Date): Date {
  const stays = run.plannedEnd.getTime() - run.plannedStart.getTime();
  const least = Math.min(stays, run.leastMinutes * minuteMs);
  const done = from.getTime() + least;
  const open = openingsOf(run.oven, context.lab, from.getTime(), done + 14 * dayMs);
  return new Date(whenSomebody(open, done));
}

export function runStarted(context: Context, input: z.output<typeof startSaid>): Promise<Stepped> {
  return write(context, 'startRun', input, async (work) => {
    const run = await runOf(work, input.run);
    checkMay('start', input.run, run.state);
    const at = input.at ?? work.now;
    checkNotFuture(at, work.now, 'input.at');
    const temperatureC = input.temperatureC ?? run.temperatureC;
    if (run.loads.length === 0) throw invalid('input.run', input.run, 'nothing is left in it; plan again');
    await checkOven(work, run, at, temperatureC);
    await checkLoads(work, run, temperatureC);
    const dueOutAt = dueOut(context, run, at);
    await work.tx.dryingRun.update({
      where: { id: run.id },
      data: { state: 'IN_OVEN', startedAt: at, temperatureC, dueOutAt },
    });
    work.changed('DryingRun', run.id, 'CHANGED');
    const late = Math.round((at.getTime() - run.plannedStart.getTime()) / minuteMs);
    const moved = Math.abs(dueOutAt.getTime() - run.plannedEnd.getTime()) > lateAfterMinutes * minuteMs;
    const notes = late > lateAfterMinutes ? [`${late} min late: what comes after it is planned anew`] : [];
    return { runId: run.id, notes, moved };
  });
}

/** The door was opened while it ran: so long it was not at temperature, and so much later it is done. */
export function doorOpened(context: Context, input: Step): Promise<Stepped> {
  return write(context, 'openOvenDoor', input, async (work) => {
    const run = await runOf(work, input.run);
    checkMay('door', input.run, run.state);
    const at = input.at ?? work.now;
    checkNotFuture(at, work.now, 'input.at');
    checkAfter(at, run.startedAt, 'it went in');
    const doorAt = [...doorsOf(run.doorAt), at].sort((a, b) => a.getTime() - b.getTime());
    const later = (run.startedAt?.getTime() ?? at.getTime()) + doorAt.length * run.oven.doorMinutes * minuteMs;
    await work.tx.dryingRun.update({
      where: { id: run.id },
      data: { doorAt: doorAt.map((each) => each.toISOString()), dueOutAt: dueOut(context, run, new Date(later)) },
    });
    work.changed('DryingRun', run.id, 'CHANGED');
    return { runId: run.id, notes: [], moved: run.oven.doorMinutes > lateAfterMinutes };
  });
}

export function takenOut(context: Context, input: Step): Promise<Stepped> {
  return write(context, 'takeRunOut', input, async (work) => {
    const run = await runOf(work, input.run);
    checkMay('out', input.run, run.state);
    const at = input.at ?? work.now;
    checkNotFuture(at, work.now, 'input.at');
    checkAfter(at, run.startedAt, 'it went in');
    await work.tx.dryingRun.update({ where: { id: run.id }, data: { state: 'COOLING', outAt: at } });
    work.changed('DryingRun', run.id, 'CHANGED');
    const stayed = ((at.getTime() - (run.startedAt?.getTime() ?? at.getTime())) / minuteMs) | 0;
    const short = run.leastMinutes - stayed;
    const notes =
      short > lateAfterMinutes ? [`${short} min short of what was planned: the model counts what it had`] : [];
    const off = Math.abs(at.getTime() - (run.dueOutAt ?? run.plannedEnd).getTime());
    return { runId: run.id, notes, moved: off > lateAfterMinutes * minuteMs && at > (run.dueOutAt ?? run.plannedEnd) };
  });
}

export function runCooled(context: Context, input: Step): Promise<Stepped> {
  return write(context, 'recordRunCooled', input, async (work) => {
    const run = await runOf(work, input.run);
    checkMay('cooled', input.run, run.state);
    const at = input.at ?? work.now;
    checkNotFuture(at, work.now, 'input.at');
    checkAfter(at, run.outAt, 'it came out');
    await work.tx.dryingRun.update({ where: { id: run.id }, data: { state: 'COOLED', cooledAt: at } });
    work.changed('DryingRun', run.id, 'CHANGED');
    return { runId: run.id, notes: [], moved: false };
  });
}
