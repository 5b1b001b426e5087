// Plates are prepared: pre-washed, activated, equilibrated, where they stand or as a batch with a label of its own.
import { z } from 'zod';
import type { Context } from '../context.ts';
import { containerOf, happened, type Recorded } from '../stock/service.ts';
import { write } from '../work.ts';
import { prewashSaid, activateSaid, equilibrateSaid } from './said.ts';
import { setApart, both } from './apart.ts';
import { overWhat, minutesNeeded } from './over.ts';

/** Pre-washed: from then on wet with solvent, open in the hood. */
export function prewashed(context: Context, input: z.output<typeof prewashSaid>): Promise<Recorded> {
  return write(context, 'prewashPlates', input, async (work) => {
    const apart = await setApart(work, input, 'OPEN', true);
    const { container, after } = apart;
    const { solvent, direction, frontEdge, isMobilePhase, tankLoads, mlPerLoad, tankMinutes, note } = input;
    const fullLength = input.fullLength ?? true;
    const said = { solvent, direction, fullLength, frontEdge, isMobilePhase, tankLoads, mlPerLoad, tankMinutes, after };
    return both(apart, await happened(work, { type: 'PRE_WASHED', container, at: input.at ?? work.now, note, said }));
  });
}

/** Activated in an oven; solvent-wet plates and temperatures above what they stand are refused. */
export function activated(context: Context, input: z.output<typeof activateSaid>): Promise<Recorded> {
  return write(context, 'activatePlates', input, async (work) => {
    const apart = await setApart(work, input, 'WELL_CLOSED', false);
    const { temperatureC, minutes, vacuum, oven, waterFraction, note } = input;
    const said = { temperatureC, minutes, vacuum, oven, waterFraction, after: apart.after };
    const at = input.at ?? work.now;
    return both(apart, await happened(work, { type: 'DRIED', container: apart.container, at, note, said }));
  });
}

/** Equilibrated: good from then on while the air stays there. Too short a time is kept, and marked. */
export async function equilibrated(context: Context, input: z.output<typeof equilibrateSaid>): Promise<Recorded> {
  const { database, lab } = context;
  const box = await containerOf({ tx: database.read, labId: lab.id }, input.label);
  const air = await overWhat(context, input);
  const needed = await minutesNeeded(context, box.id, air);
  return write(context, 'equilibratePlates', input, async (work) => {
    const apart = await setApart(work, input, 'WELL_CLOSED', false);
    const { hours, note } = input;
    const said = { ...air, hours, after: apart.after };
    const at = input.at ?? work.now;
    const recorded = await happened(work, { type: 'EQUILIBRATED', container: apart.container, at, note, said });
    const short = needed !== null && hours * 60 < needed;
    const why = `${Number(hours.toFixed(2))} h are less than the ${Math.ceil(needed ?? 0)} min that the model gives a dry layer: kept, but they may not be there yet`;
    return both(apart, recorded, short ? [why] : []);
  });
}
