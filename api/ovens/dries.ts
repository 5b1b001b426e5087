// How a request is to be dried, and how long it needs in each oven that may take it: the tray model's minutes, or why there are none.
import type { Material, OvenWithCare, RequestRow } from './facts.ts';
import { ovenMinutes } from './oven-minutes.ts';
import { usualCoolDownMinutes, usualDepthMm } from './rules.ts';

/** How a request is to be dried. */
export interface Dries {
  temperatureC: readonly [number, number];
  /** At temperature, as asked for or by the recipe. */
  hotMinutes: readonly [number, number];
  /** Somebody asked for these minutes: they are kept to, dry or not. */
  isAsked: boolean;
  /** Until hot, where the tray model does not say. */
  heatUpMinutes: number;
  vacuum: boolean;
  coolDownMinutes: number;
  depthMm: number | null;
}

/** Where the model knows nothing of the class: time in the oven grows as the depth to this power (drying model: 1.4 to 1.6). */
const depthPower = 1.5;
/** A rack of so many plates is what a recipe's heat-up is for; fewer are hot sooner (rough, from memory). */
const wholeRack = 8;

const deeper = (depthMm: number | null, usualMm: number): number =>
  Math.max(1, (depthMm ?? usualMm) / usualMm) ** depthPower;

/** What the request says, else the lab's recipe; or why there is nothing to go by. */
export function driesOf(
  request: Pick<RequestRow, 'temperatureC' | 'minutes' | 'depthMm' | 'plates'>,
  material: Material,
): Dries | string {
  const { recipe } = material.how;
  const { temperatureC: asked, minutes: askedMinutes } = request;
  if (!recipe && (asked === null || askedMinutes === null)) {
    return `no recipe for ${material.sorbentName}: set one, or say temperature and minutes when asking`;
  }
  const isPlates = material.family === 'PLATES';
  const depthMm = isPlates ? null : (request.depthMm ?? recipe?.depthMm ?? usualDepthMm);
  const usual = recipe?.depthMm ?? usualDepthMm;
  const plates = request.plates ?? material.container.plates ?? 0;
  const rack = isPlates ? Math.min(1, plates / wholeRack) : deeper(depthMm, usual);
  const low = askedMinutes ?? recipe?.minutes[0] ?? 0;
  const high = Math.max(low, recipe?.minutes[1] ?? low);
  const upper = recipe?.upperC ?? Infinity;
  const [coolest, hottest] = recipe?.temperatureC ?? [asked ?? 0, asked ?? 0];
  return {
    temperatureC: asked === null ? [coolest, Math.min(hottest, upper)] : [asked, asked],
    hotMinutes: [low, high],
    isAsked: askedMinutes !== null,
    heatUpMinutes: (recipe?.heatUpMinutes ?? 0) * rack,
    vacuum: recipe?.vacuum ?? false,
    coolDownMinutes: recipe?.coolDownMinutes ?? usualCoolDownMinutes,
    depthMm,
  };
}

const percent = (fraction: number): string => `${Number((100 * fraction).toPrecision(2))} %`;

/** Minutes in one oven from cold to done, least and most; or why it never is. */
function minutesIn(
  oven: OvenWithCare,
  dries: Dries,
  material: Material,
  vapourPa: ReadonlyMap<string, number | null>,
  layerCm2: (oven: OvenWithCare) => number,
): readonly [number, number] | string {
  const { hotMinutes, heatUpMinutes, depthMm, isAsked } = dries;
  const [least, longest] = hotMinutes;
  // As cool as it may get there: whatever shares the oven makes it no cooler.
  const temperatureC = Math.max(dries.temperatureC[0], oven.lowestC);
  const isPlates = material.family === 'PLATES';
  const of = {
    sorbentClass: material.sorbentClass,
    isPlates,
    depthMm,
    layerMm: material.container.layerThicknessMm,
    waterFraction: material.waterFraction,
    temperatureC,
    oven,
    isVacuum: dries.vacuum,
    trayAreaM2: layerCm2(oven) / 1e4,
    roomVapourPa: vapourPa.get(oven.roomId) ?? null,
  };
  const model = ovenMinutes(of, material.target);
  if (!model) {
    const more = deeper(depthMm, material.how.recipe?.depthMm ?? usualDepthMm);
    return [Math.ceil(heatUpMinutes + least * more), Math.ceil(heatUpMinutes + longest * more)];
  }
  // A rack of plates is hot when all of it is: glass and air, of which the layer knows nothing.
  const hot = isPlates ? heatUpMinutes : (model.hot ?? heatUpMinutes);
  const atTemperature = Math.ceil(hot + least);
  const apart = longest - least;
  if (isAsked) return [atTemperature, atTemperature + apart];
  if (model.dry === null) {
    const where = `at ${temperatureC} °C in ${oven.name}`;
    const target = percent(material.target);
    return model.floor >= material.target
      ? `${where} it never comes to ${target}: ${percent(model.floor)} stays; a hotter recipe or vacuum, or say minutes when asking`
      : `${where} it is not dry to ${target} within a day; a shallower tray, or say minutes when asking`;
  }
  const minutes = Math.max(atTemperature, model.dry);
  return [minutes, minutes + apart];
}

/** Ovens in which it gets dry, and minutes that are enough in each of them; or why there is none. `layerCm2`: what lies in an oven at once. */
export function minutesInAll(
  ovens: readonly OvenWithCare[],
  dries: Dries,
  material: Material,
  vapourPa: ReadonlyMap<string, number | null>,
  layerCm2: (oven: OvenWithCare) => number,
): { ovens: OvenWithCare[]; minutes: readonly [number, number] } | string {
  const each = ovens.map((oven) => ({ oven, minutes: minutesIn(oven, dries, material, vapourPa, layerCm2) }));
  const able = each.flatMap(({ oven, minutes }) => (typeof minutes === 'string' ? [] : [{ oven, minutes }]));
  if (able.length === 0)
    return each.flatMap(({ minutes }) => (typeof minutes === 'string' ? [minutes] : []))[0] ?? 'no oven';
  return {
    ovens: able.map(({ oven }) => oven),
    minutes: [Math.max(...able.map((one) => one.minutes[0])), Math.max(...able.map((one) => one.minutes[1]))],
  };
}
