// What was dried in a run goes onto the timelines: some of a container is poured into one of its own, then the drying itself.
import type { Container } from '../database/generated/sqlite/client.ts';
import {
  happened,
  nothingGrams,
  platesMoved,
  portionPoured,
  takePlatesSaid,
  takePortionSaid,
} from '../stock/service.ts';
import type { Work } from '../work.ts';
import type { WholeLoad, WholeRun } from './run-rows.ts';

export interface Result {
  waterFraction: number | null;
  vessel: string | null;
  room: string | null;
  note: string | null;
}

export interface Booked {
  /** What was dried: the container itself, or one of its own that was made. */
  container: Container;
  madeId: string | null;
  /** In the order they were recorded. */
  eventIds: string[];
  driedId: string;
  notes: string[];
}

/** Room above the bed in a tray that nobody named, mm. */
const rimMm = 20;

/** A round tray of the same area, for a portion that stays in the tray it was dried in. */
const trayShape = ({ areaCm2, trays, depthMm }: WholeLoad) => {
  const each = areaCm2 / Math.max(1, trays);
  const deep = depthMm ?? rimMm;
  return {
    innerDiameterMm: Math.min(10_000, Math.max(1, Math.sqrt((4 * each * 100) / Math.PI))),
    heightMm: deep + rimMm,
  };
};

/** Some of it goes into a container of its own; null when all that is there was dried where it is. */
async function setApart(work: Work, run: WholeRun, load: WholeLoad, container: Container, result: Result) {
  const { label, kind } = container;
  const { vessel, room } = result;
  // It was poured when it went into the oven.
  const shared = { label, at: run.startedAt, room, note: null, clientKey: null, closure: 'WELL_CLOSED' as const };
  if (kind === 'PLATE_BOX') {
    if (load.plates === null || load.plates === container.plates) return null;
    return platesMoved(work, takePlatesSaid.parse({ ...shared, plates: load.plates }));
  }
  const grams = load.dryGrams;
  if (grams === null || grams >= container.dryGrams - Math.max(nothingGrams, 1e-3)) return null;
  const shape = vessel ? { vessel } : trayShape(load);
  return portionPoured(work, takePortionSaid.parse({ ...shared, grams, basis: 'DRY', ...shape }));
}

export async function bookedDrying(
  work: Work,
  run: WholeRun,
  load: WholeLoad,
  at: Date,
  minutes: number,
  result: Result,
): Promise<Booked> {
  const { tx } = work;
  const source = await tx.container.findUniqueOrThrow({ where: { id: load.request.containerId } });
  const apart = await setApart(work, run, load, source, result);
  const container = apart?.madeId ? await tx.container.findUniqueOrThrow({ where: { id: apart.madeId } }) : source;
  const { waterFraction, note } = result;
  const { temperatureC, isVacuum, oven } = run;
  const { pressureMbar, waterMbar, hasFan: fan } = oven;
  const dried = await happened(work, {
    type: 'DRIED',
    container,
    at,
    note,
    said: {
      temperatureC,
      minutes: Math.round(minutes),
      vacuum: isVacuum,
      waterFraction,
      oven: oven.name,
      depthMm: load.depthMm,
      fan,
      waterMbar,
      ...(isVacuum ? { pressureMbar } : {}),
    },
  });
  return {
    container,
    madeId: apart?.madeId ?? null,
    eventIds: [...(apart ? [apart.eventId] : []), dried.eventId],
    driedId: dried.eventId,
    notes: [...(apart?.notes ?? []), ...dried.notes],
  };
}
