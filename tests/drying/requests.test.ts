// What waits to be dried, and what never goes to an oven.
import { beforeAll, beforeEach, expect, it } from 'vitest';
import { describeEngines } from '../support/engines.ts';
import { newWorld, type Seen, type World } from '../support/world.ts';

interface Request {
  id: string;
  state: string;
  position: number;
}

describeEngines('the list of what to dry', (on) => {
  let world: World;
  let drum: Seen;
  beforeAll(async () => {
    world = await newWorld(await on.fresh(), { estimates: false });
    await world.furnished();
    await world.tell('addSorbent', { name: 'Amino silica', sorbentClass: 'amino' }, '__typename');
  });
  beforeEach(async () => {
    const { dryingRequests } = await world.ask<{ dryingRequests: { nodes: Request[] } }>(
      '{ dryingRequests { nodes { id } } }',
    );
    for (const { id } of dryingRequests.nodes) await world.tell('withdrawDrying', { id });
    drum = await world.drum(1000, { basis: 'DRY' });
  });

  const ask = (label: string, more: object = {}) =>
    world.tell<Request>('requestDrying', { label, why: 'too wet', ...more });
  const waiting = async () => {
    const { dryingRequests } = await world.ask<{
      dryingRequests: { totalCount: number; nodes: { id: string; why: string; container: { label: string } }[] };
    }>('{ dryingRequests(first: 50) { totalCount nodes { id why container { label } } } }');
    return dryingRequests.nodes;
  };
  const stateOf = async (id: string) =>
    (
      await world.ask<{ node: { state: string; endedAt: string | null } }>(
        `{ node(id: "${id}") { ... on DryingRequest { state endedAt } } }`,
      )
    ).node;

  it('takes what is asked for, last, until it is moved', async () => {
    const others = [await world.drum(10), await world.drum(10)];
    const [first, second, third] = [
      await ask(drum.label),
      await ask(others[0]?.label ?? ''),
      await ask(others[1]?.label ?? ''),
    ];
    expect((await waiting()).map(({ id }) => id)).toEqual([first.id, second.id, third.id]);
    await world.tell('moveDryingRequest', { id: third.id, before: first.id });
    await world.tell('moveDryingRequest', { id: first.id });
    expect((await waiting()).map(({ id }) => id)).toEqual([third.id, second.id, first.id]);
  });

  it('keeps its order however often it is shuffled', async () => {
    const ids: string[] = [];
    for (let count = 1; count <= 3; count += 1) ids.push((await ask((await world.drum(10)).label)).id);
    // Each move halves the gap: after sixty there is none left, and the list is numbered anew.
    for (let turn = 0; turn < 60; turn += 1) {
      const now = (await waiting()).map(({ id }) => id);
      await world.tell('moveDryingRequest', { id: now[2], before: now[1] });
      expect((await waiting()).map(({ id }) => id)).toEqual([now[0], now[2], now[1]]);
    }
  });

  it('is answered by a drying, waits again when that is taken back, and follows its correction', async () => {
    const { id } = await ask(drum.label);
    const { event } = await world.tell('recordDrying', { label: drum.label, temperatureC: 140, minutes: 45 });
    expect(await stateOf(id)).toEqual({ state: 'DRIED', endedAt: world.now().toISOString() });
    const { event: corrected } = await world.tell('correctEvent', {
      event: event.id,
      replacement: { at: world.ago(30) },
    });
    expect(await stateOf(id)).toEqual({ state: 'DRIED', endedAt: world.ago(30).toISOString() });
    await world.tell('correctEvent', { event: corrected.id, void: true });
    await world.tell('correctEvent', { event: event.id, void: true });
    expect(await stateOf(id)).toEqual({ state: 'WAITING', endedAt: null });
  });

  it('holds nothing of what is gone', async () => {
    const { id } = await ask(drum.label);
    const { notes } = await world.tell('finishContainer', { label: drum.label });
    expect(notes).toEqual(['it no longer waits to be dried: nothing is left in it']);
    expect((await stateOf(id)).state).toBe('WITHDRAWN');
    expect((await world.refused('requestDrying', { label: drum.label, why: 'wet' })).path).toBe('input.label');
    expect((await world.refused('withdrawDrying', { id })).message).toMatch(/withdrawn already/);
  });

  it('takes no more than is there and does not wait yet', async () => {
    await ask(drum.label, { dryGrams: 700 });
    expect((await world.refused('requestDrying', { label: drum.label, why: 'wet', dryGrams: 400 })).expected).toMatch(
      /^at most 300 g \(dry\)/,
    );
    await ask(drum.label, { dryGrams: 300 });
    expect((await world.refused('requestDrying', { label: drum.label, why: 'wet' })).path).toBe('input.dryGrams');
  });

  it('never takes sorbent that touched solvent', async () => {
    await world.tell('recordSolvent', { label: drum.label, what: 'crude extract' });
    const refusal = await world.refused('requestDrying', { label: drum.label, why: 'wet' });
    expect(refusal.message).toMatch(/it had touched solvent or sample: such sorbent never goes to the oven/);
  });

  it('takes solvent-wet plates only once the solvent is gone', async () => {
    const box = await world.plates(10);
    await world.tell('preWash', { label: box.label, solvent: 'methanol' });
    expect((await world.refused('requestDrying', { label: box.label, why: 'activation' })).message).toMatch(
      /solvent-wet plates never go into a hot or vacuum oven.*recordSolventGone first/,
    );
    world.later(12 * 60);
    await world.tell('solventGone', { label: box.label });
    expect((await ask(box.label, { plates: 4 })).state).toBe('WAITING');
    expect((await world.refused('requestDrying', { label: box.label, plates: 7, why: 'activation' })).path).toBe(
      'input.plates',
    );
  });

  it.each([
    ['Amino silica', 90, 80],
    ['Silica 40–63 µm', 210, 200],
  ])('refuses a recipe hotter than %s stands', async (sorbent, temperatureC, limitC) => {
    const hot = await world.drum(100, {}, { sorbent });
    const refusal = await world.refused('requestDrying', { label: hot.label, why: 'wet', temperatureC });
    expect(refusal.path).toBe('input.temperatureC');
    expect(refusal.expected).toContain(`at most ${limitC} °C`);
    await ask(hot.label, { temperatureC: limitC, minutes: 60 });
  });

  it('refuses plastic-backed plates above 90 °C', async () => {
    const box = await world.plates(10, { backing: 'PLASTIC' });
    expect(
      (await world.refused('requestDrying', { label: box.label, why: 'activation', temperatureC: 110 })).expected,
    ).toContain('at most 90 °C');
  });

  it('refuses a drying that was hotter than it stands; keeps one that should not have been, and says so', async () => {
    await world.tell('recordSolvent', { label: drum.label });
    const hot = await world.refused('recordDrying', { label: drum.label, temperatureC: 250, minutes: 60 });
    expect(hot.path).toBe('input.temperatureC');
    expect(hot.expected).toContain('at most 200 °C for silica gel: above that it loses silanols');
    const { notes } = await world.tell('recordDrying', { label: drum.label, temperatureC: 150, minutes: 60 });
    expect(notes).toEqual(['it had touched solvent or sample: such sorbent never goes to the oven']);
  });

  it('tells how a container is dried, the strictest limit first', async () => {
    const box = await world.plates(10, { backing: 'ALUMINIUM' });
    const { container } = await world.ask<{ container: object }>(
      `{ container(label: "${box.label}") { dryingRecipes { of limitC } } }`,
    );
    expect(container).toEqual({
      dryingRecipes: [
        { of: 'aluminium-backed plates', limitC: 120 },
        { of: 'silica gel', limitC: 200 },
      ],
    });
  });
});
