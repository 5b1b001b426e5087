// The lab's facts as a problem for the planner: whole minutes from now on, ovens and jobs by the names that people use, so that
// what the planner says can be read. Pure.
import type { KeptBatch } from '../science/ovens/keep.ts';
import type { FixedBatch, Job, Oven, OvenProblem } from '../science/ovens/problem.ts';
import type { Facts, LoadRow, RunRow } from './facts.ts';
import { openingsOf, outages } from './oven-hours.ts';
import type { FamilyPair } from './rules.ts';
import { loadsOf, ovenAreaCm2, type LeftOut, type Wanted } from './shares.ts';
import { minuteMs } from './minute.ts';
import { namer, partWords, numbered } from './namer.ts';
import { nowIn, fixedIn } from './oven-now.ts';
import { fixedJob, jobOf } from './jobs.ts';
import { unplaceable } from './unplaceable.ts';
import { keptOf } from './before.ts';

const dayMs = 86_400_000;
/** Beyond the last time that something is wanted by. */
const horizonDays = 21;

export interface Posed {
  problem: OvenProblem;
  /** Minute 0. */
  originMs: number;
  /** What each job stands for: a load to be placed, or one of a run that was fixed. */
  wanted: Map<string, Wanted>;
  fixedLoads: Map<string, LoadRow>;
  fixedRuns: { run: RunRow; batch: FixedBatch }[];
  before: KeptBatch[];
  leftOut: LeftOut[];
}

const spans = (some: { fromMs: number; toMs: number }[], originMs: number): [number, number][] =>
  some.map(({ fromMs, toMs }) => [Math.ceil((fromMs - originMs) / minuteMs), Math.floor((toMs - originMs) / minuteMs)]);

/** Poses the problem; jobs that no oven and no hours can take are named with the reason. */
export function posed(facts: Facts, apart: readonly FamilyPair[]): Posed {
  const originMs = Math.ceil(facts.now.getTime() / minuteMs) * minuteMs;
  const latest = Math.max(originMs, ...facts.requests.map(({ wantedBy }) => wantedBy?.getTime() ?? 0));
  const untilMs = latest + horizonDays * dayMs;
  const named = namer();
  const leftOut: LeftOut[] = [];
  const jobs: Job[] = [];
  const wanted = new Map<string, Wanted>();
  const fixedLoads = new Map<string, LoadRow>();
  const fixedRuns: Posed['fixedRuns'] = [];

  const ovens: Oven[] = facts.ovens.map((oven) => {
    const now = nowIn(oven, facts, originMs);
    for (const { run, start, end } of fixedIn(oven, now, facts, originMs, untilMs)) {
      const ids = run.loads.map((load) => {
        const name = named(load.request.container.label + partWords(load.part, load.parts));
        fixedLoads.set(name, load);
        jobs.push(fixedJob(name, load, run, facts, originMs));
        return name;
      });
      fixedRuns.push({ run, batch: { oven: oven.name, jobs: ids, start, end, temperatureC: run.temperatureC } });
    }
    return {
      id: oven.name,
      area: ovenAreaCm2(oven),
      temperatureC: [oven.lowestC, oven.highestC],
      heatMinutesPerC: oven.heatMinutesPerC,
      coolMinutesPerC: oven.coolMinutesPerC,
      doorMinutes: oven.doorMinutes,
      unattended: oven.isUnattended,
      open: spans(openingsOf(oven, facts, originMs - dayMs, untilMs), originMs),
      outOfOrder: spans(outages(oven, untilMs + dayMs), originMs).filter(([, to]) => to > 0),
      ...now,
    };
  });

  for (const request of facts.requests) {
    const loads = loadsOf(request, facts);
    if (!Array.isArray(loads)) leftOut.push(loads);
    else {
      for (const load of numbered(loads, request)) {
        const name = named(request.container.label + partWords(load.part, load.parts));
        wanted.set(name, load);
        jobs.push(jobOf(name, load, originMs));
      }
    }
  }

  const whole: OvenProblem = {
    ovens,
    jobs,
    incompatible: apart,
    fixed: fixedRuns.map(({ batch }) => batch),
    familiesMix: true,
  };
  const out = unplaceable(whole);
  for (const [name, why] of out) {
    const load = wanted.get(name);
    if (load) leftOut.push({ request: load.request, why });
    wanted.delete(name);
  }
  const problem = { ...whole, jobs: jobs.filter(({ id }) => !out.has(id)) };
  return { problem, originMs, wanted, fixedLoads, fixedRuns, before: keptOf(facts, wanted, originMs), leftOut };
}
