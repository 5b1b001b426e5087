// The deepest tray that a recipe still dries, and what holds a tray back.
import { forecast } from './forecast.ts';
import { loadOf, type Load, type Tray } from './load.ts';
import { restingWater } from './residual.ts';

/** Depths worth asking about, m. */
export const shallowestM = 1e-3;
export const deepestAskedM = 0.1;
/** Where the search begins, m. */
const usualM = 0.015;
const closeEnough = 5e-4;
/** Beyond this many times the recipe a depth is only known to be too great. */
const horizon = 4;
const mostTrials = 40;

export type Figure = 'mean' | 'wettest';

/** Seconds until mean or wettest spot is at most the target; infinite when not within `mostS`. */
export function secondsTo(load: Load, target: number, of: Figure, mostS: number): number {
  const { crossings } = forecast(load, { atS: [], targets: [target], mostS, profileAtS: null });
  const crossing = crossings[0];
  return (of === 'mean' ? crossing?.meanS : crossing?.wettestS) ?? Infinity;
}

/**
 * The greatest depth, 1 to 100 mm, at which the target is met within a time, m, whatever depth the tray says; 100 mm when that
 * still dries, null when not even 1 mm does. Depth enters time as L^1.4 to L^2, so that ln time is nearly straight in ln L.
 */
export function deepestM(tray: Tray, target: number, of: Figure, withinS: number): number | null {
  if (tray.waterFraction <= target) return deepestAskedM;
  const { oven, sorbent } = tray;
  if (restingWater(sorbent.isotherm, oven.temperatureC, oven.vapourPa) > target) return null;
  // ln(time needed / time given)
  const excess = (lnDepth: number): number =>
    Math.log(secondsTo(loadOf({ ...tray, depthM: Math.exp(lnDepth) }), target, of, horizon * withinS) / withinS);
  let low = Math.log(shallowestM);
  let high = Math.log(deepestAskedM);
  let lnDepth = Math.log(usualM);
  let lastDepth = NaN;
  let lastExcess = NaN;
  let dries = false;
  let fails = false;
  for (let trial = 0; trial < mostTrials; trial++) {
    const now = excess(lnDepth);
    if (now > 0) {
      high = lnDepth;
      fails = true;
    } else {
      low = lnDepth;
      dries = true;
    }
    if (dries && lnDepth >= Math.log(deepestAskedM)) return deepestAskedM;
    if (fails && lnDepth <= Math.log(shallowestM)) return null;
    if (Math.abs(now) < closeEnough) break;
    const measured = (now - lastExcess) / (lnDepth - lastDepth);
    const slope = measured > 0.5 && measured < 4 ? measured : 1.5;
    let next = now < Infinity ? lnDepth - now / slope : dries ? (low + high) / 2 : lnDepth - Math.LN2;
    if (next <= low) next = dries ? (low + high) / 2 : Math.log(shallowestM);
    if (next >= high) next = fails ? (low + high) / 2 : Math.log(deepestAskedM);
    if (now < Infinity) {
      lastDepth = lnDepth;
      lastExcess = now;
    }
    if (Math.abs(next - lnDepth) < closeEnough / 4) break;
    lnDepth = next;
  }
  return Math.exp(lnDepth);
}
