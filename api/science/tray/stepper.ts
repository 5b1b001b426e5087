// A tray carried through time: TR-BDF2 with step control, water and heat kept to the last digit.
//
// Stage 1 (trapezium to γ): m y1 = m y0 + h d (F0 + F1); stage 2 (BDF2 to 1): m y2 = m y0 + h ω (F0 + F1) + h d F2,
// γ = 2 − √2, d = γ/2, ω = √2/4, y = (w, u). Both are advanced by fluxes alone, so nothing hangs on Newton's tolerance, and
// F2 is the next step's F0.
import { evaluate } from './column.ts';
import { takeFlows, type Drying } from './drying.ts';
import { factorise, follow, resolve } from './newton.ts';

/** Where in a step its middle stage stands. */
export const gamma = 2 - Math.SQRT2;
const d = gamma / 2;
const omega = Math.SQRT2 / 4;
// Second-order weights less those of the embedded third-order rule.
const error0 = omega - (1 - omega) / 3;
const error1 = omega - (3 * omega + 1) / 3;
const error2 = (2 * d) / 3;

/** Error that one step may make, as a mean over the bed, kg/kg and K; a fixed step is for measuring order. */
export interface Pace {
  readonly water: number;
  readonly temperatureK: number;
  readonly fixedStepS: number | null;
}
export const usualPace: Pace = { water: 1e-5, temperatureK: 0.025, fixedStepS: null };

const leastStepS = 1e-12;
/** Water that rounding and the error of a step may leave below nothing, kg/kg. */
const leastWater = -1e-7;
const mostPasses = 10;

/** Carries the load one step on, at most to `toS`. */
export function step(drying: Drying, toS: number, pace: Pace = usualPace): void {
  const { warmUpS } = drying.stack.load.oven;
  // The warm-up's end is a kink in the oven's temperature: a step ends there.
  const stop = drying.second < warmUpS ? Math.min(toS, warmUpS) : toS;
  const { first, last } = drying;
  drying.first = last;
  drying.last = first;
  for (;;) {
    const left = stop - drying.second;
    const wanted = pace.fixedStepS ?? drying.stepS;
    const length = wanted >= left * 0.999 ? left : wanted * 2 > left ? left / 2 : wanted;
    const error = tried(drying, length, pace);
    const factor = Math.min(4, Math.max(0.2, 0.85 / Math.cbrt(error + 1e-9)));
    if (error <= 1.5 || (pace.fixedStepS !== null && error < Infinity)) {
      take(drying, length, length === left ? stop : drying.second + length);
      drying.stepS = length < wanted * 0.999 && factor > 1 ? Math.max(wanted, length * factor) : length * factor;
      return;
    }
    drying.stepS = length * factor;
    if (pace.fixedStepS !== null || !(drying.stepS > leastStepS)) throw new Error('invalid tray: no step converges');
  }
}

// Both stages; the error of the step as a part of what is allowed, infinite when there is no solution.
function tried(drying: Drying, length: number, pace: Pace): number {
  const { stack, at, first, middle, last, known, factors } = drying;
  const { cells, mass, load } = stack;
  const beta = length * d;
  const weight = length * omega;
  const trayHeat = load.trayHeatJPerM2K;
  for (let i = 0; i < cells; i++) {
    at.water[i] = drying.water[i]!;
    at.heat[i] = drying.heat[i]!;
    known.water[i] = mass[i]! * drying.water[i]! + beta * first.water[i]!;
    known.heat[i] = mass[i]! * drying.heat[i]! + beta * first.heat[i]!;
  }
  at.trayK = drying.trayK;
  known.tray = trayHeat * drying.trayK + beta * first.tray;
  if (!settled(drying, drying.second + gamma * length, beta, pace)) return Infinity;
  takeFlows(stack, at, middle);
  drying.waterMiddle.set(at.water);
  drying.heatMiddle.set(at.heat);
  drying.trayKMiddle = at.trayK;

  for (let i = 0; i < cells; i++) {
    const water = drying.water[i]!;
    const heat = drying.heat[i]!;
    at.water[i] = water + (at.water[i]! - water) / gamma;
    at.heat[i] = heat + (at.heat[i]! - heat) / gamma;
    known.water[i] = mass[i]! * water + weight * (first.water[i]! + middle.water[i]!);
    known.heat[i] = mass[i]! * heat + weight * (first.heat[i]! + middle.heat[i]!);
  }
  at.trayK = drying.trayK + (at.trayK - drying.trayK) / gamma;
  known.tray = trayHeat * drying.trayK + weight * (first.tray + middle.tray);
  if (!settled(drying, drying.second + length, beta, pace)) return Infinity;
  takeFlows(stack, at, last);

  const { waterChange, heatChange } = factors;
  for (let i = 0; i < cells; i++) {
    waterChange[i] = length * (error0 * first.water[i]! + error1 * middle.water[i]! + error2 * last.water[i]!);
    heatChange[i] = length * (error0 * first.heat[i]! + error1 * middle.heat[i]! + error2 * last.heat[i]!);
  }
  factors.trayChange = length * (error0 * first.tray + error1 * middle.tray + error2 * last.tray);
  resolve(stack, at, factors);
  let water = 0;
  let warmth = 0;
  for (let i = 0; i < cells; i++) {
    const w = waterChange[i]!;
    if (at.water[i]! < leastWater) return Infinity;
    water += mass[i]! * Math.abs(w);
    warmth += mass[i]! * Math.abs(at.kPerWater[i]! * w + at.kPerHeat[i]! * heatChange[i]!);
  }
  const whole = load.densityKgPerM3 * load.depthM;
  const error = Math.max(water / pace.water, warmth / pace.temperatureK) / whole;
  return error < Infinity ? error : Infinity;
}

// Newton until m y = known + β F(y) holds; leaves the column's flows at the solution of the last linear system.
function settled(drying: Drying, second: number, beta: number, pace: Pace): boolean {
  const { stack, at, factors, known } = drying;
  const { cells, mass, load } = stack;
  const { waterChange, heatChange } = factors;
  const { vapour, energy, water, heat } = at;
  const trayHeat = load.trayHeatJPerM2K;
  for (let pass = 0; pass < mostPasses; pass++) {
    evaluate(stack, at, second);
    for (let i = 0; i < cells; i++) {
      const below = i + 1 < cells ? vapour[i + 1]! : 0;
      waterChange[i] = known.water[i]! - mass[i]! * water[i]! + beta * (below - vapour[i]!);
      heatChange[i] = known.heat[i]! - mass[i]! * heat[i]! + beta * (energy[i + 1]! - energy[i]!);
    }
    factors.trayChange = beta * (at.trayGain - energy[cells]!);
    if (trayHeat > 0) factors.trayChange += known.tray - trayHeat * at.trayK;
    factorise(stack, at, beta, factors);
    resolve(stack, at, factors);
    follow(stack, at, factors);
    // What a pass leaves is about the square of what it changed, over the scale on which vapour bends.
    let left = 0;
    for (let i = 0; i < cells; i++) {
      const w = waterChange[i]!;
      const t = at.kPerWater[i]! * w + at.kPerHeat[i]! * heatChange[i]!;
      water[i] = water[i]! + w;
      heat[i] = heat[i]! + heatChange[i]!;
      const size = (w * w) / ((Math.abs(water[i]!) + 0.003) * pace.water) + (t * t) / (40 * pace.temperatureK);
      if (!(size <= left)) left = size;
    }
    at.trayK += factors.trayChange;
    if (left < 0.3) return true;
    if (!(left < Infinity)) return false;
  }
  return false;
}

// The step just tried becomes the state.
function take(drying: Drying, length: number, second: number): void {
  const { stack, at, first, middle, last } = drying;
  const { cells, mass, load } = stack;
  const outer = length * omega;
  const inner = length * d;
  drying.waterBefore.set(drying.water);
  drying.heatBefore.set(drying.heat);
  drying.trayKBefore = drying.trayK;
  drying.secondBefore = drying.second;
  for (let i = 0; i < cells; i++) {
    const water = outer * (first.water[i]! + middle.water[i]!) + inner * last.water[i]!;
    const heat = outer * (first.heat[i]! + middle.heat[i]!) + inner * last.heat[i]!;
    drying.water[i] = drying.water[i]! + water / mass[i]!;
    drying.heat[i] = drying.heat[i]! + heat / mass[i]!;
  }
  if (load.trayHeatJPerM2K > 0) {
    drying.trayK += (outer * (first.tray + middle.tray) + inner * last.tray) / load.trayHeatJPerM2K;
  } else drying.trayK = at.trayK;
  drying.waterOut += outer * (first.out + middle.out) + inner * last.out;
  drying.heatIn += outer * (first.in + middle.in) + inner * last.in;
  drying.second = second;
  drying.steps++;
}
