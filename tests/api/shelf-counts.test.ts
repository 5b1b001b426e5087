// A shelf count puts the book right in one act: all of it or nothing, each part with a way back, on both engines.
import { beforeAll, beforeEach, expect, it } from 'vitest';
import { describeEngines } from '../support/engines.ts';
import { newWorld, type Seen, type World } from '../support/world.ts';

describeEngines('a shelf count', (on) => {
  let world: World;
  let drums: Seen[];
  beforeAll(async () => {
    world = await newWorld(await on.fresh(), { estimates: false });
    await world.furnished();
  });
  beforeEach(async () => {
    world.later(60);
    const drum = { kind: 'DRUM', grams: 1000, basis: 'DRY', innerDiameterMm: 120, heightMm: 250, tareGrams: 200 };
    drums = await world.came([{ ...drum, count: 4 }]);
  });

  const label = (at: number): string => drums[at]?.label ?? '';
  const answer = 'events { id type sentence container { label } } asBooked { label } notes';
  interface Counted {
    events: { id: string; type: string; sentence: string; container: { label: string } }[];
    asBooked: { label: string }[];
    notes: string[];
  }
  const count = (input: Record<string, unknown>) => world.tell<Counted>('recordShelfCount', input, answer);
  const stands = async (of: string) =>
    (
      await world.ask<{ container: { room: { name: string }; dryGrams: number; finishedAt: string | null } }>(
        `{ container(label: "${of}") { room { name } dryGrams finishedAt } }`,
      )
    ).container;

  it('records nothing of what stands as booked', async () => {
    const { events, asBooked } = await count({ room: 'wet bench', found: [{ label: label(0) }] });
    expect(events).toEqual([]);
    expect(asBooked).toEqual([{ label: label(0) }]);
  });

  it('moves here what the book has elsewhere, and counts what was weighed', async () => {
    const { events } = await count({
      room: 'cold store',
      found: [{ label: label(0) }, { label: label(1), grams: 400, basis: 'DRY' }, { label: label(2), grossGrams: 700 }],
    });
    expect(events.map(({ type, container }) => [type, container.label])).toEqual([
      ['MOVED', label(0)],
      ['COUNTED', label(1)],
      ['MOVED', label(1)],
      ['COUNTED', label(2)],
      ['MOVED', label(2)],
    ]);
    expect(await stands(label(1))).toMatchObject({ room: { name: 'cold store' }, dryGrams: 400 });
    expect((await stands(label(2))).dryGrams).toBeCloseTo(500, 6);
  });

  it('brings back what was said to be used up and stands there all the same, and that can be undone', async () => {
    await world.tell('finishContainer', { label: label(0) });
    expect((await stands(label(0))).finishedAt).not.toBeNull();
    const { events } = await count({ room: 'wet bench', found: [{ label: label(0) }] });
    expect(await stands(label(0))).toMatchObject({ dryGrams: 1000, finishedAt: null });
    await world.tell('correctEvent', { event: events[0]?.id, void: true });
    expect((await stands(label(0))).finishedAt).not.toBeNull();
  });

  it('asks how much is there of what was poured out to the last gram', async () => {
    await world.tell('takePortion', { label: label(0), grams: 1000, basis: 'DRY' });
    const refusal = await world.refused('recordShelfCount', { room: 'wet bench', found: [{ label: label(0) }] });
    expect(refusal.path).toBe('input.found.0.grams');
    await count({ room: 'wet bench', found: [{ label: label(0), grams: 30, basis: 'DRY' }] });
    expect(await stands(label(0))).toMatchObject({ dryGrams: 30, finishedAt: null });
  });

  it('marks what was missed, or says what became of it', async () => {
    const { events } = await count({
      room: 'wet bench',
      missed: [
        { label: label(0), as: 'NOT_FOUND', note: 'asked the night shift' },
        { label: label(1), as: 'USED_UP' },
        { label: label(2), as: 'MOVED', room: 'cold store' },
      ],
    });
    expect(events.map(({ sentence }) => sentence)).toEqual([
      'looked for and not found: asked the night shift',
      'used up',
      'moved to cold store',
    ]);
    expect(await stands(label(0))).toMatchObject({ dryGrams: 1000, finishedAt: null, room: { name: 'wet bench' } });
    for (const { id } of events) await world.tell('correctEvent', { event: id, void: true });
    for (const at of [0, 1, 2])
      expect(await stands(label(at))).toMatchObject({ dryGrams: 1000, finishedAt: null, room: { name: 'wet bench' } });
  });

  it('with one thing that cannot be writes nothing at all', async () => {
    const found = [{ label: label(0) }, { label: label(1), plates: 7 }];
    const refusal = await world.refused('recordShelfCount', { room: 'cold store', found });
    expect(refusal.path).toMatch(/^input\.found\.1\./);
    expect(await stands(label(0))).toMatchObject({ room: { name: 'wet bench' } });
  });

  it('sent twice with one key is written once', async () => {
    const input = { room: 'cold store', found: [{ label: label(0) }], clientKey: label(0) };
    expect(await count(input)).toEqual(await count(input));
    const { container } = await world.ask<{ container: { timeline: { totalCount: number } } }>(
      `{ container(label: "${label(0)}") { timeline { totalCount } } }`,
    );
    expect(container.timeline.totalCount).toBe(2);
  });

  it.each([
    [{ room: 'attic', found: [{ label: '?' }] }, 'input.room'],
    [{ room: 'wet bench' }, 'input.found'],
  ])('refuses %j at %s', async (input, path) => {
    expect((await world.refused('recordShelfCount', input)).path).toBe(path);
  });

  it('refuses a container named twice, and one that moved nobody knows where', async () => {
    const twice = { room: 'wet bench', found: [{ label: label(0) }], missed: [{ label: label(0), as: 'USED_UP' }] };
    expect((await world.refused('recordShelfCount', twice)).path).toBe('input.missed.0.label');
    const where = { room: 'wet bench', missed: [{ label: label(0), as: 'MOVED' }] };
    expect((await world.refused('recordShelfCount', where)).path).toBe('input.missed.0.room');
  });
});
