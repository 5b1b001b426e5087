// Drying recipes to begin with, and the temperature above which each thing suffers. Every lab edits its own.
//
// Recipes are common practice without a published source; upper temperatures are from memory, the maker's sheet comes first.

export type RecipeOven = 'vacuum' | 'air';

export interface Recipe {
  /** What it dries, as it is said at the bench. */
  readonly name: string;
  /** Sorbent classes in a tray, or the backing of plates. */
  readonly dries: readonly string[];
  readonly ovens: readonly RecipeOven[];
  /** Least and most temperature, °C, and minutes once the load is hot. */
  readonly temperatureC: readonly [number, number];
  readonly minutes: readonly [number, number];
  /** Deepest tray to plan for, mm; null for plates. */
  readonly depthMm: number | null;
  /** Never above, °C. */
  readonly upperC: number;
  /** What gives way above it. */
  readonly because: string;
  readonly note: string;
  readonly source: string;
}

const practice = "common practice; upper temperature from memory, maker's sheet first";
/** Deepest tray that 30 to 60 min at 120 to 140 °C dry (derived, half-hour rule of the drying model). */
const shallowMm = 10;

export const recipes: readonly Recipe[] = [
  {
    name: 'glass-backed plates',
    dries: ['glass'],
    ovens: ['vacuum'],
    temperatureC: [130, 130],
    minutes: [30, 30],
    depthMm: null,
    upperC: 150,
    because: 'the binder',
    note: 'Gypsum-bound layers may turn powdery under vacuum: try one.',
    source: practice,
  },
  {
    name: 'aluminium-backed plates',
    dries: ['aluminium'],
    ovens: ['air', 'vacuum'],
    temperatureC: [90, 90],
    minutes: [30, 60],
    depthMm: null,
    upperC: 120,
    because: 'the binder on the foil',
    note: '',
    source: practice,
  },
  {
    name: 'plastic-backed plates',
    dries: ['plastic'],
    ovens: ['air', 'vacuum'],
    temperatureC: [90, 90],
    minutes: [30, 60],
    depthMm: null,
    upperC: 90,
    because: 'the plastic backing',
    note: 'Flat on glass or metal, or they curl.',
    source: practice,
  },
  {
    name: 'silica gel',
    dries: ['silica'],
    ovens: ['vacuum'],
    temperatureC: [130, 160],
    minutes: [30, 60],
    depthMm: shallowMm,
    upperC: 200,
    because: 'the silanols, which are lost for good',
    note: '',
    source: practice,
  },
  {
    name: 'alumina',
    dries: ['alumina'],
    ovens: ['vacuum'],
    temperatureC: [130, 160],
    minutes: [30, 60],
    depthMm: shallowMm,
    upperC: 500,
    because: 'the surface area',
    note: 'Dry, but not grade I: that needs 300 to 400 °C.',
    source: practice,
  },
  {
    name: 'end-capped C18 or C8',
    dries: ['c18'],
    ovens: ['vacuum'],
    temperatureC: [130, 160],
    minutes: [30, 60],
    depthMm: shallowMm,
    upperC: 160,
    because: 'the bonded phase',
    note: 'It holds little water: often not needed.',
    source: practice,
  },
  {
    name: 'cyano or diol',
    dries: ['cyano', 'diol'],
    ovens: ['vacuum'],
    temperatureC: [80, 100],
    minutes: [60, 60],
    depthMm: shallowMm,
    upperC: 100,
    because: 'the bonded phase',
    note: '',
    source: practice,
  },
  {
    name: 'amino',
    dries: ['amino'],
    ovens: ['vacuum'],
    temperatureC: [60, 60],
    minutes: [60, 120],
    depthMm: shallowMm,
    upperC: 80,
    because: 'the bonded phase',
    note: '',
    source: practice,
  },
  {
    name: 'magnesium silicate',
    dries: ['magnesium silicate'],
    ovens: ['air'],
    temperatureC: [130, 130],
    minutes: [300, 960],
    depthMm: shallowMm,
    upperC: 200,
    because: 'the bound water of the silicate',
    note: 'Or overnight.',
    source: practice,
  },
];

/** Alumina reads grade I only after this temperature, °C (300 to 400; from memory). */
export const gradeOneFromC = 300;

/**
 * Minutes until plates are hot, which come before a recipe's minutes: a lone plate in a vacuum oven a few, a rack of eight
 * 10 mm apart under hard vacuum about 40 (rough: single layers, or warm first and then pull vacuum).
 */
export const rackWarmUpMinutes = 40;

/** The recipe for a sorbent class or a backing; null where none is known. */
export const recipeFor = (what: string): Recipe | null => recipes.find(({ dries }) => dries.includes(what)) ?? null;

/** Why a temperature is refused for a class or a backing ("above 90 °C the plastic backing gives way"); null when it is not. */
export function tooHot(what: string, temperatureC: number): string | null {
  const recipe = recipeFor(what);
  if (!recipe || temperatureC <= recipe.upperC) return null;
  return `at most ${recipe.upperC} °C for ${recipe.name}: above it ${recipe.because} suffers`;
}
