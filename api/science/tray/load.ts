// One tray of sorbent in one oven, as the numbers that the solver needs.
import { bedConductivity } from './conductivity.ts';
import { dryingTable, heldWater, wettestActivity, type DryingIsotherm, type DryingTable } from './isotherm.ts';
import type { Oven } from './oven.ts';
import { vapourPath, voidWidthM, type VapourPath } from './vapour.ts';

/** A sorbent as drying sees it. */
export interface DryingSorbent {
  readonly isotherm: DryingIsotherm;
  /** Dry sorbent per bed volume. */
  readonly bulkDensityKgPerM3: number;
  readonly voidFraction: number;
  readonly particleM: number;
  readonly heatCapacityJPerKgK: number;
  /** Conductivity of the bed without gas, and what gas at one atmosphere adds. */
  readonly solidWPerMK: number;
  readonly gasWPerMK: number;
  readonly heatOfSorptionJPerKg: number;
}

/** What goes into the oven. */
export interface Tray {
  readonly sorbent: DryingSorbent;
  readonly depthM: number;
  /** kg water per kg dry sorbent, level. */
  readonly waterFraction: number;
  readonly temperatureC: number;
  /** Heat capacity of the tray itself, J/(m² K); 0 for none. */
  readonly trayHeatJPerM2K: number;
  readonly oven: Oven;
  /** Measured conductivity of the bed; null to have it worked out. */
  readonly conductivityWPerMK: number | null;
}

/** Thin steel, J/(m² K); a glass dish has about 4200 (placeholder). */
export const steelTrayJPerM2K = 2000;

/** c_w of held water and c_v of vapour, J/(kg K) (from memory), and T_r, from which heat is counted, K. */
export const waterHeat = 4180;
export const vapourHeat = 1900;
export const zeroHeatK = 348.15;

/** Numbers of a load that stay while it dries. */
export interface Load {
  readonly table: DryingTable;
  readonly depthM: number;
  readonly densityKgPerM3: number;
  readonly heatCapacityJPerKgK: number;
  readonly heatOfSorptionJPerKg: number;
  readonly conductivityWPerMK: number;
  readonly path: VapourPath;
  readonly startWater: number;
  readonly startK: number;
  readonly trayHeatJPerM2K: number;
  readonly oven: Oven;
  readonly setK: number;
}

/** The wettest start that the model takes, kg/kg dry: what air of 98.5 % RH at 25 °C would give. */
export const wettestStart = (isotherm: DryingIsotherm): number => heldWater(isotherm, wettestActivity);

/** Conductivity of the bed at the set temperature and pressure, W/(m K). */
export function conductivityOf({ sorbent, oven, conductivityWPerMK }: Tray): number {
  if (conductivityWPerMK !== null) return conductivityWPerMK;
  const width = voidWidthM({ sizeM: sorbent.particleM, voidFraction: sorbent.voidFraction });
  return bedConductivity(sorbent.solidWPerMK, sorbent.gasWPerMK, width, oven.temperatureC + 273.15, oven.pressurePa);
}

/** The load of a tray. Throws when the start is wetter than the model goes. */
export function loadOf(tray: Tray): Load {
  const { sorbent, oven } = tray;
  const most = wettestStart(sorbent.isotherm);
  if (!(tray.waterFraction >= 0 && tray.waterFraction <= most)) {
    throw new RangeError(`invalid waterFraction: ${tray.waterFraction}, expected 0 to ${most.toPrecision(3)}`);
  }
  return {
    table: dryingTable(sorbent.isotherm),
    depthM: tray.depthM,
    densityKgPerM3: sorbent.bulkDensityKgPerM3,
    heatCapacityJPerKgK: sorbent.heatCapacityJPerKgK,
    heatOfSorptionJPerKg: sorbent.heatOfSorptionJPerKg,
    conductivityWPerMK: conductivityOf(tray),
    path: vapourPath({ sizeM: sorbent.particleM, voidFraction: sorbent.voidFraction }, oven.pressurePa),
    startWater: tray.waterFraction,
    startK: tray.temperatureC + 273.15,
    trayHeatJPerM2K: tray.trayHeatJPerM2K,
    oven,
    setK: oven.temperatureC + 273.15,
  };
}

/** The oven's temperature at a time, K. */
export function ovenK(load: Load, second: number): number {
  const { warmUpS } = load.oven;
  return second >= warmUpS ? load.setK : load.startK + (load.setK - load.startK) * (second / warmUpS);
}
