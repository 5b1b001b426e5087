// A batch of a plan, kept as a run with its loads.
import type { AnswerBatch } from '../science/ovens/answer.ts';
import { newId, type Work } from '../work.ts';
import type { RunRow } from './facts.ts';
import type { Wanted } from './shares.ts';
import type { Laid } from './plan-laid.ts';

export interface Laying {
  work: Work;
  laid: Laid;
  at: (minute: number) => Date;
}

export async function batchKept(
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
    mostMinutes: Math.min(...loads.map(({ load }) => load.minutes[1])),
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
