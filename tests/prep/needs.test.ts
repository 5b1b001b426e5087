// Needs as they are told: planned at once, their stock kept, dropped and brought back; what cannot be met says why.
import { beforeAll, beforeEach, expect, it } from 'vitest';
import { describeEngines } from '../support/engines.ts';
import { newWorld, type Seen, type World } from '../support/world.ts';
import { needFields, type SeenNeed } from './seen.ts';

interface Kept {
  need: SeenNeed;
  needs: SeenNeed[];
}

/** Monday 2 March 2026, 14:00 in Helsinki (the world's noon in UTC); working hours 08 to 18 there. */
const tuesday = (clock: string) => new Date(`2026-03-03T${clock}:00+02:00`);

describeEngines('needs', (on) => {
  let world: World;
  let box: Seen;
  beforeAll(async () => {
    world = await newWorld(await on.fresh());
    await world.furnished();
  });
  beforeEach(async () => {
    const { needs } = await world.ask<{ needs: { id: string }[] }>('{ needs { id } }');
    for (const { id } of needs) await world.tell('dropNeed', { id }, '__typename');
    const { containers } = await world.ask<{ containers: { nodes: Seen[] } }>(
      '{ containers(first: 100) { nodes { label finishedAt } } }',
    );
    for (const { label, finishedAt } of containers.nodes)
      if (!finishedAt) await world.tell('finishContainer', { label }, '__typename');
    box = await world.plates(25);
  });

  const add = async (input: object): Promise<SeenNeed> => {
    const said = { sorbent: 'Silica 40–63 µm', forWhom: 'alkaloid screen', ...input };
    return (await world.tell<Kept>('addNeed', said, `need { ${needFields} } needs { id }`)).need;
  };
  const plates = (input: object = {}) => add({ kind: 'PLATES', plates: 12, at: tuesday('14:00'), ...input });
  const read = async (id: string): Promise<SeenNeed> =>
    (
      await world.ask<{ node: SeenNeed }>(`query ($id: ID!) { node(id: $id) { ... on Need { ${needFields} } } }`, {
        id,
      })
    ).node;

  it('plates for tomorrow afternoon are washed tonight, dried overnight, activated just before', async () => {
    const need = await plates({ plates: 10 });
    expect(need.obstacle).toBeNull();
    expect(need.steps.map(({ kind }) => kind)).toEqual([
      'PRE_WASH',
      'PRE_WASH',
      'AIR_DRY',
      'KEEP',
      'OVEN',
      'COOL',
      'HAND_OVER',
    ]);
    const [first] = need.steps;
    expect(first?.startAt.slice(0, 10)).toBe('2026-03-02');
    expect(new Date(need.steps.at(-1)?.endAt ?? '')).toEqual(tuesday('14:00'));
    expect(need.kept).toEqual([{ dryGrams: null, plates: 10, container: { label: box.label } }]);
  });

  it('keeps plates for one need only, and lets go of them when it is dropped', async () => {
    const one = await plates({ plates: 20 });
    const other = await plates({ plates: 10 });
    expect(other.state).toBe('CANNOT_BE_MET');
    expect(other.obstacle?.what).toBe('stock');
    expect(other.obstacle?.sentence).toMatch(/10 plates are needed, 5 plates/);
    await world.tell('dropNeed', { id: one.id }, '__typename');
    expect((await read(other.id)).kept).toEqual([{ dryGrams: null, plates: 10, container: { label: box.label } }]);
    await world.tell('dropNeed', { id: other.id }, '__typename');
    expect((await world.look(box.label)).plates).toBe(25);
  });

  it('promises nothing twice to fifty who ask at once', async () => {
    const drum = await world.drum(1000, { basis: 'DRY' });
    const asked = Array.from({ length: 50 }, (_, index) =>
      add({ kind: 'SORBENT', dryGrams: 60, at: tuesday('15:00'), forWhom: `script ${index}` }),
    );
    const all = await Promise.all(asked);
    const kept = all.flatMap((need) => need.kept);
    expect(kept).toHaveLength(16);
    expect(kept.reduce((sum, { dryGrams }) => sum + (dryGrams ?? 0), 0)).toBeCloseTo(960, 6);
    expect((await world.look(drum.label)).freeDryGrams).toBeCloseTo(40, 6);
    expect(all.filter(({ state }) => state === 'CANNOT_BE_MET')).toHaveLength(34);
  });

  it('says at once what stands in the way, and the first time it could be', async () => {
    const need = await plates({ at: new Date('2026-03-02T16:00:00+02:00') });
    expect(need.state).toBe('CANNOT_BE_MET');
    expect(need.obstacle).toEqual({
      what: 'time',
      sentence: expect.stringMatching(/^there is no time left for .* it would have had to begin by /),
    });
    expect(need.firstPossibleAt).not.toBeNull();
    await world.tell('setNeed', { id: need.id, at: need.firstPossibleAt }, '__typename');
    const moved = await read(need.id);
    expect(moved.obstacle).toBeNull();
    const earlier = new Date(new Date(need.firstPossibleAt ?? '').getTime() - 15 * 60_000);
    await world.tell('setNeed', { id: need.id, at: earlier }, '__typename');
    expect((await read(need.id)).state).toBe('CANNOT_BE_MET');
  });

  it('what never fits has no first time, and says what would have to change', async () => {
    await world.plates(30);
    // The usual hood holds 20 plates, and all of a need dry there together.
    const need = await plates({ plates: 30, at: tuesday('17:00') });
    expect(need.firstPossibleAt).toBeNull();
    expect(need.obstacle?.what).toBe('hood');
    expect(need.obstacle?.sentence).toMatch(/^30 plates never fit: the hood holds 20 at once, .* in parts/);
    await world.tell('dropNeed', { id: need.id }, '__typename');
    await world.tell('setPrepSettings', { hoodPlaces: 40 }, '__typename');
    const wider = await plates({ plates: 30, at: tuesday('17:00'), forWhom: 'a wider hood' });
    await world.tell('setPrepSettings', { hoodPlaces: 20 }, '__typename');
    // Thirty plates are three tank loads more than an evening has room for: at another time, and it says when.
    expect(wider.state).toBe('CANNOT_BE_MET');
    expect(wider.firstPossibleAt).not.toBeNull();
  });
});
