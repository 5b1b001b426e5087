// A tray in the bench's units becomes a tray in the model's; what only the numbers together show to be wrong is refused here.
import { BadInput } from '../../bad-input.ts';
import type { DryingIsotherm } from '../../science/tray/isotherm.ts';
import { steelTrayJPerM2K, wettestStart, type DryingSorbent, type Tray } from '../../science/tray/load.ts';
import {
  usualExchange,
  usualGapM,
  usualPressurePa,
  usualVapourPa,
  type Oven,
  type OvenKind,
} from '../../science/tray/oven.ts';
import { dryingSorbent } from '../../science/tray/properties.ts';
import { recipeFor } from '../../science/tray/recipes.ts';
import type { TrayInput } from './input.ts';

export function trayOf(input: TrayInput): Tray {
  const { start, properties } = input;
  const sorbent = sorbentOf(input);
  const most = wettestStart(sorbent.isotherm);
  if (start.waterFraction > most) {
    throw new BadInput(
      `invalid start.waterFraction: ${start.waterFraction}, expected at most ${most.toPrecision(3)}, beyond which water stands between the grains`,
    );
  }
  return {
    sorbent,
    depthM: input.depthMm / 1000,
    waterFraction: start.waterFraction,
    temperatureC: start.temperatureC,
    trayHeatJPerM2K: input.trayHeatJPerM2K ?? steelTrayJPerM2K,
    oven: ovenOf(input),
    conductivityWPerMK: properties?.conductivityWPerMK ?? null,
  };
}

function sorbentOf({ sorbent, properties = {} }: TrayInput): DryingSorbent {
  const usual = dryingSorbent(sorbent);
  if (!usual) throw new BadInput(`unknown sorbent: ${sorbent}, expected a class whose water is known`);
  const { particleUm, heatOfSorptionKJPerKg } = properties;
  return {
    isotherm: isothermOf(usual.isotherm, properties.isotherm ?? {}),
    bulkDensityKgPerM3: properties.bulkDensityKgPerM3 ?? usual.bulkDensityKgPerM3,
    voidFraction: properties.voidFraction ?? usual.voidFraction,
    particleM: particleUm === undefined ? usual.particleM : particleUm * 1e-6,
    heatCapacityJPerKgK: properties.heatCapacityJPerKgK ?? usual.heatCapacityJPerKgK,
    solidWPerMK: properties.solidWPerMK ?? usual.solidWPerMK,
    gasWPerMK: properties.gasWPerMK ?? usual.gasWPerMK,
    heatOfSorptionJPerKg:
      heatOfSorptionKJPerKg === undefined ? usual.heatOfSorptionJPerKg : heatOfSorptionKJPerKg * 1000,
  };
}

type Given = NonNullable<NonNullable<TrayInput['properties']>['isotherm']>;

const isothermOf = (usual: DryingIsotherm, given: Given): DryingIsotherm => ({
  filmCapacity: given.filmCapacity ?? usual.filmCapacity,
  filmC: given.filmC ?? usual.filmC,
  filmK: given.filmK ?? usual.filmK,
  poreCapacity: given.poreCapacity ?? usual.poreCapacity,
  poreActivity: given.poreActivity ?? usual.poreActivity,
  poreWidth: given.poreWidth ?? usual.poreWidth,
  tailCapacity: given.tailCapacity ?? usual.tailCapacity,
  tailActivity: given.tailActivity ?? usual.tailActivity,
  tailExponent: given.tailExponent ?? usual.tailExponent,
});

function ovenOf({ sorbent, oven }: TrayInput): Oven {
  const { temperatureC, coefficients = {} } = oven;
  const recipe = recipeFor(sorbent);
  if (recipe && temperatureC > recipe.upperC) {
    throw new BadInput(
      `invalid oven.temperatureC: ${temperatureC}, expected at most ${recipe.upperC} for ${recipe.name}: above that ${recipe.because} (${recipe.upperSource})`,
    );
  }
  if (oven.kind === 'vacuum' && oven.fan) {
    throw new BadInput('invalid oven.fan: true, expected false in a vacuum oven');
  }
  const kind: OvenKind = oven.kind === 'vacuum' ? 'vacuum' : oven.fan ? 'air with fan' : 'air';
  const pressurePa = oven.pressureMbar === undefined ? usualPressurePa[kind] : 100 * oven.pressureMbar;
  const vapourPa = oven.waterMbar === undefined ? Math.min(usualVapourPa[kind], pressurePa) : 100 * oven.waterMbar;
  if (vapourPa > pressurePa) {
    throw new BadInput(
      `invalid oven.waterMbar: ${vapourPa / 100}, expected at most the pressure of ${pressurePa / 100} mbar`,
    );
  }
  const gapM = oven.gapMm === undefined ? usualGapM : oven.gapMm / 1000;
  const usual = usualExchange(kind, temperatureC, pressurePa, gapM);
  return {
    kind,
    temperatureC,
    pressurePa,
    vapourPa,
    warmUpS: 60 * (oven.warmUpMinutes ?? 0),
    pump: pumpOf(oven),
    exchange: {
      topWPerM2K: coefficients.topWPerM2K ?? usual.topWPerM2K,
      emissivityTop: coefficients.emissivityTop ?? usual.emissivityTop,
      filmM: coefficients.filmMm === undefined ? usual.filmM : coefficients.filmMm / 1000,
      bottomWPerM2K: coefficients.bottomWPerM2K ?? usual.bottomWPerM2K,
      emissivityBottom: coefficients.emissivityBottom ?? usual.emissivityBottom,
    },
  };
}

function pumpOf({ pumpM3PerH, trayAreaM2 }: TrayInput['oven']): Oven['pump'] {
  if (pumpM3PerH === undefined) return null;
  if (trayAreaM2 === undefined) {
    throw new BadInput('missing oven.trayAreaM2, expected the area of all trays that the pump serves');
  }
  return { speedM3PerS: pumpM3PerH / 3600, trayAreaM2 };
}
