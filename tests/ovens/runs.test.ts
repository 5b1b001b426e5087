// From what waits to what was dried: planned, loaded, taken out, weighed, and taken back.
import { beforeAll, beforeEach, expect, it } from 'vitest';
import type { Database } from '../../api/database/database.ts';
import { describeEngines } from '../support/engines.ts';
import { newWorld, type Seen, type World } from '../support/world.ts';
import { ovensIn, type Ovens, type SeenRun } from './lab.ts';

const minute = 60_000;
const minutesBetween = (from: string, to: string): number => (Date.parse(to) - Date.parse(from)) / minute;

describeEngines('a run', (on) => {
  let database: Database;
  let world: World;
  let ovens: Ovens;
  let drum: Seen;
  beforeAll(async () => {
    database = await on.fresh();
  });
  beforeEach(async () => {
    world = await newWorld(database);
    ovens = ovensIn(world);
    await world.furnished();
    await ovens.oven();
    drum = await world.drum(600, { basis: 'DRY' });
  });

  async function planned(more: object = {}): Promise<SeenRun> {
    await ovens.ask(drum.label, more);
    const { runs } = await ovens.plan();
    const [run] = runs;
    if (!run) throw new Error('nothing was planned');
    return run;
  }

  const requestOf = async (id: string) =>
    (
      await world.ask<{ node: { state: string; stage: string } }>(
        `query ($id: ID!) { node(id: $id) { ... on DryingRequest { state stage } } }`,
        { id },
      )
    ).node;

  it('is planned from what waits: 600 g at 500 kg/m³ and 10 mm take 1200 cm², after 54 min of heating up', async () => {
    const run = await planned();
    expect(run).toMatchObject({ state: 'PLANNED', temperatureC: 130, setupMinutes: 54 });
    expect(run.loads).toMatchObject([{ dryGrams: 600, part: 1, parts: 1, request: { stage: 'PLANNED' } }]);
    expect(run.loads[0]?.areaCm2).toBeCloseTo(1200, 6);
    expect(minutesBetween(world.now().toISOString(), run.plannedStart)).toBe(54);
    // Until 10 mm that are nearly dry are hot, less than the 28 min of wet ones; then the recipe's half hour.
    expect(minutesBetween(run.plannedStart, run.plannedEnd)).toBe(42);
    expect(run.reason).toMatch(/^Starts as soon as the oven is free/);
  });

  it('goes through the oven, cools, and its weighing lands on the timeline', async () => {
    const run = await planned();
    world.later(54);
    expect((await ovens.step('startRun', run.id)).run).toMatchObject({ state: 'IN_OVEN' });
    world.later(60);
    expect((await ovens.step('takeRunOut', run.id)).run).toMatchObject({ state: 'COOLING' });
    world.later(30);
    await ovens.step('recordRunCooled', run.id);
    const load = run.loads[0]?.id;
    const done = await ovens.step('finishRun', run.id, { results: [{ load, netGrams: 603 }] });
    expect(done.run.state).toBe('FINISHED');
    expect(done.run.loads[0]?.waterFraction).toBeCloseTo(0.005, 9);
    expect(done.run.loads[0]).toMatchObject({ isWeighed: true, request: { stage: 'DRIED' } });
    const { container } = await world.ask<{ container: { timeline: { nodes: { sentence: string }[] } } }>(
      `{ container(label: "${drum.label}") { timeline(first: 20) { nodes { sentence } } } }`,
    );
    expect(container.timeline.nodes.map(({ sentence }) => sentence).join('\n')).toMatch(/[Dd]ried.*130/);
  });

  it('pours some of a container into one of its own, and no gram is lost', async () => {
    const run = await planned({ dryGrams: 200 });
    world.later(54);
    await ovens.step('startRun', run.id);
    world.later(60);
    const { run: done } = await ovens.step('finishRun', run.id);
    const made = done.loads[0]?.container.label ?? '';
    expect(made).not.toBe(drum.label);
    const [rest, portion] = [await world.look(drum.label), await world.look(made)];
    expect(portion.dryGrams).toBeCloseTo(200, 6);
    expect(rest.dryGrams + portion.dryGrams).toBeCloseTo(600, 6);
    // No weighing: the model says that a shallow tray comes out almost dry.
    expect(done.loads[0]?.isWeighed).toBe(false);
    expect(done.loads[0]?.waterFraction).toBeLessThan(0.01);
  });

  it('takes some plates out of their box, and dries those alone', async () => {
    const box = await world.plates(10);
    await ovens.ask(box.label, { plates: 4 });
    const run = (await ovens.plan()).runs[0];
    // A lone plate is hot at once and a rack of eight after 40 min: four take 20, and dry for 30.
    expect(minutesBetween(run?.plannedStart ?? '', run?.plannedEnd ?? '')).toBe(50);
    world.later(54);
    await ovens.step('startRun', run?.id ?? '');
    world.later(50);
    const { run: done } = await ovens.step('finishRun', run?.id ?? '');
    const made = done.loads[0]?.container.label ?? '';
    expect([(await world.look(box.label)).plates, (await world.look(made)).plates]).toEqual([6, 4]);
    expect(done.loads[0]?.request.stage).toBe('DRIED');
  });

  it('told twice under one key began once', async () => {
    const run = await planned();
    world.later(54);
    const [first, again] = [
      await ovens.step('startRun', run.id, { clientKey: 'by the oven' }),
      await ovens.step('startRun', run.id, { clientKey: 'by the oven' }),
    ];
    expect(again.run).toEqual(first.run);
    expect((await world.refused('startRun', { run: run.id })).expected).toBe(
      'it is in the oven; a run that is planned and has not begun',
    );
  });

  it('an open door makes it so much longer, and a run out early says how short it was', async () => {
    const run = await planned();
    world.later(54);
    const { run: begun } = await ovens.step('startRun', run.id);
    world.later(10);
    const { run: later } = await ovens.step('openOvenDoor', run.id);
    expect(minutesBetween(begun.end, later.end)).toBe(5);
    world.later(10);
    expect((await ovens.step('takeRunOut', run.id)).notes).toEqual([
      '22 min short of what was planned: the model counts what it had',
    ]);
  });

  it('every step can be taken back, the results with what they poured', async () => {
    const run = await planned({ dryGrams: 200 });
    const request = run.loads[0]?.request.id ?? '';
    world.later(54);
    await ovens.step('startRun', run.id);
    world.later(60);
    await ovens.step('takeRunOut', run.id);
    await ovens.step('finishRun', run.id);
    expect(await requestOf(request)).toEqual({ state: 'DRIED', stage: 'DRIED' });
    expect((await ovens.step('takeRunStepBack', run.id)).run.state).toBe('COOLING');
    expect(await requestOf(request)).toEqual({ state: 'WAITING', stage: 'COOLING' });
    expect((await world.look(drum.label)).dryGrams).toBeCloseTo(600, 6);
    expect((await ovens.step('takeRunStepBack', run.id)).run.state).toBe('IN_OVEN');
    expect((await ovens.step('takeRunStepBack', run.id)).run.state).toBe('PLANNED');
    expect((await world.refused('takeRunStepBack', { run: run.id })).path).toBe('input.run');
  });

  it('that was interrupted leaves the water it had reached, and what was in it waits again', async () => {
    await world.tell('recordWeighing', {
      label: drum.label,
      method: 'LOSS_ON_DRYING',
      temperatureC: 150,
      of: 'WHOLE',
      waterFraction: 0.1,
      basis: 'DRY',
    });
    const run = await planned();
    world.later(54);
    await ovens.step('startRun', run.id);
    world.later(15);
    const { run: broken } = await ovens.step('interruptRun', run.id, { why: 'power failed' });
    expect(broken.state).toBe('INTERRUPTED');
    // Silica of 10 mm from 0.10 under vacuum at 130 °C holds 0.0082 after 15 min (the paper's fine grid, case P3).
    expect(broken.loads[0]?.waterFraction).toBeGreaterThan(0.007);
    expect(broken.loads[0]?.waterFraction).toBeLessThan(0.0096);
    expect(await requestOf(run.loads[0]?.request.id ?? '')).toMatchObject({ state: 'WAITING' });
  });

  it('starts once, however many click at the same time', async () => {
    const run = await planned();
    world.later(54);
    const answers = await Promise.all(
      Array.from({ length: 8 }, () =>
        ovens.step('startRun', run.id).then(
          () => 'started',
          () => 'refused',
        ),
      ),
    );
    expect(answers.filter((answer) => answer === 'started')).toHaveLength(1);
    expect(await ovens.runs('IN_OVEN')).toHaveLength(1);
  });

  it('never starts with sorbent that touched solvent since it was asked for', async () => {
    const run = await planned();
    await world.tell('recordSolvent', { label: drum.label, what: 'crude extract' });
    const { message, path } = await world.refused('startRun', { run: run.id });
    expect(path).toBe('input.run');
    expect(message).toMatch(/touched solvent or sample: such sorbent never goes to the oven/);
    expect((await ovens.runs())[0]?.state).toBe('PLANNED');
  });

  it('never starts with solvent-wet plates', async () => {
    const box = await world.plates(5);
    await ovens.ask(box.label);
    const { runs } = await ovens.plan();
    await world.tell('preWash', { label: box.label, solvent: 'methanol' });
    const { message } = await world.refused('startRun', { run: runs[0]?.id });
    expect(message).toMatch(/solvent-wet plates never go into a hot or vacuum oven/);
  });

  it('is refused in an oven hotter than what is in it stands', async () => {
    const run = await planned();
    expect((await world.refused('startRun', { run: run.id, temperatureC: 201 })).path).toBe('input.temperatureC');
    const oven = (await ovens.runs())[0]?.oven.id;
    await world.tell('setOven', { oven, highestC: 300 }, '__typename');
    const { path, message } = await world.refused('startRun', { run: run.id, temperatureC: 210 });
    expect(path).toBe('input.temperatureC');
    expect(message).toMatch(/200/);
  });
});
