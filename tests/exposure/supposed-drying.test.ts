// A drying that is only supposed and the same one done leave the same water; deep and short leaves more.
import { expect, it } from 'vitest';
import { describeEngines } from '../support/engines.ts';
import { newWorld, type World } from '../support/world.ts';

const tray = { temperatureC: 130, minutes: 45, vacuum: true, depthMm: 20 };

async function supposed(world: World, label: string, said: Record<string, unknown>): Promise<number> {
  const { whatIf } = await world.ask<{ whatIf: { exposure: { meanWaterFraction: number }[] } }>(
    'query ($container: WhatIfContainerInput) { whatIf(container: $container) { exposure { meanWaterFraction } } }',
    { container: { label, events: [{ type: 'DRIED', ...said }], report: [world.now()] } },
  );
  return whatIf.exposure[0]?.meanWaterFraction ?? NaN;
}

describeEngines('a drying that is only supposed', (on) => {
  it('leaves what the same drying leaves when it is done', async () => {
    const world = await newWorld(await on.fresh());
    await world.furnished();
    const { label } = await world.drum(600);
    await world.tell('openContainer', { label, at: world.ago(48 * 60) }, '__typename');
    const would = await supposed(world, label, tray);
    const deeper = await supposed(world, label, { ...tray, depthMm: 40 });
    const shorter = await supposed(world, label, { ...tray, minutes: 15 });
    const ready = await supposed(world, label, { ...tray, minutes: 600 });
    expect(deeper).toBeGreaterThan(would);
    expect(shorter).toBeGreaterThan(would);
    expect(ready).toBeLessThan(would);
    const { container } = await world.tell<{ container: { exposure: { meanWaterFraction: number } } }>(
      'recordDrying',
      { label, ...tray },
      'container { exposure { meanWaterFraction } }',
    );
    expect(container.exposure.meanWaterFraction).toBeCloseTo(would, 6);
  });

  it('is refused where no tray is so deep and no night so long', async () => {
    const world = await newWorld(await on.fresh());
    await world.furnished();
    const { label } = await world.drum(600);
    const refused = async (said: Record<string, unknown>) =>
      (
        await world.post('query ($container: WhatIfContainerInput) { whatIf(container: $container) { __typename } }', {
          container: { label, events: [{ type: 'DRIED', ...tray, ...said }], report: [world.now()] },
        })
      ).errors?.[0]?.message;
    expect(await refused({ depthMm: 300 })).toMatch(/^invalid container\.events\.0\.depthMm: 300, /);
    expect(await refused({ minutes: -5 })).toMatch(/^invalid container\.events\.0\.minutes: -5, /);
  });
});
