// A run with its results, weighed or taken from the model; and one that was interrupted, with the water it had reached.
import { z } from 'zod';
import type { Context } from '../context.ts';
import { requestAnswered, requestMade, requestWaits } from '../drying/service.ts';
import { invalid, unknown } from '../errors.ts';
import { checkNotFuture, happened, localId, said } from '../stock/service.ts';
import { write, type Work } from '../work.ts';
import { bookedDrying, type Booked } from './booked.ts';
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

export const interruptSaid = z.object({
  run: z.string('the id of a run'),
  at: said.at,
  why: said.text,
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

async function loadKept(
  work: Work,
  load: WholeLoad,
  booked: Booked,
  water: number | null,
  isWeighed: boolean,
  events: string[],
) {
  await work.tx.dryingLoad.update({
    where: { id: load.id },
    data: { containerId: booked.container.id, events, waterFraction: water, isWeighed },
  });
}

const sum = (some: readonly (number | null)[]): number => some.reduce<number>((all, each) => all + (each ?? 0), 0);

/** The load that makes a request whole answers it; until then it waits. */
async function settled(work: Work, load: WholeLoad, booked: Booked, at: Date): Promise<void> {
  const request = await work.tx.dryingRequest.findUniqueOrThrow({
    where: { id: load.requestId },
    include: { loads: { include: { run: true } } },
  });
  if (request.state === 'WITHDRAWN') return;
  const done = request.loads.filter(
    ({ id, run, containerId }) =>
      id === load.id ||
      run?.state === 'FINISHED' ||
      (run?.state === 'INTERRUPTED' && containerId !== null && containerId !== request.containerId),
  );
  const isAll =
    request.dryGrams === null
      ? request.plates !== null && sum(done.map(({ plates }) => plates)) >= request.plates
      : sum(done.map(({ dryGrams }) => dryGrams)) >= request.dryGrams - 1e-3;
  // What was dried where it is was all that is left.
  if (isAll || booked.madeId === null) await requestAnswered(work, request.id, booked.driedId, at);
  else await requestWaits(work, request.id);
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

/** Parts that are poured away come before the part that stays: so each finds its grams. */
const inOrder = (loads: readonly WholeLoad[]): WholeLoad[] =>
  [...loads].sort((a, b) => Number(isWhole(a)) - Number(isWhole(b)) || a.part - b.part);
const isWhole = ({ request }: WholeLoad): boolean => request.dryGrams === null && request.plates === null;

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
