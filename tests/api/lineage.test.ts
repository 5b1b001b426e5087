// Where a container came from and what became of it, and what was said of how it is used.
import { expect, it } from 'vitest';
import { describeEngines } from '../support/engines.ts';
import { newWorld } from '../support/world.ts';

interface Lineage {
  kin: { relation: string; level: number; container: { label: string } }[];
  more: boolean;
}

const cup = { innerDiameterMm: 80, heightMm: 60 };

describeEngines('a lineage', (on) => {
  it('leads from the drum over its portions to a column, tells siblings and what was emptied back', async () => {
    const world = await newWorld(await on.fresh(), { estimates: false });
    await world.furnished();
    const lineageOf = async (label: string): Promise<Lineage> =>
      (
        await world.ask<{ container: { lineage: Lineage } }>(
          'query ($label: String!) { container(label: $label) { lineage { more kin { relation level container { label } } } } }',
          { label },
        )
      ).container.lineage;
    const drum = await world.drum(1000);
    const pour = async (label: string, grams: number) =>
      (await world.tell('takePortion', { label, grams, ...cup })).made?.label ?? '';
    const tray = await pour(drum.label, 300);
    const beside = await pour(drum.label, 100);
    const beaker = await pour(tray, 200);
    const column = (await world.tell('packColumn', { label: beaker, innerDiameterMm: 20, bedLengthMm: 100, grams: 15 }))
      .made?.label;
    await world.tell('combineContainers', { label: beside, into: tray });

    const told = (await lineageOf(tray)).kin.map(({ relation, level, container }) => [
      relation,
      level,
      container.label,
    ]);
    expect(told).toEqual([
      ['ANCESTOR', -1, drum.label],
      ['COMBINED_FROM', -1, beside],
      ['SIBLING', 0, beside],
      ['DESCENDANT', 1, beaker],
      ['DESCENDANT', 2, column],
    ]);
    const ofColumn = await lineageOf(column ?? '');
    expect(ofColumn.kin.map(({ container }) => container.label)).toEqual([drum.label, tray, beaker]);
    expect(ofColumn.more).toBe(false);
    expect((await lineageOf(beside)).kin.find(({ relation }) => relation === 'EMPTIED_INTO')?.container.label).toBe(
      tray,
    );
  });

  it('habit and scooping count as said once somebody answered, also with “not every day”', async () => {
    const world = await newWorld(await on.fresh(), { estimates: false });
    await world.furnished();
    const { label } = await world.drum(500);
    const said = async () =>
      (
        await world.ask<{ container: object }>(
          'query ($label: String!) { container(label: $label) { habitSaid scoopingSaid } }',
          { label },
        )
      ).container;
    expect(await said()).toEqual({ habitSaid: false, scoopingSaid: false });
    await world.tell('setHabit', { label, timesADay: 0, minutes: 0 });
    expect(await said()).toEqual({ habitSaid: true, scoopingSaid: false });
    const { event } = await world.tell('setScooping', { label, scooping: 'TOP' });
    expect(await said()).toEqual({ habitSaid: true, scoopingSaid: true });
    await world.tell('correctEvent', { event: event.id, void: true });
    expect(await said()).toEqual({ habitSaid: true, scoopingSaid: false });
  });
});
