// The lab's facts as a problem for the planner: whole minutes from now on, ovens and jobs by the names that people use, so that
// what the planner says can be read. Pure.
import { homeless, modelOf, never } from '../science/ovens/model.ts';
import { earliestEnds } from '../science/ovens/alone.ts';
import type { KeptBatch } from '../science/ovens/keep.ts';
import type { FixedBatch, Job, Oven, OvenProblem } from '../science/ovens/problem.ts';
import { isPlaced } from './amounts.ts';
import type { Facts, LoadRow, OvenWithCare, RequestRow, RunRow } from './facts.ts';
import { whenSomebody } from './hours.ts';
import { openingsOf, outages } from './oven-hours.ts';
import { familyOf, type FamilyPair } from './rules.ts';
import { driesOf, loadsOf, ovenAreaCm2, type LeftOut, type Wanted } from './shares.ts';

const minuteMs = 60_000;
const dayMs = 86_400_000;
/** Beyond the last time that something is wanted by. */
const horizonDays = 21;
/** What an oven falls to when nobody heats it, °C. */
const roomC = 22;

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

/** Names told apart: the second of a name is said to be so. */
function namer(): (name: string) => string {
  const seen = new Map<string, number>();
  return (name) => {
    const count = (seen.get(name) ?? 0) + 1;
    seen.set(name, count);
    return count === 1 ? name : `${name} [${count}]`;
  };
}

const partWords = (part: number, parts: number): string => (parts > 1 ? ` (${part} of ${parts})` : '');

/** What an oven stands at now, and when it is free. */
function nowIn(oven: OvenWithCare, facts: Facts, originMs: number): { freeAt: number; startTemperatureC: number } {
  const running = facts.runs.find(({ ovenId, state }) => ovenId === oven.id && state === 'IN_OVEN');
  if (running) {
    const out = Math.max(running.dueOutAt?.getTime() ?? originMs, originMs);
    return {
      freeAt: Math.ceil((out - originMs) / minuteMs) + oven.doorMinutes,
      startTemperatureC: running.temperatureC,
    };
  }
  const last = facts.lastOut.filter(({ ovenId }) => ovenId === oven.id).at(-1);
  if (!last?.outAt || oven.coolMinutesPerC <= 0) return { freeAt: 0, startTemperatureC: roomC };
  const fallen = (facts.now.getTime() - last.outAt.getTime()) / minuteMs / oven.coolMinutesPerC;
  return { freeAt: 0, startTemperatureC: Math.max(roomC, Math.round(last.temperatureC - fallen)) };
}

const spans = (some: { fromMs: number; toMs: number }[], originMs: number): [number, number][] =>
  some.map(({ fromMs, toMs }) => [Math.ceil((fromMs - originMs) / minuteMs), Math.floor((toMs - originMs) / minuteMs)]);

/** Runs fixed by hand, in the order of time; one that cannot be where it was put comes as soon after as it can. */
function fixedIn(
  oven: OvenWithCare,
  free: { freeAt: number; startTemperatureC: number },
  facts: Facts,
  originMs: number,
  untilMs: number,
): { run: RunRow; start: number; end: number }[] {
  const open = openingsOf(oven, facts, originMs, untilMs);
  let { freeAt } = free;
  return facts.runs
    .filter(({ ovenId, state, isPinned }) => ovenId === oven.id && state === 'PLANNED' && isPinned)
    .sort((a, b) => a.plannedStart.getTime() - b.plannedStart.getTime())
    .map((run) => {
      const wanted = Math.round((run.plannedStart.getTime() - originMs) / minuteMs);
      const stays = Math.round((run.plannedEnd.getTime() - run.plannedStart.getTime()) / minuteMs);
      const later = Math.max(0, freeAt);
      const start =
        wanted >= later
          ? wanted
          : Math.ceil((whenSomebody(open, originMs + (later + run.setupMinutes) * minuteMs) - originMs) / minuteMs);
      freeAt = start + stays + oven.doorMinutes;
      return { run, start, end: start + stays };
    });
}

function jobOf(name: string, wanted: Wanted, originMs: number): Job {
  const { request, dries, areaCm2, family, ovens } = wanted;
  const due = request.wantedBy
    ? Math.floor((request.wantedBy.getTime() - originMs) / minuteMs) - dries.coolDownMinutes
    : null;
  const ready = request.readyAt ? Math.ceil((request.readyAt.getTime() - originMs) / minuteMs) : 0;
  return {
    id: name,
    area: areaCm2,
    minutes: dries.minutes,
    temperatureC: dries.temperatureC,
    readyAt: Math.max(0, ready),
    ...(due === null ? {} : { dueAt: due }),
    weight: request.weight,
    family,
    ovens: ovens.map((oven) => oven.name),
  };
}

/** A load of a run that was fixed: it is where it is, whatever it would need. */
function fixedJob(name: string, load: LoadRow, run: RunRow, facts: Facts, originMs: number): Job {
  const { request } = load;
  const { sorbent } = request.container.lot;
  const dries = driesOf(request, facts.materialOf(request.container));
  const cool = typeof dries === 'string' ? 0 : dries.coolDownMinutes;
  const due = request.wantedBy ? Math.floor((request.wantedBy.getTime() - originMs) / minuteMs) - cool : null;
  return {
    id: name,
    area: load.areaCm2,
    minutes: [run.leastMinutes, Math.max(run.leastMinutes, run.mostMinutes)],
    temperatureC: [run.temperatureC, run.temperatureC],
    readyAt: 0,
    ...(due === null ? {} : { dueAt: due }),
    weight: request.weight,
    family: familyOf({ kind: request.container.kind, ...sorbent }),
  };
}

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

/** Parts are numbered past those that have a place already. */
function numbered(loads: readonly Wanted[], request: RequestRow): Wanted[] {
  const placed = request.loads.filter((load) => isPlaced(load, request.containerId));
  const taken = new Set(placed.map(({ part }) => part));
  const parts = taken.size + loads.length;
  let part = 0;
  return loads.map((load) => {
    do part += 1;
    while (taken.has(part));
    return { ...load, part, parts };
  });
}

function unplaceable(problem: OvenProblem): Map<string, string> {
  const model = modelOf(problem);
  const out = new Map(homeless(model).map((id) => [id, 'it fits into no oven by area and temperature']));
  if (out.size === model.jobs) return out;
  earliestEnds(model).forEach((end, job) => {
    const id = model.id[job];
    if (end >= never && id !== undefined && !out.has(id)) {
      out.set(id, 'no hours in which somebody is there are long enough to load, dry and unload it');
    }
  });
  return out;
}

/** The runs that are planned and not fixed, as the plan before had them. */
function keptOf(facts: Facts, wanted: ReadonlyMap<string, Wanted>, originMs: number): KeptBatch[] {
  const names = new Map([...wanted].map(([name, { request, part }]) => [`${request.id} ${part}`, name]));
  return facts.runs
    .filter(({ state, isPinned }) => state === 'PLANNED' && !isPinned)
    .map(({ oven, plannedStart, loads }) => ({
      oven: oven.name,
      start: Math.round((plannedStart.getTime() - originMs) / minuteMs),
      jobs: loads.flatMap(({ requestId, part }) => names.get(`${requestId} ${part}`) ?? []),
    }));
}
