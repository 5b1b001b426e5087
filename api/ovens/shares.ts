// What waits as loads: which ovens may take it, how long it needs, how much room, and in how many parts.
import { freeOfLoads } from './amounts.ts';
import { driesOf, minutesInAll, type Dries } from './dries.ts';
import type { Facts, Material, OvenWithCare, RequestRow } from './facts.ts';
import {
  gramShares,
  plateAreaCm2,
  plateFaceCm2,
  plateShares,
  trayAreaCm2,
  usualDepthMm,
  type Family,
  type Share,
} from './rules.ts';

export interface Wanted extends Share, Timed {
  request: RequestRow;
  material: Material;
  family: Family;
}

export interface LeftOut {
  request: RequestRow;
  why: string;
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

const areaOf = (dryGrams: number | null, { bulkDensityKgPerM3 }: Material, { depthMm }: Dries): number =>
  trayAreaCm2(dryGrams ?? 0, bulkDensityKgPerM3, depthMm ?? usualDepthMm);

export interface Timed {
  dries: Dries;
  ovens: OvenWithCare[];
  /** In the oven from cold to done, least and most: enough in whichever of the ovens. */
  minutes: readonly [number, number];
}

/** Which ovens get so much of something dry, and in how long; or why none does. */
export function timed(
  asked: Parameters<typeof driesOf>[0],
  amount: { dryGrams: number | null; plates: number | null },
  material: Material,
  { ovens, vapourPa }: Pick<Facts, 'ovens' | 'vapourPa'>,
): Timed | string {
  const dries = driesOf(asked, material);
  if (typeof dries === 'string') return dries;
  const hot = material.how.refusal(dries.temperatureC[0]);
  if (hot) return hot;
  const bearing = takers(ovens, dries);
  if (typeof bearing === 'string') return bearing;
  const { container } = material;
  const layerCm2 = (oven: OvenWithCare): number => {
    const shelves = ovenAreaCm2(oven);
    if (amount.plates === null) return Math.min(areaOf(amount.dryGrams, material, dries), shelves);
    const most = Math.floor(shelves / plateAreaCm2(container, oven.shelfHeightMm) + 1e-9);
    return Math.min(amount.plates, most) * plateFaceCm2(container);
  };
  const found = minutesInAll(bearing, dries, material, vapourPa, layerCm2);
  return typeof found === 'string' ? found : { dries, ...found };
}

/** A request's loads that are still to be placed; or why there can be none. */
export function loadsOf(
  request: RequestRow,
  facts: Pick<Facts, 'ovens' | 'materialOf' | 'requests' | 'vapourPa'>,
): Wanted[] | LeftOut {
  const material = facts.materialOf(request.container);
  const amount = freeOfLoads(request, facts.requests);
  const found = timed(request, amount, material, facts);
  if (typeof found === 'string') return { request, why: found };
  const { dries, ovens, minutes } = found;
  const largest = ovens.reduce((best, oven) => (ovenAreaCm2(oven) > ovenAreaCm2(best) ? oven : best));
  const room = { areaCm2: ovenAreaCm2(largest), shelfCm2: largest.shelfAreaCm2 };
  const shares =
    amount.plates === null
      ? amount.dryGrams > 0
        ? gramShares(amount.dryGrams, areaOf(amount.dryGrams, material, dries), room)
        : []
      : plateShares(
          amount.plates,
          Math.max(...ovens.map(({ shelfHeightMm }) => plateAreaCm2(request.container, shelfHeightMm))),
          room,
        );
  if (shares.length === 0 && (amount.plates ?? 0) > 0)
    return { request, why: 'not one of these plates fits on the shelves' };
  return shares.map((share) => ({ ...share, request, material, dries, minutes, family: material.family, ovens }));
}
