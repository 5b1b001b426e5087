// A room's air for the estimator, read from its stored days.
import type { Database } from '../database/database.ts';
import { type RoomAir, roomAir } from '../science/climate.ts';
import type { DayBlocks, TypicalDay } from '../science/history.ts';
import { filledDays, type RecordedAir } from './filled.ts';
import { decodeRoomDay } from './room-day.ts';
import { daysOf, stepsOf, usualTemperatureC } from './room-assumed.ts';
import { constantDay, typicalDayBefore } from './typical.ts';
import { blocksPerDay } from '../science/climate.ts';

/** Anything that reads by hand-written statements: the database, or a worker's reader. */
export type AirReader = Pick<Database, 'select'>;

interface RoomRow {
  humidity: number | null;
  temperature: number | null;
  before: number | null;
  lastDay: number | null;
  steps: unknown;
}

const roomStatement = `select "assumedHumidityPercent" as "humidity", "assumedTemperatureC" as "temperature",
  (select max("day") from "RoomDay" where "roomId" = $1 and "day" < $2) as "before",
  (select max("day") from "RoomDay" where "roomId" = $1) as "lastDay", "assumedAir" as "steps"
  from "Room" where "id" = $1`;
const daysStatement = `select "day", "blocks" from "RoomDay" where "roomId" = $1 and "day" >= $2 and "day" < $3 order by "day"`;

interface DayRow {
  readonly day: number;
  readonly blocks: Uint8Array;
}

/** A room's stored days, at least from 30 days before the last one before `fromDay`, and what is taken for granted. */
async function storedOf(read: AirReader, roomId: string, fromDay: number, untilDay: number) {
  const [room] = await read.select<RoomRow>(roomStatement, [roomId, fromDay]);
  if (!room) return { days: [], lastDay: null, assumed: null, steps: [] };
  const { humidity, temperature, before, lastDay } = room;
  const steps = daysOf(stepsOf(room.steps), temperature);
  const assumed = humidity === null ? null : constantDay(temperature ?? usualTemperatureC, humidity);
  if (lastDay === null) return { days: [], lastDay, assumed, steps };
  const first = (before ?? fromDay) - 30;
  return { days: await read.select<DayRow>(daysStatement, [roomId, first, untilDay]), lastDay, assumed, steps };
}

async function recordOf(read: AirReader, roomId: string, fromDay: number, untilDay: number): Promise<RecordedAir> {
  const { days, lastDay, assumed, steps } = await storedOf(read, roomId, fromDay, untilDay);
  return { measured: days.map(({ day, blocks }) => decodeRoomDay(day, blocks)), lastDay, assumed, steps };
}

/**
 * The room's air on each UTC day of [fromDay, untilDay): measured or bridged (0), filled by the typical day or taken
 * for granted (1), or unknown (2). Depends on readings and assumed air alone, never on when it is asked for.
 */
export async function airOf(read: AirReader, roomId: string, fromDay: number, untilDay: number): Promise<DayBlocks[]> {
  return filledDays(await recordOf(read, roomId, fromDay, untilDay), fromDay, untilDay);
}

interface Typical {
  readonly days: readonly DayRow[];
  readonly typical: TypicalDay | null;
}

/** By room, the typical day last worked out and the stored days it came from: medians of a month cost ten milliseconds. */
const worked = new Map<string, Typical>();
const mostRooms = 256;

const sameDays = (one: readonly DayRow[], other: readonly DayRow[]): boolean =>
  one.length === other.length &&
  one.every(({ day, blocks }, i) => day === other[i]?.day && Buffer.compare(blocks, other[i].blocks) === 0);

const lastBlockOf = ({ day, blocks }: DayRow): number =>
  day * blocksPerDay + decodeRoomDay(day, blocks).uncertain.findLastIndex((doubt) => doubt === 0);

function typicalOf(days: readonly DayRow[]): TypicalDay | null {
  const measured = new Map(days.map(({ day, blocks }) => [day, decodeRoomDay(day, blocks)]));
  const last = [...measured.values()].at(-1);
  if (!last) return null;
  const end = last.day * blocksPerDay + last.uncertain.findLastIndex((doubt) => doubt === 0) + 1;
  return typicalDayBefore((number) => measured.get(number), end);
}

/** The typical day at the end of the record; what is taken for granted where there is none; null when nothing is. */
export async function typicalDayOf(read: AirReader, roomId: string): Promise<TypicalDay | null> {
  const { days, assumed, steps } = await storedOf(read, roomId, farFuture, farFuture);
  const step = steps.at(-1);
  const end = days.at(-1);
  if (!end) return step?.typical ?? assumed;
  if (step && step.fromBlock > lastBlockOf(end)) return step.typical;
  const known = worked.get(roomId);
  if (known && sameDays(known.days, days)) return known.typical;
  const typical = typicalOf(days);
  if (worked.size >= mostRooms) worked.clear();
  worked.set(roomId, { days, typical });
  return typical;
}

/** A day that no record reaches. */
const farFuture = 1_000_000;

/** Days and typical day together, as the estimator's `RoomAir`. */
export async function roomAirOf(read: AirReader, roomId: string, fromDay: number, untilDay: number): Promise<RoomAir> {
  return roomAir(await airOf(read, roomId, fromDay, untilDay), await typicalDayOf(read, roomId));
}
