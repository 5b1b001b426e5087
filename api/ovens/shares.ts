// What waits as loads: which ovens may take it, how long it needs, how much room, and in how many parts.
import { freeOfLoads } from './amounts.ts';
import type { Facts, Material, OvenWithCare, RequestRow } from './facts.ts';
import {
  gramShares,
  plateAreaCm2,
  plateShares,
  trayAreaCm2,
  usualDepthMm,
  usualCoolDownMinutes,
  type Family,
  type Share,
} from './rules.ts';

/** How a request is to be dried. */
export interface Dries {
  temperatureC: readonly [number, number];
  /** In the oven from cold to done: heat-up of the load included. */
  minutes: readonly [number, number];
  vacuum: boolean;
  coolDownMinutes: number;
  depthMm: number | null;
}

export interface Wanted extends Share {
  request: RequestRow;
  material: Material;
  dries: Dries;
  family: Family;
  ovens: OvenWithCare[];
}

export interface LeftOut {
  request: RequestRow;
  why: string;
}

/** Time in the oven grows as the depth to this power (drying model: 1.4 to 1.6). */
const depthPower = 1.5;
/** A rack of so many plates is what a recipe's heat-up is for; fewer are hot sooner (rough, from memory). */
const wholeRack = 8;

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
  const deeper = depthMm === null ? 1 : Math.max(1, depthMm / usual) ** depthPower;
  const plates = request.plates ?? material.container.plates ?? 0;
  const heatUp = (recipe?.heatUpMinutes ?? 0) * (isPlates ? Math.min(1, plates / wholeRack) : 1);
  const low = askedMinutes ?? recipe?.minutes[0] ?? 0;
  const high = Math.max(low, recipe?.minutes[1] ?? low);
  const upper = recipe?.upperC ?? Infinity;
  const [coolest, hottest] = recipe?.temperatureC ?? [asked ?? 0, asked ?? 0];
  return {
    temperatureC: asked === null ? [coolest, Math.min(hottest, upper)] : [asked, asked],
    minutes: [Math.ceil((heatUp + low) * deeper), Math.ceil((heatUp + high) * deeper)],
    vacuum: recipe?.vacuum ?? false,
    coolDownMinutes: recipe?.coolDownMinutes ?? usualCoolDownMinutes,
    depthMm,
  };
}

export const ovenAreaCm2 = ({ shelves, shelfAreaCm2 }: Pick<OvenWithCare, 'shelves' | 'shelfAreaCm2'>): number =>
  shelves * shelfAreaCm2;

/** The ovens that bear the recipe; or why there is none. */
function takers(ovens: readonly OvenWithCare[], dries: Dries): OvenWithCare[] | string {
  const [low, high] = dries.temperatureC;
  const vacuum = ovens.filter(({ kind }) => !dries.vacuum || kind === 'VACUUM');
  if (vacuum.length === 0) return 'it wants a vacuum oven, and there is none';
  const warm = vacuum.filter(({ lowestC, highestC }) => Math.max(low, lowestC) <= Math.min(high, highestC));
  if (warm.length === 0) return `no oven that it may go into holds ${low === high ? low : `${low} to ${high}`} °C`;
  const { depthMm } = dries;
  const high2 = depthMm === null ? warm : warm.filter(({ shelfHeightMm }) => shelfHeightMm > depthMm);
  return high2.length === 0 ? `no shelf leaves room for a tray ${depthMm} mm deep` : high2;
}

/** A request's loads that are still to be placed; or why there can be none. */
export function loadsOf(
  request: RequestRow,
  facts: Pick<Facts, 'ovens' | 'materialOf' | 'requests'>,
): Wanted[] | LeftOut {
  const material = facts.materialOf(request.container);
  const dries = driesOf(request, material);
  if (typeof dries === 'string') return { request, why: dries };
  const hot = material.how.refusal(dries.temperatureC[0]);
  if (hot) return { request, why: hot };
  const ovens = takers(facts.ovens, dries);
  if (typeof ovens === 'string') return { request, why: ovens };
  const amount = freeOfLoads(request, facts.requests);
  const largest = ovens.reduce((best, oven) => (ovenAreaCm2(oven) > ovenAreaCm2(best) ? oven : best));
  const room = { areaCm2: ovenAreaCm2(largest), shelfCm2: largest.shelfAreaCm2 };
  const shares =
    amount.plates === null
      ? amount.dryGrams > 0
        ? gramShares(
            amount.dryGrams,
            trayAreaCm2(amount.dryGrams, material.bulkDensityKgPerM3, dries.depthMm ?? usualDepthMm),
            room,
          )
        : []
      : plateShares(
          amount.plates,
          Math.max(...ovens.map(({ shelfHeightMm }) => plateAreaCm2(request.container, shelfHeightMm))),
          room,
        );
  if (shares.length === 0 && (amount.plates ?? 0) > 0)
    return { request, why: 'not one of these plates fits on the shelves' };
  return shares.map((share) => ({ ...share, request, material, dries, family: material.family, ovens }));
}
