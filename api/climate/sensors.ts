// Sensors of a room: made when they first read, set aside when somebody says that they do not speak for the room.
import { z } from 'zod';
import type { Context } from '../context.ts';
import type { Room, Sensor } from '../database/generated/sqlite/client.ts';
import { invalid, unknown } from '../errors.ts';
import { newId, type Transaction, type Work, write } from '../work.ts';
import { renewDays } from './renewed.ts';
import { roomName, roomNamed } from './rooms.ts';
import { staleRoom } from './stale.ts';

/** The name of a sensor that nobody named. */
export const unnamedSensor = 'logger';

export const sensorName = z
  .string('the name of a sensor')
  .trim()
  .min(1, 'the name of a sensor, not empty')
  .max(120, 'a name of at most 120 signs');

/** The room's sensor of that name, made when it is new. */
export async function sensorOf(work: Work, room: Room, name: string): Promise<{ id: string; isNew: boolean }> {
  const key = { labId: work.labId, roomId: room.id, name };
  const there = await work.tx.sensor.findUnique({ where: { labId_roomId_name: key }, select: { id: true } });
  if (there) return { id: there.id, isNew: false };
  const id = newId();
  await work.tx.sensor.create({ data: { id, ...key } });
  work.changed('Sensor', id, 'MADE');
  return { id, isNew: true };
}

const which = { room: roomName, sensor: sensorName, clientKey: z.string().nullish() };
export const setAsideInput = z.object({
  ...which,
  why: z.string('why, in a few words').trim().min(1, 'why, in a few words').max(300, 'at most 300 signs'),
});
export const takeBackInput = z.object(which);

async function named(tx: Transaction, room: Room, name: string): Promise<Sensor> {
  const sensors = await tx.sensor.findMany({ where: { roomId: room.id }, orderBy: { name: 'asc' } });
  const wanted = name.toLowerCase();
  const found = sensors.find((one) => one.name === name) ?? sensors.find((one) => one.name.toLowerCase() === wanted);
  if (found) return found;
  const names = sensors.map((one) => one.name).join(', ');
  throw unknown(
    'input.sensor',
    name,
    names ? `one of ${names}` : `${room.name} has no sensor yet; add its readings first`,
  );
}

/** A person's word on a sensor: it is left out from its first reading on, or counts again. */
async function setWhy(
  context: Context,
  act: string,
  input: { room: string; sensor: string; clientKey?: string | null | undefined },
  why: string | null,
): Promise<{ sensorId: string }> {
  const body: { clientKey?: string | null | undefined; why?: string } = why === null ? input : { ...input, why };
  return write(context, act, body, async (work) => {
    const { tx, labId } = work;
    const room = await roomNamed(tx, labId, input.room, 'input.room');
    const sensor = await named(tx, room, input.sensor);
    if (why === null && sensor.setAsideWhy === null) {
      throw invalid('input.sensor', sensor.name, 'it counts already; a sensor that was set aside');
    }
    await tx.sensor.update({ where: { id: sensor.id }, data: { setAsideWhy: why } });
    work.changed('Sensor', sensor.id, 'CHANGED');
    if ((sensor.setAsideWhy === null) === (why === null)) return { sensorId: sensor.id };
    const days = await tx.readingDay.findMany({ where: { sensorId: sensor.id }, select: { day: true } });
    const engine = context.database.engine;
    const from = await renewDays(tx, engine, room, new Set(days.map(({ day }) => day)));
    if (from) await staleRoom(work, engine, room.id, from);
    return { sensorId: sensor.id };
  });
}

/** Leaves a sensor out of its room's air, with the reason; its readings are kept. */
export function setSensorAside(context: Context, input: z.output<typeof setAsideInput>) {
  const { why, ...rest } = input;
  return setWhy(context, 'setSensorAside', rest, why);
}

/** Lets a sensor that was set aside count again. */
export function takeSensorBack(context: Context, input: z.output<typeof takeBackInput>) {
  return setWhy(context, 'takeSensorBack', input, null);
}
