// The problem made ready for reckoning: jobs and ovens in one order whatever order they were given in, everything as numbers.
import type { Job, OvenProblem, Span } from './problem.ts';
import { unitedSpans } from './hours.ts';
import { pinsOf, type Pin } from './pins.ts';
import { anyTemperature, setupsOf, startC, statesOf, type Setups, type States } from './states.ts';

export interface OvenModel {
  readonly area: number;
  /** The states it can stand at: all between these. */
  readonly lowest: number;
  readonly highest: number;
  readonly state: number;
  readonly freeAt: number;
  readonly door: number;
  readonly unattended: boolean;
  readonly openFrom: Float64Array;
  readonly openTo: Float64Array;
  readonly setups: Setups;
  /** What is fixed in it, and when it is out of order, in order of time. */
  readonly pins: readonly Pin[];
}

export interface Model {
  readonly problem: OvenProblem;
  readonly states: States;
  /** The jobs to be planned; fixed ones are not among them. */
  readonly jobs: number;
  readonly id: readonly string[];
  readonly area: Float64Array;
  readonly least: Int32Array;
  readonly most: Int32Array;
  readonly ready: Int32Array;
  readonly due: Float64Array;
  readonly weight: Float64Array;
  readonly lowest: Int32Array;
  readonly highest: Int32Array;
  /** The ovens in which a job fits alone, a bit each. */
  readonly allowed: Int32Array;
  /** `apart[a * jobs + b]` is 1 when two jobs may not share a batch, whatever the oven. */
  readonly apart: Uint8Array;
  /** The same for their families alone. */
  readonly families: Uint8Array;
  readonly ovenId: readonly string[];
  readonly ovens: readonly OvenModel[];
}

/** Beyond what any reckoning here reaches: an end that no open hours allow. */
export const never = 1e8;

const byId = (a: { id: string }, b: { id: string }) => (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);

function ovenModels(problem: OvenProblem, states: States): OvenModel[] {
  return [...problem.ovens].sort(byId).map((oven) => {
    const open = unitedSpans(oven.open);
    const [lowest, highest]: Span = states.temperatureC
      ? (oven.temperatureC ?? anyTemperature)
      : [0, Number.POSITIVE_INFINITY];
    return {
      area: oven.area,
      lowest: states.temperatureC ? states.at(lowest) : 0,
      highest: states.temperatureC ? states.at(highest) : states.count - 1,
      state: states.at(states.temperatureC ? startC(oven) : oven.startFamily),
      freeAt: oven.freeAt,
      door: oven.doorMinutes,
      unattended: oven.unattended,
      openFrom: Float64Array.from(open, ([from]) => from),
      openTo: Float64Array.from(open, ([, to]) => to),
      setups: setupsOf(problem, states, oven),
      pins: pinsOf(problem, states, oven),
    };
  });
}

const meet = ([a, b]: Span, [c, d]: Span) => Math.max(a, c) <= Math.min(b, d);

/** 1 for each pair of jobs that do not go together. */
function pairs(jobs: OvenProblem['jobs'], together: (a: Job, b: Job) => boolean): Uint8Array {
  return Uint8Array.from({ length: jobs.length ** 2 }, (_, at) => {
    const [a, b] = [jobs[Math.floor(at / jobs.length)]!, jobs[at % jobs.length]!];
    return a === b || together(a, b) ? 0 : 1;
  });
}

function mixing(problem: OvenProblem): (a: Job, b: Job) => boolean {
  const pair = (a: string, b: string) => JSON.stringify([a, b]);
  const incompatible = new Set(problem.incompatible.flatMap(([a, b]) => [pair(a, b), pair(b, a)]));
  const mix = problem.familiesMix && problem.setup === undefined;
  return (a, b) => (mix || a.family === b.family) && !incompatible.has(pair(a.family, b.family));
}

export function modelOf(problem: OvenProblem): Model {
  const fixed = new Set(problem.fixed.flatMap(({ jobs }) => jobs));
  const jobs = problem.jobs.filter(({ id }) => !fixed.has(id)).sort(byId);
  const states = statesOf(problem);
  const ovens = ovenModels(problem, states);
  const sorted = [...problem.ovens].sort(byId);
  const mix = mixing(problem);
  const window = jobs.map(({ temperatureC, family }): Span => {
    if (!states.temperatureC) return [states.at(family), states.at(family)];
    const [low, high] = temperatureC ?? anyTemperature;
    return [states.at(low), states.at(high)];
  });
  const fits = ({ area, temperatureC, ovens: named }: OvenProblem['jobs'][number], i: number) => {
    const [low, high] = temperatureC ?? anyTemperature;
    const [coolest, hottest] = sorted[i]!.temperatureC ?? anyTemperature;
    return (
      area <= sorted[i]!.area &&
      (named === undefined || named.includes(sorted[i]!.id)) &&
      Math.max(low, coolest) <= Math.min(high, hottest)
    );
  };
  return {
    problem,
    states,
    jobs: jobs.length,
    id: jobs.map(({ id }) => id),
    area: Float64Array.from(jobs, ({ area }) => area),
    least: Int32Array.from(jobs, ({ minutes }) => minutes[0]),
    most: Int32Array.from(jobs, ({ minutes }) => minutes[1]),
    ready: Int32Array.from(jobs, ({ readyAt }) => readyAt),
    due: Float64Array.from(jobs, ({ dueAt }) => dueAt ?? never),
    weight: Float64Array.from(jobs, ({ weight }) => weight),
    lowest: Int32Array.from(window, ([low]) => low),
    highest: Int32Array.from(window, ([, high]) => high),
    allowed: Int32Array.from(jobs, (job) => ovens.reduce((mask, _, i) => (fits(job, i) ? mask | (1 << i) : mask), 0)),
    apart: pairs(
      jobs,
      (a, b) =>
        mix(a, b) &&
        meet(a.minutes, b.minutes) &&
        meet(a.temperatureC ?? anyTemperature, b.temperatureC ?? anyTemperature),
    ),
    families: pairs(jobs, mix),
    ovenId: sorted.map(({ id }) => id),
    ovens,
  };
}

/** The jobs that fit into no oven, by id. */
export const homeless = (model: Model): string[] => model.id.filter((_, job) => model.allowed[job] === 0);
