// What is next at the ovens, as the day says it from one click to the following.
import { beforeAll, expect, it } from 'vitest';
import { describeEngines } from '../support/engines.ts';
import { newWorld, type World } from '../support/world.ts';
import { clock, ovensIn, type Ovens } from './lab.ts';

describeEngines('the next step at the ovens', (engine) => {
  let world: World;
  let ovens: Ovens;
  beforeAll(async () => {
    world = await newWorld(await engine.fresh(), { estimates: false });
    ovens = ovensIn(world);
    await world.furnished();
    await ovens.oven();
  });

  it('the day says what is next, and when', async () => {
    const next = async () =>
      (
        await world.ask<{
          day: { nextOvenStep: { what: string; at: string; sentence: string; runId: string } | null };
        }>('{ day { nextOvenStep { what at sentence runId } } }')
      ).day.nextOvenStep;
    expect(await next()).toBeNull();
    const { label } = await world.drum(300, { basis: 'DRY' });
    await ovens.ask(label, { readyAt: new Date('2026-03-02T15:00:00+02:00') });
    const [run] = (await ovens.plan()).runs;
    if (!run) throw new Error('no run');
    // 13:00 UTC is 15:00 in Helsinki; 54 min before, the oven is set.
    expect(await next()).toMatchObject({
      what: 'SET_OVEN',
      sentence: '14:06: set vacuum oven to 130 °C',
      runId: run.id,
    });
    world.later(30);
    expect(await next()).toMatchObject({
      what: 'LOAD',
      at: run.plannedStart,
      sentence: `15:00: ${label} into vacuum oven, 130 °C`,
    });
    world.later(30);
    await ovens.step('startRun', (await next())?.runId ?? '');
    const out = new Date(run.plannedEnd);
    // Half an hour by the recipe once it is hot, which takes a quarter of an hour or more.
    expect(out >= new Date('2026-03-02T15:45:00+02:00') && out <= new Date('2026-03-02T16:00:00+02:00')).toBe(true);
    expect(await next()).toMatchObject({ what: 'TAKE_OUT', sentence: `${clock(out)}: ${label} out of vacuum oven` });
    world.later(60);
    await ovens.step('takeRunOut', run.id);
    expect(await next()).toMatchObject({ what: 'COOLED' });
    await ovens.step('recordRunCooled', run.id);
    expect(await next()).toMatchObject({ what: 'RESULTS' });
    await ovens.step('finishRun', run.id);
    expect(await next()).toBeNull();
  });
});
