// Needs that come again: on weekdays, or the same as on another day, at the same time of the clock on the wall.
import { beforeAll, expect, it } from 'vitest';
import { describeEngines } from '../support/engines.ts';
import { newWorld, type World } from '../support/world.ts';

describeEngines('needs that come again', (engine) => {
  let world: World;
  beforeAll(async () => {
    // Monday 16 March 2026, 14:00 in Helsinki; its clocks go forward on the 29th.
    world = await newWorld(await engine.fresh(), { estimates: false, now: new Date('2026-03-16T12:00:00Z') });
    await world.furnished();
    await world.drum(5000, { basis: 'DRY' });
  });

  const about = { kind: 'SORBENT', sorbent: 'Silica 40–63 µm', dryGrams: 50 };
  const times = async (forWhom: string): Promise<string[]> => {
    const { needs } = await world.ask<{ needs: { at: string; forWhom: string }[] }>('{ needs { at forWhom } }');
    return needs.filter((need) => need.forWhom === forWhom).map(({ at }) => at.slice(0, 16));
  };

  it('a series is written out two weeks ahead, and keeps to the clock when it changes', async () => {
    const at = '2026-03-17T10:00:00+02:00';
    await world.tell('addNeed', { ...about, at, weekdays: [2, 5], forWhom: 'series' }, '__typename');
    const first = ['2026-03-17T08:00', '2026-03-20T08:00', '2026-03-24T08:00', '2026-03-27T08:00'];
    expect(await times('series')).toEqual(first);
    world.later(2 * 1440);
    // The 17th is over and no more asked for; the 31st has come within reach, at ten by the clock: seven in UTC.
    expect(await times('series')).toEqual([...first.slice(1), '2026-03-31T07:00']);
  });

  it('the same as last Friday comes at the same times, and is planned like any other', async () => {
    for (const clock of ['11:30', '15:00'])
      await world.tell('addNeed', { ...about, at: `2026-03-20T${clock}:00+02:00`, forWhom: 'friday' }, '__typename');
    const copy = { fromDay: '2026-03-20', toDay: '2026-04-03' };
    await world.tell('copyNeeds', copy, '__typename');
    expect(await times('friday')).toEqual([
      '2026-03-20T09:30',
      '2026-03-20T13:00',
      '2026-04-03T08:30',
      '2026-04-03T12:00',
    ]);
    expect((await world.refused('copyNeeds', { fromDay: '2026-03-21', toDay: '2026-04-03' })).path).toBe(
      'input.fromDay',
    );
  });
});
