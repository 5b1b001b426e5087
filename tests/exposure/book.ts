// A book of stock written row by row: one lab, two rooms with an invented damp air, one lot of silica, and events as told.
import type { Database } from '../../api/database/database.ts';
import type { Closure, ContainerKind, EventType, Prisma } from '../../api/database/generated/sqlite/client.ts';
import { encodeRoomDay } from '../../api/climate/room-day.ts';
import { saturatedKgPerM3 } from '../../api/science/air.ts';
import type { DayBlocks } from '../../api/science/history.ts';
import { markStale, newId } from '../../api/work.ts';

export const hour = 3_600_000;
export const day = 24 * hour;
export const start = Date.UTC(2026, 2, 2);

/** A day of air that swings with the hour and differs from day to day; nothing random. */
export function invented(number: number, dampness: number): DayBlocks {
  const temperatureC = Float64Array.from({ length: 288 }, (_, k) => 21 + 2 * Math.sin((2 * Math.PI * (k - 100)) / 288));
  const saturatedKgPerM3_ = temperatureC.map(saturatedKgPerM3);
  const humidity = (k: number) => dampness + 0.1 * Math.sin(number) + 0.05 * Math.sin((2 * Math.PI * k) / 96);
  return {
    day: number,
    temperatureC,
    saturatedKgPerM3: saturatedKgPerM3_,
    vapourKgPerM3: saturatedKgPerM3_.map((full, k) => full * humidity(k)),
    uncertain: new Uint8Array(288),
  };
}

export interface Told {
  type: EventType;
  at: number;
  detail?: Prisma.InputJsonObject;
  other?: string;
  dryGrams?: number;
  plates?: number;
}

export interface Shelf {
  kind?: ContainerKind;
  closure?: Closure;
  habit?: { timesADay: number; minutes: number };
}

const scoopFrom = { grams: 100, bookedWaterFraction: 0.01, waterAssumed: false, basis: 'DRY' };
export const poured = (roomId: string, closure: Closure = 'OPEN'): Prisma.InputJsonObject => ({
  ...scoopFrom,
  openMinutes: 5,
  leftOpen: false,
  scooping: null,
  into: { roomId, closure },
});

/** Opens a new lab's book with `days` of air in its rooms `bench` and `store`. */
export async function openBook(database: Database, days: number) {
  const labId = newId();
  const [bench, store, sorbentId, lotId] = [newId(), newId(), newId(), newId()];
  await database.write(async (tx) => {
    await tx.lab.create({
      data: { id: labId, name: labId, timeZone: 'Europe/Helsinki', settings: {}, createdAt: new Date(start) },
    });
    await tx.room.createMany({
      data: [
        { id: bench, labId, name: 'bench', kind: 'ROOM' },
        { id: store, labId, name: 'store', kind: 'ROOM' },
      ],
    });
    await tx.sorbent.create({ data: { id: sorbentId, labId, name: 'silica 60', sorbentClass: 'silica' } });
    await tx.lot.create({
      data: { id: lotId, labId, sorbentId, lotNumber: 'A', receivedAt: new Date(start), certificate: [] },
    });
  });
  let seq = 0;
  const book = {
    labId,
    bench,
    store,
    lotId,
    lab: { id: labId, timeZone: 'Europe/Helsinki', settings: {} },
    /** Writes the air of more days. */
    async air(fromDay: number, untilDay: number) {
      const numbers = Array.from({ length: untilDay - fromDay }, (_, index) => start / day + fromDay + index);
      const rows = numbers.flatMap((number) => [
        { labId, roomId: bench, day: number, blocks: encodeRoomDay(invented(number, 0.5)) as Uint8Array<ArrayBuffer> },
        { labId, roomId: store, day: number, blocks: encodeRoomDay(invented(number, 0.35)) as Uint8Array<ArrayBuffer> },
      ]);
      await database.write((tx) => tx.roomDay.createMany({ data: rows }));
    },
    /** Puts a container on the shelf; its first event must be told. */
    async shelve(shelf: Shelf = {}): Promise<string> {
      const id = newId();
      const sizes =
        shelf.kind === 'PLATE_BOX'
          ? { layerThicknessMm: 0.25, plateWidthMm: 200, plateHeightMm: 200 }
          : { innerDiameterMm: 90, heightMm: 180, mouthDiameterMm: 80, volumeMl: 1000 };
      await database.write((tx) =>
        tx.container.create({
          data: {
            id,
            labId,
            label: id.slice(-8),
            kind: shelf.kind ?? 'DRUM',
            lotId,
            usualClosure: 'TIGHT',
            ...sizes,
            roomId: bench,
            cameInAt: new Date(start),
            isOpen: shelf.closure === 'OPEN',
            closure: shelf.closure ?? 'TIGHT',
            dryGrams: 400,
            ...(shelf.habit && { habit: shelf.habit }),
          },
        }),
      );
      return id;
    },
    /** Writes down an event, and what it leaves stale. */
    async tell(containerId: string, told: Told): Promise<string> {
      const id = newId();
      seq += 1;
      await database.write(async (tx) => {
        const { type, at, detail = {}, other, dryGrams, plates } = told;
        await tx.event.create({
          data: {
            id,
            labId,
            containerId,
            otherContainerId: other ?? null,
            type,
            at: new Date(at),
            recordedAt: new Date(at),
            recordedSeq: seq,
            place: seq,
            detail,
            dryGrams: dryGrams ?? null,
            plates: plates ?? null,
          },
        });
        await markStale(tx, labId, containerId, new Date(at));
        if (other) await markStale(tx, labId, other, new Date(at));
      });
      return id;
    },
    cameIn: (containerId: string, at: number, closure: Closure = 'TIGHT', startWaterFraction: number | null = 0.01) =>
      book.tell(containerId, {
        type: 'CAME_IN',
        at,
        dryGrams: 400,
        detail: {
          roomId: bench,
          closure,
          grams: 400,
          basis: 'DRY',
          startWaterFraction,
          startWaterFrom: startWaterFraction === null ? 'NOWHERE' : 'GIVEN',
          bookedWaterFraction: startWaterFraction ?? 0.03,
          waterAssumed: startWaterFraction === null,
        },
      }),
  };
  await book.air(0, days);
  return book;
}

export type Book = Awaited<ReturnType<typeof openBook>>;

/** Everything stored of a lab's estimates, in an order of its own. */
export async function estimatesStored(database: Database, labId: string) {
  const where = { labId };
  const bytes = (data: Uint8Array) => Buffer.from(data).toString('base64');
  const exposures = await database.read.exposure.findMany({ where, orderBy: { containerId: 'asc' } });
  const checkpoints = await database.read.checkpoint.findMany({
    where,
    orderBy: [{ containerId: 'asc' }, { at: 'asc' }],
  });
  const parcels = await database.read.parcel.findMany({ where, orderBy: { eventId: 'asc' } });
  return {
    exposures: exposures.map(({ version: _, ...rest }) => rest),
    checkpoints: checkpoints.map(({ data, ...rest }) => ({ ...rest, data: bytes(data) })),
    parcels: parcels.map(({ data, ...rest }) => ({ ...rest, data: bytes(data) })),
  };
}
