// The best plan of a few jobs by trying every one: all groupings into batches, all ovens and orders, every start minute that
// could matter. Slow and plain, and written apart from the planner.
import type { Job, Oven, OvenProblem } from '../../../api/science/ovens/problem.ts';

export interface Tuple {
  readonly lateness: number;
  readonly hours: number;
  readonly loads: number;
}

const less = (a: Tuple, b: Tuple): boolean =>
  a.lateness !== b.lateness ? a.lateness < b.lateness : a.hours !== b.hours ? a.hours < b.hours : a.loads < b.loads;

interface Standing {
  readonly free: number;
  readonly heat: number;
  readonly isFirst: boolean;
}

/** All pairs of start and end worth a try for a batch: in each opening each start from the earliest, shortest stay first. */
function stays(oven: Oven, jobs: readonly Job[], earliest: number, setup: number): [number, number][] {
  const least = Math.max(...jobs.map(({ minutes }) => minutes[0]));
  const most = Math.min(...jobs.map(({ minutes }) => minutes[1]));
  const found: [number, number][] = [];
  const isOpen = (minute: number) => oven.open.some(([from, to]) => from <= minute && minute <= to);
  for (const [from, to] of oven.open) {
    const starts = new Set<number>();
    // The earliest, and the last ones that end at an opening or start at closing time.
    const first = Math.max(earliest, oven.unattended ? from : from + setup);
    starts.add(first);
    starts.add(to);
    for (const [opening] of oven.open) starts.add(opening - least);
    for (const start of starts) {
      if (start < first || start > to) continue;
      const ends = [
        start + least,
        ...oven.open.map(([opening]) => opening).filter((opening) => opening > start + least),
      ];
      for (const end of ends) {
        if (!isOpen(end) || end - start > most) continue;
        if (!oven.unattended && end > to) continue;
        found.push([start, end]);
      }
    }
  }
  return found;
}

export function bestByTrying(problem: OvenProblem): Tuple | null {
  const { jobs, ovens } = problem;
  let best: Tuple | null = null;
  const apart = (a: Job, b: Job) =>
    problem.incompatible.some(([x, y]) => (x === a.family && y === b.family) || (y === a.family && x === b.family));
  const may = (oven: Oven, batch: readonly Job[]): [number, number] | null => {
    if (batch.reduce((sum, { area }) => sum + area, 0) > oven.area) return null;
    if (batch.some((job) => job.ovens && !job.ovens.includes(oven.id))) return null;
    if (batch.some((a) => batch.some((b) => a !== b && apart(a, b)))) return null;
    const low = Math.max(oven.temperatureC?.[0] ?? -1e9, ...batch.map(({ temperatureC }) => temperatureC?.[0] ?? -1e9));
    const high = Math.min(oven.temperatureC?.[1] ?? 1e9, ...batch.map(({ temperatureC }) => temperatureC?.[1] ?? 1e9));
    if (low > high) return null;
    if (Math.max(...batch.map(({ minutes }) => minutes[0])) > Math.min(...batch.map(({ minutes }) => minutes[1])))
      return null;
    return [low, high];
  };
  // Each step appends one batch of jobs that are left to one oven; ovens never go back in index, so that no plan comes twice.
  const step = (left: number, at: number, standing: Standing, sum: Tuple) => {
    if (best && !less(sum, best) && sum.lateness >= best.lateness && sum.hours >= best.hours) return;
    if (left === 0) {
      if (best === null || less(sum, best)) best = sum;
      return;
    }
    const oven = ovens[at];
    if (!oven) return;
    for (let set = left; set > 0; set = (set - 1) & left) {
      const batch = jobs.filter((_, i) => (set >> i) & 1);
      const window = may(oven, batch);
      if (!window) continue;
      const heat = Math.min(Math.max(standing.heat, window[0]), window[1]);
      const rise = heat - standing.heat;
      const setup = Math.round(rise > 0 ? rise * oven.heatMinutesPerC : -rise * oven.coolMinutesPerC);
      const earliest = Math.max(
        standing.free + (standing.isFirst ? 0 : oven.doorMinutes) + setup,
        ...batch.map(({ readyAt }) => readyAt),
      );
      for (const [start, end] of stays(oven, batch, earliest, setup)) {
        const late = batch.reduce((all, job) => all + job.weight * Math.max(0, end - (job.dueAt ?? Infinity)), 0);
        const next = {
          lateness: sum.lateness + late,
          hours: sum.hours + end - start + setup,
          loads: sum.loads + 1,
        };
        step(left & ~set, at, { free: end, heat, isFirst: false }, next);
      }
    }
    const other = ovens[at + 1];
    if (other) step(left, at + 1, standingOf(other), sum);
  };
  const first = ovens[0];
  if (first) step((1 << jobs.length) - 1, 0, standingOf(first), { lateness: 0, hours: 0, loads: 0 });
  return best;
}

const standingOf = (oven: Oven): Standing => ({
  free: oven.freeAt,
  heat: oven.startTemperatureC ?? oven.temperatureC?.[0] ?? 20,
  isFirst: true,
});
