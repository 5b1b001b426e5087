// The range and the chances that follow from a median and its two kinds of doubt.
//
// Factors (capacity, diffusion, inflow, start) multiply the water: exp(ln w ± z σ/w). A wrong hygrometer, or air that is
// only assumed, adds to it: ± z s. In dry air (a desiccator) the second is as large as the water itself, where a log-normal of
// both would reach from nothing to many times saturation; so each acts in its own way and the two go together as
// √(…² + …²). For small doubts this is the one log-normal of both.
import { ninety, normalBelow } from './normal.ts';

export interface Spread {
  readonly water: number;
  /** One sigma of what multiplies, kg/kg. */
  readonly sd: number;
  /** One sigma of what adds, kg/kg. */
  readonly shift: number;
}

/** The water `z` sigmas away (z may be negative), never below nothing. */
export function waterAtSigmas({ water, sd, shift }: Spread, z: number): number {
  if (!(water > 0)) return Math.max(0, z * Math.hypot(sd, shift));
  const factor = water * Math.expm1((z * sd) / water);
  return Math.max(0, water + Math.sign(z) * Math.hypot(factor, z * shift));
}

/** The 90 % interval. */
export function intervalOf(spread: Spread): readonly [low: number, high: number] {
  return [waterAtSigmas(spread, -ninety), waterAtSigmas(spread, ninety)];
}

/** Beyond so many sigmas the chance is nothing (or certainty) in double precision. */
const farthest = 9;

/** P(water past a limit). */
export function chancePast(spread: Spread, limit: number): number {
  const { water, sd, shift } = spread;
  if (!(sd > 0) && !(shift > 0)) return water >= limit ? 1 : 0;
  if (!(shift > 0) && water > 0) return normalBelow((Math.log(water / limit) * water) / sd);
  let low = -farthest;
  let high = farthest;
  for (let halving = 0; halving < 40; halving++) {
    const z = (low + high) / 2;
    if (waterAtSigmas(spread, z) < limit) low = z;
    else high = z;
  }
  return normalBelow(-(low + high) / 2);
}
