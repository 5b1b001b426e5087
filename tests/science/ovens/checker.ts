// Holds a plan against the rules of the problem, minute by minute and pair by pair, and adds up what it costs. Written from the
// rules alone: it knows nothing of how plans are made.
import type { OvenProblem } from '../../../api/science/ovens/problem.ts';

export interface CheckedBatch {
  readonly oven: string;
  readonly jobs: readonly string[];
  readonly start: number;
  readonly end: number;
  readonly temperatureC: number | null;
  readonly setupMinutes: number;
}

export interface Costs {
  /** Weighted minutes late. */
  lateness: number;
  /** Oven minutes, set-ups among them. */
  hours: number;
  loads: number;
  latest: number;
  lateJobs: number;
  completion: number;
}

/** Every rule that is broken, in words. */
export function broken(problem: OvenProblem, batches: readonly CheckedBatch[]): string[] {
  const wrong: string[] = [];
  const say = (batch: CheckedBatch, text: string) => wrong.push(`${batch.oven} ${batch.start}: ${text}`);
  const jobs = new Map(problem.jobs.map((job) => [job.id, job]));
  const isFixed = (batch: CheckedBatch) =>
    problem.fixed.some(({ oven, start, end }) => oven === batch.oven && start === batch.start && end === batch.end);

  for (const { id } of problem.jobs) {
    const times = batches.filter((batch) => batch.jobs.includes(id)).length;
    if (times !== 1) wrong.push(`${id} is dried ${times} times`);
  }
  for (const fixed of problem.fixed) {
    const there = batches.some(
      (batch) => isFixed(batch) && batch.oven === fixed.oven && fixed.jobs.every((job) => batch.jobs.includes(job)),
    );
    if (!there) wrong.push(`the fixed batch of ${fixed.jobs.join(', ')} is gone`);
  }
  for (const batch of batches) {
    if (isFixed(batch)) continue;
    const oven = problem.ovens.find(({ id }) => id === batch.oven);
    const held = batch.jobs.map((id) => jobs.get(id));
    if (!oven || held.includes(undefined) || held.length === 0) {
      say(batch, 'holds what is not there');
      continue;
    }
    const minutes = batch.end - batch.start;
    let area = 0;
    for (const job of held) {
      if (!job) continue;
      area += job.area;
      if (minutes < job.minutes[0] || minutes > job.minutes[1]) say(batch, `${job.id} in for ${minutes} minutes`);
      if (batch.start < job.readyAt) say(batch, `${job.id} before it is ready`);
      if (job.ovens && !job.ovens.includes(oven.id)) say(batch, `${job.id} in an oven it may not go into`);
      const [low, high] = job.temperatureC ?? [-1e9, 1e9];
      if (batch.temperatureC !== null && (batch.temperatureC < low || batch.temperatureC > high)) {
        say(batch, `${job.id} at ${batch.temperatureC}`);
      }
      for (const other of held) {
        if (!other || other === job) continue;
        const apart = problem.incompatible.some(
          ([a, b]) => (a === job.family && b === other.family) || (b === job.family && a === other.family),
        );
        if (apart) say(batch, `${job.id} beside ${other.id}`);
        if ((!problem.familiesMix || problem.setup) && job.family !== other.family) say(batch, 'families mixed');
      }
    }
    if (area > oven.area + 1e-6) say(batch, `${area} on shelves of ${oven.area}`);
    const [coolest, hottest] = oven.temperatureC ?? [-1e9, 1e9];
    if (batch.temperatureC !== null && (batch.temperatureC < coolest || batch.temperatureC > hottest)) {
      say(batch, 'the oven cannot hold that');
    }
    const isIn = (from: number, to: number) => (minute: number) => from <= minute && minute <= to;
    const covering = (minute: number) => oven.open.filter(([from, to]) => isIn(from, to)(minute));
    if (covering(batch.start).length === 0) say(batch, 'nobody is there to load');
    if (covering(batch.end).length === 0) say(batch, 'nobody is there to unload');
    if (!oven.unattended) {
      const whole = oven.open.some(
        ([from, to]) => isIn(from, to)(batch.start - batch.setupMinutes) && isIn(from, to)(batch.end),
      );
      if (!whole) say(batch, 'left alone');
    }
    if (oven.outOfOrder.some(([from, to]) => from < batch.end && to > batch.start - batch.setupMinutes)) {
      say(batch, 'out of order');
    }
  }
  for (const oven of problem.ovens) wrong.push(...sequence(problem, oven, batches, isFixed));
  return wrong;
}

function sequence(
  problem: OvenProblem,
  oven: OvenProblem['ovens'][number],
  batches: readonly CheckedBatch[],
  isFixed: (batch: CheckedBatch) => boolean,
): string[] {
  const wrong: string[] = [];
  const own = batches.filter((batch) => batch.oven === oven.id).sort((a, b) => a.start - b.start);
  const familyOf = (batch: CheckedBatch) => problem.jobs.find(({ id }) => batch.jobs.includes(id))?.family;
  let heat = oven.startTemperatureC ?? oven.temperatureC?.[0] ?? 20;
  let family = oven.startFamily;
  let free = oven.freeAt;
  let before: CheckedBatch | null = null;
  for (const batch of own) {
    const cold = oven.outOfOrder.some(([from, to]) => from >= (before?.end ?? oven.freeAt) && to <= batch.start);
    if (cold) {
      heat = oven.startTemperatureC ?? oven.temperatureC?.[0] ?? 20;
      family = undefined;
    }
    const to = familyOf(batch);
    let needs = 0;
    if (problem.setup) {
      const [a, b] = [problem.setup.families.indexOf(family ?? ''), problem.setup.families.indexOf(to ?? '')];
      needs = a < 0 ? 0 : (problem.setup.minutes[a]?.[b] ?? 0);
    } else if (batch.temperatureC !== null) {
      const rise = batch.temperatureC - heat;
      needs = Math.round(rise > 0 ? rise * oven.heatMinutesPerC : -rise * oven.coolMinutesPerC);
    }
    if (batch.setupMinutes !== needs)
      wrong.push(`${oven.id} ${batch.start}: set-up ${batch.setupMinutes}, not ${needs}`);
    const door = before ? oven.doorMinutes : 0;
    if (!isFixed(batch) && batch.start < free + door + needs) wrong.push(`${oven.id} ${batch.start}: too soon`);
    if (before && isFixed(batch) && !isFixed(before) && batch.start < before.end + door + needs) {
      wrong.push(`${oven.id} ${batch.start}: what is fixed is kept waiting`);
    }
    heat = batch.temperatureC ?? heat;
    family = to;
    free = Math.max(free, batch.end);
    before = batch;
  }
  return wrong;
}

export function costsOf(problem: OvenProblem, batches: readonly CheckedBatch[]): Costs {
  const costs = { lateness: 0, hours: 0, loads: batches.length, latest: -Infinity, lateJobs: 0, completion: 0 };
  for (const { start, end, setupMinutes, jobs } of batches) {
    costs.hours += end - start + setupMinutes;
    for (const id of jobs) {
      const job = problem.jobs.find((one) => one.id === id);
      if (!job) continue;
      const late = end - (job.dueAt ?? Infinity);
      costs.lateness += job.weight * Math.max(0, late);
      costs.lateJobs += late > 0 ? 1 : 0;
      costs.latest = Math.max(costs.latest, late);
      costs.completion += job.weight * end;
    }
  }
  return costs;
}
