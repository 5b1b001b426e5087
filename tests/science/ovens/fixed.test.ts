// What is fixed, what is broken, and planning again: as little as can be is moved, and it is said why.
import { describe, expect, it } from 'vitest';
import { changesOf } from '../../../api/science/ovens/changes.ts';
import type { OvenProblem } from '../../../api/science/ovens/problem.ts';
import { fixedFrom } from '../../../api/science/ovens/schedule.ts';
import { broken } from './checker.ts';
import { weekOf } from './generator.ts';
import { plainJob, plainOven, planned, problemWith } from './problems.ts';

describe('hand-worked plans', () => {
  const hours = [
    [0, 100],
    [200, 300],
  ] as const;

  it('a batch that would end while nobody is there stays until somebody is, and starts as late as it can', () => {
    const oven = plainOven({ open: hours });
    const { batches } = planned(problemWith([oven], [plainJob('x', 90, 210, { minutes: [90, 150], readyAt: 60 })]));
    // 60 + 90 = 150 lies in the gap; till 200 it can stay from 100 on.
    expect(batches).toMatchObject([{ start: 100, end: 200 }]);
    expect(batches[0]?.reason).toMatch(/^Stays until somebody is there again/);
  });

  it('what cannot stay so long waits for the next opening', () => {
    const oven = plainOven({ open: hours });
    const { batches } = planned(problemWith([oven], [plainJob('x', 90, 400, { minutes: [90, 99], readyAt: 60 })]));
    expect(batches).toMatchObject([{ start: 200, end: 290 }]);
  });

  it('an oven that may not be left alone is set up and run while somebody is there', () => {
    const oven = plainOven({ open: hours, unattended: false, startTemperatureC: 20, heatMinutesPerC: 1 });
    const job = plainJob('x', 40, 400, { minutes: [40, 400], readyAt: 70, temperatureC: [50, 60] });
    const { batches } = planned(problemWith([oven], [job]));
    expect(batches).toMatchObject([{ start: 230, end: 270, setupMinutes: 30, temperatureC: 50 }]);
  });

  it('who is on time in any case waits for the stay that costs fewer oven hours', () => {
    const due = (at: number) => plainJob('x', 90, at, { minutes: [90, 150], readyAt: 60 });
    const soon = planned(problemWith([plainOven({ open: hours })], [due(210)]));
    expect(soon.objective.ovenHours * 60).toBe(100);
    const later = planned(problemWith([plainOven({ open: hours })], [due(400)]));
    expect(later.batches).toMatchObject([{ start: 200, end: 290 }]);
    expect(later.words).toBe('on time with the fewest oven hours, proven');
  });

  it('heat goes to the nearest temperature that will do, and the hot batch goes last when that is free', () => {
    const oven = plainOven({ startTemperatureC: 20, heatMinutesPerC: 0.5, coolMinutesPerC: 1, doorMinutes: 5 });
    const jobs = [
      plainJob('hot', 30, 1000, { temperatureC: [150, 160] }),
      plainJob('warm', 30, 1000, { temperatureC: [90, 110] }),
    ];
    const { batches } = planned(problemWith([oven], jobs));
    expect(batches).toMatchObject([
      { jobs: ['warm'], temperatureC: 90, setupMinutes: 35, start: 35, end: 65 },
      { jobs: ['hot'], temperatureC: 150, setupMinutes: 30, start: 100, end: 130 },
    ]);
  });
});

describe('what is fixed', () => {
  const week = weekOf({ jobs: 10, ovens: 2, days: 1, load: 0.5, seed: 5 });
  const first = planned(week);
  const begun = first.batches.filter(({ start }) => start < 600);

  it('stays where it is, and the rest goes around it', () => {
    expect(begun.length).toBeGreaterThan(0);
    const problem = { ...week, fixed: begun.map(fixedFrom) };
    const again = planned(problem);
    expect(broken(problem, again.batches)).toEqual([]);
    expect(again.objective).toEqual(first.objective);
    expect(again.provenOptimal).toBe(true);
  });

  it('can be pinned in the middle of a day, at another temperature', () => {
    const oven = plainOven({ startTemperatureC: 20, heatMinutesPerC: 1, coolMinutesPerC: 1, doorMinutes: 5 });
    const jobs = ['a', 'b', 'c'].map((id) =>
      plainJob(id, 40, 500, { temperatureC: id === 'c' ? [100, 100] : [30, 60] }),
    );
    const fixed = [{ oven: 'oven', jobs: ['c'], start: 140, end: 180, temperatureC: 100 }];
    const problem = problemWith([oven], jobs, { fixed });
    const { batches, provenOptimal } = planned(problem);
    expect(broken(problem, batches)).toEqual([]);
    expect(provenOptimal).toBe(true);
    // One of them fits before: 10 to heat up, 40, 5 for the door, 70 to 100 °C.
    expect(batches.map(({ start }) => start)).toEqual([10, 140, 225]);
  });

  it('an oven that is out of order takes nothing from then till then, and is cold after', () => {
    const oven = plainOven({ startTemperatureC: 20, heatMinutesPerC: 1, outOfOrder: [[50, 200]] });
    const jobs = ['a', 'b'].map((id) => plainJob(id, 30, id === 'a' ? 45 : 500, { temperatureC: [30, 30], area: 1 }));
    const problem = problemWith([oven], jobs);
    const { batches } = planned(problem);
    expect(broken(problem, batches)).toEqual([]);
    expect(batches.map(({ start, setupMinutes }) => [start, setupMinutes])).toEqual([
      [10, 10],
      [210, 10],
    ]);
  });
});

describe('planning again', () => {
  const week = weekOf({ jobs: 30, ovens: 3, days: 2, load: 0.4, seed: 3 });
  const first = planned(week);
  const again = (problem: OvenProblem) => planned(problem, 'lateness', { before: first.batches });

  it('moves nothing when nothing has changed', () => {
    expect(changesOf(week, first.batches, again(week))).toEqual([]);
  });

  it('leaves most in place when one job is new, and calls it new', () => {
    const [job] = week.jobs;
    if (!job) throw new Error('no job');
    const problem = { ...week, jobs: [...week.jobs, { ...job, id: 'late-comer' }] };
    const answer = again(problem);
    expect(broken(problem, answer.batches)).toEqual([]);
    const changes = changesOf(problem, first.batches, answer);
    expect(changes).toContainEqual(expect.objectContaining({ job: 'late-comer', from: null, why: 'it is new' }));
    expect(changes.length).toBeLessThan(week.jobs.length / 3);
  });

  it('says what moved when an oven breaks, and that it is for the broken oven', () => {
    const batch = first.batches.at(-1);
    if (!batch) throw new Error('no batch');
    const ovens = week.ovens.map((oven) =>
      oven.id === batch.oven ? { ...oven, outOfOrder: [[batch.start - 60, batch.end + 600] as const] } : oven,
    );
    const answer = again({ ...week, ovens });
    expect(broken({ ...week, ovens }, answer.batches)).toEqual([]);
    const changes = changesOf({ ...week, ovens }, first.batches, answer);
    for (const job of batch.jobs) {
      expect(changes).toContainEqual(expect.objectContaining({ job, why: `${batch.oven} is out of order then` }));
    }
    expect(changes.length).toBeLessThan(week.jobs.length / 2);
  });
});
