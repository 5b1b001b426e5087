// Water held while drying: the isotherm of the estimator and a tail of tightly held water, and its inverse.
//
// w_d(a) = w(a) + w_h (a / (a + a_h))^n. Film and pores alone leave 4 to 10 times too little above 100 °C; with the tail the
// measured 60 to 140 °C equilibria of a desiccant gel are met (J. Chem. Eng. Data, doi 10.1021/je400517c; tail derived).
import { waterAtActivity, waterSlope } from '../isotherm.ts';
import type { IsothermNumbers } from '../history.ts';

/** The isotherm's numbers and those of the tail: w_h kg/kg, a_h and n without unit. */
export interface DryingIsotherm extends IsothermNumbers {
  readonly tailCapacity: number;
  readonly tailActivity: number;
  readonly tailExponent: number;
}

/** Wettest start that the model takes; beyond it water stands between the grains. */
export const wettestActivity = 0.985;

/** w_d, kg water per kg dry sorbent, at a reference activity. */
export function heldWater(n: DryingIsotherm, activity: number): number {
  const tail =
    n.tailCapacity > 0 ? n.tailCapacity * Math.pow(activity / (activity + n.tailActivity), n.tailExponent) : 0;
  return waterAtActivity(n, activity) + tail;
}

// d w_d / d ln a
function heldSlope(n: DryingIsotherm, activity: number): number {
  const share = activity / (activity + n.tailActivity);
  const tail = n.tailCapacity > 0 ? n.tailCapacity * n.tailExponent * Math.pow(share, n.tailExponent) * (1 - share) : 0;
  return activity * waterSlope(n, activity) + tail;
}

/** Intervals of the table, uniform in ln w. */
const intervals = 2048;
/** Least water of the table; below it ln a goes on in a straight line over ln w. */
const leastWater = 1e-7;

/** ln a over ln w as cubic Hermite pieces, four coefficients an interval, in the interval's own coordinate 0 to 1. */
export interface DryingTable {
  readonly numbers: DryingIsotherm;
  readonly pieces: Float64Array;
  readonly intervals: number;
  readonly lnLeast: number;
  /** Intervals per unit of ln w. */
  readonly density: number;
  /** Most water that the table holds; a little more than saturated air gives, so that cold spots may take it up. */
  readonly mostWater: number;
}

const made = new Map<string, DryingTable>();

/** The table of a set of numbers; the same numbers share one table. */
export function dryingTable(numbers: DryingIsotherm): DryingTable {
  const name = Object.values(numbers).join(' ');
  const known = made.get(name);
  if (known) return known;
  const mostWater = heldWater(numbers, Math.min(1.1, 0.995 / numbers.filmK));
  const lnLeast = Math.log(leastWater);
  const width = (Math.log(mostWater) - lnLeast) / intervals;
  const pieces = new Float64Array(4 * intervals);
  let lnActivity = lnActivityOf(numbers, leastWater, -30);
  let slope = leastWater / heldSlope(numbers, Math.exp(lnActivity));
  for (let k = 0; k < intervals; k++) {
    const water = Math.exp(lnLeast + (k + 1) * width);
    const next = lnActivityOf(numbers, water, lnActivity + slope * width);
    const nextSlope = water / heldSlope(numbers, Math.exp(next));
    const rise = next - lnActivity;
    const [from, to] = [slope * width, nextSlope * width];
    pieces.set([lnActivity, from, 3 * rise - 2 * from - to, from + to - 2 * rise], 4 * k);
    lnActivity = next;
    slope = nextSlope;
  }
  const table = { numbers, pieces, intervals, lnLeast, density: 1 / width, mostWater };
  if (made.size > 256) made.clear();
  made.set(name, table);
  return table;
}

/** ln a of a water content, from the table. */
export function lnActivityAtWater({ pieces, intervals, lnLeast, density }: DryingTable, water: number): number {
  const x = (Math.log(water) - lnLeast) * density;
  const k = x <= 0 ? 0 : x < intervals ? x | 0 : intervals - 1;
  const at = 4 * k;
  const t = x - k;
  if (x <= 0) return pieces[at]! + t * pieces[at + 1]!;
  return pieces[at]! + t * (pieces[at + 1]! + t * (pieces[at + 2]! + t * pieces[at + 3]!));
}

// Newton on ln w over ln a, kept within a bracket.
function lnActivityOf(n: DryingIsotherm, water: number, guess: number): number {
  let low = -200;
  let high = 0.2;
  let at = guess;
  for (let pass = 0; pass < 200; pass++) {
    const activity = Math.exp(at);
    const held = heldWater(n, activity);
    if (held > water) high = at;
    else low = at;
    const newton = at - (Math.log(held / water) * held) / heldSlope(n, activity);
    const next = newton > low && newton < high ? newton : (low + high) / 2;
    if (Math.abs(next - at) < 1e-13) return next;
    at = next;
  }
  return at;
}
