// Small invented problems: seeded ones with every rule in play, and plain machines of the literature.
import { diceOf } from '../../../api/science/ovens/dice.ts';
import type { OvenAnswer } from '../../../api/science/ovens/answer.ts';
import type { ObjectiveName } from '../../../api/science/ovens/objective.ts';
import { planOvens } from '../../../api/science/ovens/plan.ts';
import type { PlanTask } from '../../../api/science/ovens/prepared.ts';
import type { Job, Oven, OvenProblem, Span } from '../../../api/science/ovens/problem.ts';

export const plainOven = (more: Partial<Oven> = {}): Oven => ({
  id: 'oven',
  area: 1,
  heatMinutesPerC: 0,
  coolMinutesPerC: 0,
  doorMinutes: 0,
  open: [[0, 1_000_000]],
  unattended: true,
  freeAt: 0,
  outOfOrder: [],
  ...more,
});

export const plainJob = (id: string, minutes: number, dueAt: number, more: Partial<Job> = {}): Job => ({
  id,
  area: 1,
  minutes: [minutes, minutes],
  readyAt: 0,
  dueAt,
  weight: 1,
  family: '',
  ...more,
});

export const problemWith = (
  ovens: readonly Oven[],
  jobs: readonly Job[],
  more: Partial<OvenProblem> = {},
): OvenProblem => ({
  ovens,
  jobs,
  incompatible: [],
  fixed: [],
  familiesMix: true,
  ...more,
});

export const noWeights = { lateJobs: 0, ovenMinutes: 0, setupMinutes: 0, setupCost: 0 };
export const unwatched = { stopped: () => false, progress: () => undefined };

export const planned = (
  problem: OvenProblem,
  objective: ObjectiveName = 'lateness',
  more: Partial<PlanTask> = {},
): OvenAnswer =>
  planOvens({ problem, objective, weights: noWeights, seed: 1, moves: 60_000, work: 20_000_000, ...more }, unwatched);

/** Jobs `J1`, `J2`, … on one machine that takes one at a time. */
export const machine = (
  minutes: readonly number[],
  dues: readonly number[],
  weights?: readonly number[],
): OvenProblem =>
  problemWith(
    [plainOven()],
    minutes.map((least, i) => plainJob(`J${i + 1}`, least, dues[i] ?? 0, { weight: weights?.[i] ?? 1 })),
  );

/** A few jobs, one to three ovens, all rules in play: tight hours, nights, windows, families, doors, ready times. */
export function smallProblem(seed: number, jobs: number): OvenProblem {
  const dice = diceOf(seed);
  const spans: Span[] = [0, 1, 2, 3, 4, 5].map((day) => [day * 240 + dice.below(40), day * 240 + 100 + dice.below(60)]);
  const ovens = Array.from({ length: 1 + dice.below(jobs > 4 ? 2 : 3) }, (_, i) => {
    const low = 30 + 10 * dice.below(4);
    return plainOven({
      id: `oven-${i}`,
      area: 3 + dice.below(4),
      temperatureC: [low, 160],
      startTemperatureC: low,
      heatMinutesPerC: [0, 0.1, 0.25, 0.5][dice.below(4)] ?? 0,
      coolMinutesPerC: [0, 0.2, 0.3, 1][dice.below(4)] ?? 0,
      doorMinutes: dice.below(6),
      // Some stand open for good, so that the last job always finds its place.
      open: [...spans, [1500, 100_000]],
      unattended: dice.below(4) > 0,
      freeAt: dice.below(50),
    });
  });
  return problemWith(
    ovens,
    Array.from({ length: jobs }, (_, i) => {
      const least = 5 + dice.below(60);
      const low = 30 + 10 * dice.below(9);
      return plainJob(`job-${i}`, least, 40 + dice.below(500), {
        area: 1 + dice.below(3),
        minutes: [least, least + dice.below(3) * 100],
        temperatureC: [low, low + 10 * dice.below(5)],
        readyAt: dice.below(2) * dice.below(200),
        weight: [1, 2, 4, 8][dice.below(4)] ?? 1,
        family: ['a', 'b', 'c'][dice.below(3)] ?? 'a',
        ...(dice.below(5) === 0 ? { ovens: ['oven-0'] } : {}),
      });
    }).map((job) =>
      // Every job fits the first oven's range.
      ({
        ...job,
        temperatureC: [Math.max(60, job.temperatureC?.[0] ?? 0), Math.max(60, job.temperatureC?.[1] ?? 0)] as const,
      }),
    ),
    { incompatible: [['a', 'b']] },
  );
}
