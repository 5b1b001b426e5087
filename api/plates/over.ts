// The air that plates are equilibrated in, and how long a dry layer needs there.
import { z } from 'zod';
import { airNow, roomNamed } from '../climate/service.ts';
import type { Context } from '../context.ts';
import { invalid, missing, unknown } from '../errors.ts';
import { inAir } from '../exposure/service.ts';
import { saltHumidity, saltTable } from '../science/salts.ts';
import { equilibrateSaid } from './said.ts';

/** The air that plates are equilibrated in: over a salt, in a room, or said. */
interface Over {
  humidityPercent: number;
  temperatureC: number;
  over: string | null;
}

const usualTemperatureC = 25;

export async function overWhat(
  context: Context,
  input: Pick<z.output<typeof equilibrateSaid>, 'salt' | 'inRoom' | 'humidityPercent' | 'temperatureC'>,
): Promise<Over> {
  const { salt, inRoom, humidityPercent } = input;
  const temperatureC = input.temperatureC ?? usualTemperatureC;
  if (salt) {
    const known = saltTable.find(({ name }) => name === salt.trim().toLowerCase());
    if (!known) throw unknown('input.salt', salt, `one of: ${saltTable.map(({ name }) => name).join(', ')}`);
    const humidity = saltHumidity(known.name, temperatureC);
    if (humidity === null) {
      throw invalid('input.temperatureC', temperatureC, `from ${known.fromC} to ${known.toC} °C over ${known.name}`);
    }
    return { humidityPercent: 100 * humidity, temperatureC, over: `saturated ${known.name}` };
  }
  if (inRoom) {
    const { database, lab } = context;
    const room = await roomNamed(database.read, lab.id, inRoom, 'input.inRoom');
    if (typeof humidityPercent === 'number') return { humidityPercent, temperatureC, over: `in ${room.name}` };
    const air = await airNow(context, room.id);
    if (!air)
      throw missing('input.humidityPercent', `relative humidity, %: nothing is known of the air of ${room.name}`);
    return { humidityPercent: air.humidityPercent, temperatureC: air.temperatureC, over: `in ${room.name}` };
  }
  if (typeof humidityPercent !== 'number')
    throw missing('input.salt', 'a saturated salt, a room, or a relative humidity');
  return { humidityPercent, temperatureC, over: null };
}

/** Minutes that a dry layer needs in that air, by the model; null where it cannot say. */
export async function minutesNeeded(context: Context, containerId: string, air: Over): Promise<number | null> {
  const { humidityPercent, temperatureC } = air;
  const found = await inAir(context, containerId, [{ temperatureC, humidity: humidityPercent / 100 }]);
  return found?.[0]?.minutesToEquilibrium ?? null;
}
