// What a need asks of the ovens: shelf area, loads, temperature and time.
import { plateAreaCm2, trayAreaCm2, usualDepthMm } from '../ovens/service.ts';
import { loadsOf } from '../science/prep/loads.ts';
import type { PrepOven, PrepResources, Stage } from '../science/prep/stages.ts';
import type { NeedFacts } from './facts.ts';
import type { HeatOf } from './heat.ts';
import type { OvenSpan } from './ovens.ts';
import { five, handsMinutes } from './chain-building.ts';

/** cm² of oven shelf for an amount: plates in racks where the shelves are high enough, sorbent at the recipe's depth. */
function ovenArea(facts: NeedFacts, amount: number, ovens: readonly PrepOven[]): number {
  const { need, kept, how } = facts;
  if (need.kind !== 'PLATES') {
    return trayAreaCm2(amount, facts.bulkDensityKgPerM3, how.recipe?.depthMm ?? usualDepthMm);
  }
  const { plateWidthMm = null, plateHeightMm = null } = kept[0]?.container ?? {};
  const plate = { plateWidthMm, plateHeightMm, backing: kept[0]?.container.backing ?? need.backing ?? 'GLASS' };
  // As many as fit wherever they go: no load that one of the ovens would not take.
  const heights = ovens.map(({ shelfHeightMm }) => shelfHeightMm ?? 0);
  return amount * plateAreaCm2(plate, Math.min(...(heights.length > 0 ? heights : [0])));
}

/** Ovens, what stands in them already, and how long it has to be there. */
export interface InOvens {
  resources: PrepResources;
  spans: readonly OvenSpan[];
  heat: HeatOf;
}

export function ovenStage(facts: NeedFacts, amount: number, { resources, spans, heat: heatOf }: InOvens): Stage | null {
  const { recipe } = facts.how;
  const heat = heatOf();
  if (!recipe || !heat) return null;
  // A recipe without vacuum is met by any oven; foil and film dry as well in air.
  const needsVacuum = recipe.vacuum && (facts.need.kind !== 'PLATES' || recipe.dries === 'glass');
  const isVacuum = needsVacuum ? true : null;
  // Loads as large as fits into the largest oven that may take them at all.
  const fits = resources.ovens.filter(
    (oven) => (isVacuum === null || oven.isVacuum === isVacuum) && (heat.ovens?.includes(oven.id) ?? true),
  );
  const largest = Math.max(1, ...fits.map(({ capacity }) => capacity));
  const loads = loadsOf(ovenArea(facts, amount, fits), largest);
  return {
    kind: 'OVEN',
    loads,
    ofLoads: loads.length,
    least: five(heat.minutes[0]),
    most: five(heat.minutes[1]) + 5,
    temperatureC: recipe.temperatureC,
    isVacuum,
    ...(heat.ovens ? { ovens: heat.ovens } : {}),
    handsMinutes,
    coolMinutes: five(recipe.coolDownMinutes),
    given: spans
      .filter(({ needId }) => needId === facts.need.id)
      .map(({ load, ovenId, start, end }) => ({ load, ovenId, start, end })),
  };
}
