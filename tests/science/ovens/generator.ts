// Seeded weeks of a lab that dries sorbents and plates: invented jobs in the shares, sizes and hours of an ordinary one.
import { diceOf, type Dice } from '../../../api/science/ovens/dice.ts';
import { earliestEnds } from '../../../api/science/ovens/alone.ts';
import { modelOf } from '../../../api/science/ovens/model.ts';
import type { Job, Oven, OvenProblem, Span } from '../../../api/science/ovens/problem.ts';

const day = 1440;
const [opens, closes] = [7 * 60, 19 * 60];

const kinds = [
  { name: 'silica', share: 30, pieces: [1, 3], size: 900, window: [120, 160], minutes: [60, 90, 120, 150], most: 960 },
  {
    name: 'alumina',
    share: 15,
    pieces: [1, 2],
    size: 900,
    window: [150, 200],
    minutes: [90, 120, 180, 240],
    most: 960,
  },
  { name: 'bonded', share: 10, pieces: [1, 2], size: 900, window: [80, 110], minutes: [90, 120, 180], most: 480 },
  { name: 'glass', share: 20, pieces: [2, 8], size: 400, window: [110, 130], minutes: [30], most: 120 },
  { name: 'aluminium', share: 15, pieces: [2, 8], size: 400, window: [80, 100], minutes: [30], most: 60 },
  { name: 'plastic', share: 10, pieces: [2, 8], size: 400, window: [60, 90], minutes: [30], most: 60 },
] as const;
const familyOf = {
  silica: 'bulk',
  alumina: 'bulk',
  bonded: 'bonded',
  glass: 'plates',
  aluminium: 'plates',
  plastic: 'plates',
};

const ovenKinds = [
  { name: 'air', area: 4800, temperatureC: [40, 250], cool: 1, door: 5 },
  { name: 'vacuum', area: 1800, temperatureC: [30, 200], cool: 1.5, door: 10 },
  { name: 'small-air', area: 3600, temperatureC: [40, 220], cool: 1, door: 5 },
] as const;

export interface Week {
  readonly jobs: number;
  readonly ovens: number;
  readonly days: number;
  /** Area times minutes of all jobs, as a share of what the ovens offer in their open hours. */
  readonly load: number;
  readonly seed: number;
}

const quarter = (minutes: number) => 15 * Math.round(minutes / 15);
const pick = <T>(dice: Dice, of: readonly T[]): T => of[dice.below(of.length)]!;
const between = (dice: Dice, [low, high]: readonly [number, number]) => low + dice.below(high - low + 1);

function shared<T extends { share: number }>(dice: Dice, of: readonly T[]): T {
  let left = dice.unit() * of.reduce((sum, { share }) => sum + share, 0);
  for (const one of of) {
    left -= one.share;
    if (left < 0) return one;
  }
  return of[0]!;
}

function ovensOf({ ovens, days }: Week): Oven[] {
  return Array.from({ length: ovens }, (_, i) => {
    const { name, area, temperatureC, cool, door } = ovenKinds[i % ovenKinds.length]!;
    return {
      id: `${name}-${i + 1}`,
      area,
      temperatureC,
      startTemperatureC: 22,
      heatMinutesPerC: 0.5,
      coolMinutesPerC: cool,
      doorMinutes: door,
      open: Array.from({ length: 3 * days + 7 }, (_day, at): Span => [day * at + opens, day * at + closes]),
      unattended: true,
      freeAt: opens,
      outOfOrder: [],
    };
  });
}

interface Drawn extends Job {
  readonly dueAt: number;
}

function drawn(dice: Dice, days: number, i: number): Drawn {
  const { name, pieces, size, window, minutes, most } = shared(dice, kinds);
  const area = between(dice, pieces) * size;
  const least = pick(dice, minutes);
  const due = pick(
    dice,
    Array.from({ length: days }, (_, at) => [...(at === 0 ? [] : [day * at + 540]), day * at + 840]).flat(),
  );
  const dueAt = due + 15 * between(dice, [-2, 2]);
  const readyAt = dice.unit() < 0.4 ? opens : Math.max(opens, dueAt - 60 * between(dice, [3, 24]));
  const { weight } = shared(dice, [
    { share: 50, weight: 1 },
    { share: 30, weight: 2 },
    { share: 15, weight: 4 },
    { share: 5, weight: 8 },
  ]);
  return {
    id: `job-${String(i + 1).padStart(3, '0')}`,
    area,
    minutes: [least, most],
    temperatureC: window,
    readyAt,
    dueAt,
    weight,
    family: familyOf[name],
  };
}

/** The week of a seed. */
export function weekOf(week: Week): OvenProblem {
  const dice = diceOf(week.seed);
  const ovens = ovensOf(week);
  const raw = Array.from({ length: week.jobs }, (_, i) => drawn(dice, week.days, i));
  const offered = ovens.reduce((sum, { area }) => sum + area, 0) * 720 * week.days * week.load;
  const scale = offered / raw.reduce((sum, { area, minutes }) => sum + area * minutes[0], 0);
  const jobs = raw.map((job): Drawn => {
    const least = Math.min(360, Math.max(30, quarter(scale * job.minutes[0])));
    return { ...job, minutes: [least, Math.max(job.minutes[1], 2 * least)] };
  });
  const problem = {
    ovens,
    jobs,
    incompatible: [
      ['bulk', 'bonded'],
      ['bulk', 'plates'],
    ] as const,
    fixed: [],
    familiesMix: true,
  };
  return { ...problem, jobs: onTimeAlone(problem, jobs) };
}

/** Ready is pulled back, or due pushed, until each job alone is on time: else forced lateness hides everything. */
function onTimeAlone(problem: OvenProblem, jobs: readonly Drawn[]): Drawn[] {
  const endsOf = (given: readonly Drawn[]) => {
    const model = modelOf({ ...problem, jobs: given });
    const ends = earliestEnds(model);
    return new Map(model.id.map((id, job) => [id, ends[job]!]));
  };
  let now = [...jobs];
  for (;;) {
    const ends = endsOf(now);
    const late = now.filter(({ id, dueAt }) => (ends.get(id) ?? 0) > dueAt);
    if (late.length === 0) return now;
    now = now.map((job) => {
      const end = ends.get(job.id) ?? 0;
      if (end <= job.dueAt) return job;
      if (job.readyAt > opens) return { ...job, readyAt: Math.max(opens, job.readyAt - 15) };
      return { ...job, dueAt: job.dueAt + 15 };
    });
  }
}
