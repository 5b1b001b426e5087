// The same equations solved another way, to compare with: many uniform layers that thicken downwards, backward Euler with
// Richardson's extrapolation, the isotherm itself instead of its table. Slow and plain on purpose.
import { diffusivityM2PerS, referenceK, saturatedKgPerM3, zeroCelsiusK } from '../../../api/science/air.ts';
import type { SorbentNumbers } from '../../../api/science/history.ts';
import { activityAtWater, isothermOf, waterAtActivity, waterSlope } from '../../../api/science/isotherm.ts';

export interface Plain {
  readonly sorbent: SorbentNumbers;
  readonly depthM: number;
  /** s/m, as a function of the diffusivity. */
  readonly resistance: (diffusivity: number) => number;
  readonly start: number;
  readonly air: (s: number) => { temperatureC: number; humidity: number };
}

export interface Profile {
  readonly depths: Float64Array;
  readonly water: Float64Array;
}

const layers = 300;

function layersOf(depthM: number): Float64Array {
  // Thickness grows by 1.5 % a layer.
  const out = Float64Array.from({ length: layers }, (_, i) => 1.015 ** i);
  const sum = out.reduce((total, one) => total + one, 0);
  return out.map((one) => (one * depthM) / sum);
}

function march(plain: Plain, untilS: number, steps: number): Profile {
  const { sorbent, start, air } = plain;
  const depths = layersOf(plain.depthM);
  const numbers = sorbent.isotherm;
  const water = new Float64Array(layers).fill(start);
  const activity = new Float64Array(layers).fill(activityAtWater(isothermOf(numbers), start));
  const h = untilS / steps;
  const lower = new Float64Array(layers);
  const diagonal = new Float64Array(layers);
  const upper = new Float64Array(layers);
  const right = new Float64Array(layers);
  for (let n = 1; n <= steps; n++) {
    // Air at the step's end would lag: its middle is what the step sees.
    const { temperatureC, humidity } = air((n - 0.5) * h);
    const saturated = saturatedKgPerM3(temperatureC);
    const power = referenceK / (temperatureC + zeroCelsiusK);
    const free = diffusivityM2PerS(temperatureC);
    const bed = free * sorbent.voidFraction ** 1.5;
    const top = 1 / (plain.resistance(free) + depths[0]! / 2 / bed);
    const flow = new Float64Array(layers + 1);
    for (let pass = 0; pass < 40; pass++) {
      const vapour = activity.map((a) => saturated * a ** power);
      const rise = activity.map((a) => saturated * power * a ** (power - 1));
      flow[0] = top * (humidity * saturated - vapour[0]!);
      for (let i = 1; i < layers; i++)
        flow[i] = (2 * bed * (vapour[i - 1]! - vapour[i]!)) / (depths[i - 1]! + depths[i]!);
      for (let i = 0; i < layers; i++) {
        const mass = sorbent.bulkDensityKgPerM3 * depths[i]!;
        const above = i === 0 ? top : (2 * bed) / (depths[i - 1]! + depths[i]!);
        const below = i === layers - 1 ? 0 : (2 * bed) / (depths[i]! + depths[i + 1]!);
        diagonal[i] = mass * waterSlope(numbers, activity[i]!) + h * (above + below) * rise[i]!;
        lower[i] = i === 0 ? 0 : -h * above * rise[i - 1]!;
        upper[i] = i === layers - 1 ? 0 : -h * below * rise[i + 1]!;
        right[i] =
          mass * (water[i]! - waterAtActivity(numbers, activity[i]!)) +
          h * (flow[i]! - (i === layers - 1 ? 0 : flow[i + 1]!));
      }
      for (let i = 1; i < layers; i++) {
        const factor = lower[i]! / diagonal[i - 1]!;
        diagonal[i] = diagonal[i]! - factor * upper[i - 1]!;
        right[i] = right[i]! - factor * right[i - 1]!;
      }
      let largest = 0;
      for (let i = layers - 1; i >= 0; i--) {
        right[i] = (right[i]! - (i === layers - 1 ? 0 : upper[i]! * right[i + 1]!)) / diagonal[i]!;
        activity[i] = Math.min(0.995, Math.max(1e-12, activity[i]! + right[i]!));
        largest = Math.max(largest, Math.abs(right[i]!));
      }
      if (largest < 1e-9) break;
    }
    for (let i = 0; i < layers; i++) water[i] = waterAtActivity(numbers, activity[i]!);
  }
  return { depths, water };
}

/** Water after `untilS`, by steps and by half steps, extrapolated. */
export function plainWater(plain: Plain, untilS: number, steps: number): Profile {
  const coarse = march(plain, untilS, steps);
  const fine = march(plain, untilS, 2 * steps);
  return { depths: fine.depths, water: fine.water.map((w, i) => 2 * w - coarse.water[i]!) };
}

/** Mean over the top so many metres. */
export function meanOf({ depths, water }: Profile, depthM = Infinity): number {
  let left = depthM;
  let sum = 0;
  let whole = 0;
  for (let i = 0; i < depths.length && left > 0; i++) {
    const part = Math.min(left, depths[i]!);
    sum += part * water[i]!;
    whole += part;
    left -= part;
  }
  return sum / whole;
}
