// What a tray will hold: at given times, when it reaches targets, and its profile when the recipe ends.
import { zeroCelsiusK } from '../air.ts';
import { startDrying, unbalanced, type Drying } from './drying.ts';
import type { Load } from './load.ts';
import { read, readingOf, type Reading } from './reading.ts';
import { step } from './stepper.ts';

export interface Ask {
  /** Times to report, s. */
  readonly atS: readonly number[];
  /** Water fractions, dry basis, whose first crossing is wanted. */
  readonly targets: readonly number[];
  /** A target not reached by then counts as not reached, s. */
  readonly mostS: number;
  /** When the profile is taken, s; null for none. */
  readonly profileAtS: number | null;
}

/** One time. Water is kg per kg dry sorbent. */
export interface Moment {
  readonly second: number;
  readonly mean: number;
  readonly wettest: number;
  /** Depth of the wettest spot below the open top. */
  readonly wettestM: number;
  /** In the middle of the bed's depth, and of the tray. */
  readonly centreC: number;
  readonly trayC: number;
}

/** When mean and wettest spot first are at most the target, s; 0 when they are from the start, null when not by `mostS`. */
export interface Crossing {
  readonly target: number;
  readonly meanS: number | null;
  readonly wettestS: number | null;
}

export interface Place {
  readonly depthM: number;
  readonly waterFraction: number;
  readonly temperatureC: number;
}

export interface Forecast {
  readonly moments: readonly Moment[];
  readonly crossings: readonly Crossing[];
  readonly profile: readonly Place[];
  /** What is not accounted for, as a share of what moved; 0 but for rounding. */
  readonly balance: { readonly water: number; readonly energy: number };
  /** Some place held more than saturated air gives: the numbers mean nothing. */
  readonly condensed: boolean;
  readonly steps: number;
}

/** How far a forecast of minutes is to be trusted, relative: exchange, conductivity and isotherm are placeholders. */
export const timeDoubt = 0.3;

/** Dries the load in thought. Throws only if no step converges, which is a fault of the model. */
export function forecast(load: Load, ask: Ask): Forecast {
  const drying = startDrying(load);
  const reading = readingOf(drying);
  const times = [...new Set(ask.profileAtS === null ? ask.atS : [...ask.atS, ask.profileAtS])].sort((a, b) => a - b);
  const report = (second: number): void => {
    read(drying, second, reading);
    moments.set(second, momentOf(reading));
    if (second === ask.profileAtS) profile = profileOf(reading);
  };
  const moments = new Map<number, Moment>();
  let profile: Place[] = [];
  let due = 0;
  let condensed = false;
  for (; due < times.length && times[due]! <= 0; due++) report(times[due]!);

  const lastS = times.at(-1) ?? 0;
  const crossings = ask.targets.map((target) => {
    const met = load.startWater <= target ? 0 : null;
    return { target, meanS: met, wettestS: met };
  });
  const endS = Math.max(lastS, ask.mostS);
  while (drying.second < lastS || (drying.second < ask.mostS && crossings.some(isOpen))) {
    step(drying, endS);
    condensed ||= drying.water.some((water) => water > load.table.mostWater);
    for (; due < times.length && times[due]! <= drying.second; due++) report(times[due]!);
    for (const crossing of crossings) {
      if (crossing.meanS === null) crossing.meanS = crossed(drying, reading, crossing.target, 'mean', ask.mostS);
      if (crossing.wettestS === null)
        crossing.wettestS = crossed(drying, reading, crossing.target, 'wettest', ask.mostS);
    }
  }
  return {
    moments: ask.atS.flatMap((second) => moments.get(second) ?? []),
    crossings,
    profile,
    balance: unbalanced(drying),
    condensed,
    steps: drying.steps,
  };
}

const isOpen = (crossing: Crossing): boolean => crossing.meanS === null || crossing.wettestS === null;

// The time within the last step at which the figure comes down to the target; null when it is still above at the step's end.
function crossed(
  drying: Drying,
  reading: Reading,
  target: number,
  figure: 'mean' | 'wettest',
  mostS: number,
): number | null {
  // No cell is wetter than the wettest spot: while one is above, nothing needs to be read.
  if (figure === 'wettest' && drying.water.some((water) => water > target)) return null;
  if (read(drying, drying.second, reading)[figure] > target) return null;
  let above = drying.secondBefore;
  let below = drying.second;
  while (below - above > 1e-6 * below + 1e-3) {
    const middle = (above + below) / 2;
    if (read(drying, middle, reading)[figure] > target) above = middle;
    else below = middle;
  }
  return below <= mostS ? below : null;
}

const momentOf = (reading: Reading): Moment => ({
  second: reading.second,
  mean: reading.mean,
  wettest: reading.wettest,
  wettestM: reading.wettestM,
  centreC: reading.centreK - zeroCelsiusK,
  trayC: reading.trayK - zeroCelsiusK,
});

function profileOf({ depthM, water, temperatureK }: Reading): Place[] {
  return Array.from(depthM, (depth, i) => ({
    depthM: depth,
    waterFraction: water[i]!,
    temperatureC: temperatureK[i]! - zeroCelsiusK,
  }));
}
