// Ovens kept and looked after, and hygrometers checked over a salt.
import { beforeAll, beforeEach, expect, it } from 'vitest';
import type { Database } from '../../api/database/database.ts';
import { describeEngines } from '../support/engines.ts';
import { newWorld, type World } from '../support/world.ts';
import { ovensIn, vacuumOven } from './lab.ts';

describeEngines('an oven of the lab', (on) => {
  let database: Database;
  let world: World;
  beforeAll(async () => {
    database = await on.fresh();
  });
  beforeEach(async () => {
    world = await newWorld(database, { estimates: false });
    await world.furnished();
    await ovensIn(world).oven();
  });

  it('an oven is told apart by name, and says what would be right', async () => {
    const twice = await world.refused('addOven', { ...vacuumOven, name: 'Vacuum Oven' });
    expect(twice.message).toBe('invalid input.name: Vacuum Oven, there is an oven of that name; another name');
    const cold = await world.refused('addOven', { ...vacuumOven, name: 'b', lowestC: 300 });
    expect(cold.message).toBe('invalid input.lowestC: 300, below its highest, 200 °C');
    const when = await world.refused('addOven', {
      ...vacuumOven,
      name: 'c',
      hours: [{ days: [1], from: '7', to: '19:00' }],
    });
    expect(when.path).toBe('input.hours.0.from');
    expect((await world.refused('addOven', { ...vacuumOven, name: 'd', room: 'attic' })).path).toBe('input.room');
  });

  it('a removed oven leaves the list, keeps its past, and comes back', async () => {
    const names = async (args = '') =>
      (await world.ask<{ ovens: { name: string }[] }>(`{ ovens${args} { name } }`)).ovens.map(({ name }) => name);
    const { ovens: all } = await world.ask<{ ovens: { id: string }[] }>('{ ovens { id } }');
    await world.tell('removeOven', { oven: all[0]?.id }, '__typename');
    expect(await names()).toEqual([]);
    expect(await names('(removed: true)')).toEqual(['vacuum oven']);
    await world.tell('restoreOven', { oven: all[0]?.id }, '__typename');
    expect(await names()).toEqual(['vacuum oven']);
  });

  it('a hygrometer’s offset is what it showed less what the salt gives', async () => {
    await world.tell(
      'addReadings',
      {
        room: 'wet bench',
        sensor: 'dial',
        readings: [{ at: world.ago(10), temperatureC: 22, humidityPercent: 40 }],
      },
      '__typename',
    );
    const { care } = await world.tell<{ care: { id: string; offset: number; sentence: string } }>(
      'recordOvenCare',
      {
        kind: 'HYGROMETER',
        room: 'wet bench',
        sensor: 'dial',
        salt: 'sodium chloride',
        foundValue: 72,
        temperatureC: 25,
      },
      'care { id offset sentence }',
    );
    // Greenspan 1977: 75.3 % over sodium chloride at 25 °C.
    expect(care.offset).toBeCloseTo(72 - 75.3, 1);
    expect(care.sentence).toBe('Over saturated sodium chloride at 25 °C it showed 72 % for 75.3 % (−3.3 %)');
    const checks = async () =>
      (
        await world.ask<{ room: { sensors: { checks: { id: string }[] }[] } }>(
          '{ room(name: "wet bench") { sensors { checks { id } } } }',
        )
      ).room.sensors[0]?.checks;
    expect(await checks()).toHaveLength(1);
    await world.tell('takeOvenCareBack', { care: care.id }, '__typename');
    expect(await checks()).toEqual([]);
    expect(
      (
        await world.refused('recordOvenCare', {
          kind: 'HYGROMETER',
          room: 'wet bench',
          sensor: 'dial',
          salt: 'sugar',
          foundValue: 1,
        })
      ).path,
    ).toBe('input.salt');
  });
});
