// The lab's recipes over the default ones, and that nothing is heated above what it stands, whichever way it is said.
import { beforeAll, expect, it } from 'vitest';
import { recipes as defaults } from '../../api/science/tray/recipes.ts';
import { describeEngines } from '../support/engines.ts';
import { newWorld } from '../support/world.ts';

interface Recipe {
  dries: string;
  of: string;
  vacuum: boolean;
  temperatureLowC: number;
  temperatureHighC: number;
  minutesHigh: number;
  depthMm: number | null;
  limitC: number;
  limitSource: string;
  source: string;
  own: string[];
}

const fields = 'dries of vacuum temperatureLowC temperatureHighC minutesHigh depthMm limitC limitSource source own';

describeEngines('recipes', (on) => {
  let world: Awaited<ReturnType<typeof newWorld>>;
  beforeAll(async () => {
    world = await newWorld(await on.fresh(), { estimates: false });
    await world.furnished();
  });
  const all = async () => (await world.ask<{ recipes: Recipe[] }>(`{ recipes { ${fields} } }`)).recipes;
  const recipe = async (dries: string) => (await all()).find((one) => one.dries === dries);
  const set = (input: object) => world.tell<Recipe>('setRecipe', { ...input }, fields);

  it('begin as common practice, with limits from memory', async () => {
    const found = await all();
    expect(found.map(({ dries }) => dries)).toEqual(defaults.map(({ dries }) => dries));
    for (const { source, limitSource, own } of found) {
      expect(source).toMatch(/^common practice; limit from memory/);
      expect(limitSource).toMatch(/maker’s sheet comes first/);
      expect(own).toEqual([]);
    }
  });

  it('are set number by number, and taken back whole', async () => {
    expect(await set({ dries: 'silica', temperatureLowC: 140, depthMm: 8 })).toMatchObject({
      temperatureLowC: 140,
      temperatureHighC: 160,
      depthMm: 8,
      own: ['temperatureLowC', 'depthMm'],
    });
    expect(await set({ dries: 'Silica', minutesHigh: 90 })).toMatchObject({ temperatureLowC: 140, minutesHigh: 90 });
    const { container } = await world.ask<{ container: { dryingRecipes: Recipe[] } }>(
      `{ container(label: "${(await world.drum(10)).label}") { dryingRecipes { depthMm minutesHigh } } }`,
    );
    expect(container.dryingRecipes).toEqual([{ depthMm: 8, minutesHigh: 90 }]);
    await world.tell('resetRecipe', { dries: 'silica' }, fields);
    expect(await recipe('silica')).toMatchObject({ temperatureLowC: 130, depthMm: 10, own: [] });
  });

  it('refuse what contradicts itself, what is too hot, and an upper temperature that nobody vouches for', async () => {
    const refused = async (input: object) => world.refused('setRecipe', { ...input });
    expect(await refused({ dries: 'amino', temperatureHighC: 90 })).toMatchObject({
      path: 'input.temperatureHighC',
      expected: expect.stringMatching(/^at most 80 °C for amino: above that the bonded phase breaks down/) as string,
    });
    expect((await refused({ dries: 'silica', temperatureLowC: 165 })).path).toBe('input.temperatureLowC');
    expect((await refused({ dries: 'silica', minutesLow: 61 })).path).toBe('input.minutesLow');
    expect((await refused({ dries: 'glass', depthMm: 5 })).expected).toMatch(/plates lie in no tray/);
    expect((await refused({ dries: 'plastic', upperC: 110 })).path).toBe('input.upperSource');
    expect((await refused({ dries: 'granite' })).message).toMatch(/^unknown input.dries: granite, one of: .*alumina/);
    // A lower limit refuses the recipe that stands above it.
    expect((await refused({ dries: 'silica', upperC: 150, upperSource: 'sheet of 2025' })).path).toBe(
      'input.temperatureHighC',
    );
    expect(await all()).toHaveLength(defaults.length);
  });

  it('with the maker’s sheet an upper temperature can be set, and counts from then on', async () => {
    const source = 'Osier & Tarn, sheet of March 2025';
    const plastic = await set({ dries: 'plastic', upperC: 100, upperSource: source });
    expect(plastic).toMatchObject({ limitC: 100, limitSource: source });
    const box = await world.plates(5, { backing: 'PLASTIC' });
    await world.tell('recordDrying', { label: box.label, temperatureC: 98, minutes: 30 });
    const hot = await world.refused('recordDrying', { label: box.label, temperatureC: 101, minutes: 30 });
    expect(hot.expected).toContain(
      `at most 100 °C for plastic-backed plates: above that the plastic backing gives way (${source})`,
    );
    await world.tell('resetRecipe', { dries: 'plastic' }, fields);
    expect(
      (await world.refused('recordDrying', { label: box.label, temperatureC: 98, minutes: 30 })).expected,
    ).toContain('at most 90 °C');
  });

  it('of a class of the lab’s own begin with nothing guessed', async () => {
    await world.tell('addSorbent', { name: 'Bog wool', sorbentClass: 'bog wool' }, '__typename');
    expect((await world.refused('setRecipe', { dries: 'bog wool', temperatureLowC: 60 })).path).toBe('input.upperC');
    const upper = { upperC: 70, upperSource: 'tried on 2 g' };
    expect((await world.refused('setRecipe', { dries: 'bog wool', ...upper })).path).toBe('input.temperatureLowC');
    const whole = { temperatureLowC: 50, temperatureHighC: 60, minutesLow: 60, minutesHigh: 120 };
    await set({ dries: 'bog wool', ...upper, ...whole });
    expect(await recipe('bog wool')).toMatchObject({ limitC: 70, minutesHigh: 120 });
    const [drum] = await world.came([{ kind: 'DRUM', grams: 10, innerDiameterMm: 60, heightMm: 100 }], {
      sorbent: 'Bog wool',
    });
    expect(
      (await world.refused('requestDrying', { label: drum?.label, why: 'wet', temperatureC: 80 })).expected,
    ).toContain('at most 70 °C for bog wool');
  });

  it.each(defaults.map(({ dries, plates, upperC }) => [dries, plates, upperC] as const))(
    '%s is never above its limit: not asked for, not recorded, not by answering a request, not by correcting',
    async (dries, plates, upperC) => {
      const sorbent = `kept of ${dries}`;
      if (!plates) await world.tell('addSorbent', { name: sorbent, sorbentClass: dries }, '__typename');
      const { label } = plates
        ? await world.plates(5, { backing: dries.toUpperCase() })
        : await world.drum(50, {}, { sorbent });
      const says = `at most ${upperC} °C`;
      const hot = upperC + 0.5;
      const asked = await world.refused('requestDrying', { label, why: 'wet', temperatureC: hot });
      expect(asked).toMatchObject({ path: 'input.temperatureC', expected: expect.stringContaining(says) as string });
      const { id } = await world.tell<{ id: string }>('requestDrying', { label, why: 'wet', temperatureC: upperC });
      const answered = await world.refused('recordRequestedDrying', { id, temperatureC: hot, minutes: 30 });
      expect(answered).toMatchObject({ path: 'input.temperatureC', expected: expect.stringContaining(says) as string });
      const recorded = await world.refused('recordDrying', { label, temperatureC: hot, minutes: 30 });
      expect(recorded.expected).toContain(says);
      const { event } = await world.tell('recordRequestedDrying', { id, temperatureC: upperC, minutes: 30 });
      const corrected = await world.refused('correctEvent', { event: event.id, replacement: { temperatureC: hot } });
      expect(corrected).toMatchObject({
        path: 'input.replacement.temperatureC',
        expected: expect.stringContaining(says) as string,
      });
      await world.tell('correctEvent', { event: event.id, replacement: { minutes: 45 } });
    },
  );
});
