// A run that was interrupted: the water each load had reached goes onto its timeline, and what was in it waits again.
import { z } from 'zod';
import type { Context } from '../context.ts';
import { requestMade, requestWaits } from '../drying/service.ts';
import { checkNotFuture, happened, said } from '../stock/service.ts';
import { write, type Work } from '../work.ts';
import { bookedDrying, type Booked } from './booked.ts';
import type { RunEnded } from './finish.ts';
import { inOrder, loadKept, settled } from './load-done.ts';
import { roomVapourPa } from './room-vapour.ts';
import { checkAfter, checkMay } from './rules.ts';
import { inOven, minutesIn, runOf, type WholeLoad } from './run-rows.ts';
import { waterAfter } from './tray.ts';

export const interruptSaid = z.object({
  run: z.string('the id of a run'),
  at: said.at,
  why: said.text,
  clientKey: said.clientKey,
});

/** The power failed, or it had to come out: what each load had reached by then goes onto its timeline, and it waits again. */
export function runInterrupted(context: Context, input: z.output<typeof interruptSaid>): Promise<RunEnded> {
  return write(context, 'interruptRun', input, async (work) => {
    const run = await runOf(work, input.run);
    checkMay('interrupt', input.run, run.state);
    const at = input.at ?? work.now;
    checkNotFuture(at, work.now, 'input.at');
    checkAfter(at, run.startedAt, 'it went in');
    const minutes = minutesIn(run, at);
    const vapour = await roomVapourPa(context, run.oven.roomId);
    const notes: string[] = [];
    for (const load of inOrder(run.loads)) {
      const water = waterAfter(inOven(run, load, vapour), minutes);
      const { containerId } = load.request;
      const waiting = await work.tx.dryingRequest.findMany({ where: { containerId, state: 'WAITING' } });
      // The estimate goes on from what the tray held when it went in; the figure here is for whoever asks the run.
      const said = { waterFraction: null, vessel: null, room: null, note: null };
      const booked = await bookedDrying(work, run, load, at, minutes, said);
      const broken = await happened(work, {
        type: 'INTERRUPTED',
        container: booked.container,
        at,
        note: null,
        said: { why: input.why ?? 'the drying was interrupted' },
      });
      await loadKept(work, load, booked, water, false, [...booked.eventIds, broken.eventId]);
      notes.push(...booked.notes, ...broken.notes);
      await waitsAgain(work, load, booked, at);
      // A drying answers all that waits of its container; one that was interrupted answers nothing.
      if (!booked.madeId) for (const { id } of waiting) await requestWaits(work, id);
    }
    const ended = { state: 'INTERRUPTED' as const, endedAt: at, why: input.why };
    await work.tx.dryingRun.update({ where: { id: run.id }, data: ended });
    work.changed('DryingRun', run.id, 'CHANGED');
    return { runId: run.id, notes: [...new Set(notes)], moved: true };
  });
}

/** What is in its own container goes on waiting; what was poured waits under its own label. */
async function waitsAgain(work: Work, load: WholeLoad, booked: Booked, at: Date): Promise<void> {
  const { request } = load;
  if (!booked.madeId) {
    await requestWaits(work, request.id);
    return;
  }
  const { why, wantedBy, temperatureC, minutes, weight, depthMm, needId } = request;
  await requestMade(work, {
    label: booked.container.label,
    dryGrams: null,
    plates: null,
    why,
    wantedBy,
    temperatureC,
    minutes,
    priority: weight as 1 | 2 | 4 | 8,
    depthMm,
    ...(needId ? { needId } : {}),
  });
  await settled(work, load, booked, at);
}
