// What a need asks of the ovens: shelf area, loads, temperature and time.
import { trayAreaCm2, usualDepthMm } from '../ovens/service.ts';
import { loadsOf } from '../science/prep/loads.ts';
import type { PrepResources, Stage } from '../science/prep/stages.ts';
import type { NeedFacts } from './facts.ts';
import type { OvenSpan } from './ovens.ts';
import { five, handsMinutes } from './chain-building.ts';

/** cm² of oven shelf for an amount, at the recipe's depth and the sorbent's own density. */
function ovenArea(facts: NeedFacts, amount: number): number {
  const { need, kept, how } = facts;
  const [first] = kept;
  if (need.kind === 'PLATES') {
    const { plateWidthMm = null, plateHeightMm = null } = first?.container ?? {};
    return amount * (((plateWidthMm ?? 200) * (plateHeightMm ?? 200)) / 100);
  }
  return trayAreaCm2(amount, facts.bulkDensityKgPerM3, how.recipe?.depthMm ?? usualDepthMm);
}

export function ovenStage(
  facts: NeedFacts,
  amount: number,
  resources: PrepResources,
  spans: readonly OvenSpan[],
): Stage | null {
  const { recipe } = facts.how;
  if (!recipe) return null;
  const isVacuum = facts.need.kind === 'PLATES' && recipe.dries !== 'glass' ? null : recipe.vacuum;
  // Loads as large as fits into the largest oven that may take them at all.
  const fits = resources.ovens.filter((oven) => isVacuum === null || oven.isVacuum === isVacuum);
  const largest = Math.max(1, ...fits.map(({ capacity }) => capacity));
  const loads = loadsOf(ovenArea(facts, amount), largest);
  const heated = five(recipe.heatUpMinutes);
  return {
    kind: 'OVEN',
    loads,
    ofLoads: loads.length,
    least: heated + five(recipe.minutes[0]),
    most: heated + five(recipe.minutes[1]) + 5,
    temperatureC: recipe.temperatureC,
    isVacuum,
    handsMinutes,
    coolMinutes: five(recipe.coolDownMinutes),
    given: spans
      .filter(({ needId }) => needId === facts.need.id)
      .map(({ load, ovenId, start, end }) => ({ load, ovenId, start, end })),
  };
}
