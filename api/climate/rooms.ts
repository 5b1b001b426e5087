// Rooms: added by name, told which air to take for granted.
import { z } from 'zod';
import type { Context } from '../context.ts';
import type { Room } from '../database/generated/sqlite/client.ts';
import { invalid, unknown } from '../errors.ts';
import { newId, type Transaction, write } from '../work.ts';
import { staleRoom } from './stale.ts';

export const roomName = z
  .string('the name of a room')
  .trim()
  .min(1, 'the name of a room, not empty')
  .max(80, 'a name of at most 80 signs');

export const humidity = z
  .number('relative humidity in %, 0 to 100')
  .min(0, 'relative humidity in %, 0 to 100')
  .max(100, 'relative humidity in %, 0 to 100');
export const temperature = z
  .number('a temperature in °C, -40 to 85')
  .min(-40, 'a temperature in °C, -40 to 85')
  .max(85, 'a temperature in °C, -40 to 85');

const clientKey = z.string().nullish();

export const roomInput = z.object({
  name: roomName,
  kind: z.enum(['ROOM', 'COLD_STORE', 'DESICCATOR']).nullish(),
  assumedHumidityPercent: humidity.nullish(),
  assumedTemperatureC: temperature.nullish(),
  desiccantRenewedAt: z.date().nullish(),
  clientKey,
});

export const assumedInput = z.object({
  room: roomName,
  humidityPercent: humidity.nullish(),
  temperatureC: temperature.nullish(),
  clientKey,
});

/** The room of that name, in any case; refuses with the names there are. */
export async function roomNamed(tx: Transaction, labId: string, name: string, path: string): Promise<Room> {
  const rooms = await tx.room.findMany({ where: { labId }, orderBy: { name: 'asc' } });
  const wanted = name.trim().toLowerCase();
  const found = rooms.find((room) => room.name === name) ?? rooms.find((room) => room.name.toLowerCase() === wanted);
  if (!found) {
    const names = rooms.map((room) => room.name).join(', ');
    throw unknown(path, name, rooms.length > 0 ? `one of ${names}` : 'a room; add one first');
  }
  return found;
}

/** Adds a room. Refuses a name that is taken. */
export async function addRoom(context: Context, input: z.output<typeof roomInput>): Promise<{ roomId: string }> {
  return write(context, 'addRoom', input, async (work) => {
    const { tx, labId } = work;
    const taken = (await tx.room.findMany({ where: { labId }, select: { name: true } })).some(
      ({ name }) => name.toLowerCase() === input.name.toLowerCase(),
    );
    if (taken) throw invalid('input.name', input.name, 'there is a room of that name; another name');
    const { name, assumedHumidityPercent, assumedTemperatureC, desiccantRenewedAt } = input;
    const kind = input.kind ?? 'ROOM';
    const id = newId();
    await tx.room.create({
      data: { id, labId, name, kind, assumedHumidityPercent, assumedTemperatureC, desiccantRenewedAt },
    });
    work.changed('Room', id, 'MADE');
    return { roomId: id };
  });
}

/** The beginning of everything, for a change that has no beginning of its own. */
const always = new Date(0);

/**
 * Says which air to take for granted where there are no readings. It holds for all time, so the estimates of all
 * that ever stood there begin anew.
 */
export async function setAssumedAir(
  context: Context,
  input: z.output<typeof assumedInput>,
): Promise<{ roomId: string }> {
  return write(context, 'setAssumedAir', input, async (work) => {
    const room = await roomNamed(work.tx, work.labId, input.room, 'input.room');
    const assumedHumidityPercent = input.humidityPercent ?? null;
    const assumedTemperatureC = input.temperatureC ?? null;
    await work.tx.room.update({ where: { id: room.id }, data: { assumedHumidityPercent, assumedTemperatureC } });
    work.changed('Room', room.id, 'CHANGED');
    const same =
      room.assumedHumidityPercent === assumedHumidityPercent && room.assumedTemperatureC === assumedTemperatureC;
    if (!same) await staleRoom(work, context.database.engine, room.id, always);
    return { roomId: room.id };
  });
}
