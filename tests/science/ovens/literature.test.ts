// Instances and rules of the literature on machine scheduling, each with its optimum.
import { describe, expect, it } from 'vitest';
import { diceOf } from '../../../api/science/ovens/dice.ts';
import type { ObjectiveName } from '../../../api/science/ovens/objective.ts';
import { budgetOf } from '../../../api/science/ovens/prepared.ts';
import type { OvenProblem } from '../../../api/science/ovens/problem.ts';
import { amount } from '../../support/amount.ts';
import { machine, noWeights, plainJob, plainOven, planned, problemWith } from './problems.ts';

const value = (problem: OvenProblem, objective: ObjectiveName) => {
  const { objective: reached, provenOptimal } = planned(problem, objective);
  return { value: reached.value, provenOptimal };
};
const proven = (figure: number) => ({ value: figure, provenOptimal: true });

describe('one machine', () => {
  it('has two late jobs of five (Moore & Hodgson 1968; Pinedo, Scheduling) and a largest lateness of 10 (Jackson 1955)', () => {
    const problem = machine([7, 8, 4, 6, 6], [9, 17, 18, 19, 21]);
    expect(value(problem, 'late-jobs')).toEqual(proven(2));
    expect(value(problem, 'max-lateness')).toEqual(proven(10));
  });

  it('has two late jobs of eight (Moore 1968), and by due dates a largest lateness of 10', () => {
    const problem = machine([10, 6, 3, 1, 4, 8, 7, 6], [35, 20, 11, 8, 6, 25, 28, 9]);
    expect(value(problem, 'late-jobs')).toEqual(proven(2));
    expect(value(problem, 'max-lateness')).toEqual(proven(10));
  });

  it('has two late jobs of ten', () => {
    const minutes = [19, 23, 5, 31, 17, 8, 32, 41, 26, 18];
    const problem = machine(minutes, [48, 75, 170, 215, 205, 240, 85, 67, 100, 95]);
    expect(value(problem, 'late-jobs')).toEqual(proven(2));
  });

  it('is least late at most when jobs go by due date (Jackson 1955)', () => {
    for (let seed = 0; seed < 20; seed += 1) {
      const dice = diceOf(seed);
      const minutes = Array.from({ length: 9 }, () => 1 + dice.below(30));
      const dues = minutes.map(() => dice.below(150));
      let [clock, worst] = [0, -Infinity];
      for (const i of minutes.map((_, at) => at).sort((a, b) => (dues[a] ?? 0) - (dues[b] ?? 0))) {
        clock += minutes[i] ?? 0;
        worst = Math.max(worst, clock - (dues[i] ?? 0));
      }
      expect(value(machine(minutes, dues), 'max-lateness')).toEqual(proven(worst));
    }
  });

  it('finishes weighted jobs soonest by weight over minutes (Smith 1956)', () => {
    const minutes = [12, 3, 8, 5, 20, 1, 9];
    const weights = [2, 4, 1, 8, 8, 1, 4];
    const order = minutes.map((_, i) => i).sort((a, b) => minutes[a]! / weights[a]! - minutes[b]! / weights[b]!);
    let [clock, sum] = [0, 0];
    for (const i of order) {
      clock += minutes[i]!;
      sum += weights[i]! * clock;
    }
    expect(value(machine(minutes, [], weights), 'weighted-completion')).toEqual(proven(sum));
  });

  it('beyond the exact size is as little late as dynamic programming over subsets proves (Held & Karp 1962)', () => {
    const found = Array.from({ length: amount(12, 100) }, (_, seed) => {
      const { minutes, dues, weights } = tardyJobs(seed, 14);
      const { objective } = planned(machine(minutes, dues, weights), 'weighted-tardiness', budgetOf(0.2));
      return { seed, value: objective.value, best: leastTardiness(minutes, dues, weights) };
    });
    expect(found.filter(({ value: ours, best }) => ours !== best)).toEqual([]);
    expect(found.filter(({ best }) => best > 0).length).toBeGreaterThan(found.length / 2);
  });
});

/** Minutes 1 to 100, weights 1 to 10, due dates by a factor and a range of tardiness of 0.2 to 1, as is usual. */
function tardyJobs(seed: number, count: number) {
  const dice = diceOf(1000 + seed);
  const [factor, range] = [0.2 * (1 + dice.below(5)), 0.2 * (1 + dice.below(5))];
  const minutes = Array.from({ length: count }, () => 1 + dice.below(100));
  const sum = minutes.reduce((a, b) => a + b, 0);
  const dues = minutes.map(() => Math.max(0, Math.round(sum * (1 - factor - range / 2 + range * dice.unit()))));
  return { minutes, dues, weights: minutes.map(() => 1 + dice.below(10)) };
}

function leastTardiness(minutes: readonly number[], dues: readonly number[], weights: readonly number[]): number {
  const size = 1 << minutes.length;
  const sums = new Float64Array(size);
  const least = new Float64Array(size).fill(Infinity);
  least[0] = 0;
  for (let set = 1; set < size; set += 1) {
    const lowest = 31 - Math.clz32(set & -set);
    sums[set] = sums[set & (set - 1)]! + minutes[lowest]!;
    for (let i = 0; i < minutes.length; i += 1) {
      if (((set >> i) & 1) === 0) continue;
      const late = weights[i]! * Math.max(0, sums[set]! - dues[i]!);
      least[set] = Math.min(least[set]!, least[set ^ (1 << i)]! + late);
    }
  }
  return least[size - 1]!;
}

describe('machines side by side', () => {
  const side = (count: number, minutes: readonly number[]) =>
    problemWith(
      Array.from({ length: count }, (_, i) => plainOven({ id: `oven-${i}` })),
      minutes.map((least, i) => plainJob(`J${i}`, least, 0)),
    );

  it('are done sooner than by taking the longest first (Graham 1969)', () => {
    expect(value(side(2, [3, 3, 2, 2, 2]), 'makespan')).toEqual(proven(6));
    expect(value(side(3, [5, 5, 4, 4, 3, 3, 3]), 'makespan')).toEqual(proven(9));
  });
});

describe('a machine that takes two of a family at once (Uzsoy 1995)', () => {
  const job = (id: string, due: number, weight: number) =>
    plainJob(id, 'abcde'.includes(id) ? 30 : 120, due, { weight, family: 'abcde'.includes(id) ? 'P' : 'S' });
  const jobs = [
    job('a', 60, 3),
    job('b', 150, 1),
    job('c', 90, 2),
    job('d', 240, 2),
    job('e', 100, 1),
    job('f', 120, 4),
    job('g', 300, 1),
    job('h', 180, 2),
  ];
  const problem = problemWith([plainOven({ area: 2 })], jobs, { familiesMix: false });

  it('is done after 330, late by 60, and finishes weighted jobs at 1950', () => {
    expect(value(problem, 'makespan')).toEqual(proven(330));
    expect(value(problem, 'max-lateness')).toEqual(proven(60));
    expect(value(problem, 'weighted-completion')).toEqual(proven(1950));
  });

  it('is the same when the families are set apart by pairs', () => {
    const apart = { ...problem, familiesMix: true, incompatible: [['P', 'S'] as const] };
    expect(value(apart, 'weighted-completion')).toEqual(proven(1950));
  });

  it('changes its order when set-ups between families cost', () => {
    const setup = {
      families: ['P', 'S'],
      minutes: [
        [0, 50],
        [50, 0],
      ],
      cost: [
        [0, 7],
        [9, 0],
      ],
    };
    const weights = { ...noWeights, setupCost: 1 };
    const { objective, batches, provenOptimal } = planned({ ...problem, setup }, 'weighted-sum', { weights });
    // From nothing to one family and once to the other: 7 from P to S is the cheaper way round.
    expect({ value: objective.value, provenOptimal }).toEqual(proven(7));
    expect(batches.map(({ setupMinutes }) => setupMinutes).filter((minutes) => minutes > 0)).toEqual([50]);
  });
});
