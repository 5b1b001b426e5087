// The problem that a checked file states, with what it leaves out; a job that no oven takes is named.
import { BadInput, shown } from '../../bad-input.ts';
import { earliestEnds } from '../../science/ovens/alone.ts';
import { homeless, modelOf, never } from '../../science/ovens/model.ts';
import type { OvenProblem } from '../../science/ovens/problem.ts';
import type { PlanInput } from './input.ts';

/** Someone is always there. */
const always = [[-1e7, 1e8]] as const;

export function problemOf(input: PlanInput): OvenProblem {
  const problem: OvenProblem = {
    ovens: input.ovens.map((oven) => ({
      heatMinutesPerC: 0,
      coolMinutesPerC: 0,
      doorMinutes: 0,
      unattended: true,
      open: always,
      freeAt: 0,
      outOfOrder: [],
      ...oven,
    })),
    jobs: input.jobs.map((job) => ({
      readyAt: 0,
      weight: 1,
      family: '',
      ...job,
      minutes: typeof job.minutes === 'number' ? ([job.minutes, job.minutes] as const) : job.minutes,
    })),
    incompatible: input.incompatible ?? [],
    fixed: input.fixed ?? [],
    familiesMix: input.familiesMix ?? true,
    ...(input.setup ? { setup: input.setup } : {}),
  };
  refuseHomeless(input, problem);
  return problem;
}

function refuseHomeless(input: PlanInput, problem: OvenProblem): void {
  const model = modelOf(problem);
  const refuse = (id: string | undefined, expected: string) => {
    const at = input.jobs.findIndex((job) => job.id === id);
    if (at >= 0) throw new BadInput(`invalid jobs[${at}]: ${shown(id)}, expected ${expected}`);
  };
  refuse(homeless(model)[0], 'a job that fits into an oven by area, temperature and the ovens it names');
  const ends = earliestEnds(model);
  refuse(model.id[ends.findIndex((end) => end >= never)], 'open hours in which it can be loaded, dried and unloaded');
}
