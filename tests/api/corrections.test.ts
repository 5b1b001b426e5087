// Putting right what was written down: a correction supersedes, both stay to be read.
import { beforeAll, beforeEach, expect, it } from 'vitest';
import { describeEngines } from '../support/engines.ts';
import { newWorld, type Recorded, type Seen, type World } from '../support/world.ts';

const jar = { innerDiameterMm: 80, heightMm: 120, closure: 'TIGHT' };

describeEngines('a correction', (on) => {
  let world: World;
  let drum: Seen;
  beforeAll(async () => {
    world = await newWorld(await on.fresh(), { estimates: false });
    await world.furnished();
  });
  beforeEach(async () => {
    drum = await world.drum(1000, { basis: 'DRY' });
  });

  const take = (grams: number, minutesAgo = 0): Promise<Recorded> =>
    world.tell('takePortion', { label: drum.label, at: world.ago(minutesAgo), grams, basis: 'DRY', ...jar });
  const correct = (event: string, replacement: object) => world.tell('correctEvent', { event, replacement });
  const undo = (event: string) => world.tell('correctEvent', { event, void: true });
  const grams = async (label: string | undefined) => (await world.look(label ?? '')).dryGrams;
  const counting = async () => {
    const { container } = await world.ask<{
      container: {
        timeline: {
          nodes: {
            id: string;
            type: string;
            counts: boolean;
            isVoid: boolean;
            correctedBy: { id: string } | null;
            corrects: { id: string } | null;
          }[];
        };
      };
    }>(
      `{ container(label: "${drum.label}") { timeline(first: 50) { nodes { id type counts isVoid correctedBy { id } corrects { id } } } } }`,
    );
    return container.timeline.nodes;
  };

  it('supersedes and never edits: both stay to be read, one counts', async () => {
    const { event } = await take(200);
    const { event: correction } = await correct(event.id, { grams: 250 });
    expect(await grams(drum.label)).toBeCloseTo(750, 6);
    const rows = await counting();
    expect(rows.find(({ id }) => id === event.id)).toMatchObject({ counts: false, correctedBy: { id: correction.id } });
    expect(rows.find(({ id }) => id === correction.id)).toMatchObject({ counts: true, corrects: { id: event.id } });
  });

  it('of what was poured goes on to the portion', async () => {
    const { event, made } = await take(200);
    await correct(event.id, { grams: 250 });
    expect(await grams(made?.label)).toBeCloseTo(250, 6);
    await undo((await counting())[0]?.id ?? '');
    expect(await grams(made?.label)).toBeCloseTo(200, 6);
    expect(await grams(drum.label)).toBeCloseTo(800, 6);
  });

  it('to another time moves the event, and what it was before stays as it was', async () => {
    const { event } = await world.tell('openContainer', { label: drum.label });
    const { container } = await correct(event.id, { at: world.ago(15 * 60) });
    expect(container.openedAt).toBe(world.ago(15 * 60).toISOString());
  });

  it('void says that it did not happen; void on that brings it again', async () => {
    const { event } = await world.tell('openContainer', { label: drum.label });
    const back = await undo(event.id);
    expect(back.container.isOpen).toBe(false);
    expect(back.event.sentence).toBe('taken back: it did not happen');
    expect((await undo(back.event.id)).container.isOpen).toBe(true);
    expect((await undo(event.id)).container.isOpen).toBe(false);
  });

  it('takes back a portion that was never poured, and it is no longer found', async () => {
    const { event, made } = await take(200);
    await undo(event.id);
    expect(await grams(drum.label)).toBeCloseTo(1000, 6);
    const { container } = await world.ask<{ container: unknown }>(`{ container(label: "${made?.label}") { label } }`);
    expect(container).toBeNull();
    expect((await world.refused('openContainer', { label: made?.label })).message).toMatch(/never was/);
  });

  it('does not take back a portion that has a life of its own, and names what is in the way', async () => {
    const { event, made } = await take(200, 60);
    await world.tell('openContainer', { label: made?.label });
    const refusal = await world.refused('correctEvent', { event: event.id, void: true });
    expect(refusal.message).toMatch(/"opened" of 2026-03-02 12:00 UTC \(event .+\) of ... ?.* could not be true/);
    expect(await grams(made?.label)).toBeCloseTo(200, 6);
    expect((await counting()).find(({ id }) => id === event.id)?.counts).toBe(true);
  });

  it('that leaves too little for what came later names that', async () => {
    const { event } = await take(200, 120);
    const later = await take(700, 60);
    const refusal = await world.refused('correctEvent', { event: event.id, replacement: { grams: 400 } });
    expect(refusal.expected).toContain(later.event.id);
    expect(refusal.message).toContain(`"700 g (dry) poured into ${later.made?.label}"`);
    expect(await grams(drum.label)).toBeCloseTo(100, 6);
  });

  it('of one that was corrected already is refused, naming the one that counts', async () => {
    const { event } = await take(200);
    const { event: second } = await correct(event.id, { grams: 210 });
    expect((await world.refused('correctEvent', { event: event.id, replacement: { grams: 220 } })).message).toMatch(
      /corrected already/,
    );
    await correct(second.id, { grams: 220 });
    expect(await grams(drum.label)).toBeCloseTo(780, 6);
  });

  it('keeps the place among what happened at one instant', async () => {
    const at = world.ago(90);
    const { event } = await world.tell('openContainer', { label: drum.label, at });
    await world.tell('closeContainer', { label: drum.label, at });
    const { container } = await correct(event.id, { note: 'by the night shift' });
    expect(container.isOpen).toBe(false);
  });

  it('of a delivery is booked anew, and taking it back takes its container away', async () => {
    const { container } = await world.ask<{ container: { timeline: { nodes: { id: string }[] } } }>(
      `{ container(label: "${drum.label}") { timeline(first: 1) { nodes { id } } } }`,
    );
    const came = container.timeline.nodes[0]?.id ?? '';
    const { event, container: now } = await correct(came, { grams: 900 });
    expect(now.dryGrams).toBeCloseTo(900, 6);
    const gone = await undo(event.id);
    expect(gone.container.dryGrams).toBeCloseTo(1000, 6);
    await undo(came);
    const found = await world.ask<{ container: unknown }>(`{ container(label: "${drum.label}") { label } }`);
    expect(found.container).toBeNull();
  });

  it('needs either a replacement or void', async () => {
    const { event } = await take(10);
    expect((await world.refused('correctEvent', { event: event.id })).path).toBe('input.replacement');
    expect((await world.refused('correctEvent', { event: drum.id, void: true })).message).toMatch(
      /^invalid input\.event/,
    );
  });
});
