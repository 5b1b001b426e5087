// A room's stored days brought up to date after its readings changed.
import { setImmediate as turn } from 'node:timers/promises';
import { insertRows } from '../database/bulk.ts';
import type { Engine } from '../database/client.ts';
import { Prisma } from '../database/generated/sqlite/client.ts';
import { blockSeconds } from '../science/climate.ts';
import type { Transaction } from '../work.ts';
import { decodeRoomDay, encodeRoomDay } from './room-day.ts';
import { airOfDay, firstDifference } from './rules.ts';
import { dayMs } from './series.ts';
import { readingsOf, stretches } from './stored.ts';

interface StoredDay {
  day: number;
  blocks: Uint8Array;
}

async function storedDays(tx: Transaction, roomId: string, days: readonly number[]): Promise<Map<number, Uint8Array>> {
  const rows: StoredDay[] = [];
  for (const { from, until } of stretches(days)) {
    rows.push(
      ...(await tx.$queryRaw<StoredDay[]>(Prisma.sql`
        select "day", "blocks" from "RoomDay" where "roomId" = ${roomId} and "day" >= ${from} and "day" < ${until}`)),
    );
  }
  return new Map(rows.map(({ day, blocks }) => [day, blocks]));
}

const columns = { labId: 'text', roomId: 'text', day: 'integer', blocks: 'bytes' } as const;

const blockStart = (day: number, block: number): number => day * dayMs + block * blockSeconds * 1000;

/** When the record ends, ms: the end of its last measured block; null without a record. */
async function recordEnd(tx: Transaction, roomId: string): Promise<number | null> {
  const last = await tx.roomDay.findFirst({ where: { roomId }, orderBy: { day: 'desc' } });
  if (!last) return null;
  const block = decodeRoomDay(last.day, last.blocks).uncertain.findLastIndex((doubt) => doubt === 0);
  return blockStart(last.day, block + 1);
}

/** A day takes about 2 ms; after so many others are answered in between. */
const daysATurn = 10;

const near = (days: Iterable<number>): number[] => {
  const all = new Set<number>();
  for (const day of days) for (const each of [day - 1, day, day + 1]) all.add(each);
  return [...all].sort((a, b) => a - b);
};

/**
 * Works out again the days on which readings changed and their neighbours (nothing else can differ) and stores
 * those that did. Gives the first instant from which the room's air is another than before; null when it is the same.
 */
export async function renewDays(
  tx: Transaction,
  engine: Engine,
  room: { id: string; labId: string },
  changedDays: Iterable<number>,
): Promise<Date | null> {
  const days = near(changedDays);
  if (days.length === 0) return null;
  const endBefore = await recordEnd(tx, room.id);
  const sensors = await tx.sensor.findMany({ where: { roomId: room.id, setAsideWhy: null }, select: { id: true } });
  const readings = await readingsOf(
    tx,
    sensors.map(({ id }) => id),
    near(days),
  );
  const stored = await storedDays(tx, room.id, days);
  const changed: { labId: string; roomId: string; day: number; blocks: Uint8Array }[] = [];
  const gone: number[] = [];
  let first = Infinity;
  for (const [index, day] of days.entries()) {
    if (index % daysATurn === daysATurn - 1) await turn();
    const blocks = encodeRoomDay(airOfDay(day, readings));
    const now = decodeRoomDay(day, blocks);
    const before = stored.get(day);
    const different = firstDifference(before ? decodeRoomDay(day, before) : null, now);
    if (different < 0) continue;
    first = Math.min(first, blockStart(day, different));
    if (now.uncertain.includes(0)) changed.push({ labId: room.labId, roomId: room.id, day, blocks });
    else gone.push(day);
  }
  if (first === Infinity) return null;
  if (gone.length > 0) await tx.roomDay.deleteMany({ where: { roomId: room.id, day: { in: gone } } });
  for (let from = 0; from < changed.length; from += 1000) {
    await insertRows<keyof typeof columns>(tx, engine, {
      table: 'RoomDay',
      columns,
      rows: changed.slice(from, from + 1000),
      key: ['roomId', 'day'],
      replace: ['blocks'],
    });
  }
  // What was held or typical after the old end is another now, also where nothing was measured in between.
  return new Date(endBefore === null ? first : Math.min(first, endBefore));
}
