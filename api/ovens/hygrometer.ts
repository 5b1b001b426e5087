// A hygrometer that was checked over a saturated salt.
import { roomNamed } from '../climate/service.ts';
import { invalid, missing, unknown } from '../errors.ts';
import { saltHumidity, saltTable } from '../science/salts.ts';
import type { Work } from '../work.ts';
import type { Said } from './care-said.ts';

/** Usual lab temperature, for a salt when nobody says. */
const usualC = 25;

export async function hygrometer(work: Work, input: Said) {
  const { tx, labId } = work;
  if (!input.room) throw missing('input.room', 'the room in which the hygrometer stands');
  if (!input.sensor) throw missing('input.sensor', 'the name of the hygrometer');
  if (!input.salt) throw missing('input.salt', `the saturated salt: ${saltTable.map(({ name }) => name).join(', ')}`);
  if (typeof input.foundValue !== 'number') throw missing('input.foundValue', 'what it showed, % RH');
  const room = await roomNamed(tx, labId, input.room, 'input.room');
  const sensors = await tx.sensor.findMany({ where: { labId, roomId: room.id } });
  const wanted = input.sensor.toLowerCase();
  const sensor = sensors.find(({ name }) => name.toLowerCase() === wanted);
  if (!sensor) {
    throw unknown(
      'input.sensor',
      input.sensor,
      `one of: ${sensors.map(({ name }) => name).join(', ') || 'none there'}`,
    );
  }
  const salt = input.salt.toLowerCase();
  const known = saltTable.find(({ name }) => name === salt);
  if (!known) throw unknown('input.salt', input.salt, `one of: ${saltTable.map(({ name }) => name).join(', ')}`);
  const temperatureC = input.temperatureC ?? usualC;
  const humidity = saltHumidity(salt, temperatureC);
  if (humidity === null) {
    throw invalid('input.temperatureC', temperatureC, `${known.fromC} to ${known.toC} °C for ${salt}`);
  }
  if (input.foundValue > 100) throw invalid('input.foundValue', input.foundValue, 'relative humidity in %, 0 to 100');
  const setValue = Math.round(1000 * humidity) / 10;
  return { sensorId: sensor.id, salt, temperatureC, setValue, foundValue: input.foundValue };
}
