// What a drying leaves behind. Water is counted from one zero, the mass after 150 °C to constant mass; sorbent dried to
// constant mass at a lower temperature still holds some, and a loss on drying made there reads low by it.
import { referenceActivity, saturationPressurePa } from './air.ts';
import type { IsothermNumbers } from './history.ts';
import { heldWater, type DryingIsotherm } from './tray/isotherm.ts';
import { dryingFigures, tailActivity, tailExponent } from './tray/properties.ts';

/** Dried at this temperature or above, water counts as gone: the zero, by agreement. */
export const zeroWaterC = 150;
/** Vapour in the air that an oven or a moisture balance draws from the room, Pa (14 mbar: 50 % RH at 23 °C). */
export const roomVapourPa = 1_400;
/** Vapour left in a vacuum oven at about 20 mbar, Pa; a placeholder of the drying model, to be measured. */
export const vacuumVapourPa = 500;

/** A sorbent's isotherm with the tail of tightly held water that only ovens see; without one where its class has none. */
export function dryingIsotherm(isotherm: IsothermNumbers, sorbentClass: string): DryingIsotherm {
  return {
    ...isotherm,
    tailCapacity: dryingFigures[sorbentClass]?.tailCapacity.value ?? 0,
    tailActivity: tailActivity.value,
    tailExponent: tailExponent.value,
  };
}

/**
 * Water that stays behind at constant mass at `temperatureC` in air of a vapour pressure, kg/kg: 0.5 % for silica at 105 °C
 * in room air, nothing from 150 °C on.
 */
export function residualWater(isotherm: DryingIsotherm, temperatureC: number, vapourPa = roomVapourPa): number {
  if (temperatureC >= zeroWaterC) return 0;
  const humidity = Math.min(0.95, vapourPa / saturationPressurePa(temperatureC));
  return heldWater(isotherm, referenceActivity(humidity, temperatureC));
}

/** Water counted from the zero, when a loss on drying said `lost` over a mass that still held `residual`. */
export const fromZero = (lost: number, residual: number): number => (1 + lost) * (1 + residual) - 1;
