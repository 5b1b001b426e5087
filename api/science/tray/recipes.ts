// Drying recipes to begin with, and the temperature above which each thing suffers. Every lab edits its own.
//
// Recipes are common practice without a published source; upper temperatures are from memory, the maker's sheet comes first.

export interface Recipe {
  /** A sorbent class in a tray, or the backing of plates: glass, aluminium, plastic. */
  readonly dries: string;
  /** The same as it is said at the bench. */
  readonly name: string;
  readonly plates: boolean;
  /** In a vacuum oven; in one full of air else. */
  readonly vacuum: boolean;
  /** Least and most temperature, °C, and minutes once the load is hot. */
  readonly temperatureC: readonly [number, number];
  readonly minutes: readonly [number, number];
  /** Deepest tray to plan for, mm; null for plates. */
  readonly depthMm: number | null;
  /** Until the load is hot, min, which come before the recipe's minutes; then until it is cool in a desiccator. */
  readonly heatUpMinutes: number;
  readonly coolDownMinutes: number;
  /** Never above, °C. */
  readonly upperC: number;
  /** What happens above it. */
  readonly because: string;
  readonly note: string;
  /** Where temperature, minutes and depth come from, and where the upper temperature does. */
  readonly source: string;
  readonly upperSource: string;
}

const source = 'common practice';
const upperSource = 'from memory; the maker’s sheet comes first';

/** Deepest tray that 30 to 60 min at 120 to 140 °C dry (derived, half-hour rule of the drying model). */
const shallowMm = 10;
/** A 10 mm tray at 130 °C under vacuum is at temperature after half an hour (tray model, derived). */
const trayHeatUp = 30;
/** The same of one in air at 120 °C, with a fan or without: an hour (tray model, derived). */
const airHeatUp = 60;
/**
 * A lone plate in a vacuum oven is hot in a few minutes, a rack of eight 10 mm apart under hard vacuum in about 40 (rough:
 * single layers, or warm first and then pull vacuum). From memory.
 */
const rackHeatUp = 40;
/** Closed in a desiccator until a hand can hold it (from memory). */
const trayCoolDown = 30;
const plateCoolDown = 15;

type Said = Omit<Recipe, 'plates' | 'depthMm' | 'heatUpMinutes' | 'coolDownMinutes' | 'source' | 'upperSource'>;

const plate = (said: Said): Recipe => ({
  ...said,
  plates: true,
  depthMm: null,
  heatUpMinutes: rackHeatUp,
  coolDownMinutes: plateCoolDown,
  source,
  upperSource,
});

const tray = (said: Said): Recipe => ({
  ...said,
  plates: false,
  depthMm: shallowMm,
  heatUpMinutes: said.vacuum ? trayHeatUp : airHeatUp,
  coolDownMinutes: trayCoolDown,
  source,
  upperSource,
});

const bonded = 'the bonded phase breaks down';

export const recipes: readonly Recipe[] = [
  plate({
    dries: 'glass',
    name: 'glass-backed plates',
    vacuum: true,
    temperatureC: [130, 130],
    minutes: [30, 30],
    upperC: 150,
    because: 'the binder breaks down',
    note: 'Gypsum-bound layers may turn powdery under vacuum: try one.',
  }),
  plate({
    dries: 'aluminium',
    name: 'aluminium-backed plates',
    vacuum: true,
    temperatureC: [90, 90],
    minutes: [30, 60],
    upperC: 120,
    because: 'the binder on the foil breaks down',
    note: 'An oven full of air will do as well.',
  }),
  plate({
    dries: 'plastic',
    name: 'plastic-backed plates',
    vacuum: true,
    temperatureC: [90, 90],
    minutes: [30, 60],
    upperC: 90,
    because: 'the plastic backing gives way',
    note: 'Flat on glass or metal, or they curl. An oven full of air will do as well.',
  }),
  tray({
    dries: 'silica',
    name: 'silica gel',
    vacuum: true,
    temperatureC: [130, 160],
    minutes: [30, 60],
    upperC: 200,
    because: 'it loses silanols for good',
    note: '',
  }),
  tray({
    dries: 'alumina',
    name: 'alumina',
    vacuum: true,
    temperatureC: [130, 160],
    minutes: [30, 60],
    upperC: 500,
    because: 'it loses surface',
    note: 'Dry, but not grade I: that needs 300 to 400 °C.',
  }),
  tray({
    dries: 'c18',
    name: 'end-capped C18 or C8',
    vacuum: true,
    temperatureC: [130, 160],
    minutes: [30, 60],
    upperC: 160,
    because: bonded,
    note: 'It holds little water: often not needed.',
  }),
  tray({
    dries: 'cyano',
    name: 'cyano',
    vacuum: true,
    temperatureC: [80, 100],
    minutes: [60, 60],
    upperC: 100,
    because: bonded,
    note: '',
  }),
  tray({
    dries: 'diol',
    name: 'diol',
    vacuum: true,
    temperatureC: [80, 100],
    minutes: [60, 60],
    upperC: 100,
    because: bonded,
    note: '',
  }),
  tray({
    dries: 'amino',
    name: 'amino',
    vacuum: true,
    temperatureC: [60, 60],
    minutes: [60, 120],
    upperC: 80,
    because: bonded,
    note: '',
  }),
  tray({
    dries: 'magnesium silicate',
    name: 'magnesium silicate',
    vacuum: false,
    temperatureC: [130, 130],
    minutes: [300, 960],
    upperC: 200,
    because: 'it loses the water bound in it',
    note: 'Or overnight.',
  }),
];

/** The default recipe for a sorbent class or a backing; null where none is known. */
export const recipeFor = (what: string): Recipe | null => recipes.find(({ dries }) => dries === what) ?? null;

/** Why a temperature is too high for what a recipe dries ("at most 90 °C for …: above that the plastic backing gives way"); null when it is not. */
export function tooHot(recipe: Recipe, temperatureC: number): string | null {
  if (temperatureC <= recipe.upperC) return null;
  return `at most ${recipe.upperC} °C for ${recipe.name}: above that ${recipe.because} (${recipe.upperSource})`;
}
