// Water content over reference activity: a film and, for mesoporous silica, pore filling, tabulated once per set of numbers.
import type { IsothermNumbers } from './history.ts';

/** Intervals of the table, uniform in activity from 0 to 1. */
export const intervals = 1024;
/** Beyond this the model says "condensing" rather than a number. */
export const condensingActivity = 0.95;
/** Where water that no activity can hold is put. */
export const clampedActivity = 0.9;
/** Bounds of activity in the solver. */
export const leastActivity = 1e-9;
export const mostActivity = 0.995;

/**
 * w(a) = w_m C K a / ((1 - K a)(1 - K a + C K a)) + w_c [σ((a - a_c)/s) - σ(-a_c/s)], kg/kg dry.
 * The film is that of Guggenheim, Anderson and de Boer; the logistic stands for pores of one width that fill.
 */
export function waterAtActivity(n: IsothermNumbers, activity: number): number {
  const ka = n.filmK * activity;
  const film = (n.filmCapacity * n.filmC * ka) / ((1 - ka) * (1 - ka + n.filmC * ka));
  return film + (n.poreCapacity > 0 ? n.poreCapacity * (filled(n, activity) - filled(n, 0)) : 0);
}

/** dw/da of the same. */
export function waterSlope(n: IsothermNumbers, activity: number): number {
  const ka = n.filmK * activity;
  const free = 1 - ka;
  const layer = free + n.filmC * ka;
  const film =
    (n.filmCapacity * n.filmC * n.filmK * (free * layer + ka * layer - ka * free * (n.filmC - 1))) /
    (free * layer) ** 2;
  if (!(n.poreCapacity > 0)) return film;
  const share = filled(n, activity);
  return film + (n.poreCapacity * share * (1 - share)) / n.poreWidth;
}

const filled = (n: IsothermNumbers, activity: number): number =>
  1 / (1 + Math.exp((n.poreActivity - activity) / n.poreWidth));

/** Cubic Hermite pieces of w, four coefficients an interval, in the interval's own coordinate 0 to 1. */
export interface Isotherm {
  readonly numbers: IsothermNumbers;
  readonly pieces: Float64Array;
}

const made = new Map<string, Isotherm>();

/** The table of a set of numbers; the same numbers share one table. */
export function isothermOf(numbers: IsothermNumbers): Isotherm {
  const { filmCapacity, filmC, filmK, poreCapacity, poreActivity, poreWidth } = numbers;
  const name = `${filmCapacity} ${filmC} ${filmK} ${poreCapacity} ${poreActivity} ${poreWidth}`;
  const known = made.get(name);
  if (known) return known;
  const pieces = new Float64Array(4 * intervals);
  const step = 1 / intervals;
  for (let k = 0; k < intervals; k++) {
    const from = waterAtActivity(numbers, k * step);
    const rise = waterAtActivity(numbers, (k + 1) * step) - from;
    const slopeFrom = step * waterSlope(numbers, k * step);
    const slopeTo = step * waterSlope(numbers, (k + 1) * step);
    pieces.set([from, slopeFrom, 3 * rise - 2 * slopeFrom - slopeTo, slopeFrom + slopeTo - 2 * rise], 4 * k);
  }
  const isotherm = { numbers, pieces };
  if (made.size > 4096) made.clear();
  made.set(name, isotherm);
  return isotherm;
}

/** w from the table. */
export function tableWater({ pieces }: Isotherm, activity: number): number {
  const x = activity * intervals;
  const k = x < intervals ? x | 0 : intervals - 1;
  const t = x - k;
  const at = 4 * k;
  return pieces[at]! + t * (pieces[at + 1]! + t * (pieces[at + 2]! + t * pieces[at + 3]!));
}

/** dw/da from the table. */
export function tableSlope({ pieces }: Isotherm, activity: number): number {
  const x = activity * intervals;
  const k = x < intervals ? x | 0 : intervals - 1;
  const t = x - k;
  const at = 4 * k;
  return intervals * (pieces[at + 1]! + t * (2 * pieces[at + 2]! + 3 * t * pieces[at + 3]!));
}

/** The most water the solver can hold. */
export const mostWater = (isotherm: Isotherm): number => tableWater(isotherm, mostActivity);

/** Reference activity that holds this much water; within the solver's bounds. */
export function activityAtWater(isotherm: Isotherm, water: number): number {
  const { pieces } = isotherm;
  if (!(water > pieces[0]!)) return leastActivity;
  if (water >= mostWater(isotherm)) return mostActivity;
  let low = 0;
  let high = intervals;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (pieces[4 * middle]! <= water) low = middle;
    else high = middle;
  }
  let from = low / intervals;
  let to = high / intervals;
  let activity = (from + to) / 2;
  for (let n = 0; n < 60; n++) {
    const excess = tableWater(isotherm, activity) - water;
    if (excess > 0) to = activity;
    else from = activity;
    const newton = activity - excess / tableSlope(isotherm, activity);
    const next = newton > from && newton < to ? newton : (from + to) / 2;
    if (Math.abs(next - activity) <= 1e-15 * activity) break;
    activity = next;
  }
  return Math.min(mostActivity, Math.max(leastActivity, activity));
}
