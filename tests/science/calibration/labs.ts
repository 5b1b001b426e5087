// An invented lab whose factors are drawn from what is held of them, as the exposure model's section 5 says: silica containers
// of two lots, tight and well closed in turn, opened on most workdays, now and then forgotten. What truly happened is worked
// out once; `weighed.ts` weighs it.
import { evenDay, heldBlocks } from '../../../api/science/blocks.ts';
import type { Weighed } from '../../../api/science/calibration/weighing.ts';
import { daySeconds, roomAir } from '../../../api/science/climate.ts';
import { tightPerLitre, wellClosedPerLitre } from '../../../api/science/closures.ts';
import type { Action } from '../../../api/science/history.ts';
import { prior } from '../../../api/science/uncertainty.ts';
import { dayZero, dice, hour, jar, normalDraw, noisyReadings, numbersOf } from '../support/lab.ts';
import { airOf, Truth } from './truth.ts';

/** Ten occasions in sixty days, scored two weeks later. */
const weighedUntilDay = 60;
const scoredDay = 74;
/** A litre of silica with room above it. */
const size = { diameterM: 0.09, depthM: 0.12, headM: 0.03, litres: 1 } as const;
const scoopKg = 0.05;

export interface Waters {
  readonly mean: number;
  readonly scoop: number;
}

export interface Lab {
  readonly seed: number;
  readonly containers: readonly Weighed[];
  /** What a weighing would find if it were perfect, by container, in order of time. */
  readonly occasions: ReadonlyMap<string, readonly (Waters & { readonly atS: number; readonly gainKg: number })[]>;
  /** On the day of scoring. */
  readonly scored: ReadonlyMap<string, Waters>;
  /** True ln of the factors, by the names of the fit. */
  readonly factors: ReadonlyMap<string, number>;
}

export interface LabWords {
  readonly containers?: number;
  readonly occasions?: number;
  /** Every container is rolled at each occasion, so that any sample is one of the whole. */
  readonly rolled?: boolean;
  readonly desorption?: number;
  /** Lots drawn each for itself instead of sharing half of their variance with their class. */
  readonly aloneLots?: boolean;
}

// Opened on 60 % of workdays for 5 to 60 min; 6 % of those are forgotten for 10 to 18 h.
function openings(roll: () => number): [fromS: number, toS: number][] {
  const all: [number, number][] = [];
  let shutS = -Infinity;
  for (let day = 0; day < scoredDay; day++) {
    const isWorkday = (day + 4) % 7 < 5;
    if (!isWorkday || roll() >= 0.6) continue;
    const fromS = dayZero + day * daySeconds + Math.round((8 + 8 * roll()) * 60) * 60;
    const minutes = roll() < 0.06 ? 60 * (10 + 8 * roll()) : 5 + 55 * roll();
    if (fromS <= shutS) continue;
    shutS = fromS + Math.round(minutes) * 60;
    if (shutS < dayZero + scoredDay * daySeconds) all.push([fromS, shutS]);
  }
  return all;
}

export function labOf(seed: number, words: LabWords = {}): Lab {
  const { containers: count = 6, occasions: many = 10, rolled = false, desorption = 1, aloneLots = false } = words;
  const roll = dice(1_000_003 * (seed + 1));
  const draw = (sd: number): number => sd * normalDraw(roll);
  const sorbent = numbersOf('silica');
  const readings = noisyReadings(7919 * (seed + 1), scoredDay + 1, 21 + 3 * roll(), 0.4 + 0.15 * roll());
  const bias = draw(prior.bias);
  // The logger shows what the room has, less its bias.
  const logged = readings.map((one) => ({ ...one, humidity: Math.max(0.01, one.humidity - bias) }));
  const endS = dayZero + scoredDay * daySeconds;
  const room = roomAir(heldBlocks(logged, dayZero, endS + daySeconds / 2), evenDay(22, 0.5));
  const air = airOf(readings);

  const half = sorbent.doubt.below * Math.SQRT1_2;
  const lots = [0, 1].map((lot) => [`lot:${lot}`, draw(aloneLots ? sorbent.doubt.below : half)] as const);
  const factors = new Map<string, number>([
    ['bed', draw(prior.bed)],
    ['open', draw(prior.open)],
    ['bias', bias],
    ['closed:tight', draw(prior.closed)],
    ['closed:well closed', draw(prior.closed)],
    ['class:silica', aloneLots ? 0 : draw(half)],
    ...lots,
  ]);
  const of = (name: string): number => factors.get(name) ?? 0;
  const areaM2 = (Math.PI * size.diameterM ** 2) / 4;
  const dryKg = areaM2 * size.depthM * sorbent.bulkDensityKgPerM3;
  const scoopM = scoopKg / (sorbent.bulkDensityKgPerM3 * areaM2);

  const containers: Weighed[] = [];
  const occasions = new Map<string, (Waters & { atS: number; gainKg: number })[]>();
  const scored = new Map<string, Waters>();
  for (let n = 0; n < count; n++) {
    const key = `c${n}`;
    const lot = String(n % 2);
    const closure = Math.floor(n / 2) % 2 === 0 ? 'tight' : 'well closed';
    factors.set(`container:${key}`, draw(prior.container));
    factors.set(`start:${key}@${dayZero}`, draw(prior.start));
    const opened = openings(roll);
    const instants = Array.from(
      { length: many },
      (_, i) => dayZero + Math.round(((i + 1) * weighedUntilDay) / many) * daySeconds + 7 * hour,
    );
    const closedM3PerS = size.litres * (closure === 'tight' ? tightPerLitre : wellClosedPerLitre);
    const closedTimes = Math.exp(of(`closed:${closure}`) + of(`container:${key}`));
    const mouth = (diffusivity: number): number => 1 / 0.003 + size.headM / diffusivity;
    const open = (diffusivity: number): number => mouth(diffusivity) / Math.exp(of('open'));
    const shut = (diffusivity: number): number => (mouth(diffusivity) + areaM2 / closedM3PerS) / closedTimes;
    const start = prior.nominalStart * Math.exp(of(`start:${key}@${dayZero}`));
    const bed = new Truth(
      {
        sorbent,
        depthM: size.depthM,
        capacity: Math.exp(of('class:silica') + of(`lot:${lot}`)),
        bedFactor: Math.exp(of('bed')),
        start,
        desorption,
      },
      air,
    );
    const found: (Waters & { atS: number; gainKg: number })[] = [];
    let atS = dayZero;
    for (const stop of [...new Set([...opened.flat(), ...instants, endS])].sort((one, other) => one - other)) {
      const from = atS;
      const isOpen = opened.some(([opensS, shutsS]) => from >= opensS && from < shutsS);
      bed.carry(from, stop, isOpen, isOpen ? open : shut);
      atS = stop;
      if (instants.includes(stop)) {
        found.push({ atS, mean: bed.mean(), scoop: bed.mean(scoopM), gainKg: dryKg * (bed.mean() - start) });
        if (rolled) bed.mix();
      }
      bed.turn();
    }
    occasions.set(key, found);
    scored.set(key, { mean: bed.mean(), scoop: bed.mean(scoopM) });
    const actions: Action[] = [
      ...opened.flatMap(([from, to]): Action[] => [
        { kind: 'opened', atS: from },
        { kind: 'closed', atS: to, closure },
      ]),
      ...(rolled ? instants.map((at): Action => ({ kind: 'mixed', atS: at })) : []),
    ].sort((one, other) => one.atS - other.atS);
    const bare = jar({
      air: room,
      key,
      lid: closure,
      start: prior.nominalStart,
      depthMm: 1000 * size.depthM,
      headspaceMm: 1000 * size.headM,
      diameterMm: 1000 * size.diameterM,
      volumeL: size.litres,
    });
    containers.push({
      input: { ...bare, spec: { ...bare.spec, usualClosure: closure }, actions, asOfS: endS },
      lot,
      pool: 'silica',
    });
  }
  return { seed, containers, occasions, scored, factors };
}
