// What the balance and the oven say, in the words of the estimator.
import type { Action } from '../science/history.ts';
import { waterAtActivity } from '../science/isotherm.ts';
import { fromZero, residualWater, roomVapourPa, vacuumVapourPa } from '../science/residual.ts';
import type { DryingIsotherm } from '../science/tray/isotherm.ts';
import type { DetailOf } from '../stock/service.ts';

/** One sigma of a loss on drying of a scoop, kg/kg (exposure model, section 5). */
const scoopSd = 0.0015;
/** One sigma of a weighing of the whole, g (same). */
const wholeSdGrams = 0.05;
/** A recipe's residue is known within a factor of two, and never better than this, kg/kg (invented default). */
const recipeSd = 0.002;
/** Common practice for a drying whose temperature nobody wrote down, °C. */
const usualDryingC = 130;

/**
 * A weighing. A loss on drying is corrected by what its temperature leaves behind; Karl Fischer titration counts all water
 * and is taken as it is. `dryGrams` is what the container held then.
 */
export function observedBy(atS: number, said: DetailOf<'WEIGHED'>, isotherm: DryingIsotherm, dryGrams: number): Action {
  const { method, temperatureC } = said;
  const corrects = method === 'LOSS_ON_DRYING' && temperatureC !== null;
  const residual = corrects ? residualWater(isotherm, temperatureC) : 0;
  const waterFraction = Math.max(0, fromZero(said.waterFraction, residual));
  if (said.of === 'SCOOP' || !(dryGrams > 0)) return { kind: 'observed', atS, of: 'scoop', waterFraction, sd: scoopSd };
  return { kind: 'observed', atS, of: 'whole', waterFraction, sd: wholeSdGrams / dryGrams };
}

/** A drying: as measured afterwards, else what its temperature leaves behind. */
export function driedBy(atS: number, said: DetailOf<'DRIED'>, isotherm: DryingIsotherm): Action {
  if (said.waterFraction !== null) return { kind: 'dried', atS, waterFraction: said.waterFraction, sd: scoopSd };
  const vapourPa = said.vacuum ? vacuumVapourPa : roomVapourPa;
  const waterFraction = Math.max(0, residualWater(isotherm, said.temperatureC ?? usualDryingC, vapourPa));
  return { kind: 'dried', atS, waterFraction, sd: Math.max(recipeSd, waterFraction / 2) };
}

/** Aired until the solvent was gone: about what air of 50 % RH gives, within half of it (invented default). */
export function airedOut(atS: number, isotherm: DryingIsotherm): Action {
  const waterFraction = waterAtActivity(isotherm, 0.5);
  return { kind: 'dried', atS, waterFraction, sd: waterFraction / 2 };
}
