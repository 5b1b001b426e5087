// The oven of a forecast: as said, else as the recipe has it, else as usual.
import { invalid } from '../errors.ts';
import { saturationPressurePa } from '../science/air.ts';
import { usualPressurePa, usualVapourPa } from '../science/tray/oven.ts';
import type { LabRecipe } from './recipes.ts';
import type { Said } from './forecast-said.ts';
import type { RoomAir } from './forecast-start.ts';
import type { DryingForecast } from './forecast-told.ts';

export function ovenWordsOf(input: Said, recipe: LabRecipe | null, air: RoomAir): DryingForecast['oven'] {
  const vacuum = input.vacuum ?? recipe?.vacuum ?? false;
  const kind = vacuum ? 'vacuum' : 'air';
  const pressureMbar = input.pressureMbar ?? usualPressurePa[kind] / 100;
  const roomMbar = (air.humidity * saturationPressurePa(air.temperatureC)) / 100;
  const usualMbar = vacuum ? usualVapourPa.vacuum / 100 : roomMbar;
  const waterMbar = input.waterMbar ?? Math.min(usualMbar, pressureMbar);
  if (waterMbar > pressureMbar) throw invalid('waterMbar', waterMbar, `at most the pressure, ${pressureMbar} mbar`);
  const fromRoom = !vacuum && air.known;
  return {
    temperatureC: input.temperatureC ?? recipe?.temperatureC[0] ?? 130,
    vacuum,
    fan: !vacuum && (input.fan ?? false),
    pressureMbar,
    waterMbar,
    waterFrom: input.waterMbar != null ? 'GIVEN' : fromRoom ? 'ROOM' : 'USUAL',
  };
}
