// The tray or the layer of a forecast, as the model takes it: how deep, how wet, under which oven.
import { invalid, missing } from '../errors.ts';
import type { OvenLoad } from '../exposure/service.ts';
import { wettestStart, type Tray } from '../science/tray/load.ts';
import { usualExchange, type OvenKind } from '../science/tray/oven.ts';
import type { LabRecipe } from './recipes.ts';
import type { Said } from './forecast-said.ts';
import type { RoomAir } from './forecast-start.ts';
import type { DryingForecast } from './forecast-told.ts';

/** Depth of what lies loose, m: told, from grams over the tray's area, else as deep as the recipe has it. */
export function depthOf(
  { depthMm, grams, trayAreaCm2 }: Said,
  densityKgPerM3: number,
  recipe: LabRecipe | null,
): number {
  if (typeof depthMm === 'number') return depthMm / 1000;
  if (grams === null) return (recipe?.depthMm ?? 10) / 1000;
  if (!trayAreaCm2) throw missing('trayAreaCm2', 'the area of the tray, cm², from which the depth follows');
  const depthM = grams / 1000 / ((densityKgPerM3 * trayAreaCm2) / 1e4);
  if (depthM <= 0.1) return depthM;
  throw invalid('grams', grams, `at most 100 mm deep: ${Math.floor(100 * densityKgPerM3 * (trayAreaCm2 / 1e4))} g`);
}

export function trayOf(
  load: OvenLoad,
  depthM: number,
  water: number,
  air: RoomAir,
  words: DryingForecast['oven'],
): Tray {
  const { temperatureC, vacuum, fan, pressureMbar, waterMbar } = words;
  const kind: OvenKind = vacuum ? 'vacuum' : fan ? 'air with fan' : 'air';
  const pressurePa = 100 * pressureMbar;
  if (!load.sorbent) throw new Error('figures for drying went missing');
  return {
    sorbent: load.sorbent,
    depthM,
    waterFraction: Math.min(water, 0.999 * wettestStart(load.sorbent.isotherm)),
    temperatureC: Math.min(air.temperatureC, temperatureC),
    trayHeatJPerM2K: load.trayHeatJPerM2K,
    oven: {
      kind,
      temperatureC,
      pressurePa,
      vapourPa: 100 * waterMbar,
      warmUpS: 0,
      pump: null,
      exchange: usualExchange(kind, temperatureC, pressurePa),
    },
    conductivityWPerMK: null,
  };
}
