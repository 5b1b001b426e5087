// A large invented stock, written in bulk: so many open containers of four shapes in so many rooms with noisy air.
import { insertRows } from '../../api/database/bulk.ts';
import type { Database } from '../../api/database/database.ts';
import type { Closure } from '../../api/database/generated/sqlite/client.ts';
import { encodeRoomDay } from '../../api/climate/room-day.ts';
import { saturatedKgPerM3 } from '../../api/science/air.ts';
import type { DayBlocks } from '../../api/science/history.ts';
import { newId } from '../../api/work.ts';

const dayMs = 86_400_000;

/** A fixed sequence of numbers between 0 and 1 (mulberry32, public domain). */
export function chance(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

function noisyDay(day: number, next: () => number): DayBlocks {
  const base = 0.4 + 0.2 * next();
  const temperatureC = Float64Array.from({ length: 288 }, (_, k) => 21 + 2 * Math.sin(k / 46) + 0.3 * next());
  const full = temperatureC.map(saturatedKgPerM3);
  const vapour = full.map((value, k) => value * (base + 0.06 * Math.sin(k / 30) + 0.02 * next()));
  return { day, temperatureC, saturatedKgPerM3: full, vapourKgPerM3: vapour, uncertain: new Uint8Array(288) };
}

const bed = { layerThicknessMm: null, plateWidthMm: null, plateHeightMm: null, plates: null };
/** Shapes in turn: a drum of 120 mm, one of 80 mm, a beaker of 10 mm, a box of plates. */
const shapes = [
  {
    kind: 'DRUM',
    sorbent: 'silica',
    innerDiameterMm: 90,
    heightMm: 150,
    mouthDiameterMm: 90,
    volumeMl: 1000,
    dryGrams: 381,
    ...bed,
  },
  {
    kind: 'DRUM',
    sorbent: 'alumina',
    innerDiameterMm: 80,
    heightMm: 100,
    mouthDiameterMm: 80,
    volumeMl: 500,
    dryGrams: 382,
    ...bed,
  },
  {
    kind: 'DRUM',
    sorbent: 'magnesium silicate',
    innerDiameterMm: 120,
    heightMm: 160,
    mouthDiameterMm: 110,
    volumeMl: 1800,
    dryGrams: 520,
    ...bed,
  },
  {
    kind: 'PORTION',
    sorbent: 'silica',
    innerDiameterMm: 70,
    heightMm: 90,
    mouthDiameterMm: 70,
    volumeMl: 250,
    dryGrams: 19.2,
    ...bed,
  },
  {
    kind: 'PLATE_BOX',
    sorbent: 'silica',
    innerDiameterMm: null,
    heightMm: null,
    mouthDiameterMm: null,
    volumeMl: null,
    dryGrams: 100,
    layerThicknessMm: 0.25,
    plateWidthMm: 200,
    plateHeightMm: 200,
    plates: 25,
  },
] as const;

export interface Fleet {
  /** Containers. */
  readonly count: number;
  readonly rooms: number;
  readonly lots: number;
  /** When they all came in and were opened, ms; rooms have air from 31 days before. */
  readonly start: number;
  /** Days of air after the start. */
  readonly days: number;
  /** The label of a container; a running number that nobody can type when not given. */
  readonly labelOf?: (i: number) => string;
  /** How it stands since the start; open when not given. */
  readonly closureOf?: (i: number) => Closure;
}

const text = 'text';
const real = 'real';

/** Writes a fleet; gives the lab's id. */
export async function writeFleet(
  database: Database,
  { count, rooms, lots, start, days, labelOf = (i) => `F${i}`, closureOf = () => 'OPEN' }: Fleet,
): Promise<string> {
  const { engine } = database;
  const next = chance(count);
  const labId = newId();
  const at = new Date(start);
  const roomIds = Array.from({ length: rooms }, () => newId());
  const sorbents = new Map(shapes.map(({ sorbent }) => [sorbent, newId()] as const));
  await database.write(async (tx) => {
    await tx.lab.create({ data: { id: labId, name: labId, timeZone: 'UTC', settings: {}, createdAt: at } });
    await tx.room.createMany({
      data: roomIds.map((id, i) => ({ id, labId, name: `room ${i + 1}`, kind: 'ROOM' as const })),
    });
    const named = [...sorbents].map(([name, id]) => ({ id, labId, name, sorbentClass: name }));
    await tx.sorbent.createMany({ data: named });
    const first = Math.floor(start / dayMs) - 31;
    const air = roomIds.flatMap((roomId) =>
      Array.from({ length: 31 + days }, (_, i) => ({
        labId,
        roomId,
        day: first + i,
        blocks: encodeRoomDay(noisyDay(first + i, next)),
      })),
    );
    await insertRows(tx, engine, {
      table: 'RoomDay',
      columns: { labId: text, roomId: text, day: 'integer', blocks: 'bytes' },
      rows: air,
    });
  });
  const lotIds = Array.from({ length: lots }, () => newId());
  const shapeOf = (i: number) => shapes[i % shapes.length] ?? shapes[0];
  await database.write((tx) =>
    tx.lot.createMany({
      data: lotIds.map((id, i) => ({
        id,
        labId,
        sorbentId: sorbents.get(shapeOf(i).sorbent) ?? '',
        lotNumber: `L${i}`,
        receivedAt: at,
        certificate: [],
      })),
    }),
  );
  for (let from = 0; from < count; from += 5_000) {
    const part = Array.from({ length: Math.min(5_000, count - from) }, (_, i) => from + i);
    const made = part.map((i) => {
      const lot = i % lots;
      return {
        ...shapeOf(lot),
        id: newId(),
        labId,
        label: labelOf(i),
        closure: closureOf(i),
        lotId: lotIds[lot] ?? '',
        roomId: roomIds[(i * 7) % rooms] ?? '',
        number: i,
      };
    });
    await database.write(async (tx) => {
      await insertRows(tx, engine, {
        table: 'Container',
        columns: {
          id: text,
          labId: text,
          label: text,
          kind: { enum: 'ContainerKind' },
          lotId: text,
          usualClosure: { enum: 'Closure' },
          innerDiameterMm: real,
          heightMm: real,
          mouthDiameterMm: real,
          volumeMl: real,
          layerThicknessMm: real,
          plateWidthMm: real,
          plateHeightMm: real,
          roomId: text,
          cameInAt: 'time',
          isOpen: 'boolean',
          openedAt: 'time',
          closure: { enum: 'Closure' },
          dryGrams: real,
          dryGramsAssumed: 'boolean',
          plates: 'integer',
          heldDryGrams: real,
          heldPlates: 'integer',
          scooping: { enum: 'Scooping' },
          isVoid: 'boolean',
        },
        rows: made.map(({ number: _number, sorbent: _sorbent, ...one }) => ({
          ...one,
          usualClosure: 'TIGHT',
          cameInAt: start,
          isOpen: one.closure === 'OPEN',
          openedAt: one.closure === 'OPEN' ? start : null,
          dryGramsAssumed: false,
          heldDryGrams: 0,
          heldPlates: 0,
          scooping: 'TOP',
          isVoid: false,
        })),
      });
      await insertRows(tx, engine, {
        table: 'Event',
        columns: {
          id: text,
          labId: text,
          containerId: text,
          type: { enum: 'EventType' },
          at: 'time',
          recordedAt: 'time',
          recordedSeq: 'integer',
          detail: 'json',
          dryGrams: real,
          plates: 'integer',
          stands: 'boolean',
          place: 'integer',
        },
        rows: made.map(({ id, roomId, dryGrams, plates, number, closure }) => ({
          id: newId(),
          labId,
          containerId: id,
          type: 'CAME_IN',
          at: start,
          recordedAt: start,
          recordedSeq: number + 1,
          place: number + 1,
          dryGrams,
          plates,
          stands: true,
          detail: {
            roomId,
            closure,
            grams: dryGrams,
            basis: 'DRY',
            startWaterFraction: 0.01 + 0.02 * next(),
            startWaterFrom: 'GIVEN',
            bookedWaterFraction: 0.02,
            waterAssumed: false,
          },
        })),
      });
    });
  }
  return labId;
}
