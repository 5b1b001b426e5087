// The open top: heat from the chamber into the bed's surface, vapour from the surface through still air to the chamber.
//
// −k ∂T/∂x = h_T (T_o − T_s) + ε_T σ (T_o⁴ − T_s⁴);  J = (p_s − p_0)/(r_f + r_p),
// r_f = (R T_o/M) δ (1 − ȳ)/D(T_o, P), ȳ = min((p_s + p_0)/2P, 0.95), r_p = (R T_o/M) A/S, T_o in both the set temperature.
import type { Load } from './load.ts';
import { conduct, freeM2PerS, gasConstant, molarMass, type Conductance } from './vapour.ts';

/** Stefan and Boltzmann, W/(m² K⁴), CODATA 2018. */
export const stefanBoltzmann = 5.670374419e-8;
const mostShare = 0.95;

/** The chamber above, as numbers that stay. */
export interface Above {
  readonly heat: number;
  readonly radiation: number;
  readonly pressurePa: number;
  readonly vapourPa: number;
  /** r_f/(1 − ȳ) and r_p, Pa s m²/kg. */
  readonly film: number;
  readonly pump: number;
}

export function aboveOf({ oven, setK }: Load): Above {
  const { exchange, pump } = oven;
  const perDensity = (gasConstant * setK) / molarMass;
  return {
    heat: exchange.topWPerM2K,
    radiation: exchange.emissivityTop * stefanBoltzmann,
    pressurePa: oven.pressurePa,
    vapourPa: oven.vapourPa,
    film: (perDensity * exchange.filmM) / freeM2PerS(setK, oven.pressurePa),
    pump: pump === null ? 0 : (perDensity * pump.trayAreaM2) / pump.speedM3PerS,
  };
}

/** The surface as it is between chamber and first cell; `surfaceK` and `surfacePa` serve as the next guess. */
export interface Surface {
  surfaceK: number;
  surfacePa: number;
  /** Vapour out, kg/(m² s), and heat in, W/m². */
  vapour: number;
  heat: number;
  /** Slopes over the first cell's vapour pressure and temperature. */
  vapourPerPa: number;
  vapourPerK: number;
  heatPerK: number;
  surfacePerK: number;
}

export const surface = (): Surface => ({
  surfaceK: NaN,
  surfacePa: NaN,
  vapour: NaN,
  heat: NaN,
  vapourPerPa: NaN,
  vapourPerK: NaN,
  heatPerK: NaN,
  surfacePerK: NaN,
});

const place: Conductance = { value: NaN, perK: NaN, perPa: NaN };

/** Balances the surface over a first cell of so many kelvin and pascal whose middle lies `halfM` below. */
export function balance(
  at: Surface,
  above: Above,
  load: Load,
  chamberK: number,
  cellK: number,
  cellPa: number,
  halfM: number,
): void {
  const link = load.conductivityWPerMK / halfM;
  let t = at.surfaceK;
  if (!(t > 0)) t = cellK;
  const chamber4 = chamberK ** 4;
  for (let pass = 0; pass < 20; pass++) {
    const gain = above.heat * (chamberK - t) + above.radiation * (chamber4 - t * t * t * t);
    const move = (gain - link * (t - cellK)) / (above.heat + 4 * above.radiation * t * t * t + link);
    t += move;
    if (move < 1e-7 && move > -1e-7) break;
  }
  at.surfaceK = t;
  at.surfacePerK = link / (above.heat + 4 * above.radiation * t * t * t + link);
  at.heat = link * (t - cellK);
  at.heatPerK = link * (at.surfacePerK - 1);

  const middleK = (t + cellK) / 2;
  const bothPa = 2 * above.pressurePa;
  let low = Math.min(above.vapourPa, cellPa);
  let high = Math.max(above.vapourPa, cellPa);
  let p = at.surfacePa >= low && at.surfacePa <= high ? at.surfacePa : cellPa;
  let out = 0;
  let outPerPa = 0;
  let slope = 1;
  for (let pass = 0; pass < 60; pass++) {
    const share = (p + above.vapourPa) / bothPa;
    const capped = share >= mostShare;
    const resistance = above.film * (1 - (capped ? mostShare : share)) + above.pump;
    out = (p - above.vapourPa) / resistance;
    outPerPa = (1 + (capped ? 0 : (out * above.film) / bothPa)) / resistance;
    conduct(load.path, middleK, (p + cellPa) / 2, place);
    const excess = out - (place.value * (cellPa - p)) / halfM;
    slope = outPerPa + (place.value - 0.5 * place.perPa * (cellPa - p)) / halfM;
    if (excess > 0) high = p;
    else low = p;
    const newton = p - excess / slope;
    const next = newton >= low && newton <= high ? newton : (low + high) / 2;
    const move = next - p;
    p = next;
    if (move < 1e-9 * p && move > -1e-9 * p) break;
  }
  at.surfacePa = p;
  at.vapour = out;
  const inner = (place.value + 0.5 * place.perPa * (cellPa - p)) / halfM;
  const warmer = (place.perK * 0.5 * (1 + at.surfacePerK) * (cellPa - p)) / halfM;
  at.vapourPerPa = (outPerPa * inner) / slope;
  at.vapourPerK = (outPerPa * warmer) / slope;
}
