// What comes at the end of a need: equilibrated in the air of its room, packed, conditioned; handed over late, or never.
import { beforeAll, beforeEach, expect, it } from 'vitest';
import type { Database } from '../../api/database/database.ts';
import { describeEngines } from '../support/engines.ts';
import { newWorld, type World } from '../support/world.ts';
import { needFields, type SeenNeed } from './seen.ts';

/** Monday 2 March 2026, 14:00 in Helsinki, is now. */
const on = (day: number, clock: string) => new Date(`2026-03-0${day}T${clock}:00+02:00`);

describeEngines('the end of a need', (engine) => {
  let database: Database;
  let world: World;
  beforeAll(async () => {
    database = await engine.fresh();
  });
  beforeEach(async () => {
    world = await newWorld(database);
    await world.furnished();
  });

  const add = async (input: object): Promise<SeenNeed> => {
    const about = { sorbent: 'Silica 40–63 µm', forWhom: 'alkaloid screen', ...input };
    return (await world.tell<{ need: SeenNeed }>('addNeed', about, `need { ${needFields} }`)).need;
  };
  const read = async ({ id }: SeenNeed): Promise<SeenNeed> => {
    const query = `query ($from: DateTime) { needs(from: $from) { ${needFields} } }`;
    const { needs } = await world.ask<{ needs: SeenNeed[] }>(query, { from: on(1, '00:00') });
    const found = needs.find((each) => each.id === id);
    if (!found) throw new Error('the need is gone');
    return found;
  };
  const until = (at: Date) => world.later((at.getTime() - world.now().getTime()) / 60_000);
  /** Ticks the first open step of a kind, at its end. */
  const tick = async (need: SeenNeed, kind: string): Promise<string[]> => {
    const step = (await read(need)).steps.find((each) => each.kind === kind && !each.doneAt);
    if (!step) throw new Error(`no open ${kind}`);
    const ends = new Date(step.endAt);
    if (ends > world.now()) until(ends);
    return (await world.tell<{ notes: string[] }>('tickStep', { id: step.id }, 'notes')).notes;
  };
  const told = async (label: string): Promise<{ type: string; sentence: string }[]> => {
    const { container } = await world.ask<{ container: { timeline: { nodes: { type: string; sentence: string }[] } } }>(
      `{ container(label: "${label}") { timeline { nodes { type sentence } } } }`,
    );
    return container.timeline.nodes;
  };

  it('plates are equilibrated in the air that the room had then', async () => {
    await world.plates(4);
    const need = await add({
      kind: 'PLATES',
      plates: 4,
      isPreWashed: false,
      regime: 'EQUILIBRATED',
      room: 'wet bench',
      at: on(4, '16:00'),
    });
    await tick(need, 'OVEN');
    const step = (await read(need)).steps.find(({ kind }) => kind === 'EQUILIBRATE');
    const at = new Date(step?.endAt ?? 0);
    until(at);
    const readings = Array.from({ length: 13 }, (_, i) => ({
      at: world.ago(60 - 5 * i),
      temperatureC: 20,
      humidityPercent: 31,
    }));
    await world.tell('addReadings', { room: 'wet bench', sensor: 'logger', readings }, '__typename');
    await tick(need, 'EQUILIBRATE');
    const label = (await read(need)).kept[0]?.container.label ?? '';
    const found = (await told(label)).find(({ type }) => type === 'EQUILIBRATED');
    expect(found?.sentence).toMatch(/at 31 % RH, 20 °C \(in wet bench\)/);
  });

  it('a column is packed from what is kept for it, and conditioned', async () => {
    const drum = await world.drum(1000, { basis: 'DRY' });
    const need = await add({
      kind: 'COLUMN',
      diameterMm: 20,
      bedLengthMm: 150,
      mobilePhase: 'hexane:ethyl acetate 4:1',
      at: on(3, '12:00'),
    });
    expect(need.obstacle).toBeNull();
    const [kept] = need.kept;
    await tick(need, 'PACK');
    const [packed] = (await read(need)).kept;
    expect(packed?.container.label).not.toBe(drum.label);
    expect((await world.look(packed?.container.label ?? '')).dryGrams).toBeCloseTo(kept?.dryGrams ?? 0, 3);
    expect((await world.look(drum.label)).freeDryGrams).toBeCloseTo(1000 - (kept?.dryGrams ?? 0), 3);
    await tick(need, 'CONDITION');
    expect((await told(packed?.container.label ?? '')).map(({ type }) => type)).toContain('CONDITIONED');
    await tick(need, 'HAND_OVER');
    expect((await read(need)).state).toBe('MET');
  });

  it('stays kept until midnight when nobody says that it was handed over, then is free, and can still be said', async () => {
    const drum = await world.drum(1000, { basis: 'DRY' });
    const need = await add({ kind: 'SORBENT', dryGrams: 300, at: on(3, '12:00') });
    const free = async () => (await world.look(drum.label)).freeDryGrams;
    until(on(3, '23:50'));
    expect((await read(need)).state).toBe('OVERDUE');
    expect(await free()).toBeCloseTo(700, 6);
    until(on(4, '00:05'));
    expect((await read(need)).state).toBe('OVERDUE');
    expect(await free()).toBeCloseTo(1000, 6);
    expect(await tick(need, 'HAND_OVER')).toEqual([]);
    expect((await read(need)).state).toBe('MET');
    expect((await world.look(drum.label)).dryGrams).toBeCloseTo(700, 6);
  });

  it('said when somebody else has had it since, it asks from where it was taken', async () => {
    const drum = await world.drum(1000, { basis: 'DRY' });
    const need = await add({ kind: 'SORBENT', dryGrams: 600, at: on(3, '12:00') });
    until(on(4, '09:00'));
    await read(need);
    await add({ kind: 'SORBENT', dryGrams: 900, at: on(4, '15:00'), forWhom: 'somebody else' });
    expect(await tick(need, 'HAND_OVER')).toEqual([
      'nothing is kept for alkaloid screen any more: record from where it was taken',
    ]);
    expect((await world.look(drum.label)).dryGrams).toBeCloseTo(1000, 6);
  });
});
