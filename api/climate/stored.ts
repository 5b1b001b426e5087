// Readings in the database: a row for each sensor, quantity and UTC day.
import { insertRows } from '../database/bulk.ts';
import type { Engine } from '../database/client.ts';
import { Prisma } from '../database/generated/sqlite/client.ts';
import type { Transaction } from '../work.ts';
import { type Chunk, decodeDay, type Disagreement, encodeDay, merged } from './readings.ts';
import { byDay, joined, nothingRead, type Quantity, type Series } from './series.ts';

/** What one sensor newly says of one quantity, in order of time. */
export interface News {
  sensorId: string;
  quantity: Quantity;
  series: Series;
}

export interface Joined {
  added: number;
  repeated: number;
  disagreeing: (Disagreement & Pick<News, 'sensorId' | 'quantity'>)[];
  /** UTC days on which something is new. */
  days: Set<number>;
}

interface ChunkRow extends Chunk {
  sensorId: string;
  quantity: Quantity;
  day: number;
}

/** Days grouped into stretches, so that two readings years apart do not read what lies between. */
export function stretches(days: Iterable<number>): { from: number; until: number }[] {
  const found: { from: number; until: number }[] = [];
  for (const day of [...days].sort((a, b) => a - b)) {
    const last = found.at(-1);
    if (last && day <= last.until + 7) last.until = Math.max(last.until, day + 1);
    else found.push({ from: day, until: day + 1 });
  }
  return found;
}

async function chunks(tx: Transaction, sensorIds: string[], days: Iterable<number>): Promise<ChunkRow[]> {
  if (sensorIds.length === 0) return [];
  const rows: ChunkRow[] = [];
  for (const { from, until } of stretches(days)) {
    rows.push(
      ...(await tx.$queryRaw<ChunkRow[]>(Prisma.sql`
        select "sensorId", cast("quantity" as text) as "quantity", "day", "count", "offsetsMs", "values" from "ReadingDay"
        where "sensorId" in (${Prisma.join(sensorIds)}) and "day" >= ${from} and "day" < ${until}
        order by "sensorId", "quantity", "day"`)),
    );
  }
  return rows;
}

const columns = {
  labId: 'text',
  sensorId: 'text',
  quantity: { enum: 'Quantity' },
  day: 'integer',
  count: 'integer',
  offsetsMs: 'bytes',
  values: 'bytes',
} as const;

/** Bytes of readings in one statement: some tens of milliseconds, between which others are answered. */
const batchBytes = 1_000_000;

async function store(tx: Transaction, engine: Engine, labId: string, rows: readonly ChunkRow[]): Promise<void> {
  for (let from = 0; from < rows.length;) {
    let bytes = 0;
    let until = from;
    while (until < rows.length && bytes < batchBytes) bytes += 12 * (rows[until++]?.count ?? 0);
    await insertRows<keyof typeof columns>(tx, engine, {
      table: 'ReadingDay',
      columns,
      rows: rows.slice(from, until).map((row) => ({ ...row, labId })),
      key: ['sensorId', 'quantity', 'day'],
      replace: ['count', 'offsetsMs', 'values'],
    });
    from = until;
  }
}

const keyOf = (sensorId: string, quantity: Quantity, day: number): string => `${sensorId} ${quantity} ${day}`;

/** Joins new readings to those that are there; `fresh` sensors have none yet. */
export async function joinReadings(
  tx: Transaction,
  engine: Engine,
  labId: string,
  news: readonly News[],
  fresh: ReadonlySet<string>,
): Promise<Joined> {
  const parts = news.flatMap(({ sensorId, quantity, series }) =>
    [...byDay(series)].map(([day, piece]) => ({ sensorId, quantity, day, piece })),
  );
  const known = [...new Set(news.map(({ sensorId }) => sensorId))].filter((id) => !fresh.has(id));
  const there = new Map<string, Series>();
  for (const row of await chunks(tx, known, new Set(parts.map(({ day }) => day)))) {
    there.set(keyOf(row.sensorId, row.quantity, row.day), decodeDay(row.day, row));
  }
  const answer: Joined = { added: 0, repeated: 0, disagreeing: [], days: new Set() };
  const changed = new Map<string, ChunkRow>();
  for (const { sensorId, quantity, day, piece } of parts) {
    const key = keyOf(sensorId, quantity, day);
    const now = merged(there.get(key) ?? nothingRead, piece);
    answer.repeated += now.repeated;
    for (const each of now.disagreeing) answer.disagreeing.push({ ...each, sensorId, quantity });
    if (now.added === 0) continue;
    answer.added += now.added;
    answer.days.add(day);
    there.set(key, now.series);
    changed.set(key, { sensorId, quantity, day, ...encodeDay(day, now.series) });
  }
  await store(tx, engine, labId, [...changed.values()]);
  return answer;
}

/** All readings of some sensors on some days: by sensor, in the order given. */
export async function readingsOf(tx: Transaction, sensorIds: readonly string[], days: Iterable<number>) {
  const pieces = new Map<string, Series[]>();
  for (const row of await chunks(tx, [...sensorIds], days)) {
    const key = `${row.sensorId} ${row.quantity}`;
    const before = pieces.get(key);
    const piece = decodeDay(row.day, row);
    if (before) before.push(piece);
    else pieces.set(key, [piece]);
  }
  const of = (id: string, quantity: Quantity) => joined(pieces.get(`${id} ${quantity}`) ?? []);
  return sensorIds.map((id) => ({ temperature: of(id, 'TEMPERATURE'), humidity: of(id, 'RELATIVE_HUMIDITY') }));
}
