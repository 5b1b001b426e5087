// "Use within N minutes in this room": a layer taken out into the air a room has now, by the model.
import { airNow, type AirNow } from '../climate/service.ts';
import type { Context } from '../context.ts';
import type { Room } from '../database/generated/sqlite/client.ts';
import { inAir } from '../exposure/service.ts';
import { unknown } from '../errors.ts';

export interface UseWithin {
  room: Room;
  air: AirNow;
  /** Null: they stay in their band there. */
  minutes: number | null;
}

const hourMin = 60;
const dayMin = 24 * hourMin;

/** Rounded down: a promise, not a mean. */
function minutesWords(minutes: number): string {
  if (minutes < 1) return 'less than a minute';
  if (minutes < 2 * hourMin) return `${Math.floor(minutes)} min`;
  return minutes < 2 * dayMin ? `${Math.floor(minutes / hourMin)} h` : `${Math.floor(minutes / dayMin)} days`;
}

export function withinWords({ room, air, minutes }: UseWithin): string {
  const where = `in ${room.name} at ${Math.round(air.humidityPercent)} % RH`;
  if (minutes === null) return `stay good ${where}`;
  if (minutes === 0) return `past their band already, wherever they are`;
  return `use within ${minutesWords(minutes)} ${where}`;
}

export const withinSource =
  'the exposure model for a thin layer, open on one side in still air (3 mm/s unless the lab says otherwise), in the air of now; measured from 15 to 80 % RH it took 1 to 2 min (Geiss, Schlitt & Klose 1965)';

/** In the room named, or in each room that people work in; empty where nothing can be said. */
export async function useWithin(
  context: Context,
  containerId: string,
  name: string | null | undefined,
): Promise<UseWithin[]> {
  const all = await context.database.read.room.findMany({
    where: { labId: context.lab.id },
    orderBy: { name: 'asc' },
  });
  const wanted = name?.trim().toLowerCase();
  const rooms = all.filter((room) => (wanted ? room.name.toLowerCase() === wanted : room.kind === 'ROOM'));
  if (wanted && rooms.length === 0) throw unknown('room', name, 'the name of a room');
  const known = (await Promise.all(rooms.map(async (room) => ({ room, air: await airNow(context, room.id) })))).flatMap(
    ({ room, air }) => (air ? [{ room, air }] : []),
  );
  const airs = known.map(({ air }) => ({ temperatureC: air.temperatureC, humidity: air.humidityPercent / 100 }));
  const found = await inAir(context, containerId, airs);
  if (!found) return [];
  return known.flatMap((one, i) => {
    const { minutesToLimit } = found[i] ?? { minutesToLimit: null };
    return [{ ...one, minutes: minutesToLimit }];
  });
}
