// What an oven can never take out: water in equilibrium with the oven's air.
import { referenceActivity, saturationPressurePa } from '../air.ts';
import { heldWater, type DryingIsotherm } from './isotherm.ts';
import { dryingSorbent } from './properties.ts';

/** w_d((p/p_s(T))^(T/T0)), kg/kg dry, in air of a vapour pressure; saturated air where p is above p_s. */
export function restingWater(isotherm: DryingIsotherm, temperatureC: number, vapourPa: number): number {
  const humidity = Math.min(1, vapourPa / saturationPressurePa(temperatureC));
  return heldWater(isotherm, referenceActivity(humidity, temperatureC));
}

/**
 * Water that a class still keeps after any time at an oven's temperature in air of that vapour pressure (the room's, for an
 * oven that draws from it), kg/kg dry; null for a class whose water is not known. 0.5 % for silica at 105 °C and 1400 Pa.
 */
export function residualWaterFraction(
  sorbentClass: string,
  temperatureC: number,
  vapourPressurePa: number,
): number | null {
  const sorbent = dryingSorbent(sorbentClass);
  return sorbent && restingWater(sorbent.isotherm, temperatureC, vapourPressurePa);
}
