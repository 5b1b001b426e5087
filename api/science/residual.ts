// What a drying leaves behind. Water is counted from one zero, the mass after 150 °C to constant mass in room air; a loss on
// drying made at another temperature stops short of it (or goes beyond), by what the sorbent still holds there.
import { referenceActivity, saturationPressurePa } from './air.ts';
import type { IsothermNumbers } from './history.ts';
import { waterAtActivity } from './isotherm.ts';

/** Water counts as gone at this temperature. */
export const zeroWaterC = 150;
/** Vapour in the air that an oven or a moisture balance draws from the room, Pa (14 mbar: 50 % RH at 23 °C). */
export const roomVapourPa = 1_400;
/** Vapour left in a vacuum oven at about 20 mbar, Pa; a placeholder of the drying model, to be measured. */
export const vacuumVapourPa = 500;

/**
 * Strongly held water at full coverage, kg/kg, that film and pores leave out; only ovens see it. Silica is derived from
 * equilibria of a measured gel at 60 to 140 °C, met within 5 to 22 %; the others are placeholders in proportion to the film.
 */
const tails: Readonly<Record<string, number>> = {
  silica: 0.0105,
  alumina: 0.0105,
  c18: 0.00105,
  'magnesium silicate': 0.0063,
  cellulose: 0,
};

/** The strongly held water of a class; 0 where nothing is known of it. */
export const tailOf = (sorbentClass: string): number => tails[sorbentClass] ?? 0;

/** w_d(a) = w(a) + w_h (a / (a + 0.05))^0.4, kg/kg: the isotherm for drying. */
export function dryingWater(isotherm: IsothermNumbers, tail: number, activity: number): number {
  return waterAtActivity(isotherm, activity) + tail * Math.pow(activity / (activity + 0.05), 0.4);
}

/** Water in equilibrium with air of this vapour pressure at an oven's temperature. */
function heldWater(isotherm: IsothermNumbers, tail: number, temperatureC: number, vapourPa: number): number {
  const humidity = Math.min(0.95, vapourPa / saturationPressurePa(temperatureC));
  return dryingWater(isotherm, tail, referenceActivity(humidity, temperatureC));
}

/**
 * Water that stays behind at constant mass at `temperatureC`, counted from the zero; negative above 150 °C or in vacuum.
 * Silica at 105 °C in room air: about 0.35 %.
 */
export function residualWater(
  isotherm: IsothermNumbers,
  tail: number,
  temperatureC: number,
  vapourPa = roomVapourPa,
): number {
  return heldWater(isotherm, tail, temperatureC, vapourPa) - heldWater(isotherm, tail, zeroWaterC, roomVapourPa);
}

/** Water counted from the zero, when a loss on drying said `lost` over the mass that still held `residual`. */
export const fromZero = (lost: number, residual: number): number => (1 + lost) * (1 + residual) - 1;
