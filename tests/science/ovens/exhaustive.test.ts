// Plans of a few jobs against every plan there is, with a checker of the rules that was written apart from the planner.
import { describe, expect, it } from 'vitest';
import { figureCost, hoursCost } from '../../../api/science/ovens/bound/cost.ts';
import { lowerBound } from '../../../api/science/ovens/bound/lagrange.ts';
import { modelOf } from '../../../api/science/ovens/model.ts';
import { objectiveOf } from '../../../api/science/ovens/objective.ts';
import { amount } from '../../support/amount.ts';
import { bestByTrying } from './brute.ts';
import { broken, costsOf } from './checker.ts';
import { noWeights, planned, smallProblem, unwatched } from './problems.ts';

/** Cells of time, in minutes: whole, in the raster of most hours, and out of it. */
const steps = [1, 5, 7];
const jobsOf = (seed: number) => 1 + (seed % amount(4, 6));
const cases = Array.from({ length: amount(100, 500) }, (_, seed) => {
  const problem = smallProblem(seed, jobsOf(seed));
  return { seed, problem, best: bestByTrying(problem), answer: planned(problem) };
});

describe('a few jobs', () => {
  it('are planned as well as by trying every plan: lateness, then oven minutes, then loads', () => {
    const ours = cases.map(({ seed, problem, answer }) => {
      const { lateness, hours, loads } = costsOf(problem, answer.batches);
      return { seed, lateness, hours, loads };
    });
    expect(ours).toEqual(cases.map(({ seed, best }) => ({ seed, ...best })));
    // Neither all late nor all on time, or little would have been tried.
    const late = cases.filter(({ best }) => (best?.lateness ?? 0) > 0).length;
    expect(late).toBeGreaterThan(cases.length / 5);
    expect(late).toBeLessThan((4 * cases.length) / 5);
  });

  it('come with a proof that says so, and figures that add up', () => {
    for (const { problem, answer } of cases) {
      const { lateness, hours, loads } = costsOf(problem, answer.batches);
      expect(answer.provenOptimal).toBe(true);
      expect(answer.stopped).toBe('proof');
      expect(answer.objective.weightedLatenessHours).toBeCloseTo(lateness / 60, 9);
      expect(answer.objective.ovenHours).toBeCloseTo(hours / 60, 9);
      expect(answer.objective.loads).toBe(loads);
      expect(answer.lowerBound.value).toBe(lateness);
      expect(answer.gap.minutes).toBe(0);
    }
  });

  it('are planned without breaking a rule', () => {
    expect(cases.flatMap(({ problem, answer }) => broken(problem, answer.batches))).toEqual([]);
  });

  it('cost at least what the bound of large plans says', () => {
    let isOfUse = 0;
    for (const { seed, problem, best } of cases) {
      if (best === null) throw new Error('no plan at all');
      const model = modelOf(problem);
      const objective = objectiveOf('lateness', noWeights);
      const starts = [new Float64Array(model.jobs).fill(20)];
      const task = { work: 200_000, target: best.lateness + 1, starts, step: steps[seed % steps.length] ?? 7 };
      const late = lowerBound(model, { ...task, cost: figureCost(model, objective) }, unwatched);
      expect(late.value).toBeLessThanOrEqual(best.lateness + 1e-6);
      if (best.lateness > 0) continue;
      const hours = lowerBound(model, { ...task, target: best.hours, cost: hoursCost(model) }, unwatched);
      expect(hours.value).toBeLessThanOrEqual(best.hours + 1e-6);
      if (hours.value > 0.7 * best.hours) isOfUse += 1;
    }
    expect(isOfUse).toBeGreaterThan(cases.length / 8);
  });
});
