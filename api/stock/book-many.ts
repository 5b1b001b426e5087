// Many containers come in at once: the same bookings as one by one, folded in memory and written in a few statements.
import type { Container, Prisma } from '../database/generated/sqlite/client.ts';
import { addMissingExposures } from '../database/exposures.ts';
import type { Engine } from '../database/client.ts';
import { newId, type Work } from '../work.ts';
import { nextNumbers } from './counter.ts';
import type { Said } from './details.ts';
import { booked } from './happen.ts';
import { labelOf } from './label.ts';
import { shapeless, type Shape } from './made.ts';
import { fold } from './rules.ts';
import type { Entry } from './stand.ts';
import { baseOf, entryOf, nowColumns } from './timeline.ts';

type Closure = Container['closure'];

/** One container that came in, and what happened to it since. */
export interface Arrival {
  kind: 'DRUM' | 'PLATE_BOX';
  lotId: string;
  shape: Shape;
  tareGrams: number | null;
  roomId: string;
  oldCode: string | null;
  at: Date;
  closure: Closure;
  grams: number | null;
  plates: number | null;
  startWaterFraction: number | null;
  startWaterFrom: 'GIVEN' | 'CERTIFICATE' | 'NOWHERE';
  /** The water by which its grams are booked where its own is not known. */
  bookedWaterFraction: number;
  note: string | null;
  then: { type: 'OPENED' | 'CLOSED'; at: Date; closure?: Closure }[];
}

/** Rows in one statement: an engine takes so many values at once. */
const chunk = 250;

async function inChunks<Row>(rows: readonly Row[], write: (some: Row[]) => Promise<unknown>): Promise<void> {
  for (let from = 0; from < rows.length; from += chunk) await write(rows.slice(from, from + chunk));
}

const untouched = {
  takenFromId: null,
  isOpen: false,
  openedAt: null,
  dryGrams: 0,
  dryGramsAssumed: false,
  plates: null,
  heldDryGrams: 0,
  heldPlates: 0,
  scooping: 'TOP',
  habit: null,
  wettedAt: null,
  touchedSolventAt: null,
  hoodAt: null,
  regime: null,
  preparedAt: null,
  regimeHumidityPercent: null,
  regimeTemperatureC: null,
  prepared: null,
  finishedAt: null,
  isVoid: false,
} as const;

/** Books them; gives the ids in their order. Nothing of it can be untrue: each begins with coming in. */
export async function bookedMany(
  work: Work,
  engine: Engine,
  arrivals: readonly Arrival[],
): Promise<{ containerIds: string[]; eventIds: string[] }> {
  const { tx, labId, actorId, now } = work;
  const eventCount = arrivals.reduce((sum, { then }) => sum + 1 + then.length, 0);
  const firstLabel = await nextNumbers(work, 'label', arrivals.length);
  let seq = await nextNumbers(work, 'event', eventCount);
  const containers: Prisma.ContainerCreateManyInput[] = [];
  const events: Prisma.EventCreateManyInput[] = [];
  for (const [index, arrival] of arrivals.entries()) {
    const { kind, lotId, shape, tareGrams, roomId, oldCode, at, closure, note, then } = arrival;
    const container: Container = {
      ...untouched,
      ...shape,
      id: newId(),
      labId,
      label: labelOf(firstLabel + index),
      oldCode,
      kind,
      lotId,
      tareGrams,
      usualClosure: 'WELL_CLOSED',
      roomId,
      closure,
      cameInAt: at,
    };
    const { grams, plates, startWaterFraction, startWaterFrom, bookedWaterFraction } = arrival;
    const water = { startWaterFraction, startWaterFrom, bookedWaterFraction };
    const cameIn = { grams, basis: 'AS_RECEIVED', plates, roomId, closure, ...water };
    const happenings = [
      { type: 'CAME_IN', at, said: cameIn, note } as const,
      ...then.map((one) => ({
        type: one.type,
        at: one.at,
        said: one.closure ? { closure: one.closure } : {},
        note: null,
      })),
    ];
    const entries: Entry[] = [];
    for (const { type, at: when, said, note: text } of happenings) {
      const scene = { work, container, at: when, entries, stand: null, under: 'input' };
      const booking = await booked(type, scene, said);
      const event = {
        id: newId(),
        labId,
        containerId: container.id,
        otherContainerId: null,
        type: booking.said.type,
        at: when,
        recordedAt: now,
        recordedSeq: seq,
        actorId,
        note: text,
        detail: booking.said.detail,
        dryGrams: booking.dryGrams,
        plates: booking.plates,
        correctsId: null,
        stands: true,
        place: seq,
      };
      seq += 1;
      events.push(event);
      entries.push(entryOf(event, container.id));
      work.changed('Event', event.id, 'MADE');
    }
    const { stand, impossible } = fold(baseOf(container), entries);
    if (!stand) throw new Error(`${container.label}: ${impossible.why}`);
    const { habit: _, prepared: __, ...row } = container;
    containers.push({ ...row, ...nowColumns(stand) });
    work.changed('Container', container.id, 'MADE');
  }
  await inChunks(containers, (data) => tx.container.createMany({ data }));
  await inChunks(events, (data) => tx.event.createMany({ data }));
  await addMissingExposures(tx, engine, labId);
  return { containerIds: containers.map(({ id }) => String(id)), eventIds: events.map(({ id }) => String(id)) };
}

/** Takes back all that was booked so, as corrections: nothing is erased, and it counts no longer. */
export async function takenBackMany(
  work: Work,
  containerIds: readonly string[],
  eventIds: readonly string[],
  why: string,
): Promise<void> {
  const { tx, labId, actorId, now } = work;
  const stood: { id: string; containerId: string; at: Date; place: number }[] = [];
  await inChunks(eventIds, async (ids) => {
    stood.push(...(await tx.event.findMany({ where: { id: { in: ids }, labId, stands: true } })));
  });
  let seq = await nextNumbers(work, 'event', stood.length);
  const corrections = stood.map(({ id, containerId, at, place }) => {
    const said: Said = { type: 'CORRECTED', detail: { standsId: null, why } };
    const told = { recordedAt: now, recordedSeq: seq++, actorId, note: why, ...said };
    return { id: newId(), labId, containerId, at, place, correctsId: id, stands: false, ...told };
  });
  await inChunks(eventIds, (ids) => tx.event.updateMany({ where: { id: { in: ids } }, data: { stands: false } }));
  await inChunks(corrections, (data) => tx.event.createMany({ data }));
  const gone = { isOpen: false, openedAt: null, dryGrams: 0, plates: null, finishedAt: now, isVoid: true } as const;
  await inChunks(containerIds, async (ids) => {
    await tx.container.updateMany({ where: { id: { in: ids } }, data: gone });
    const stale = { staleFrom: new Date(0), version: { increment: 1 } };
    await tx.exposure.updateMany({ where: { containerId: { in: ids } }, data: stale });
  });
  for (const { id } of corrections) work.changed('Event', id, 'MADE');
  for (const id of containerIds) work.changed('Container', id, 'GONE');
}

/** The shape of what has a listed vessel. */
export const shapeOfVessel = (of: {
  id: string;
  innerDiameterMm: number;
  heightMm: number;
  mouthDiameterMm: number;
  volumeMl: number;
}): Shape => {
  const { id, innerDiameterMm, heightMm, mouthDiameterMm, volumeMl } = of;
  return { ...shapeless, vesselId: id, innerDiameterMm, heightMm, mouthDiameterMm, volumeMl };
};
