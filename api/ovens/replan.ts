// What moved makes a plan anew: the click is answered within a second, the planning goes on behind it.
import { setTimeout as sleep } from 'node:timers/promises';
import type { Context } from '../context.ts';
import { log } from '../log.ts';
import { ovensPlanned } from './plan.ts';

const patienceMs = 1000;

/** Plans anew after a step that moved something, where there was a plan; waits for it a moment. */
export async function replannedAfter<S extends { moved: boolean }>(
  context: Context,
  step: Promise<S>,
  because: string,
): Promise<S> {
  const done = await step;
  if (!done.moved) return done;
  const plan = await context.database.read.ovenPlan.findFirst({
    where: { labId: context.lab.id },
    select: { id: true },
  });
  if (!plan) return done;
  const planned = ovensPlanned(context, {}, because).catch((error: unknown) => log.warn(error, 'planning anew failed'));
  await Promise.race([planned, sleep(patienceMs, undefined, { ref: false })]);
  return done;
}
