// A need is never promised an oven that is closed, out of order or taken; what is out of one is not sent into it again.
import { beforeAll, beforeEach, expect, it } from 'vitest';
import type { Database } from '../../api/database/database.ts';
import { ovensIn, type Ovens } from '../ovens/lab.ts';
import { describeEngines } from '../support/engines.ts';
import { newWorld, type Seen, type World } from '../support/world.ts';
import { needFields, type SeenNeed, type SeenStep } from './seen.ts';

const minute = 60_000;
/** Monday 2 March 2026, 14:00 in Helsinki, is now. */
const on = (day: number, clock: string) => new Date(`2026-03-0${day}T${clock}:00+02:00`);
const everyDay = [1, 2, 3, 4, 5, 6, 7];

describeEngines('the ovens of a prep', (engine) => {
  let database: Database;
  let world: World;
  let ovens: Ovens;
  let box: Seen;
  beforeAll(async () => {
    database = await engine.fresh();
  });
  beforeEach(async () => {
    world = await newWorld(database, { estimates: false });
    ovens = ovensIn(world);
    await world.furnished();
    box = await world.plates(25);
  });

  const dry = async (at: Date, more: object = {}): Promise<SeenNeed> => {
    const about = { kind: 'PLATES', plates: 4, isPreWashed: false, sorbent: 'Silica 40–63 µm', forWhom: 'alkaloids' };
    return (await world.tell<{ need: SeenNeed }>('addNeed', { ...about, at, ...more }, `need { ${needFields} }`)).need;
  };
  const again = async ({ id }: SeenNeed): Promise<SeenNeed> => {
    const { needs } = await world.ask<{ needs: SeenNeed[] }>(`{ needs { ${needFields} } }`);
    const found = needs.find((each) => each.id === id);
    if (!found) throw new Error('the need is gone');
    return found;
  };
  const ovenStep = ({ steps }: SeenNeed): SeenStep => {
    const found = steps.find(({ kind }) => kind === 'OVEN');
    if (!found) throw new Error('no oven');
    return found;
  };
  const spanOf = (step: SeenStep) => [new Date(step.startAt), new Date(step.endAt)] as const;

  it('goes in and comes out in the oven’s own hours, and waits in the desiccator', async () => {
    await ovens.oven({ hours: [{ days: everyDay, from: '06:00', to: '10:00' }] });
    const need = await dry(on(3, '16:00'));
    const [start, end] = spanOf(ovenStep(need));
    expect(end).toEqual(on(3, '10:00'));
    expect(start >= on(3, '06:00')).toBe(true);
    expect(need.steps.map(({ kind }) => kind)).toEqual(['OVEN', 'COOL', 'KEEP', 'HAND_OVER']);
  });

  it('plates stand in racks where the shelves are high enough: twelve are one load, and three where they lie flat', async () => {
    // 20 × 20 cm plates: 20 cm² each in a rack, 400 cm² lying; the oven has two shelves of 900 cm².
    const high = await ovens.oven({ shelfHeightMm: 300 });
    const loads = ({ steps }: SeenNeed) => steps.filter(({ kind }) => kind === 'OVEN').length;
    expect(loads(await dry(on(5, '16:00'), { plates: 12 }))).toBe(1);
    await world.tell('setOven', { oven: high, shelfHeightMm: 120 }, '__typename');
    expect(loads(await dry(on(6, '16:00'), { plates: 12 }))).toBe(3);
  });

  it('a recipe without vacuum is met in a vacuum oven as well, where there is no other', async () => {
    await world.tell('setRecipe', { dries: 'glass', vacuum: false }, '__typename');
    await ovens.oven();
    const need = await dry(on(4, '16:00'));
    expect(need.obstacle).toBeNull();
    expect(ovenStep(need).place).toBe('vacuum oven');
  });

  it('the sheet keeps sorbent in as long as the plan of the ovens does, longer where it lies deep; a tick says how deep', async () => {
    await ovens.oven();
    const drum = await world.drum(600, { basis: 'DRY' });
    const stay = async (depthMm: number, day: number) => {
      await world.tell('setRecipe', { dries: 'silica', depthMm }, '__typename');
      const about = { kind: 'SORBENT', dryGrams: 200, sorbent: 'Silica 40–63 µm', forWhom: `${depthMm} mm` };
      const asked = `need { id steps { id kind minutes startAt endAt } }`;
      const { need } = await world.tell<{ need: { id: string; steps: (SeenStep & { minutes: number })[] } }>(
        'addNeed',
        { ...about, at: on(day, '17:00') },
        asked,
      );
      const step = need.steps.find(({ kind }) => kind === 'OVEN');
      if (!step) throw new Error('no oven');
      const { runs } = await ovens.plan();
      const run = runs.find(({ loads }) => loads.some(({ container }) => container.label === drum.label));
      if (!run) throw new Error('no run');
      const planned = (Date.parse(run.plannedEnd) - Date.parse(run.plannedStart)) / minute;
      expect(step.minutes).toBe(5 * Math.ceil(planned / 5));
      expect((Date.parse(step.endAt) - Date.parse(step.startAt)) / minute).toBeGreaterThanOrEqual(planned);
      return { minutes: step.minutes, step: step.id, need: need.id };
    };
    const shallow = await stay(10, 3);
    await world.tell('dropNeed', { id: shallow.need }, '__typename');
    const deep = await stay(30, 4);
    expect(deep.minutes).toBeGreaterThan(shallow.minutes);
    await world.tell('tickStep', { id: deep.step }, '__typename');
    const { needs } = await world.ask<{
      needs: { kept: { container: { timeline: { nodes: { sentence: string }[] } } }[] }[];
    }>('{ needs { kept { container { timeline { nodes { sentence } } } } } }');
    const told = needs.flatMap(({ kept }) => kept.flatMap(({ container }) => container.timeline.nodes));
    expect(told.filter(({ sentence }) => sentence.includes(`for ${deep.minutes} min 30 mm deep`))).toHaveLength(1);
  });

  it('nobody comes to an oven with hours of its own on a day off', async () => {
    await ovens.oven({ hours: [{ days: everyDay, from: '06:00', to: '10:00' }] });
    await world.tell('setPrepSettings', { daysOff: ['2026-03-04'] }, '__typename');
    const [, end] = spanOf(ovenStep(await dry(on(5, '08:00'))));
    expect(end <= on(3, '10:00') || end >= on(5, '06:00')).toBe(true);
  });

  it('an oven that never runs while nobody is there is not left on overnight', async () => {
    await ovens.oven({ isUnattended: false, hours: [{ days: everyDay, from: '09:00', to: '09:40' }] });
    const never = await dry(on(3, '16:00'));
    expect(never.obstacle).not.toBeNull();
    await world.tell('dropNeed', { id: never.id }, '__typename');
    await ovens.oven({ name: 'other', hours: [{ days: everyDay, from: '09:00', to: '09:40' }] });
    await ovens.oven({ name: 'third', isUnattended: false, hours: [{ days: everyDay, from: '08:00', to: '12:00' }] });
    const [start, end] = spanOf(ovenStep(await dry(on(3, '16:00'))));
    expect([start >= on(3, '08:00'), end]).toEqual([true, on(3, '12:00')]);
  });

  it('says so when the oven breaks, when it could be, and plans it anew when it works again', async () => {
    const oven = await ovens.oven();
    const need = await dry(on(3, '14:00'));
    expect(need.obstacle).toBeNull();
    const { care } = await world.tell<{ care: { id: string } }>(
      'recordOvenCare',
      { oven, kind: 'OUT_OF_ORDER', until: on(4, '12:00') },
      'care { id }',
    );
    const broken = await again(need);
    expect(broken.state).toBe('CANNOT_BE_MET');
    expect(broken.obstacle?.what).toBe('oven');
    expect(new Date(broken.firstPossibleAt ?? 0) > on(4, '12:00')).toBe(true);
    await world.tell('setNeed', { id: need.id, at: broken.firstPossibleAt }, '__typename');
    expect(spanOf(ovenStep(await again(need)))[0] >= on(4, '12:00')).toBe(true);
    await world.tell('takeOvenCareBack', { care: care.id }, '__typename');
    await world.tell('setNeed', { id: need.id, at: on(3, '14:00') }, '__typename');
    expect((await again(need)).obstacle).toBeNull();
  });

  it('a run that was planned for it before the oven broke is no promise', async () => {
    const oven = await ovens.oven();
    const need = await dry(on(3, '14:00'));
    await ovens.plan();
    await world.tell('recordOvenCare', { oven, kind: 'OUT_OF_ORDER' }, '__typename');
    expect((await again(need)).state).toBe('CANNOT_BE_MET');
  });

  it('keeps out of the way of what is in the oven, late or not, and of what was fixed', async () => {
    await ovens.oven();
    const drum = await world.drum(300, { basis: 'DRY' });
    await ovens.ask(drum.label, { temperatureC: 140, minutes: 60 });
    const [run] = (await ovens.plan()).runs;
    const pinned = { run: run?.id, start: on(3, '12:30') };
    await world.tell('pinBatch', pinned, '__typename');
    const fixed = (await ovens.runs('PLANNED'))[0];
    const need = await dry(on(3, '14:00'));
    const [start, end] = spanOf(ovenStep(need));
    const door = 5 * minute;
    const heats = Math.max(door, (fixed?.setupMinutes ?? 0) * minute);
    const from = new Date(fixed?.plannedStart ?? 0).getTime() - heats;
    const to = new Date(fixed?.plannedEnd ?? 0).getTime();
    expect(end.getTime() <= from || start.getTime() >= to + door).toBe(true);

    await world.tell('unpinBatch', { run: run?.id }, '__typename');
    await ovens.step('startRun', run?.id ?? '');
    // It should have been out long ago, and nobody took it out.
    world.later(6 * 60);
    const [later] = spanOf(ovenStep(await again(await dry(on(3, '09:30'), { plates: 2 }))));
    expect(later.getTime()).toBeGreaterThanOrEqual(world.now().getTime() + door);
  });

  it('what came out of the oven for it and cools is not sent in again', async () => {
    await ovens.oven();
    await world.tell('finishContainer', { label: box.label }, '__typename');
    box = await world.plates(4);
    const need = await dry(on(2, '18:00'));
    const { runs } = await ovens.plan();
    const run = runs.find(({ loads }) => loads.some(({ container }) => container.label === box.label));
    if (!run) throw new Error('no run was planned for it');
    world.later(Math.max(0, (Date.parse(run.plannedStart) - world.now().getTime()) / minute));
    const began = world.now();
    await ovens.step('startRun', run.id);
    world.later(65);
    await ovens.step('takeRunOut', run.id);
    world.later(5);
    const seen = await again(need);
    expect(seen.obstacle).toBeNull();
    expect(seen.steps.filter(({ kind }) => kind === 'OVEN')).toHaveLength(1);
    expect(spanOf(ovenStep(seen))[0] <= began).toBe(true);
  });
});
