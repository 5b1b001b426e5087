// A plan made and written down: what is planned and has not begun is laid out anew, what has begun or was fixed stays.
import type { Context } from '../context.ts';
import { missing, Refused } from '../errors.ts';
import { changesOf } from '../science/ovens/changes.ts';
import type { AnswerBatch, OvenAnswer } from '../science/ovens/answer.ts';
import { isUnplaced } from '../science/ovens/schedule.ts';
import { newId, write, type Work } from '../work.ts';
import { apartOf } from './apart.ts';
import { factsOf, type Facts, type RunRow } from './facts.ts';
import { saidTime } from './hours.ts';
import { answered, inLine } from './planning.ts';
import { posed, type Posed } from './problem.ts';
import type { Wanted } from './shares.ts';

export type Planned = { planId: string };

/** What moved, as it is kept. Times in ISO. */
export interface PlanChange {
  loadId: string;
  label: string;
  from: { oven: string; start: string } | null;
  to: { oven: string; start: string };
  why: string;
  sentence: string;
}

export interface PlanLeftOut {
  requestId: string;
  label: string;
  why: string;
}

const minuteMs = 60_000;
/** So often is a plan made anew when the list changes under it. */
const mostTries = 4;

/** All that a plan must not have changed under it. */
const stampOf = (facts: Facts): string =>
  JSON.stringify([
    facts.ovens.map(({ care: _, ...oven }) => oven),
    facts.ovens.map(({ care }) => care.map(({ id }) => id)),
    facts.requests.map(({ container: _, loads: __, position: ___, ...request }) => request),
    facts.runs.map(({ id, state, isPinned, plannedStart, dueOutAt, ovenId }) => [
      id,
      state,
      isPinned,
      plannedStart,
      dueOutAt,
      ovenId,
    ]),
  ]);

interface Laid {
  stamp: string;
  facts: Facts;
  posed: Posed;
  answer: OvenAnswer | null;
  seconds: number;
}

async function laidOut(context: Context, seconds: number | null | undefined): Promise<Laid> {
  const { database, lab } = context;
  const facts = await factsOf(database.read, lab, context.now());
  if (facts.ovens.length === 0) throw missing('input', 'an oven; addOven first');
  const problem = posed(facts, apartOf(lab.settings));
  const began = performance.now();
  const free = problem.problem.jobs.length - problem.fixedLoads.size;
  const answer = free === 0 ? null : await answered(database, problem, facts.now, seconds);
  if (free > 0 && answer === null) {
    throw new Refused('invalid input: this plan, it was cancelled; plan again', 'input', 'plan again');
  }
  return { stamp: stampOf(facts), facts, posed: problem, answer, seconds: (performance.now() - began) / 1000 };
}

export interface PlanSaid {
  seconds?: number | null | undefined;
  clientKey?: string | null | undefined;
}

/** Plans all that waits, and writes the plan down; planned anew when something changed meanwhile. */
export function ovensPlanned(context: Context, input: PlanSaid, because = 'asked for'): Promise<Planned> {
  return inLine(context.database, async () => {
    for (let tries = 1; ; tries += 1) {
      const laid = await laidOut(context, input.seconds);
      const done = await write<{ planId: string }>(context, 'planOvens', input, async (work) => {
        const facts = await factsOf(work.tx, context.lab, context.now());
        if (stampOf(facts) !== laid.stamp && tries < mostTries) return Promise.reject(new Moved());
        return { planId: await kept(work, laid, because) };
      }).catch((error: unknown) => {
        if (error instanceof Moved) return null;
        throw error;
      });
      if (done) return done;
    }
  });
}

class Moved extends Error {}

interface Laying {
  work: Work;
  laid: Laid;
  at: (minute: number) => Date;
}

/** Writes the plan: runs that hold most of the same loads keep their key, so that who points at one finds it again. */
async function kept(work: Work, laid: Laid, because: string): Promise<string> {
  const { tx, labId } = work;
  const { facts, posed: of, answer } = laid;
  const at = (minute: number) => new Date(of.originMs + minute * minuteMs);
  const batches = (answer?.batches ?? []).filter((batch) => !isUnplaced(batch));
  const free = batches.filter(({ isFixed }) => !isFixed);
  const old = facts.runs.filter(({ state, isPinned }) => state === 'PLANNED' && !isPinned);
  const before = snapshotOf(old);
  const laying = { work, laid, at };

  for (const { run, batch } of of.fixedRuns)
    await fixedKept(
      laying,
      run,
      batches.find((one) => sameBatch(one, batch)),
      batch,
    );
  const runOf = matched(free, old, of);
  const gone = old.filter((run) => ![...runOf.values()].includes(run));
  // Loads of runs that are laid out anew are made anew; those of started or fixed ones stay.
  await tx.dryingLoad.deleteMany({ where: { labId, runId: { in: old.map(({ id }) => id) } } });
  await tx.dryingRun.deleteMany({ where: { labId, id: { in: gone.map(({ id }) => id) } } });
  for (const { id } of gone) work.changed('DryingRun', id, 'GONE');
  const loadIds = new Map<string, string>([...of.fixedLoads].map(([name, { id }]) => [name, id]));
  for (const batch of free) await batchKept(laying, batch, runOf.get(batch) ?? null, loadIds);

  const planId = newId();
  const leftOut: PlanLeftOut[] = [
    ...of.leftOut.map(({ request, why }) => ({ requestId: request.id, label: request.container.label, why })),
    ...(answer?.batches ?? []).filter(isUnplaced).flatMap(({ jobs }) =>
      jobs.flatMap((name) => {
        const load = of.wanted.get(name);
        const why = 'no hours in which somebody is there are left for it';
        return load ? [{ requestId: load.request.id, label: load.request.container.label, why }] : [];
      }),
    ),
  ];
  await tx.ovenPlan.create({
    data: {
      id: planId,
      labId,
      madeAt: work.now,
      because,
      words: answer?.words ?? 'nothing waits to be planned',
      gapMinutes: answer?.gap.minutes ?? 0,
      gapRelative: answer?.gap.relative ?? 0,
      gapOvenHours: answer?.gap.ovenHours ?? null,
      isProven: answer?.provenOptimal ?? true,
      stopped: answer?.stopped ?? 'proof',
      weightedLatenessHours: answer?.objective.weightedLatenessHours ?? 0,
      ovenHours: answer?.objective.ovenHours ?? 0,
      runs: batches.length,
      seconds: laid.seconds,
      changes: changesSaid(laid, at, loadIds).map((change) => ({ ...change })),
      leftOut: leftOut.map((left) => ({ ...left })),
      before: before,
    },
  });
  work.changed('OvenPlan', planId, 'MADE');
  return planId;
}

const sameBatch = (one: AnswerBatch, batch: { oven: string; jobs: readonly string[] }): boolean =>
  one.isFixed && one.oven === batch.oven && one.jobs.some((job) => batch.jobs.includes(job));

async function fixedKept(
  { work, at }: Laying,
  run: RunRow,
  found: AnswerBatch | undefined,
  batch: { start: number; end: number },
): Promise<void> {
  const data = {
    plannedStart: at(batch.start),
    plannedEnd: at(batch.end),
    ...(found ? { setupMinutes: found.setupMinutes, reason: found.reason } : {}),
  };
  await work.tx.dryingRun.update({ where: { id: run.id }, data });
  work.changed('DryingRun', run.id, 'CHANGED');
}

/** Which run before each batch goes on from: the one in the same oven that shares most with it. */
function matched(batches: readonly AnswerBatch[], old: readonly RunRow[], of: Posed): Map<AnswerBatch, RunRow> {
  const keyOf = (name: string) => {
    const load = of.wanted.get(name);
    return load ? `${load.request.id} ${load.part}` : name;
  };
  const pairs = batches.flatMap((batch) => {
    const keys = new Set(batch.jobs.map(keyOf));
    return old.map((run) => {
      const same = run.loads.filter(({ requestId, part }) => keys.has(`${requestId} ${part}`)).length;
      return { batch, run, score: same + (run.oven.name === batch.oven ? 0.5 : 0), same };
    });
  });
  const found = new Map<AnswerBatch, RunRow>();
  const taken = new Set<string>();
  for (const { batch, run, same } of pairs.sort((a, b) => b.score - a.score)) {
    if (same === 0 || found.has(batch) || taken.has(run.id)) continue;
    found.set(batch, run);
    taken.add(run.id);
  }
  return found;
}

async function batchKept(
  { work, laid, at }: Laying,
  batch: AnswerBatch,
  before: RunRow | null,
  loadIds: Map<string, string>,
): Promise<void> {
  const { tx, labId } = work;
  const loads = batch.jobs.flatMap((name) => {
    const load = laid.posed.wanted.get(name);
    return load ? [{ name, load }] : [];
  });
  const oven = laid.facts.ovens.find(({ name }) => name === batch.oven);
  if (!oven || loads.length === 0) return;
  const data = {
    ovenId: oven.id,
    plannedStart: at(batch.start),
    plannedEnd: at(batch.end),
    temperatureC: batch.temperatureC ?? Math.max(...loads.map(({ load }) => load.dries.temperatureC[0])),
    setupMinutes: batch.setupMinutes,
    leastMinutes: batch.leastMinutes,
    mostMinutes: Math.min(...loads.map(({ load }) => load.dries.minutes[1])),
    isVacuum: loads.some(({ load }) => load.dries.vacuum),
    reason: batch.reason,
  };
  const runId = before?.id ?? newId();
  if (before) await tx.dryingRun.update({ where: { id: runId }, data });
  else
    await tx.dryingRun.create({ data: { id: runId, labId, state: 'PLANNED', doorAt: [], madeAt: work.now, ...data } });
  work.changed('DryingRun', runId, before ? 'CHANGED' : 'MADE');
  for (const { name, load } of loads) {
    const id = newId();
    loadIds.set(name, id);
    await tx.dryingLoad.create({ data: { id, labId, runId, events: [], ...columnsOf(load) } });
  }
}

const columnsOf = (load: Wanted) => ({
  requestId: load.request.id,
  part: load.part,
  parts: load.parts,
  dryGrams: load.dryGrams,
  plates: load.plates,
  depthMm: load.dries.depthMm,
  areaCm2: load.areaCm2,
  trays: load.trays,
});

function changesSaid(laid: Laid, at: (minute: number) => Date, loadIds: ReadonlyMap<string, string>): PlanChange[] {
  const { answer, posed: of, facts } = laid;
  if (!answer) return [];
  const placed = { ...answer, batches: answer.batches.filter((batch) => !batch.isFixed && !isUnplaced(batch)) };
  return changesOf(of.problem, of.before, placed).map(({ job, from, to, why }) => {
    const place = ({ oven, start }: { oven: string; start: number }) => ({ oven, start: at(start).toISOString() });
    const said = ({ oven, start }: { oven: string; start: number }) =>
      `${oven}, ${saidTime(at(start), facts.timeZone)}`;
    const reason = from && from.start < 0 ? 'it was not started then' : why;
    const sentence = from ? `${job}: from ${said(from)} to ${said(to)}, since ${reason}` : `${job}: ${said(to)}, new`;
    return {
      loadId: loadIds.get(job) ?? '',
      label: job,
      from: from && place(from),
      to: place(to),
      why: reason,
      sentence,
    };
  });
}

/** The unstarted runs as they stand, for taking a plan back. */
const snapshotOf = (runs: readonly RunRow[]) =>
  runs.map(({ loads, oven: _, ...run }) => ({
    ...run,
    loads: loads.map(({ request: __, ...load }) => load),
  }));
