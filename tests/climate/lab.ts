// An empty lab with rooms, and readings for it.
import type { Context } from '../../api/context.ts';
import type { Database } from '../../api/database/database.ts';
import { loadersOf } from '../../api/loaders.ts';
import { readSettings } from '../../api/settings.ts';
import { newId } from '../../api/work.ts';
import type { OnEngine } from '../support/engines.ts';
import { addRoom } from '../../api/climate/rooms.ts';

export const start = Date.UTC(2026, 2, 2);
export const minute = 60_000;
export const hour = 3_600_000;
export const day = 86_400_000;

/** A context of an empty lab on a database; the clock stands at `now`. */
export async function emptyLab(database: Database, now = new Date(start + 60 * day)): Promise<Context> {
  const made = { name: newId(), timeZone: 'Europe/Helsinki', settings: {}, createdAt: now, isDemo: false };
  const lab = await database.write((tx) => tx.lab.create({ data: { id: newId(), ...made } }));
  return { lab, actor: null, database, settings: readSettings({}), now: () => now, load: loadersOf(database.read) };
}

/** New empty labs, all in one database of the suite. */
export function labsOf(on: OnEngine): (now?: Date) => Promise<Context> {
  let database: Promise<Database> | undefined;
  return async (now) => emptyLab(await (database ??= on.fresh()), now);
}

/** A new room of that name; gives its id. */
export async function room(context: Context, name: string, assumed?: { humidity: number; temperature: number }) {
  const { roomId } = await addRoom(context, {
    name,
    assumedHumidityPercent: assumed?.humidity,
    assumedTemperatureC: assumed?.temperature,
  });
  return roomId;
}

export interface Reading {
  at: Date;
  temperatureC: number;
  humidityPercent: number;
}

/** Readings every so many milliseconds in [from, until). */
export function readings(
  from: number,
  until: number,
  every: number,
  air: (at: number) => [temperatureC: number, humidityPercent: number],
): Reading[] {
  return Array.from({ length: Math.ceil((until - from) / every) }, (_, index) => {
    const at = from + index * every;
    const [temperatureC, humidityPercent] = air(at);
    return { at: new Date(at), temperatureC, humidityPercent };
  });
}
