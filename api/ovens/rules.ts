// What decides about ovens and loads, on plain data: families, area in trays and racks, splitting, what may start. Pure.
import { invalid, missing } from '../errors.ts';

/** What may share an oven is said by family. */
export const families = ['BULK', 'BONDED', 'PLATES'] as const;
export type Family = (typeof families)[number];
export type FamilyPair = readonly [Family, Family];

/** Common practice: powder of bulk sorbents travels in the draught of an oven, onto bonded phases and onto layers. */
export const usualApart: readonly FamilyPair[] = [
  ['BULK', 'BONDED'],
  ['BULK', 'PLATES'],
];

const bondedClasses: ReadonlySet<string> = new Set(['c18', 'c8', 'cyano', 'diol', 'amino', 'phenyl']);

export function familyOf(of: { kind: string; sorbentClass: string; bondedPhase: string | null }): Family {
  if (of.kind === 'PLATE_BOX') return 'PLATES';
  return of.bondedPhase !== null || bondedClasses.has(of.sorbentClass) ? 'BONDED' : 'BULK';
}

/** Trays are filled so deep where neither the request nor the recipe says, mm (half-hour rule of the drying model). */
export const usualDepthMm = 10;
/** Density of a bed whose own nobody knows, kg/m³ (silica, from memory). */
export const usualDensityKgPerM3 = 500;
/** Plates in a rack stand so far apart, mm, and need so much room above (rough, from memory). */
const rackPitchMm = 10;
const rackHeadroomMm = 20;
/** Common 20 × 20 cm plates, where a box says nothing. */
const usualPlateMm = 200;

/** Tray area for so much dry sorbent at a depth, cm². */
export const trayAreaCm2 = (dryGrams: number, bulkDensityKgPerM3: number | null, depthMm: number): number =>
  (dryGrams / 1000 / (bulkDensityKgPerM3 ?? usualDensityKgPerM3) / (depthMm / 1000)) * 1e4;

/** Does a plate stand in a rack on these shelves? Plastic lies flat on glass or metal, or it curls. */
export const standsInRack = (
  plate: { plateHeightMm: number | null; backing: string | null },
  shelfHeightMm: number,
): boolean => plate.backing !== 'PLASTIC' && shelfHeightMm >= (plate.plateHeightMm ?? usualPlateMm) + rackHeadroomMm;

/** The face of one plate, cm²: so much layer gives off water. */
export const plateFaceCm2 = (plate: { plateWidthMm: number | null; plateHeightMm: number | null }): number =>
  ((plate.plateWidthMm ?? usualPlateMm) * (plate.plateHeightMm ?? usualPlateMm)) / 100;

/** Shelf area of one plate, cm²: its place in a rack, or its face where it lies flat. */
export function plateAreaCm2(
  plate: { plateWidthMm: number | null; plateHeightMm: number | null; backing: string | null },
  shelfHeightMm: number,
): number {
  const face = plateFaceCm2(plate);
  const height = plate.plateHeightMm ?? usualPlateMm;
  return standsInRack(plate, shelfHeightMm) ? (face * rackPitchMm) / height : face;
}

export interface Share {
  part: number;
  parts: number;
  dryGrams: number | null;
  plates: number | null;
  areaCm2: number;
  trays: number;
}

/** Grams in as many equal loads as the largest oven that takes them makes necessary; trays of at most one shelf. */
export function gramShares(dryGrams: number, areaCm2: number, oven: { areaCm2: number; shelfCm2: number }): Share[] {
  const parts = Math.max(1, Math.ceil(areaCm2 / oven.areaCm2 - 1e-9));
  const area = areaCm2 / parts;
  const trays = Math.max(1, Math.ceil(area / oven.shelfCm2 - 1e-9));
  return Array.from({ length: parts }, (_, i) => ({
    part: i + 1,
    parts,
    dryGrams: dryGrams / parts,
    plates: null,
    areaCm2: area,
    trays,
  }));
}

/** Whole plates in as few loads as the largest oven allows, as even as can be; empty where not one fits. */
export function plateShares(plates: number, each: number, oven: { areaCm2: number; shelfCm2: number }): Share[] {
  const most = Math.floor(oven.areaCm2 / each + 1e-9);
  if (most < 1) return [];
  const parts = Math.ceil(plates / most);
  return Array.from({ length: parts }, (_, i) => {
    const count = Math.floor(plates / parts) + (i < plates % parts ? 1 : 0);
    const areaCm2 = count * each;
    return {
      part: i + 1,
      parts,
      dryGrams: null,
      plates: count,
      areaCm2,
      trays: Math.max(1, Math.ceil(areaCm2 / oven.shelfCm2)),
    };
  });
}

/** After the oven: in the desiccator for so long where the recipe says nothing, min (common practice). */
export const usualCoolDownMinutes = 30;

/** A start later than this is a late start, min: until then the plan holds. */
export const lateAfterMinutes = 5;

export type RunState = 'PLANNED' | 'IN_OVEN' | 'COOLING' | 'COOLED' | 'FINISHED' | 'INTERRUPTED';

/** What each act may follow, and how a refusal says what the run is. */
const follows: Record<string, { from: readonly RunState[]; expected: string }> = {
  start: { from: ['PLANNED'], expected: 'a run that is planned and has not begun' },
  pin: { from: ['PLANNED'], expected: 'a run that has not begun' },
  door: { from: ['IN_OVEN'], expected: 'a run that is in the oven' },
  out: { from: ['IN_OVEN'], expected: 'a run that is in the oven' },
  cooled: { from: ['COOLING'], expected: 'a run that is out of the oven and cools' },
  interrupt: { from: ['IN_OVEN'], expected: 'a run that is in the oven' },
  finish: { from: ['IN_OVEN', 'COOLING', 'COOLED'], expected: 'a run that has begun and has no results yet' },
  back: {
    from: ['IN_OVEN', 'COOLING', 'COOLED', 'FINISHED', 'INTERRUPTED'],
    expected: 'a run of which something was recorded',
  },
};

export const runWords: Record<RunState, string> = {
  PLANNED: 'it is planned and has not begun',
  IN_OVEN: 'it is in the oven',
  COOLING: 'it is out of the oven and cools',
  COOLED: 'it has cooled',
  FINISHED: 'it is finished',
  INTERRUPTED: 'it was interrupted',
};

export function checkMay(act: keyof typeof follows, id: string, state: RunState, path = 'input.run'): void {
  const { from, expected } = follows[act] ?? { from: [], expected: '' };
  if (!from.includes(state)) throw invalid(path, id, `${runWords[state]}; ${expected}`);
}

/** An instant of a step may not lie before the one it follows. */
export function checkAfter(at: Date, before: Date | null, what: string): void {
  if (before && at < before)
    throw invalid('input.at', at.toISOString(), `not before ${what} at ${before.toISOString()}`);
}

/**
 * Water found by weighing what was dried: net grams over the dry grams that the book has in it. A little below is rounding of
 * book and balance and counts as dry; more is another vessel or a wrong tare.
 */
export function weighedWater(netGrams: number, dryGrams: number, path: string): number {
  const slack = Math.max(0.05, 0.01 * dryGrams);
  if (netGrams < dryGrams - slack) {
    const there = Math.round(10 * dryGrams) / 10;
    throw invalid(
      path,
      netGrams,
      `at least the ${there} g of dry sorbent that are in it; weigh without the tray, or count it first`,
    );
  }
  const water = Math.max(0, netGrams / dryGrams - 1);
  if (water > 1) throw invalid(path, netGrams, `at most ${Math.round(2 * dryGrams)} g; the grams without the tray`);
  return water;
}

const clock = /^([01]\d|2[0-3]):[0-5]\d$/;

/** Hours when someone can load, as they are kept. */
export interface OpenHours {
  days: number[];
  from: string;
  to: string;
}

export function checkHours(hours: readonly OpenHours[], path: string): void {
  if (hours.length === 0) throw missing(path, 'at least one span of hours, or none given for the lab’s working hours');
  hours.forEach(({ days, from, to }, i) => {
    const at = `${path}.${i}`;
    if (days.length === 0 || days.some((day) => !Number.isInteger(day) || day < 1 || day > 7)) {
      throw invalid(`${at}.days`, days, 'Monday 1 to Sunday 7, at least one');
    }
    if (!clock.test(from)) throw invalid(`${at}.from`, from, 'a time such as 07:00');
    if (!clock.test(to)) throw invalid(`${at}.to`, to, 'a time such as 19:00');
    if (from === to) throw invalid(`${at}.to`, to, `another time than ${from}`);
  });
}
