// What the tray model answers, as a forecast tells it.
import { deepestM } from '../science/tray/deepest.ts';
import { forecast, timeDoubt } from '../science/tray/forecast.ts';
import { limitOf } from '../science/tray/limits.ts';
import { loadOf, type Load, type Tray } from '../science/tray/load.ts';
import { restingWater } from '../science/tray/residual.ts';
import { floorSentence, summaryLine } from './forecast-words.ts';
import type { LabRecipe } from './recipes.ts';
import type { DryingForecast } from './forecast-told.ts';

const mostS = 86_400;

function once<T>(make: () => T): () => T {
  let made: { value: T } | null = null;
  return () => (made ??= { value: make() }).value;
}

interface Asked {
  words: DryingForecast['oven'];
  target: number;
  minutes: number;
  isPlates: boolean;
  recipe: LabRecipe | null;
  called: string;
}

export function outcomeOf(tray: Tray, asked: Asked): Omit<DryingForecast, 'startWaterFraction' | 'startFrom'> {
  const { words, target, minutes, isPlates, recipe, called } = asked;
  const load: Load = loadOf(tray);
  const seconds = 60 * minutes;
  const atS = [seconds / (1 + timeDoubt), seconds, seconds * (1 + timeDoubt)];
  const { moments, crossings } = forecast(load, { atS, targets: [target], mostS, profileAtS: null });
  const [sooner, now, later] = moments;
  const [crossing] = crossings;
  if (!sooner || !now || !later || !crossing) throw new Error('the forecast has no moments');
  const floor = restingWater(tray.sorbent.isotherm, words.temperatureC, 100 * words.waterMbar);
  const depthMm = isPlates ? null : 1000 * tray.depthM;
  const deepestMm = once(() => {
    if (isPlates) return null;
    const found = deepestM(tray, target, 'wettest', seconds);
    return found === null ? null : 1000 * found;
  });
  return {
    recipe,
    oven: words,
    depthMm,
    minutes,
    target,
    floor,
    floorSentence: floorSentence(called, words, floor),
    moments: [sooner, now, later],
    crossing,
    notes: recipe?.note ? [recipe.note] : [],
    deepestMm,
    limit: () => limitOf(load, target, 'wettest', mostS),
    summary: () =>
      summaryLine(words, { depthMm, minutes, mean: now.mean, wettest: now.wettest, deepestMm: deepestMm() }, target),
  };
}
