// A bed carried through a stretch of one day's air: TR-BDF2 with step control, water kept to the last digit.
//
// Stage 1 (trapezium to γ): m w1 = m w0 + h d (F0 + F1); stage 2 (BDF2 to 1): m w2 = m w0 + h ω (F0 + F1) + h d F2,
// γ = 2 - √2, d = γ/2, ω = √2/4. Water is advanced by the fluxes alone; activity is Newton's variable and predictor.
import { diffusivityM2PerS, referenceK, zeroCelsiusK } from './air.ts';
import { blocksPerDay, blockSeconds } from './climate.ts';
import type { Bed } from './bed.ts';
import { tableSlope } from './isotherm.ts';
import { cells, evaluate, flow, resolve, settle, stage } from './stage.ts';
import { carryResponses, type Sources } from './responses.ts';
import { bedCells } from './grid.ts';
import { openShare, resistanceSPerM, type Inflow } from './inflow.ts';

const gamma = 2 - Math.SQRT2;
const d = gamma / 2;
const omega = Math.SQRT2 / 4;
// Second-order weights less those of the embedded third-order rule.
const error0 = omega - (1 - omega) / 3;
const error1 = omega - (3 * omega + 1) / 3;
const error2 = (2 * d) / 3;

/** The longest first step after an event, s. */
export const firstStepS = 300;
/** The top that weighs in the norm, m. */
const topM = 0.01;
const daySeconds = 86_400;

/** Far above what any day takes; an endless loop would be worse than an error. */
const mostTries = 1_000_000;

/** How carefully: `scale` times the tolerance; `fading` forgets what the end will not remember; a fixed step is for measuring order. */
export interface Pace {
  readonly scale: number;
  readonly fading: boolean;
  readonly fixedStepS: number | null;
}
export const usualPace: Pace = { scale: 1, fading: true, fixedStepS: null };

const start = stage();
const middle = stage();
const end = stage();
const known = new Float64Array(bedCells);
const wrong = new Float64Array(bedCells);
const sources: Sources = { openShare: NaN, bedShare: NaN, biasWeight: NaN, step: NaN };
// c, c_s, T, filled: integrals at the step's start, half and end.
const at = new Float64Array(12);

function integrals(day: Float64Array, second: number, into: number): void {
  let knot = (second / blockSeconds) | 0;
  if (knot >= blocksPerDay) knot = blocksPerDay - 1;
  const share = second / blockSeconds - knot;
  const k = 4 * knot;
  for (let q = 0; q < 4; q++) at[into + q] = day[k + q]! + share * (day[k + q + 4]! - day[k + q]!);
}

/**
 * Carries the bed from one second of a day to another (both within it) through that day's running integrals; `watch` is
 * told after each step. `responses` says whether the sensitivities go along. Changes the bed in place.
 */
export function carry(
  bed: Bed,
  day: Float64Array,
  fromS: number,
  toS: number,
  inflow: Inflow,
  pace: Pace,
  responses: boolean,
  watch: ((second: number) => boolean) | null,
): void {
  const { grid, isotherm, water } = bed;
  const count = grid.cells;
  const density = bed.densityKgPerM3;
  cells.count = count;
  cells.pieces = isotherm.pieces;
  cells.totalMass = density * grid.depthM;
  let topCount = 0;
  let topDepth = 0;
  for (let i = 0; i < count; i++) {
    const thickness = grid.thicknessM[i]!;
    cells.mass[i] = density * thickness;
    cells.link[i] = i < count - 1 ? 2 / (thickness + grid.thicknessM[i + 1]!) : 0;
    start.activity[i] = bed.activity[i]!;
    start.logActivity[i] = Math.log(bed.activity[i]!);
    if (topDepth < topM) {
      topDepth += thickness;
      topCount++;
    }
  }
  const topMass = 3 * density * topDepth;
  const halfFirst = grid.thicknessM[0]! / 2;

  let second = fromS;
  let wanted = pace.fixedStepS ?? bed.stepS;
  integrals(day, second, 0);
  let tries = 0;
  while (second < toS) {
    if (++tries > mostTries)
      throw new Error('invalid bed: it does not get through the day, expected finite water and air');
    const left = toS - second;
    let step = wanted;
    if (step >= left * 0.999) step = left;
    else if (step * 2 > left && pace.fixedStepS === null) step = left / 2;

    // The air of this step: a line through the means of its halves.
    integrals(day, second + step / 2, 4);
    integrals(day, second + step, 8);
    const perHalf = 2 / step;
    const vapour1 = (at[4]! - at[0]!) * perHalf;
    const vapour2 = (at[8]! - at[4]!) * perHalf;
    const saturated1 = (at[5]! - at[1]!) * perHalf;
    const saturated2 = (at[9]! - at[5]!) * perHalf;
    const temperatureC = (at[10]! - at[2]!) / step;
    const filled = (at[11]! - at[3]!) / step;
    const vapour = (vapour1 + vapour2) / 2;
    const vapourRise = vapour2 - vapour1;
    const saturated = (saturated1 + saturated2) / 2;
    const saturatedRise = saturated2 - saturated1;
    start.saturated = saturated - saturatedRise;
    middle.saturated = saturated + (2 * gamma - 1) * saturatedRise;
    end.saturated = saturated + saturatedRise;
    start.roomVapour = room(vapour - vapourRise, start.saturated);
    middle.roomVapour = room(vapour + (2 * gamma - 1) * vapourRise, middle.saturated);
    end.roomVapour = room(vapour + vapourRise, end.saturated);

    cells.theta = referenceK / (temperatureC + zeroCelsiusK) - 1;
    const freeDiffusivity = diffusivityM2PerS(temperatureC, bed.pressurePa);
    cells.diffusivity = freeDiffusivity * bed.tortuosity;
    const resistance = resistanceSPerM(inflow, freeDiffusivity);
    const half = halfFirst / cells.diffusivity;
    cells.topLink = 1 / (resistance + half);

    evaluate(start);
    flow(start);
    let mean = 0;
    let steepest = tableSlope(isotherm, Math.min(0.99, vapour / saturated));
    for (let i = 0; i < count; i++) {
      mean += cells.mass[i]! * water[i]!;
      if (start.slope[i]! > steepest) steepest = start.slope[i]!;
    }
    mean /= cells.totalMass;
    let tolerance = Math.min(1e-4, Math.max(1e-5, 1e-3 * mean)) * pace.scale;
    if (pace.fading && resistance < Infinity) {
      const tau =
        (1.5 * cells.totalMass * steepest * (resistance + grid.depthM / (2.5 * cells.diffusivity))) / saturated;
      bed.memoryS = tau;
      if (tau < daySeconds) {
        const longest = Math.max(firstStepS, 0.4 * left);
        // More than the thousandth by which a last step may be stretched, or the two would never agree.
        if (step > longest * 1.002) {
          wanted = longest;
          continue;
        }
      }
      tolerance *= Math.min(50, Math.exp((left - step) / tau));
    }

    // Stage 1, from the start's own state; only c_s differs at its first pass.
    const weight = step * d;
    const warmer = middle.saturated / start.saturated;
    for (let i = 0; i < count; i++) {
      middle.activity[i] = start.activity[i]!;
      middle.logActivity[i] = start.logActivity[i]!;
      middle.water[i] = start.water[i]!;
      middle.slope[i] = start.slope[i]!;
      middle.vapour[i] = start.vapour[i]! * warmer;
      middle.rise[i] = start.rise[i]! * warmer;
      known[i] = cells.mass[i]! * water[i]! + weight * start.flux[i]!;
    }
    middle.weight = weight;
    end.weight = weight;
    let converged = settle(middle, known, tolerance, true);
    if (converged) {
      for (let i = 0; i < count; i++) {
        const guess = start.activity[i]! + (middle.activity[i]! - start.activity[i]!) / gamma;
        const a = guess > 1e-9 && guess < 0.995 ? guess : middle.activity[i]!;
        const x = a / middle.activity[i]! - 1;
        end.activity[i] = a;
        end.logActivity[i] =
          x < 0.05 && x > -0.05 ? middle.logActivity[i]! + x * (1 - x * (1 / 2 - x * (1 / 3))) : Math.log(a);
        known[i] = cells.mass[i]! * water[i]! + step * omega * (start.flux[i]! + middle.flux[i]!);
      }
      converged = settle(end, known, tolerance, false);
    }
    if (!converged) {
      if (step < 1e-3) throw new Error('invalid bed: no step converges, expected finite water and air');
      wanted = step / 4;
      continue;
    }

    for (let i = 0; i < count; i++) {
      wrong[i] = step * (error0 * start.flux[i]! + error1 * middle.flux[i]! + error2 * end.flux[i]!);
    }
    resolve(end, wrong, 0);
    let whole = 0;
    let top = 0;
    for (let i = 0; i < count; i++) {
      const size = cells.mass[i]! * end.slope[i]! * Math.abs(wrong[i]!);
      whole += size;
      if (i < topCount) top += size;
    }
    const error = Math.max(whole / cells.totalMass, top / topMass);
    const factor = Math.min(3, Math.max(0.3, 0.85 * Math.cbrt(tolerance / (error + 1e-300))));
    if (!(error < Infinity)) throw new Error('invalid bed: its error is no number, expected finite water and air');
    if (pace.fixedStepS === null && error > 1.5 * tolerance && step > 1e-2) {
      wanted = step * factor;
      continue;
    }

    if (responses) {
      sources.openShare = openShare(inflow, freeDiffusivity);
      sources.bedShare = half * cells.topLink;
      sources.biasWeight = 1 + (bed.filledWidening - 1) * filled;
      sources.step = step;
      carryResponses(bed, start, middle, end, sources);
    }
    for (let i = 0; i < count; i++) {
      const gained = step * (omega * (start.flux[i]! + middle.flux[i]!) + d * end.flux[i]!);
      water[i] = water[i]! + gained / cells.mass[i]!;
      start.activity[i] = end.activity[i]!;
      start.logActivity[i] = end.logActivity[i]!;
    }
    bed.inflowKgPerM2 += step * (omega * (start.inflow + middle.inflow) + d * end.inflow);
    bed.steps++;
    second = step === left ? toS : second + step;
    for (let q = 0; q < 4; q++) at[q] = at[8 + q]!;
    if (pace.fixedStepS === null)
      wanted = step < wanted * 0.999 && factor > 1 ? Math.max(wanted, step * factor) : step * factor;
    if (watch !== null) {
      bed.activity.set(start.activity);
      if (watch(second)) break;
    }
  }
  for (let i = 0; i < count; i++) bed.activity[i] = start.activity[i]!;
  if (pace.fixedStepS === null) bed.stepS = wanted;
}

// A line through two means may dip below nothing or, in wet air, above what air holds.
function room(vapour: number, saturated: number): number {
  return vapour < 0 ? 0 : vapour > 0.99 * saturated ? 0.99 * saturated : vapour;
}
