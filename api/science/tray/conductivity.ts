// Heat through a bed of powder: what the grains carry and what the gas between them carries, which fades in vacuum.
import { gasConstant } from './vapour.ts';

/** kg/mol, dry air. */
const airMolarMass = 0.028965;

/**
 * Mean free path of air, m: ℓ = (η/P) √(π R T / (2 M)), η = 1.458e-6 T^1.5/(T + 110.4) Pa s (Sutherland; both from memory).
 */
export function freePathM(temperatureK: number, pressurePa: number): number {
  const viscosity = (1.458e-6 * Math.pow(temperatureK, 1.5)) / (temperatureK + 110.4);
  return (viscosity / pressurePa) * Math.sqrt((Math.PI * gasConstant * temperatureK) / (2 * airMolarMass));
}

/**
 * Conductivity of the bed, W/(m K): k_0 + k_g/(1 + 4 ℓ/d_p), the gas's part losing hold of walls a free path apart
 * (Smoluchowski, from memory). `solid` and `gas` are k_0 and k_g at one atmosphere.
 */
export function bedConductivity(
  solidWPerMK: number,
  gasWPerMK: number,
  voidWidthM: number,
  temperatureK: number,
  pressurePa: number,
): number {
  return solidWPerMK + gasWPerMK / (1 + (4 * freePathM(temperatureK, pressurePa)) / voidWidthM);
}
