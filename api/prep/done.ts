// What a ticked step records: the event that belongs to it, on every container that is kept for its need. What is
// taken apart for the need is kept for it from then on.
import type { Container, Hold, Lab, Need, PrepStep } from '../database/generated/sqlite/client.ts';
import { invalid } from '../errors.ts';
import {
  columnFilled,
  happened,
  holdMade,
  needLetGo,
  nothingGrams,
  packColumnSaid,
  platesMoved,
  portionPoured,
  takePlatesSaid,
  takePortionSaid,
} from '../stock/service.ts';
import type { Work } from '../work.ts';
import { detailOf, type StepDetail } from './detail.ts';
import type { How } from './tick.ts';

interface Doing {
  work: Work;
  need: Need;
  step: PrepStep;
  detail: StepDetail;
  by: How & { at: Date };
  path: string;
  lab: Lab;
  events: string[];
  notes: string[];
}

type KeptRow = Hold & { container: Container };

const keptFor = ({ work, need }: Doing): Promise<KeptRow[]> =>
  work.tx.hold.findMany({
    where: { needId: need.id, releasedAt: null },
    include: { container: true },
    orderBy: { id: 'asc' },
  });

const noted = (doing: Doing, recorded: { eventId: string; notes: string[] }): void => {
  doing.events.push(recorded.eventId);
  doing.notes.push(...recorded.notes);
};

/** From now on the need is kept in these containers, and in no others. */
async function keptIn(
  { work, need }: Doing,
  rows: { containerId: string; dryGrams: number | null; plates: number | null }[],
) {
  await needLetGo(work, need.id);
  for (const row of rows) await holdMade(work, { ...row, forWhat: need.forWhom, until: need.at, needId: need.id });
}

/** The plates of a need in boxes of their own; those that are alone there stay. */
async function platesApart(doing: Doing): Promise<Container[]> {
  const { work, by } = doing;
  const rows = await keptFor(doing);
  await needLetGo(work, doing.need.id);
  const own: { container: Container; plates: number }[] = [];
  for (const { container, plates } of rows) {
    if (plates === null || plates >= (container.plates ?? 0)) own.push({ container, plates: plates ?? 0 });
    else {
      const input = takePlatesSaid.parse({ label: container.label, plates, at: by.at, closure: 'OPEN' });
      const taken = await platesMoved(work, input);
      noted(doing, taken);
      if (taken.madeId)
        own.push({ container: await work.tx.container.findUniqueOrThrow({ where: { id: taken.madeId } }), plates });
    }
  }
  await keptIn(
    doing,
    own.map(({ container, plates }) => ({ containerId: container.id, dryGrams: null, plates })),
  );
  return own.map(({ container }) => container);
}

/** A jar that holds so many dry grams, half again as high as wide and two thirds full. */
function jarFor(dryGrams: number): { innerDiameterMm: number; heightMm: number } {
  const gramsPerMl = 0.5;
  const diameterCm = Math.cbrt((4 * dryGrams) / gramsPerMl / Math.PI);
  return { innerDiameterMm: Math.ceil(diameterCm * 10), heightMm: Math.ceil(diameterCm * 15) };
}

/** The sorbent of a need in containers of its own; all of one stays where it is. */
async function sorbentApart(doing: Doing): Promise<Container[]> {
  const { work, by } = doing;
  const own: { container: Container; dryGrams: number }[] = [];
  const rows = await keptFor(doing);
  await needLetGo(work, doing.need.id);
  for (const { container, dryGrams } of rows) {
    const wanted = dryGrams ?? 0;
    if (wanted >= container.dryGrams - nothingGrams) own.push({ container, dryGrams: wanted });
    else {
      const vessel = by.vessel ? { vessel: by.vessel } : jarFor(wanted);
      const said = {
        label: container.label,
        grams: wanted,
        basis: 'DRY',
        at: by.at,
        closure: 'WELL_CLOSED',
        ...vessel,
      };
      const poured = await portionPoured(work, takePortionSaid.parse(said));
      noted(doing, poured);
      if (poured.madeId)
        own.push({
          container: await work.tx.container.findUniqueOrThrow({ where: { id: poured.madeId } }),
          dryGrams: wanted,
        });
    }
  }
  await keptIn(
    doing,
    own.map(({ container, dryGrams }) => ({ containerId: container.id, dryGrams, plates: null })),
  );
  return own.map(({ container }) => container);
}

async function ovenDone(doing: Doing): Promise<void> {
  const { work, need, by, detail } = doing;
  const own = need.kind === 'PLATES' ? await platesApart(doing) : await sorbentApart(doing);
  const ovens = await work.tx.oven.findFirst({ where: { id: detail.ovenId ?? '', labId: work.labId } });
  for (const container of own) {
    const said = {
      temperatureC: by.temperatureC ?? detail.temperatureC,
      minutes: by.minutes ?? detail.minutes,
      vacuum: detail.isVacuum ?? false,
      waterFraction: by.waterFraction ?? null,
      ...(ovens ? { oven: ovens.name } : {}),
    };
    const recorded = await happened(work, { type: 'DRIED', container, at: by.at, note: by.note ?? null, said });
    noted(doing, recorded);
    const waiting = await work.tx.dryingRequest.findMany({
      where: { labId: work.labId, needId: need.id, state: 'WAITING' },
    });
    for (const { id } of waiting) {
      await work.tx.dryingRequest.update({
        where: { id },
        data: { state: 'DRIED', endedAt: by.at, eventId: recorded.eventId },
      });
      work.changed('DryingRequest', id, 'CHANGED');
    }
  }
}

async function packed(doing: Doing): Promise<void> {
  const { work, by, detail, path, step } = doing;
  const rows = await keptFor(doing);
  const [first, ...others] = rows;
  if (!first) throw invalid(path, step.id, 'a need with its sorbent kept; nothing is');
  if (others.length > 0) throw invalid(path, step.id, 'sorbent in one container: combine what is kept for it first');
  await needLetGo(work, doing.need.id);
  const said = {
    label: first.container.label,
    grams: first.dryGrams,
    basis: 'DRY',
    at: by.at,
    note: by.note,
    innerDiameterMm: detail.diameterMm,
    bedLengthMm: detail.bedLengthMm,
    closure: 'WELL_CLOSED',
  };
  const recorded = await columnFilled(work, packColumnSaid.parse(said));
  noted(doing, recorded);
  if (recorded.madeId) await keptIn(doing, [{ containerId: recorded.madeId, dryGrams: first.dryGrams, plates: null }]);
}

async function handedOver(doing: Doing): Promise<void> {
  const { work, need, by } = doing;
  const rows = await keptFor(doing);
  await needLetGo(work, need.id);
  for (const { container, dryGrams, plates } of rows) {
    const isPart =
      plates !== null ? plates < (container.plates ?? 0) : (dryGrams ?? 0) < container.dryGrams - nothingGrams;
    if (isPart && plates !== null) {
      const room = need.roomId ? await work.tx.room.findUnique({ where: { id: need.roomId } }) : null;
      const input = takePlatesSaid.parse({
        label: container.label,
        plates,
        at: by.at,
        closure: 'WELL_CLOSED',
        room: room?.name,
      });
      noted(doing, await platesMoved(work, input));
    } else if (isPart && container.kind !== 'COLUMN') {
      const said = { label: container.label, grams: dryGrams, basis: 'DRY', at: by.at, note: by.note };
      noted(doing, await portionPoured(work, takePortionSaid.parse(said)));
    } else if (need.roomId && need.roomId !== container.roomId) {
      const said = { roomId: need.roomId };
      noted(doing, await happened(work, { type: 'MOVED', container, at: by.at, note: by.note ?? null, said }));
    }
  }
  await work.tx.need.update({ where: { id: need.id }, data: { metAt: by.at, changedAt: work.now } });
  work.changed('Need', need.id, 'CHANGED');
}

async function eachKept(doing: Doing, record: (container: Container) => Promise<{ eventId: string; notes: string[] }>) {
  for (const { container } of await keptFor(doing)) noted(doing, await record(container));
}

/** Records what a step says. */
export async function stepDone(
  work: Work,
  step: PrepStep,
  by: How & { at: Date },
  path: string,
  lab: Lab,
): Promise<{ events: string[]; notes: string[] }> {
  const need = await work.tx.need.findUniqueOrThrow({ where: { id: step.needId } });
  if (need.droppedAt) throw invalid(path, step.id, 'a step of a need that was not dropped');
  const detail = detailOf(step.detail);
  const doing: Doing = { work, need, step, detail, by, path, lab, events: [], notes: [] };
  const { at } = by;
  const note = by.note ?? null;
  const ml = detail.solvents.reduce((sum, each) => sum + each.ml, 0);
  switch (step.kind) {
    case 'PRE_WASH':
      for (const container of await platesApart(doing)) {
        const said = {
          solvent: detail.mixture,
          fullLength: true,
          isMobilePhase: need.isForExtraction,
          tankLoads: step.load,
          mlPerLoad: ml,
        };
        noted(doing, await happened(work, { type: 'PRE_WASHED', container, at, note, said }));
      }
      break;
    case 'AIR_DRY':
      await eachKept(doing, (container) => happened(work, { type: 'SOLVENT_GONE', container, at, note, said: {} }));
      break;
    case 'OVEN':
      await ovenDone(doing);
      break;
    case 'EQUILIBRATE': {
      await eachKept(doing, (container) => {
        const said = { humidityPercent: detail.humidityPercent ?? 50, temperatureC: by.temperatureC ?? 22 };
        return happened(work, { type: 'EQUILIBRATED', container, at, note, said });
      });
      break;
    }
    case 'PACK':
      await packed(doing);
      break;
    case 'CONDITION':
      await eachKept(doing, (container) => {
        const said = {
          mobilePhase: detail.mixture,
          columnVolumes: detail.columnVolumes,
          minutes: detail.minutes,
          flowMlPerMin: detail.flowMlPerMin,
        };
        return happened(work, { type: 'CONDITIONED', container, at, note, said });
      });
      break;
    case 'HAND_OVER':
      await handedOver(doing);
      break;
    default:
      break;
  }
  return { events: doing.events, notes: doing.notes };
}
