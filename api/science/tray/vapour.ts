// How freely vapour moves through a bed full of air or of nothing but vapour.
//
// Dusty gas with stagnant air and equal Knudsen coefficients (Mason and Malinauskas 1983, from memory; this form derived):
// 1/D_t = (1 - y)(1/D_e + 1/D_K) + y/(D_K + B P'/μ), P' = max(P, p), y = p/P'. It joins the Stefan factor P/(P - p)
// smoothly to viscous flow where the vapour pushes the air out.
import { diffusivityM2PerS, standardPressurePa, zeroCelsiusK } from '../air.ts';

/** J/(mol K), SI 2019. */
export const gasConstant = 8.314462618;
/** kg/mol, water. */
export const molarMass = 0.018015268;
/** Pa s, steam at about 100 °C (from memory). */
const steamViscosity = 1.3e-5;
/** Of the diffusivity in `../air.ts` (Massman 1998), which is extrapolated above 100 °C. */
const massmanExponent = 1.81;
const massmanPaM2PerS = (diffusivityM2PerS(0) * standardPressurePa) / Math.pow(zeroCelsiusK, massmanExponent);
const perKelvin = molarMass / gasConstant;

/** The grains as vapour meets them. */
export interface Grains {
  readonly sizeM: number;
  /** Void between the grains, of the bed volume. */
  readonly voidFraction: number;
}

/** Width of the voids, m: d_p = (2/3) ε d / (1 - ε), the hydraulic diameter of packed spheres (from memory). */
export function voidWidthM({ sizeM, voidFraction }: Grains): number {
  return ((2 / 3) * voidFraction * sizeM) / (1 - voidFraction);
}

/** Diffusivity of vapour in the open air of an oven, m²/s. */
export const freeM2PerS = (temperatureK: number, pressurePa: number): number =>
  diffusivityM2PerS(temperatureK - zeroCelsiusK, pressurePa);

/** What of D_t does not change while drying. */
export interface VapourPath {
  readonly pressurePa: number;
  /** D_e P' / T^1.81 */
  readonly free: number;
  /** D_K / √T */
  readonly knudsen: number;
  /** B/μ, m²/(s Pa) */
  readonly viscous: number;
}

/** The path through a bed at a chamber pressure. */
export function vapourPath(grains: Grains, pressurePa: number): VapourPath {
  const { sizeM, voidFraction } = grains;
  const bruggeman = Math.pow(voidFraction, 1.5);
  // Kozeny and Carman (from memory)
  const permeability = (voidFraction ** 3 * sizeM ** 2) / (180 * (1 - voidFraction) ** 2);
  return {
    pressurePa,
    free: bruggeman * massmanPaM2PerS,
    knudsen: bruggeman * (voidWidthM(grains) / 3) * Math.sqrt((8 * gasConstant) / (Math.PI * molarMass)),
    viscous: permeability / steamViscosity,
  };
}

/** Conductance of a place for vapour, D_t M/(R T), in kg/(m s Pa), with its slopes over temperature and vapour pressure. */
export interface Conductance {
  value: number;
  perK: number;
  perPa: number;
}

/** Writes the conductance at a temperature and a vapour pressure into `into`. */
export function conduct(path: VapourPath, temperatureK: number, vapourPa: number, into: Conductance): void {
  const knudsen = path.knudsen * Math.sqrt(temperatureK);
  const full = vapourPa >= path.pressurePa;
  const total = full ? vapourPa : path.pressurePa;
  const share = full ? 1 : vapourPa / total;
  const inSteam = 1 / (knudsen + path.viscous * total);
  let hindrance = share * inSteam;
  let perK = -share * inSteam * inSteam * knudsen * 0.5;
  let perPa: number;
  if (full) perPa = -inSteam * inSteam * path.viscous;
  else {
    const inAir = total / (path.free * Math.exp(massmanExponent * Math.log(temperatureK)));
    const alone = 1 / knudsen;
    hindrance += (1 - share) * (inAir + alone);
    perK -= (1 - share) * (massmanExponent * inAir + 0.5 * alone);
    perPa = (inSteam - inAir - alone) / total;
  }
  const value = perKelvin / (temperatureK * hindrance);
  into.value = value;
  into.perK = (-value * (1 + perK / hindrance)) / temperatureK;
  into.perPa = (-value * perPa) / hindrance;
}
