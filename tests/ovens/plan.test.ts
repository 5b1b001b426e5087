// What a plan must keep to whatever waits, and what becomes of it when something moves.
import { beforeAll, beforeEach, expect, it } from 'vitest';
import type { Database } from '../../api/database/database.ts';
import { diceFrom } from '../support/dice.ts';
import { describeEngines } from '../support/engines.ts';
import { newWorld, type World } from '../support/world.ts';
import { clock, ovensIn, planFields, runFields, type Ovens, type SeenRun } from './lab.ts';

const minute = 60_000;
const ms = (at: string): number => Date.parse(at);

describeEngines('a plan of the ovens', (on) => {
  let database: Database;
  let world: World;
  let ovens: Ovens;
  beforeAll(async () => {
    database = await on.fresh();
  });
  beforeEach(async () => {
    world = await newWorld(database, { estimates: false });
    ovens = ovensIn(world);
    await world.furnished();
    await world.tell('addSorbent', { name: 'C18', sorbentClass: 'c18', bondedPhase: 'C18' }, '__typename');
    await ovens.oven();
  });

  const silica = async (grams: number) => (await world.drum(grams, { basis: 'DRY' })).label;
  const bonded = async (grams: number) => (await world.drum(grams, { basis: 'DRY' }, { sorbent: 'C18' })).label;
  const inHours = (hours: number) => new Date(world.now().getTime() + hours * 60 * minute).toISOString();
  const only = (runs: SeenRun[]): SeenRun => {
    expect(runs).toHaveLength(1);
    return runs[0] as SeenRun;
  };

  /** Nothing a plan may ever do: more than the shelves hold, two at once, what may not share, hours when nobody is there. */
  function keepsTo(runs: SeenRun[], familyOf: Map<string, string>): void {
    for (const run of runs) {
      expect(run.loads.reduce((sum, { areaCm2 }) => sum + areaCm2, 0)).toBeLessThanOrEqual(1800 + 1e-6);
      expect(run.temperatureC).toBeGreaterThanOrEqual(130);
      expect(run.temperatureC).toBeLessThanOrEqual(160);
      const families = new Set(run.loads.map(({ container }) => familyOf.get(container.label)));
      expect(families.has('BULK') && families.size > 1).toBe(false);
      for (const at of [run.plannedStart, run.plannedEnd]) {
        // Helsinki is two hours before UTC in March.
        const minutes = (ms(at) / minute + 120) % 1440;
        expect(minutes).toBeGreaterThanOrEqual(7 * 60);
        expect(minutes).toBeLessThanOrEqual(19 * 60);
      }
    }
    const byTime = [...runs].sort((a, b) => ms(a.plannedStart) - ms(b.plannedStart));
    byTime.forEach((run, i) => {
      const before = byTime[i - 1];
      if (before) expect(ms(run.plannedStart)).toBeGreaterThanOrEqual(ms(before.plannedEnd) + 5 * minute);
    });
  }

  it.each([1, 2, 3])('never asks too much of an oven, whatever waits (seed %i)', async (seed) => {
    const dice = diceFrom(seed);
    const familyOf = new Map<string, string>();
    for (let count = 0; count < 7; count += 1) {
      const kind = dice(3);
      const label =
        kind === 0
          ? await silica(100 + dice(1500))
          : kind === 1
            ? await bonded(50 + dice(600))
            : (await world.plates(1 + dice(6))).label;
      familyOf.set(label, kind === 0 ? 'BULK' : kind === 1 ? 'BONDED' : 'PLATES');
      // Plates may go to 150 °C only, C18 to 160.
      await ovens.ask(label, { priority: [1, 2, 4, 8][dice(4)], wantedBy: inHours(3 + dice(60)) });
    }
    const { plan, runs } = await ovens.plan();
    expect(plan.leftOut).toEqual([]);
    keepsTo(runs, familyOf);
    const asked = await world.ask<{ dryingRequests: { nodes: { stage: string }[] } }>(
      '{ dryingRequests(first: 50) { nodes { stage } } }',
    );
    expect(asked.dryingRequests.nodes.map(({ stage }) => stage)).toEqual(Array(7).fill('PLANNED'));
  });

  it('splits what no oven holds at once into equal loads, and counts every gram', async () => {
    await ovens.ask(await silica(2000));
    const { runs } = await ovens.plan();
    const loads = runs.flatMap((run) => run.loads);
    // 2 kg at 10 mm take 4000 cm²; the oven has 1800.
    expect(loads.map(({ part, parts }) => `${part} of ${parts}`).sort()).toEqual(['1 of 3', '2 of 3', '3 of 3']);
    expect(loads.reduce((sum, { dryGrams }) => sum + (dryGrams ?? 0), 0)).toBeCloseTo(2000, 6);
    expect(new Set(runs.map(({ id }) => id)).size).toBe(3);
  });

  it('a deeper tray takes less room and longer', async () => {
    const lasts = (run: SeenRun) => (ms(run.plannedEnd) - ms(run.plannedStart)) / minute;
    const id = await ovens.ask(await silica(600), { depthMm: 10 });
    const shallow = only((await ovens.plan()).runs);
    await world.tell('withdrawDrying', { id }, '__typename');
    await ovens.ask(await silica(600), { depthMm: 40 });
    const deep = only((await ovens.plan()).runs);
    expect([shallow, deep].map(({ loads }) => Math.round(loads[0]?.areaCm2 ?? 0))).toEqual([1200, 300]);
    // Hot and then the recipe's half hour; the fine grid has 10 mm at 128.7 °C after 30 min, 30 mm at 97.5 °C after 90.
    expect(lasts(shallow)).toBeGreaterThan(45);
    expect(lasts(shallow)).toBeLessThanOrEqual(60);
    expect(lasts(deep)).toBeGreaterThan(90);
  });

  it('what an oven never gets dry is left out, and it says what stays; asked for in minutes it is done all the same', async () => {
    await ovens.oven({ name: 'air oven', kind: 'AIR', lowestC: 30, highestC: 60, hasFan: false });
    await world.tell(
      'setRecipe',
      { dries: 'c18', vacuum: false, temperatureLowC: 40, temperatureHighC: 60 },
      '__typename',
    );
    const label = await bonded(100);
    await world.tell(
      'setOven',
      {
        oven: (await world.ask<{ ovens: { id: string; name: string }[] }>('{ ovens { id name } }')).ovens.find(
          ({ name }) => name === 'vacuum oven',
        )?.id,
        lowestC: 100,
      },
      '__typename',
    );
    const id = await ovens.ask(label);
    const { plan } = await ovens.plan();
    expect(plan.leftOut[0]?.label).toBe(label);
    expect(plan.leftOut[0]?.why).toMatch(/^at 40 °C in air oven it never comes to 0\.12 %: .* stays; a hotter recipe/);
    await world.tell('withdrawDrying', { id }, '__typename');
    await ovens.ask(label, { temperatureC: 60, minutes: 120 });
    expect((await ovens.plan()).plan.leftOut).toEqual([]);
  });

  it('says that it is on time, proven; or what stands in the way', async () => {
    const ovenless = await bonded(10);
    await ovens.ask(await silica(300), { wantedBy: inHours(6) });
    await ovens.ask(ovenless, { temperatureC: 25 });
    const { plan, runs } = await ovens.plan();
    expect(plan).toMatchObject({
      isProven: true,
      gapMinutes: 0,
      words: 'on time with the fewest oven hours, proven',
      due: [],
    });
    expect(plan.leftOut).toEqual([{ label: ovenless, why: 'no oven that it may go into holds 25 °C' }]);
    only(runs);
  });

  it('what counts more goes first when not all can be on time', async () => {
    const [light, heavy] = [await silica(800), await bonded(100)];
    await ovens.ask(light, { wantedBy: inHours(2), priority: 1 });
    await ovens.ask(heavy, { wantedBy: inHours(2), priority: 8 });
    const { runs } = await ovens.plan();
    expect(runs.map(({ loads }) => loads[0]?.container.label)).toEqual([heavy, light]);
  });

  it('planned again without a change, nothing moves', async () => {
    for (const grams of [300, 500]) await ovens.ask(await silica(grams), { wantedBy: inHours(20) });
    await ovens.ask(await bonded(200), { wantedBy: inHours(4) });
    const first = await ovens.plan();
    const again = await ovens.plan();
    expect(again.runs.map(({ id, plannedStart }) => [id, plannedStart])).toEqual(
      first.runs.map(({ id, plannedStart }) => [id, plannedStart]),
    );
    expect(again.plan.changes).toEqual([]);
  });

  it('a late start stays, and what comes after it moves and says why', async () => {
    await ovens.ask(await silica(800), { wantedBy: inHours(5), priority: 8 });
    await ovens.ask(await bonded(300), { wantedBy: inHours(5) });
    const { runs } = await ovens.plan();
    const first = runs[0] as SeenRun;
    const second = runs[1]?.loads[0]?.container.label;
    world.later((ms(first.plannedStart) - world.now().getTime()) / minute + 40);
    const { run, notes, plan } = await ovens.step('startRun', first.id);
    expect(run.start).toBe(world.now().toISOString());
    expect(notes).toEqual(['40 min late: what comes after it is planned anew']);
    expect(plan?.because).toBe('a run began at another time');
    const moved = plan?.changes.find(({ label }) => label === second);
    expect(moved?.from?.start).toBe(runs[1]?.plannedStart);
    expect(moved?.sentence).toMatch(
      /^.+: from vacuum oven, .+ to vacuum oven, .+, since vacuum oven is free only later$/,
    );
    const after = await ovens.runs();
    expect(after.find(({ id }) => id === first.id)).toMatchObject({
      state: 'IN_OVEN',
      start: world.now().toISOString(),
    });
    const next = after.find(({ state }) => state === 'PLANNED') as SeenRun;
    expect(ms(next.plannedStart)).toBeGreaterThanOrEqual(ms(run.end) + 5 * minute);
  });

  it('a withdrawn request leaves its run, an empty run is gone, and the plan is due', async () => {
    const ids = [await ovens.ask(await silica(200)), await ovens.ask(await silica(300))];
    expect(only((await ovens.plan()).runs).loads).toHaveLength(2);
    await world.tell('withdrawDrying', { id: ids[0] });
    expect(only(await ovens.runs()).loads.map(({ request }) => request.id)).toEqual([ids[1]]);
    expect((await ovens.current())?.due).toEqual(['a request was withdrawn since']);
    await world.tell('withdrawDrying', { id: ids[1] });
    expect(await ovens.runs()).toEqual([]);
  });

  it('a fixed run stays where it was put, the others go around it, and it can be let go', async () => {
    await ovens.ask(await silica(300));
    const run = only((await ovens.plan()).runs);
    const start = inHours(3);
    const pinned = await ovens.step('pinBatch', run.id, { start });
    expect(pinned.run).toMatchObject({ isPinned: true, plannedStart: start });
    await ovens.ask(await bonded(200), { wantedBy: inHours(5) });
    const { runs } = await ovens.plan();
    expect(runs.find(({ id }) => id === run.id)).toMatchObject({ plannedStart: start, isPinned: true });
    expect(runs.find(({ id }) => id === run.id)?.reason).toMatch(/^Fixed/);
    keepsTo(runs, new Map());
    expect((await ovens.step('unpinBatch', run.id)).run.isPinned).toBe(false);
  });

  it('a run is not fixed where nobody is there, where the oven is taken, or in the past', async () => {
    await ovens.ask(await silica(300));
    const run = only((await ovens.plan()).runs);
    const night = await world.refused('pinBatch', { run: run.id, start: inHours(9) });
    expect(night.path).toBe('input.start');
    expect(night.expected).toMatch(/^a time when somebody is there to load it; next at Tue 3 Mar 07:00/);
    // Closing time is 19:00 in Helsinki: as long before as it is in the oven is the latest.
    const late = await world.refused('pinBatch', { run: run.id, start: inHours(4.9) });
    const latest = new Date(
      Date.parse('2026-03-02T19:00:00+02:00') - Date.parse(run.plannedEnd) + Date.parse(run.plannedStart),
    );
    expect(late.expected).toContain(`${clock(latest)} at the latest`);
    expect((await world.refused('pinBatch', { run: run.id, start: inHours(-1) })).path).toBe('input.start');
    await ovens.step('pinBatch', run.id, { start: inHours(2) });
    await ovens.ask(await bonded(100), { wantedBy: inHours(30) });
    const other = (await ovens.plan()).runs.find(({ id }) => id !== run.id) as SeenRun;
    const taken = await world.refused('pinBatch', { run: other.id, start: inHours(2.5) });
    expect(taken.expected).toMatch(/^a time when vacuum oven is free/);
  });

  it('an oven that is out of order takes nothing until it works again', async () => {
    const { id } = (await ovens.runs())[0] ?? { id: null };
    expect(id).toBeNull();
    await ovens.ask(await silica(300));
    const before = only((await ovens.plan()).runs);
    const until = inHours(24);
    await world.tell('recordOvenCare', { oven: before.oven.id, kind: 'OUT_OF_ORDER', until }, '__typename');
    expect((await ovens.current())?.due).toEqual([expect.stringMatching(/the oven is out of order then$/)]);
    expect((await world.refused('startRun', { run: before.id })).message).toMatch(/it is out of order then/);
    const { plan, runs } = await ovens.plan();
    expect(ms(only(runs).plannedStart)).toBeGreaterThanOrEqual(ms(until));
    expect(plan.changes[0]?.why).toBe('vacuum oven is out of order then');
  });

  it('a plan is taken back while nothing of it has begun', async () => {
    await ovens.ask(await silica(300));
    const first = await ovens.plan();
    await ovens.ask(await silica(300), { wantedBy: inHours(2) });
    const second = await ovens.plan();
    const back = await world.tell<{ runs: SeenRun[] }>(
      'takeOvenPlanBack',
      { plan: second.plan.id },
      `plan { ${planFields} } runs { ${runFields} }`,
    );
    const plain = (runs: SeenRun[]) => runs.map(({ id, plannedStart, loads }) => [id, plannedStart, loads.length]);
    expect(plain(back.runs)).toEqual(plain(first.runs));
    expect((await ovens.current())?.id).toBe(first.plan.id);
    world.later((ms((first.runs[0] as SeenRun).plannedStart) - world.now().getTime()) / minute);
    await ovens.step('startRun', (first.runs[0] as SeenRun).id);
    expect((await world.refused('takeOvenPlanBack', { plan: first.plan.id })).message).toMatch(/has begun/);
  });

  it('of two plans at once the second goes on from the first', async () => {
    await ovens.ask(await silica(300));
    const [one, other] = await Promise.all([ovens.plan(), ovens.plan()]);
    expect(one.plan.id).not.toBe(other.plan.id);
    only(await ovens.runs());
  });

  it('a planning that is cancelled changes nothing, or keeps the best so far', async () => {
    const other = await ovens.oven({ name: 'second oven' });
    expect(other).not.toBe('');
    // More than are planned exactly, so that the search takes a second at least.
    for (let count = 0; count < 14; count += 1) await ovens.ask(await silica(700), { wantedBy: inHours(6) });
    const planning = async () =>
      (await world.ask<{ ovenPlanning: { jobs: number; share: number } | null }>('{ ovenPlanning { jobs share } }'))
        .ovenPlanning;
    const cancel = async (keepBest: boolean) => {
      const answer = world.post(
        'mutation { planOvens(input: {}) { __typename ... on Refusal { message } } }',
      ) as Promise<{ data: { planOvens: { __typename: string; message?: string } } }>;
      while (!(await planning())) await new Promise((resolve) => setTimeout(resolve, 20));
      expect((await planning())?.jobs).toBe(14);
      await world.tell('cancelOvenPlanning', { keepBest }, 'wasPlanning');
      return (await answer).data.planOvens;
    };
    expect(await cancel(false)).toEqual({
      __typename: 'Refusal',
      message: 'invalid input: this plan, it was cancelled; plan again',
    });
    expect(await ovens.runs()).toEqual([]);
    expect((await cancel(true)).__typename).toBe('OvensPlanned');
    expect((await ovens.runs('PLANNED')).flatMap(({ loads }) => loads)).toHaveLength(14);
    expect(await planning()).toBeNull();
  });

  it('without an oven there is no plan', async () => {
    const empty = await newWorld(database, { estimates: false });
    expect(await empty.refused('planOvens', {})).toMatchObject({
      message: 'missing input, an oven; addOven first',
      path: 'input',
    });
  });

  it('what may not share an oven is the lab’s own to set', async () => {
    await ovens.ask(await silica(100));
    await ovens.ask(await bonded(100));
    await world.tell('setOvensApart', { pairs: [] }, '__typename');
    only((await ovens.plan()).runs);
    await world.tell('setOvensApart', { pairs: null }, 'lab { hasOwnOvensApart ovensApart { families sentence } }');
    expect((await ovens.plan()).runs).toHaveLength(2);
  });
});
