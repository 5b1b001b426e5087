// Readings sent by a script: up to ten thousand at once, sent again without harm.
import { z } from 'zod';
import type { Context } from '../context.ts';
import { invalid, missing } from '../errors.ts';
import { write } from '../work.ts';
import { renewDays } from './renewed.ts';
import { roomName, roomNamed } from './rooms.ts';
import { sensorName, sensorOf, unnamedSensor } from './sensors.ts';
import { inOrder, type Quantity } from './series.ts';
import { staleRoom } from './stale.ts';
import { joinReadings, type News } from './stored.ts';

export const mostReadings = 10_000;
/** Clocks that run ahead are forgiven this much. */
export const aheadMs = 300_000;
/** The first instant a reading may have; before it, a clock was never set. */
export const firstReadingMs = Date.UTC(1990, 0, 1);

const reading = z.object({
  at: z.date('an instant such as 2026-03-02T08:00:00Z'),
  temperatureC: z.number('a temperature in °C').nullish(),
  humidityPercent: z.number('relative humidity in %').nullish(),
});

export const readingsInput = z.object({
  room: roomName,
  sensor: sensorName.nullish(),
  readings: z
    .array(reading, 'a list of readings')
    .min(1, 'at least one reading')
    .max(mostReadings, `at most ${mostReadings} readings in one call`),
  clientKey: z.string().nullish(),
});
export type ReadingsInput = z.output<typeof readingsInput>;

/** What became of readings, as counts of single values (a temperature and a humidity of one instant are two). */
export type ReadingsAdded = {
  roomId: string;
  sensorId: string;
  added: number;
  repeated: number;
  disagreeing: number;
  notes: string[];
};

/** Refuses what no sensor can have read. */
function checkTimes(readings: ReadingsInput['readings'], now: Date): void {
  readings.forEach(({ at, temperatureC, humidityPercent }, index) => {
    const path = `input.readings.${index}`;
    if (at.getTime() > now.getTime() + aheadMs)
      throw invalid(`${path}.at`, at.toISOString(), `not after now (${now.toISOString()})`);
    if (at.getTime() < firstReadingMs) throw invalid(`${path}.at`, at.toISOString(), 'a time since 1990');
    if (temperatureC == null && humidityPercent == null) {
      throw missing(path, 'temperatureC in °C, humidityPercent in %, or both');
    }
  });
}

function newsOf(sensorId: string, readings: ReadingsInput['readings']): News[] {
  const of = (
    quantity: Quantity,
    value: (one: ReadingsInput['readings'][number]) => number | null | undefined,
  ): News[] => {
    const given = readings.flatMap((one) => {
      const read = value(one);
      return read == null ? [] : [{ at: one.at.getTime(), read }];
    });
    if (given.length === 0) return [];
    return [
      {
        sensorId,
        quantity,
        series: inOrder(
          given.map(({ at }) => at),
          given.map(({ read }) => read),
        ),
      },
    ];
  };
  return [...of('TEMPERATURE', (one) => one.temperatureC), ...of('RELATIVE_HUMIDITY', (one) => one.humidityPercent)];
}

/** A sentence for each of the first few values that disagree with what is there. */
export function disagreementNotes(
  disagreeing: readonly { atMs: number; kept: number; other: number; quantity: Quantity }[],
): string[] {
  const shown = disagreeing.slice(0, 5).map(({ atMs, kept, other, quantity }) => {
    const unit = quantity === 'TEMPERATURE' ? '°C' : '% RH';
    return `${new Date(atMs).toISOString()} has ${kept} ${unit} already and keeps it; it disagrees with ${other} ${unit}`;
  });
  const more = disagreeing.length - shown.length;
  return more > 0 ? [...shown, `and ${more} more that disagree`] : shown;
}

/**
 * Adds readings of one sensor. A reading is known by sensor, quantity and instant: the same again changes nothing,
 * another value for the same instant is counted and named, and the first is kept.
 */
export async function addReadings(context: Context, input: ReadingsInput): Promise<ReadingsAdded> {
  checkTimes(input.readings, context.now());
  return write<ReadingsAdded>(context, 'addReadings', input, async (work) => {
    const { tx, labId } = work;
    const engine = context.database.engine;
    const room = await roomNamed(tx, labId, input.room, 'input.room');
    const sensor = await sensorOf(work, room, input.sensor ?? unnamedSensor);
    const fresh = new Set(sensor.isNew ? [sensor.id] : []);
    const joined = await joinReadings(tx, engine, labId, newsOf(sensor.id, input.readings), fresh);
    const from = await renewDays(tx, engine, room, joined.days);
    if (from) await staleRoom(work, engine, room.id, from);
    if (joined.added > 0) work.changed('Room', room.id, 'CHANGED');
    const { added, repeated, disagreeing } = joined;
    const notes = disagreementNotes(disagreeing);
    return { roomId: room.id, sensorId: sensor.id, added, repeated, disagreeing: disagreeing.length, notes };
  });
}
