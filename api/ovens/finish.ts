// A run with its results, weighed or taken from the model: the dryings onto the timelines, the requests answered.
import { z } from 'zod';
import type { Context } from '../context.ts';
import { invalid, unknown } from '../errors.ts';
import { checkNotFuture, localId, said } from '../stock/service.ts';
import { write } from '../work.ts';
import { bookedDrying, type Booked } from './booked.ts';
import { inOrder, loadKept, settled } from './load-done.ts';
import { checkAfter, checkMay, weighedWater } from './rules.ts';
import { inOven, minutesIn, runOf, type WholeLoad, type WholeRun } from './run-rows.ts';
import { roomVapourPa } from './room-vapour.ts';
import { waterAfter } from './tray.ts';

const result = z.object({
  load: z.string('the id of a load'),
  waterFraction: said.waterFraction.nullish(),
  netGrams: said.grams,
  vessel: said.name.nullish(),
  room: said.name.nullish(),
  note: said.text,
});

export const finishSaid = z.object({
  run: z.string('the id of a run'),
  at: said.at,
  results: z.array(result).max(500, 'at most 500 results').nullish(),
  clientKey: said.clientKey,
});

export type RunEnded = { runId: string; notes: string[]; moved: boolean };

type Given = z.output<typeof result>;

/** The results by load; refuses loads of another run and a load named twice. */
function byLoad(run: WholeRun, results: readonly Given[]): Map<string, { given: Given; path: string }> {
  const found = new Map<string, { given: Given; path: string }>();
  results.forEach((given, i) => {
    const path = `input.results.${i}`;
    const id = localId('DryingLoad', given.load, `${path}.load`);
    if (!run.loads.some((load) => load.id === id))
      throw unknown(`${path}.load`, given.load, 'the id of a load of this run');
    if (found.has(id)) throw invalid(`${path}.load`, given.load, 'each load once');
    found.set(id, { given, path });
  });
  return found;
}

/** What was weighed of a load; null when the model is to say. */
function measured(load: WholeLoad, given: Given | undefined, path: string): number | null {
  if (!given) return null;
  if (typeof given.waterFraction === 'number' && given.netGrams !== null) {
    throw invalid(`${path}.netGrams`, given.netGrams, 'the water or the grams, not both');
  }
  if (typeof given.waterFraction === 'number') return given.waterFraction;
  if (given.netGrams === null) return null;
  if (load.dryGrams === null) throw invalid(`${path}.netGrams`, given.netGrams, 'the water: plates are not weighed so');
  return weighedWater(given.netGrams, load.dryGrams, `${path}.netGrams`);
}

export function runFinished(context: Context, input: z.output<typeof finishSaid>): Promise<RunEnded> {
  return write(context, 'finishRun', input, async (work) => {
    const run = await runOf(work, input.run);
    checkMay('finish', input.run, run.state);
    const at = input.at ?? work.now;
    checkNotFuture(at, work.now, 'input.at');
    const outAt = run.outAt ?? at;
    checkAfter(at, run.outAt ?? run.startedAt, run.outAt ? 'it came out' : 'it went in');
    const results = byLoad(run, input.results ?? []);
    const minutes = minutesIn(run, outAt);
    const vapour = await roomVapourPa(context, run.oven.roomId);
    const notes: string[] = [];
    const done: { load: WholeLoad; booked: Booked }[] = [];
    for (const load of inOrder(run.loads)) {
      const told = results.get(load.id);
      const water = measured(load, told?.given, told?.path ?? '');
      const { vessel = null, room = null, note = null } = told?.given ?? {};
      const booked = await bookedDrying(work, run, load, outAt, minutes, { waterFraction: water, vessel, room, note });
      const shown = water ?? waterAfter(inOven(run, load, vapour), minutes);
      await loadKept(work, load, booked, shown, water !== null, booked.eventIds);
      notes.push(...booked.notes);
      done.push({ load, booked });
    }
    await work.tx.dryingRun.update({
      where: { id: run.id },
      data: { state: 'FINISHED', endedAt: at },
    });
    for (const { load, booked } of done) await settled(work, load, booked, outAt);
    work.changed('DryingRun', run.id, 'CHANGED');
    return { runId: run.id, notes: [...new Set(notes)], moved: false };
  });
}
