// What must hold of any plan, small or large: the order of a file, more room, later dues, the same seed, a word to stop.
import { describe, expect, it } from 'vitest';
import { planOvens } from '../../../api/science/ovens/plan.ts';
import type { Job, OvenProblem } from '../../../api/science/ovens/problem.ts';
import { amount } from '../../support/amount.ts';
import { broken, costsOf } from './checker.ts';
import { weekOf } from './generator.ts';
import { noWeights, planned, smallProblem } from './problems.ts';

const seeds = Array.from({ length: amount(12, 60) }, (_, seed) => 700 + seed);
const late = (problem: OvenProblem) => planned(problem).objective.value;
const eachJob = (problem: OvenProblem, change: (job: Job) => Job): OvenProblem => ({
  ...problem,
  jobs: problem.jobs.map(change),
});

describe('a plan of a few jobs', () => {
  it('does not depend on the order in which ovens and jobs are told', () => {
    for (const seed of seeds) {
      const problem = smallProblem(seed, 6);
      const turned = { ...problem, ovens: [...problem.ovens].reverse(), jobs: [...problem.jobs].reverse() };
      expect(planned(turned)).toEqual(planned(problem));
    }
  });

  it('is no later with another oven, more shelves, later dues, or jobs that are ready sooner', () => {
    for (const seed of seeds) {
      const problem = smallProblem(seed, 6);
      const before = late(problem);
      const [first] = problem.ovens;
      if (!first) throw new Error('no oven');
      expect(late({ ...problem, ovens: [...problem.ovens, { ...first, id: 'one-more' }] })).toBeLessThanOrEqual(before);
      const wider = { ...problem, ovens: problem.ovens.map((oven) => ({ ...oven, area: oven.area + 2 })) };
      expect(late(wider)).toBeLessThanOrEqual(before);
      expect(late(eachJob(problem, (job) => ({ ...job, dueAt: (job.dueAt ?? 0) + 30 })))).toBeLessThanOrEqual(before);
      const sooner = eachJob(problem, (job) => ({ ...job, readyAt: Math.floor(job.readyAt / 2) }));
      expect(late(sooner)).toBeLessThanOrEqual(before);
    }
  });

  it('is twice as late, weighted, when every job counts twice', () => {
    for (const seed of seeds) {
      const problem = smallProblem(seed, 5);
      expect(late(eachJob(problem, (job) => ({ ...job, weight: 2 * job.weight })))).toBe(2 * late(problem));
    }
  });

  it('is the same plan an hour later when all its times are', () => {
    for (const seed of seeds) {
      const problem = smallProblem(seed, 5);
      const moved = eachJob(problem, (job) => ({ ...job, readyAt: job.readyAt + 60, dueAt: (job.dueAt ?? 0) + 60 }));
      const ovens = problem.ovens.map((oven) => ({
        ...oven,
        freeAt: oven.freeAt + 60,
        open: oven.open.map(([from, to]) => [from + 60, to + 60] as const),
      }));
      expect(late({ ...moved, ovens })).toBe(late(problem));
    }
  });
});

describe('a plan of many jobs', () => {
  const weeks = [0.5, 0.8].map((load, i) => weekOf({ jobs: 40, ovens: 3, days: 2, load, seed: 20 + i }));

  it('breaks no rule, and its bound lies below it', () => {
    for (const week of weeks) {
      const answer = planned(week);
      expect(broken(week, answer.batches)).toEqual([]);
      const { lateness, hours, loads } = costsOf(week, answer.batches);
      expect(answer.objective.value).toBe(lateness);
      expect(answer.objective.ovenHours).toBeCloseTo(hours / 60, 9);
      expect(answer.objective.loads).toBe(loads);
      expect(answer.lowerBound.value).toBeLessThanOrEqual(lateness);
      if (answer.lowerBound.ovenHours !== null) expect(answer.lowerBound.ovenHours).toBeLessThanOrEqual(hours / 60);
      expect(answer.provenOptimal).toBe(false);
      for (const { reason } of answer.batches) expect(reason).toMatch(/^[A-Z].*; .*\.$/);
    }
  });

  it('is the same whenever it is made, whatever the order of the file', () => {
    const [week] = weeks;
    if (!week) throw new Error('no week');
    const once = planned(week);
    expect(planned(week)).toEqual(once);
    expect(planned({ ...week, jobs: [...week.jobs].reverse() })).toEqual(once);
  });

  it('is whole and within the rules when it is stopped at once, and tells how far it was', () => {
    const [week] = weeks;
    if (!week) throw new Error('no week');
    const task = { problem: week, objective: 'lateness', weights: noWeights, seed: 1, moves: 1e9, work: 1e12 } as const;
    let asked = 0;
    const shares: number[] = [];
    const stopped = () => (asked += 1) > 5;
    const answer = planOvens(task, { stopped, progress: (share) => shares.push(share) });
    expect(answer.stopped).toBe('time');
    expect(broken(week, answer.batches)).toEqual([]);
    expect(shares.length).toBeGreaterThan(0);
    expect([...shares].sort((a, b) => a - b)).toEqual(shares);
  });
});
