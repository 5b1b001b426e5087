// What would be left in a tray or on plates: the tray model, fed with the lab's recipe, the container's water and the room's air.
import type { Context } from '../context.ts';
import { checked, invalid } from '../errors.ts';
import { ovenLoadOf } from '../exposure/service.ts';
import { howClassIsDried, ownRecipes } from './how-dried.ts';
import type { DryingForecast } from './forecast-told.ts';
import { forecastSaid } from './forecast-said.ts';
import { whatOf, numbersFor, calledOf } from './forecast-material.ts';
import { roomOf, startOf, targetOf } from './forecast-start.ts';
import { ovenWordsOf } from './forecast-oven.ts';
import { depthOf, trayOf } from './forecast-tray.ts';
import { outcomeOf } from './forecast-outcome.ts';

/** What a drying would leave; refused above what the material stands. */
export async function dryingForecast(context: Context, asked: unknown): Promise<DryingForecast> {
  const input = checked(forecastSaid, asked, '');
  const { sorbent, container } = await whatOf(context, input.label, input.sorbent);
  const numbers = await numbersFor(context, sorbent);
  const how = howClassIsDried(
    await ownRecipes(context.database.read, context.lab.id),
    sorbent.sorbentClass,
    container?.backing ?? null,
  );
  const { recipe } = how;
  const air = await roomOf(context, input.room ?? null, container);
  const words = ovenWordsOf(input, recipe, air);
  const hot = how.refusal(words.temperatureC);
  if (hot) throw invalid('temperatureC', words.temperatureC, hot);
  const isPlates = container?.kind === 'PLATE_BOX';
  const layerM = isPlates ? (container.layerThicknessMm ?? 0.25) / 1000 : undefined;
  const load = isPlates
    ? ovenLoadOf(numbers.drying, numbers.layer.bulkDensityKgPerM3, layerM)
    : ovenLoadOf(numbers.drying);
  const depthM = layerM ?? depthOf(input, numbers.bed.bulkDensityKgPerM3, recipe);
  const start = await startOf(context, input, container, numbers, air);
  const target = targetOf(input, sorbent);
  const minutes = input.minutes ?? recipe?.minutes[1] ?? 60;
  const tray = trayOf(load, depthM, start.startWaterFraction, air, words);
  return {
    ...start,
    ...outcomeOf(tray, { words, target, minutes, isPlates, recipe, called: calledOf(sorbent, container) }),
  };
}
