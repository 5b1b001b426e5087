// Holds, and what stands behind the stock: sorbents, suppliers, vessels, the outbox.
import { beforeAll, beforeEach, expect, it } from 'vitest';
import { describeEngines } from '../support/engines.ts';
import { newWorld, type Seen, type World } from '../support/world.ts';

describeEngines('stock kept for somebody', (on) => {
  let world: World;
  let drum: Seen;
  beforeAll(async () => {
    world = await newWorld(await on.fresh(), { estimates: false });
    await world.furnished();
  });
  beforeEach(async () => {
    drum = await world.drum(1000, { basis: 'DRY' });
  });

  type Held = { hold: { id: string }; container: Seen };
  const keep = (dryGrams: number) =>
    world.tell<Held>('holdStock', { label: drum.label, dryGrams, forWhat: 'the spring campaign' });

  it('is not free for others, and never promised twice', async () => {
    expect((await keep(700)).container).toMatchObject({ dryGrams: 1000, freeDryGrams: 300 });
    const refusal = await world.refused('holdStock', { label: drum.label, dryGrams: 400, forWhat: 'another' });
    expect(refusal).toMatchObject({ path: 'input.dryGrams' });
    expect(refusal.expected).toMatch(/^at most 300 g \(dry\)/);
  });

  it('is not promised twice when two ask at once', async () => {
    const ask = () =>
      world.post('mutation ($input: HoldStockInput!) { holdStock(input: $input) { __typename } }', {
        input: { label: drum.label, dryGrams: 600, forWhat: 'both' },
      });
    const answers = await Promise.all([ask(), ask()]);
    expect(answers.map(({ data }) => JSON.stringify(data)).sort()).toEqual([
      '{"holdStock":{"__typename":"Held"}}',
      '{"holdStock":{"__typename":"Refusal"}}',
    ]);
  });

  it('is free again once it is let go, and letting go twice is no harm', async () => {
    const { hold } = await keep(700);
    for (let time = 1; time <= 2; time += 1) {
      const { container } = await world.tell<Held>('releaseHold', { hold: hold.id });
      expect(container.freeDryGrams).toBe(1000);
    }
  });

  it('can be taken all the same, and that is said', async () => {
    await keep(700);
    const { notes, container } = await world.tell('takePortion', { label: drum.label, grams: 500, basis: 'DRY' });
    expect(notes).toEqual(['700 g (dry) of it are kept for somebody, 500 g are left']);
    expect(container.freeDryGrams).toBe(0);
  });

  it('of plates counts plates', async () => {
    const box = await world.plates(25);
    await world.tell('holdStock', { label: box.label, plates: 20, forWhat: 'Friday' });
    expect((await world.refused('holdStock', { label: box.label, plates: 6, forWhat: 'Friday' })).expected).toMatch(
      /^at most 5 plates/,
    );
    expect((await world.refused('holdStock', { label: box.label, dryGrams: 6, forWhat: 'Friday' })).path).toBe(
      'input.plates',
    );
  });
});

describeEngines('what stands behind the stock', (on) => {
  let world: World;
  beforeAll(async () => {
    world = await newWorld(await on.fresh());
    await world.furnished();
  });

  const properties = async (name: string) => {
    const { sorbents } = await world.ask<{
      sorbents: {
        nodes: {
          name: string;
          properties: { name: string; value: number | null; origin: string; confidence: string; source: string }[];
        }[];
      };
    }>('{ sorbents { nodes { name properties { name value origin confidence source } } } }');
    return sorbents.nodes.find((one) => one.name === name)?.properties ?? [];
  };

  it('is a sorbent whose every number says where it comes from', async () => {
    const rows = await properties('Silica 40–63 µm');
    expect(rows.find(({ name }) => name === 'filmCapacity')).toMatchObject({
      value: 0.066,
      origin: 'TABLE',
      confidence: 'DERIVED',
    });
    expect(rows.every(({ source }) => source.length > 3)).toBe(true);
  });

  it('is a class of which little is known, and says so', async () => {
    await world.tell('addSorbent', { name: 'Amino', sorbentClass: 'amino' }, '__typename');
    expect((await properties('Amino')).find(({ name }) => name === 'filmCapacity')).toMatchObject({
      value: null,
      origin: 'UNKNOWN',
    });
  });

  it('is a number that the lab measured, and estimates follow it', async () => {
    const drum = await world.drum(1000, { closure: 'OPEN' });
    world.later(24 * 60);
    const water = async () => {
      await world.tell('mixContainer', { label: drum.label });
      const { container } = await world.ask<{ container: { exposure: { meanWaterFraction: number } } }>(
        `{ container(label: "${drum.label}") { exposure { meanWaterFraction } } }`,
      );
      return container.exposure.meanWaterFraction;
    };
    const before = await water();
    await world.tell(
      'setSorbentProperty',
      { sorbent: 'Silica 40–63 µm', name: 'filmCapacity', value: 0.132, source: 'a sample over magnesium chloride' },
      '__typename',
    );
    expect(await water()).toBeGreaterThan(before * 1.05);
    expect((await properties('Silica 40–63 µm')).find(({ name }) => name === 'filmCapacity')).toMatchObject({
      value: 0.132,
      origin: 'MEASURED',
    });
  });

  it.each([
    ['addSorbent', { name: 'silica 40–63 µm', sorbentClass: 'silica' }, 'input.name'],
    [
      'addSorbent',
      { name: 'x', sorbentClass: 'silica', targetUpperWaterFraction: 0.1, targetLowerWaterFraction: 0.2 },
      'input.targetLowerWaterFraction',
    ],
    ['addSupplier', { name: 'MARLPIT chemicals' }, 'input.name'],
    ['setSorbentProperty', { sorbent: 'Silica 40–63 µm', name: 'colour', source: 'looked' }, 'input.name'],
    ['addVessel', { name: 'jar', innerDiameterMm: 0, heightMm: 5 }, 'input.innerDiameterMm'],
  ])('refuses %s of %j at %s', async (mutation, input, path) => {
    expect((await world.refused(mutation, input)).path).toBe(path);
  });

  it('is written down in the outbox, for scripts that follow', async () => {
    const { changes: all } = await world.ask<{ changes: { number: number }[] }>('{ changes { number } }');
    const last = all.at(-1)?.number ?? 0;
    await world.tell('addSupplier', { name: 'Osier & Tarn' }, '__typename');
    const { changes } = await world.ask<{ changes: object[] }>(`{ changes(after: ${last}) { entity kind } }`);
    expect(changes).toEqual([{ entity: 'Supplier', kind: 'MADE' }]);
  });
});
