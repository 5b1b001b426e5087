// Planning anew: all open needs together, within the transaction that moved something. Steps that were begun stay;
// rows that do not change are not written, so that calendars and printed sheets see only what moved.
import { Prisma, type Need, type PrepStep } from '../database/generated/sqlite/client.ts';
import { planNeeds, type Outcome } from '../science/prep/plan.ts';
import type { PlannedStep } from '../science/prep/stages.ts';
import { holdsMade, needLetGo, nothingGrams } from '../stock/service.ts';
import { newId, type Work } from '../work.ts';
import { broughtUpBefore } from './before-plan.ts';
import { chainOf, type Chain } from './chain.ts';
import { described, type Describing } from './describe.ts';
import { detailOf, type StepDetail } from './detail.ts';
import { amountOf, factsOf, type LabFacts, type NeedFacts, type PrepFacts, type Reader } from './facts.ts';
import { type Ground, groundOf } from './ground.ts';
import { type HeatOf, heatOf } from './heat.ts';
import { instantOf, minuteOf } from './hours.ts';
import { lackWords, missedWords, obstacleIn, type Obstacle } from './obstacle.ts';
import { pastLetGo } from './overdue.ts';
import { requestsKept } from './requests.ts';
import { reserved, Shelf, type Keeps } from './reserve.ts';

export interface Planned {
  facts: NeedFacts;
  heat: HeatOf;
  chain: Chain;
  outcome: Outcome | null;
  obstacle: Obstacle | null;
  firstPossible: Date | null;
  steps: PlannedStep[];
}

/** Plans needs on plain facts; what has no stock has its obstacle already and is not planned. */
export function plannedNeeds(prep: PrepFacts, ground: Ground, lacking: ReadonlyMap<string, Obstacle>): Planned[] {
  const chains = prep.needs.map((facts) => {
    const heat = heatOf(facts, ground.described);
    return { facts, heat, chain: chainOf(facts, prep, ground, heat) };
  });
  const able = chains.filter(({ facts }) => !lacking.has(facts.need.id));
  const outcomes = new Map(
    planNeeds(
      able.map(({ chain }) => chain.prep),
      ground.resources,
    ).map((outcome) => [outcome.needId, outcome]),
  );
  return chains.map(({ facts, heat, chain }): Planned => {
    const outcome = outcomes.get(facts.need.id) ?? null;
    const lack = lacking.get(facts.need.id) ?? null;
    if (!outcome) return { facts, heat, chain, outcome, obstacle: lack, firstPossible: null, steps: [] };
    if (outcome.steps) {
      return {
        facts,
        heat,
        chain,
        outcome,
        obstacle: null,
        firstPossible: null,
        steps: [...chain.running, ...outcome.steps],
      };
    }
    const atMost = {
      hoodPlaces: prep.settings.hoodPlaces,
      isPlates: facts.need.kind === 'PLATES',
      amount: amountOf(facts),
    };
    return {
      facts,
      heat,
      chain,
      outcome,
      obstacle: missedWords(outcome.obstacle, prep.lab.timeZone, outcome.firstPossible === null ? atMost : null),
      firstPossible: outcome.firstPossible === null ? null : instantOf(outcome.firstPossible),
      steps: chain.running,
    };
  });
}

/** Steps of one kind and load number each; several waits in the desiccator are numbered. */
function numbered(steps: readonly PlannedStep[]): PlannedStep[] {
  let keeps = 0;
  return steps.map((step) => (step.kind === 'KEEP' ? { ...step, load: (keeps += 1) } : step));
}

const keyOf = ({ kind, load }: { kind: string; load: number }): string => `${kind}:${load}`;

const sameStep = (row: PrepStep, step: PlannedStep, detail: StepDetail): boolean =>
  row.goneAt === null &&
  minuteOf(row.startAt) === step.start &&
  minuteOf(row.endAt) === step.end &&
  row.loads === step.loads &&
  JSON.stringify(detailOf(row.detail)) === JSON.stringify(detailOf(detail));

/**
 * Writes one need's steps: moved, gone; what was done is left, or found open again where its event was taken back. New ones
 * are answered, to be written all at once.
 */
async function stepsKept(work: Work, planned: Planned, by: Describing): Promise<Prisma.PrepStepCreateManyInput[]> {
  const made: Prisma.PrepStepCreateManyInput[] = [];
  const { tx, labId, now } = work;
  const { facts, heat, chain } = planned;
  const { need } = facts;
  const wanted = new Map(numbered(planned.steps).map((step) => [keyOf(step), step]));
  for (const row of facts.steps) {
    const step = wanted.get(keyOf(row));
    const isDone = row.doneAt !== null;
    const doneElsewhere = chain.done.get(row.kind);
    if (!isDone && !step && doneElsewhere && row.goneAt === null) {
      // Recorded on the container itself, not by a tick.
      await tx.prepStep.update({
        where: { id: row.id },
        data: { doneAt: doneElsewhere, version: row.version + 1, changedAt: now },
      });
      work.changed('PrepStep', row.id, 'CHANGED');
    } else if (isDone && step && hasEvents(row)) {
      await tx.prepStep.update({ where: { id: row.id }, data: { doneAt: null, doneById: null, events: [] } });
    }
  }
  for (const [key, step] of wanted) {
    const row = facts.steps.find((each) => keyOf(each) === key);
    if (row?.doneAt && !hasEvents(row)) continue;
    const detail = described(facts, step, { ...by, heat });
    const data = {
      loads: step.loads,
      startAt: instantOf(step.start),
      endAt: instantOf(step.end),
      isAttended: step.isAttended,
      detail,
      goneAt: null,
      changedAt: now,
    };
    if (!row) {
      const id = newId();
      made.push({ id, labId, needId: need.id, kind: step.kind, load: step.load, events: [], ...data });
      work.changed('PrepStep', id, 'MADE');
    } else if (!sameStep(row, step, detail)) {
      await tx.prepStep.update({ where: { id: row.id }, data: { ...data, version: row.version + 1 } });
      work.changed('PrepStep', row.id, 'CHANGED');
    }
  }
  for (const row of facts.steps) {
    if (wanted.has(keyOf(row)) || row.doneAt || row.goneAt || chain.done.has(row.kind)) continue;
    await tx.prepStep.update({
      where: { id: row.id },
      data: { goneAt: now, version: row.version + 1, changedAt: now },
    });
    work.changed('PrepStep', row.id, 'GONE');
  }
  return made;
}

/** Steps whose time has come are taken to be under way, as printed, until somebody says otherwise. */
async function begunMarked(work: Work, needs: readonly NeedFacts[]): Promise<void> {
  const ids = needs.flatMap(({ steps }) =>
    steps.filter((row) => !row.doneAt && !row.goneAt && !row.begunAt && row.startAt <= work.now).map(({ id }) => id),
  );
  if (ids.length > 0) await work.tx.prepStep.updateMany({ where: { id: { in: ids } }, data: { begunAt: work.now } });
}

const hasEvents = ({ events }: PrepStep): boolean => Array.isArray(events) && events.length > 0;

async function needKept(work: Work, { facts: { need }, obstacle, firstPossible }: Planned): Promise<void> {
  const same =
    JSON.stringify(obstacleIn(need.obstacle)) === JSON.stringify(obstacle) &&
    (need.firstPossibleAt?.getTime() ?? null) === (firstPossible?.getTime() ?? null);
  if (same) return;
  await work.tx.need.update({
    where: { id: need.id },
    data: { obstacle: obstacle ?? Prisma.DbNull, firstPossibleAt: firstPossible },
  });
  work.changed('Need', need.id, 'CHANGED');
}

/** Needs that are planned: neither met nor dropped, and not over. */
export const openNeeds = (reader: Pick<Reader, 'need'>, labId: string, now: Date): Promise<Need[]> =>
  reader.need.findMany({
    where: { labId, metAt: null, droppedAt: null, at: { gt: now } },
    orderBy: { id: 'asc' },
  });

/** Whether what is kept for a need will do still. */
function isKept(facts: NeedFacts, rejected: ReadonlyMap<string, string>): boolean {
  const { need, kept } = facts;
  if (kept.some(({ container: { lotId } }) => rejected.has(lotId))) return false;
  if (kept.some(({ container: { isVoid, finishedAt } }) => isVoid || finishedAt !== null)) return false;
  if (kept.some(({ container }) => container.kind === 'COLUMN')) return true;
  const isSpoiled = ({ container }: (typeof kept)[number]) =>
    need.kind !== 'PLATES' && container.touchedSolventAt !== null;
  const there = kept.reduce((sum, { amount }) => sum + amount, 0);
  return there >= amountOf(facts) - nothingGrams && !kept.some(isSpoiled);
}

/** Sees to it that every need has its stock, heavier and earlier ones first; says what stands in the way where there is none. */
async function stocked(work: Work, prep: PrepFacts): Promise<{ lacking: Map<string, Obstacle>; isMoved: boolean }> {
  const lacking = new Map<string, Obstacle>();
  const shelf = new Shelf(work.tx, work.labId);
  const rejected = await shelf.rejectedLots();
  const without = prep.needs
    .filter((facts) => !isKept(facts, rejected))
    .sort((a, b) => b.need.weight - a.need.weight || a.need.at.getTime() - b.need.at.getTime());
  // First let go of all that will not do, so that others may have it.
  for (const { need, kept } of without) if (kept.length > 0) await needLetGo(work, need.id);
  let isMoved = without.some(({ kept }) => kept.length > 0);
  const keeps: Keeps[] = [];
  const byLot = new Map<string, string[]>();
  for (const facts of without) {
    const choice = await reserved(work, shelf, facts, keeps);
    if (choice.shares !== null) {
      isMoved = true;
      const { id, isLotWished, lotId } = facts.need;
      if (!isLotWished && choice.lotId !== null && lotId !== choice.lotId)
        byLot.set(choice.lotId, [...(byLot.get(choice.lotId) ?? []), id]);
    }
    if (choice.shares === null) lacking.set(facts.need.id, lackWords(facts, choice));
  }
  await holdsMade(work, keeps);
  for (const [lotId, ids] of byLot) await work.tx.need.updateMany({ where: { id: { in: ids } }, data: { lotId } });
  return { lacking, isMoved };
}

/** Plans everything anew and keeps what came of it: stock, steps, what stands in the way, what is to be dried. */
export async function replanned(work: Work, lab: LabFacts): Promise<void> {
  const { tx, labId, now } = work;
  await pastLetGo(work, lab);
  await broughtUpBefore(work, lab);
  const needs = await openNeeds(tx, labId, now);
  const before = await factsOf(tx, lab, needs, now);
  const { lacking, isMoved } = await stocked(work, before);
  const prep = isMoved ? await factsOf(tx, lab, await openNeeds(tx, labId, now), now) : before;
  const last = needs.reduce((latest, { at }) => (at > latest ? at : latest), now);
  const ground = await groundOf(tx, lab, now, last);
  const rooms = new Map((await tx.room.findMany({ where: { labId } })).map(({ id, name }) => [id, name]));
  const planned = plannedNeeds(prep, ground, lacking);
  const made: Prisma.PrepStepCreateManyInput[] = [];
  for (const each of planned) {
    const roomName = rooms.get(each.facts.need.roomId ?? '') ?? null;
    made.push(...(await stepsKept(work, each, { settings: prep.settings, ovenNames: ground.ovenNames, roomName })));
    await needKept(work, each);
  }
  if (made.length > 0) await tx.prepStep.createMany({ data: made });
  await begunMarked(work, prep.needs);
  await requestsKept(work, planned);
  await markPlanned(work);
}

/** Changes of these are our own, and planned when they are made. */
const own = ['Need', 'PrepStep', 'PrepSheet', 'SolventBatch', 'Hold'];

/** The last change that planning has not made itself. */
export async function lastForeign(reader: Pick<Work['tx'], 'change'>, labId: string): Promise<number> {
  const last = await reader.change.findFirst({
    where: { labId, entity: { notIn: own } },
    orderBy: { id: 'desc' },
    select: { id: true },
  });
  return last?.id ?? 0;
}

async function markPlanned(work: Work): Promise<void> {
  const { tx, labId, now } = work;
  const data = { plannedAt: now, changeNumber: await lastForeign(tx, labId) };
  await tx.prepPlan.upsert({ where: { labId }, create: { labId, ...data }, update: data });
}
