// What the balance and the oven say, in the words of the estimator.
import type { Action } from '../science/history.ts';
import { waterAtActivity } from '../science/isotherm.ts';
import { fromZero, residualWater, roomVapourPa, vacuumVapourPa } from '../science/residual.ts';
import type { DryingIsotherm } from '../science/tray/isotherm.ts';
import { steelTrayJPerM2K, type DryingSorbent } from '../science/tray/load.ts';
import { usualPressurePa } from '../science/tray/oven.ts';
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

/** What goes into the oven: the sorbent as drying sees it, and the layer of plates. */
export interface OvenLoad {
  readonly sorbent: DryingSorbent | null;
  /** Of plates, m; null for what lies in a tray. */
  readonly layerM: number | null;
  readonly trayHeatJPerM2K: number;
}

/** A glass plate of 2 mm under its layer, J/(m² K), as a glass dish of the drying model (placeholder). */
const plateHeatJPerM2K = 4200;

/** Loose sorbent in a thin steel tray, or a layer of another density on its plate. */
export const ovenLoadOf = (sorbent: DryingSorbent | null, densityKgPerM3?: number, layerM?: number): OvenLoad =>
  layerM === undefined || densityKgPerM3 === undefined
    ? { sorbent, layerM: null, trayHeatJPerM2K: steelTrayJPerM2K }
    : {
        sorbent: sorbent && { ...sorbent, bulkDensityKgPerM3: densityKgPerM3 },
        layerM,
        trayHeatJPerM2K: plateHeatJPerM2K,
      };

const minuteS = 60;
const pascalPerMbar = 100;

/** A drying of which depth and oven were asked for when it was written down. */
function inOven(atS: number, said: DetailOf<'DRIED'>, isotherm: DryingIsotherm, load: OvenLoad): Action {
  const { temperatureC, minutes, vacuum, depthMm, pressureMbar, waterMbar, fan, warmUpMinutes, minutesToClosed } = said;
  const oven = vacuum ? 'vacuum' : fan ? 'air with fan' : 'air';
  const told = typeof depthMm === 'number' ? depthMm / 1000 : null;
  return {
    kind: 'in oven',
    atS,
    temperatureC: temperatureC ?? usualDryingC,
    oven,
    pressurePa: pressureMbar === undefined ? usualPressurePa[oven] : pascalPerMbar * pressureMbar,
    vapourPa: waterMbar === undefined ? null : pascalPerMbar * waterMbar,
    warmUpS: minuteS * (warmUpMinutes ?? 0),
    seconds: temperatureC === null || minutes === null ? null : minuteS * minutes,
    depthM: load.layerM ?? told,
    trayHeatJPerM2K: load.trayHeatJPerM2K,
    isotherm,
    sorbent: load.sorbent,
    openS: minuteS * (minutesToClosed ?? 0),
    times: 1,
  };
}

/**
 * A drying: as measured afterwards; else by the tray model, from the water it went in with; of one that was written down
 * before the depth was asked for, what its temperature leaves behind.
 */
export function driedBy(
  atS: number,
  said: DetailOf<'DRIED'>,
  isotherm: DryingIsotherm,
  load: OvenLoad = ovenLoadOf(null),
): Action {
  const driedAtC = said.temperatureC ?? usualDryingC;
  if (said.waterFraction !== null) {
    return { kind: 'dried', atS, waterFraction: said.waterFraction, sd: scoopSd, driedAtC };
  }
  if (said.depthMm !== undefined) return inOven(atS, said, isotherm, load);
  const vapourPa = said.vacuum ? vacuumVapourPa : roomVapourPa;
  const waterFraction = Math.max(0, residualWater(isotherm, driedAtC, vapourPa));
  return { kind: 'dried', atS, waterFraction, sd: Math.max(recipeSd, waterFraction / 2), driedAtC };
}

/** Aired until the solvent was gone: about what air of 50 % RH gives, within half of it (invented default). */
export function airedOut(atS: number, isotherm: DryingIsotherm): Action {
  const waterFraction = waterAtActivity(isotherm, 0.5);
  return { kind: 'dried', atS, waterFraction, sd: waterFraction / 2 };
}
