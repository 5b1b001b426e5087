// One container through one day of noisy five-minute readings, in steady state over thirty days: CPU time without and with
// its interval, beside a plain implementation of the same equations with an off-the-shelf integrator, and the error of both.
import { plateGrid, bedGrid } from '../../api/science/grid.ts';
import { emptyBed, settleActivity, topMean, type Bed } from '../../api/science/bed.ts';
import { daySeconds } from '../../api/science/climate.ts';
import { rowOf } from '../../api/science/bed.ts';
import type { Inflow } from '../../api/science/inflow.ts';
import { carry, usualPace } from '../../api/science/stepper.ts';
import { dayZero, noisyAir, noisyReadings, numbersOf } from '../science/support/lab.ts';
import { meanOf, plainWater } from '../science/support/reference.ts';
import { type Bench, quantile, spread } from './bench.ts';
import { plainDay } from './plain.ts';

interface Kind {
  readonly name: string;
  readonly sorbent: string;
  readonly depthM: number;
  readonly headM: number;
  /** A/G of the closure, s/m; 0 when open. */
  readonly closureSPerM: number;
  readonly layer?: boolean;
  /** Five minutes open at these hours, shut otherwise. */
  readonly openings?: readonly number[];
  /** ms a day, mean only. */
  readonly target: number;
}

const areaM2 = Math.PI * 0.045 ** 2;
const tight = areaM2 / 7.5e-8;
const kinds: readonly Kind[] = [
  { name: 'open 120 mm silica', sorbent: 'silica', depthM: 0.12, headM: 0.03, closureSPerM: 0, target: 0.08 },
  { name: 'open 50 mm silica', sorbent: 'silica', depthM: 0.05, headM: 0.02, closureSPerM: 0, target: 0.08 },
  { name: 'open 80 mm alumina', sorbent: 'alumina', depthM: 0.08, headM: 0.02, closureSPerM: 0, target: 0.08 },
  { name: 'tight drum', sorbent: 'silica', depthM: 0.12, headM: 0.03, closureSPerM: tight, target: 0.02 },
  { name: 'well closed drum', sorbent: 'silica', depthM: 0.12, headM: 0.03, closureSPerM: tight / 20, target: 0.02 },
  { name: 'open 10 mm silica', sorbent: 'silica', depthM: 0.01, headM: 0, closureSPerM: 0, target: 0.25 },
  { name: 'open 10 mm alumina', sorbent: 'alumina', depthM: 0.01, headM: 0, closureSPerM: 0, target: 0.25 },
  { name: 'plate', sorbent: 'silica', depthM: 0.25e-3, headM: 0, closureSPerM: 0, layer: true, target: 0.25 },
  { name: 'open 120 mm c18', sorbent: 'c18', depthM: 0.12, headM: 0.03, closureSPerM: 0, target: 0.25 },
  {
    name: 'drum opened four times',
    sorbent: 'silica',
    depthM: 0.12,
    headM: 0.03,
    closureSPerM: tight,
    openings: [9, 11, 14, 16],
    target: 0.25,
  },
];

const days = 30;
const air = noisyAir(1, 2 * days + 1);
const firstDay = dayZero / daySeconds;

function bedOf({ sorbent, depthM, layer }: Kind): Bed {
  const bed = emptyBed(
    numbersOf(sorbent, layer === true),
    layer ? plateGrid(depthM) : bedGrid(depthM),
    1,
    1,
    101_325,
    4,
  );
  bed.water.fill(sorbent === 'c18' ? 0.001 : 0.01, 0, bed.grid.cells);
  settleActivity(bed);
  for (const name of ['start', 'bed', 'bias', 'open', 'closed']) rowOf(bed, name);
  bed.responses.set(bed.water);
  return bed;
}

const copyOf = (bed: Bed): Bed => ({
  ...bed,
  water: bed.water.slice(),
  activity: bed.activity.slice(),
  responses: bed.responses.slice(),
});

/** Carries a bed through days as the fold does: stretches end at midnight and at events. */
function carryDays(bed: Bed, kind: Kind, from: number, responses: boolean): void {
  const inflow = (open: boolean): Inflow => ({
    filmSPerM: 1 / 0.003,
    headM: kind.headM,
    closureSPerM: open ? 0 : kind.closureSPerM,
    openDuty: open ? 1 : 0,
    openFactor: 1,
    closedFactor: 1,
  });
  const open = inflow(true);
  const shut = inflow(false);
  const usual = kind.closureSPerM > 0 ? shut : open;
  const stretch = (integrals: Float64Array, fromS: number, toS: number, lid: Inflow): void => {
    bed.openRow = lid === open ? 3 : -1;
    bed.closedRow = lid === open ? -1 : 4;
    carry(bed, integrals, fromS, toS, lid, usualPace, responses, null);
  };
  Object.assign(bed, { bedRow: 1, biasRow: 2 });
  for (let day = from; day < from + days; day++) {
    const { integrals } = air.day(firstDay + day);
    let second = 0;
    for (const hour of kind.openings ?? []) {
      stretch(integrals, second, hour * 3600, usual);
      bed.stepS = Math.min(bed.stepS, 300);
      stretch(integrals, hour * 3600, hour * 3600 + 300, open);
      bed.stepS = Math.min(bed.stepS, 300);
      second = hour * 3600 + 300;
    }
    stretch(integrals, second, daySeconds, usual);
  }
}

const cpuMs = (work: () => void): number => {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
};

/** ms of CPU a day: every repeat from the same steady state. The best is least disturbed by what else the machine does. */
function msADay(kind: Kind, responses: boolean, repeats: number): number[] {
  const bed = bedOf(kind);
  carryDays(bed, kind, 0, responses);
  return Array.from({ length: repeats }, () => {
    const beds = Array.from({ length: 10 }, () => copyOf(bed));
    return cpuMs(() => beds.forEach((one) => carryDays(one, kind, days, responses))) / (10 * days);
  });
}

/** Mean water after the first day, ours and theirs, against a fine solution. */
function errors(kind: Kind): { ours: number; theirs: number; theirMs: number } {
  const bed = bedOf(kind);
  const start = bed.water[0] ?? 0;
  const { integrals } = air.day(firstDay);
  const block = (second: number) => {
    const k = 4 * Math.min(287, Math.floor(second / 300));
    const mean = (q: number) => ((integrals[k + 4 + q] ?? 0) - (integrals[k + q] ?? 0)) / 300;
    return { temperatureC: mean(2), humidity: mean(0) / mean(1) };
  };
  const resistance = (diffusivity: number): number => 1 / 0.003 + kind.headM / diffusivity + kind.closureSPerM;
  const plain = {
    sorbent: numbersOf(kind.sorbent, kind.layer === true),
    depthM: kind.depthM,
    start,
    air: block,
    resistance,
  };
  const fine = meanOf(plainWater(plain, daySeconds, 288));
  const inflow = {
    filmSPerM: 1 / 0.003,
    headM: kind.headM,
    closureSPerM: kind.closureSPerM,
    openDuty: 1,
    openFactor: 1,
    closedFactor: 1,
  };
  carry(bed, integrals, 0, daySeconds, { ...inflow, openDuty: kind.closureSPerM > 0 ? 0 : 1 }, usualPace, false, null);
  let theirWater = NaN;
  const theirMs = cpuMs(() => {
    theirWater = plainDay(plain, bed.grid.thicknessM, noisyReadings(1, 2).slice(0, 289));
  });
  return { ours: topMean(bed, bed.water, 0, kind.depthM) - fine, theirs: theirWater - fine, theirMs };
}

export async function exposureDay(short: boolean): Promise<Bench> {
  const repeats = short ? 3 : 9;
  const details: Record<string, number | string | boolean> = {};
  let value = 0;
  let worst: number[] = [];
  let single = { kind: kinds[0]!, ms: 0 };
  let met = true;
  // The compiler has seen every kind before anything is measured.
  for (const kind of kinds) for (const responses of [false, true]) msADay(kind, responses, 1);
  for (const kind of kinds) {
    const mean = msADay(kind, false, repeats);
    const interval = msADay(kind, true, repeats);
    const best = Math.min(...mean);
    const ratio = Math.min(...interval) / best;
    details[`${kind.name}, ms`] = best;
    details[`${kind.name}, with its interval, times`] = ratio;
    details[`${kind.name}, at most ms`] = kind.target;
    met = met && best <= kind.target && ratio <= 3;
    if (kind.target === 0.25 && best > value) {
      value = best;
      worst = mean;
    }
    if (kind.target === 0.25 && !kind.openings && best > single.ms) single = { kind, ms: best };
  }
  const compared = errors(single.kind);
  const usual = errors(kinds[0]!);
  Object.assign(details, {
    'targets met': met,
    'compared on': `${single.kind.name}, one day`,
    'error ours, kg/kg': compared.ours,
    'error theirs, kg/kg': compared.theirs,
    'theirs, ms': compared.theirMs,
    'open 120 mm silica, error ours': usual.ours,
    'open 120 mm silica, error theirs': usual.theirs,
    'open 120 mm silica, theirs, ms': usual.theirMs,
    'median, ms': quantile(worst, 0.5),
  });
  return {
    value,
    unit: 'ms CPU a container and day',
    against: 'the same equations with odex',
    ratio: single.ms / compared.theirMs,
    spread: spread(worst),
    details,
  };
}
